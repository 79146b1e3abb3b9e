"""The packaged fonts, cut down to the letters of one page and carried inside it."""

from base64 import b64encode
from io import BytesIO

from panelcad.drawing.display import Face
from panelcad.drawing.lettering import font_file

WEIGHTS = {Face.REGULAR: 400, Face.BOLD: 700}


def font_style(letters: str) -> str:
    """The style sheet that defines the page's own font family 'panel' with these letters."""
    return "".join(_one(face, weight, letters) for face, weight in WEIGHTS.items())


def _one(face: Face, weight: int, letters: str) -> str:
    data = b64encode(_cut_down(face, letters)).decode()
    source = f"url(data:font/ttf;base64,{data}) format('truetype')"
    return f"@font-face{{font-family:panel;font-weight:{weight};src:{source}}}"


def _cut_down(face: Face, letters: str) -> bytes:
    from fontTools.subset import Options, Subsetter  # noqa: PLC0415 - slow to load
    from fontTools.ttLib import TTFont  # noqa: PLC0415

    font = TTFont(BytesIO(font_file(face).read_bytes()))
    cutter = Subsetter(Options(hinting=False, layout_features=[], name_IDs=[1, 2], notdef_outline=True))
    cutter.populate(text=letters)
    cutter.subset(font)
    content = BytesIO()
    font.save(content)
    return content.getvalue()
