"""Makes the picture in docs/cutting_file.md, as GDAL reads the file: `python docs/cutting_pictures.py`."""

from pathlib import Path
from tempfile import TemporaryDirectory

import pyogrio
import pyogrio.raw
import shapely
from PIL import Image, ImageDraw, ImageFont

import panelcad
from panelcad.drawing.display import Face
from panelcad.drawing.lettering import font_file
from panelcad.library.samples import sample_file

PICTURE = Path(__file__).parent / "pictures" / "cutting_file.png"
WIDTH, FINE, MARGIN = 1500, 3, 30
COLOURS = {"OUTLINE": "#111111", "CUTOUT": "#c62828", "DRILL": "#1565c0", "ENGRAVE": "#2e7d32", "LEAD_IN": "#ef6c00"}
REST = "#777777"


def main() -> None:
    with TemporaryDirectory() as folder:
        file = Path(folder) / "panel.dxf"
        project = panelcad.load(sample_file("tourer"))
        panelcad.export_dxf(project, "glass", "panel", file, ("mm", "lead-ins"))
        pyogrio.set_gdal_config_options({"OGR_ARC_STEPSIZE": "1"})
        meta, _, shapes, columns = pyogrio.raw.read(file)
    rows = dict(zip(meta["fields"], columns, strict=True))
    picture(list(zip(rows["Layer"], shapely.from_wkb(shapes), rows["Text"], strict=True)))


def picture(entities: list[tuple[str, shapely.Geometry, str]]) -> None:
    left, bottom, right, top = shapely.total_bounds([shape for _, shape, _ in entities])
    scale = (WIDTH - 2 * MARGIN) * FINE / (right - left)
    height = int((top - bottom) * scale) + 2 * MARGIN * FINE
    image = Image.new("RGB", (WIDTH * FINE, height), "white")
    draw = ImageDraw.Draw(image)
    font = ImageFont.truetype(str(font_file(Face.REGULAR)), int(3.5 * scale / 0.72))
    for layer, shape, text in entities:
        colour = COLOURS.get(layer, REST)
        at = [
            ((x - left) * scale + MARGIN * FINE, height - MARGIN * FINE - (y - bottom) * scale)
            for x, y, *_ in shape.coords
        ]
        if text:
            draw.text(at[0], text, fill=colour, font=font, anchor="ls")
        elif shape.geom_type == "Point":
            draw.circle(at[0], 2 * FINE, fill=colour)
        else:
            draw.line(at, fill=colour, width=4, joint="curve")
    image.resize((WIDTH, height // FINE), Image.Resampling.LANCZOS).quantize(128).save(PICTURE, optimize=True)


if __name__ == "__main__":
    main()
