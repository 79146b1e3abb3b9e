"""Text measured from the packaged fonts, the same for every painter. Heights are heights of capitals."""

from dataclasses import dataclass
from functools import cache, lru_cache
from io import BytesIO
from pathlib import Path
from typing import Final

from panelcad.drawing.display import Across, Along, Bounds, Face, Text
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point

_FOLDER: Final = Path(__file__).parent / "fonts"
DESCENT: Final = 0.34
"""How far letters such as g reach below the baseline in the packaged fonts, as a share of the height of a capital."""


@dataclass(frozen=True)
class FontMetrics:
    """Widths of characters and the height of a capital, as shares of the em."""

    widths: dict[str, float]
    missing: float
    capital: float
    ascent: float
    descent: float


def font_file(face: Face) -> Path:
    return _FOLDER / f"{face.value}.ttf"


@cache
def metrics(face: Face) -> FontMetrics:
    from fontTools.ttLib import TTFont  # noqa: PLC0415 - slow to load, and not needed where nothing is drawn

    font = TTFont(BytesIO(font_file(face).read_bytes()), lazy=True)
    em = font["head"].unitsPerEm
    advances = font["hmtx"]
    widths = {chr(code): advances[name][0] / em for code, name in font.getBestCmap().items()}
    return FontMetrics(
        widths=widths,
        missing=advances[".notdef"][0] / em,
        capital=font["OS/2"].sCapHeight / em,
        ascent=font["hhea"].ascent / em,
        descent=-font["hhea"].descent / em,
    )


def em_size(height: float, face: Face) -> float:
    """The em for letters whose capitals are `height` high, in the height's unit."""
    return height / metrics(face).capital


@lru_cache(maxsize=8192)
def text_width(text: str, height: float, face: Face = Face.REGULAR) -> float:
    """Width of one line of text in the height's unit."""
    font = metrics(face)
    return sum(font.widths.get(char, font.missing) for char in text) * em_size(height, face)


_SHARES: Final = {Across.BASELINE: 0.0, Across.CLEAR: 0.45, Across.MIDDLE: -0.5, Across.TOP: -1.0}
"""How far the baseline is above the place, as a share of the height of a capital."""


def text_origin(text: Text) -> tuple[float, float]:
    """From the text's own anchor to the left end of its baseline, before it is turned, in the height's unit."""
    width = text_width(text.text, text.height, text.face)
    dx = {Along.LEFT: 0.0, Along.CENTRE: -width / 2, Along.RIGHT: -width}[text.along]
    return dx, _SHARES[text.across] * text.height


def text_corners(text: Text) -> tuple[Point, Point, Point, Point]:
    """The corners of the box around a text in mm, from its lower left counter-clockwise, turned as the text is."""
    dx, dy = text_origin(text)
    width = text_width(text.text, text.height, text.face)
    low = dy - DESCENT * text.height
    at = Placement(text.at.x, text.at.y, text.rotation)
    return (
        at.point(Point(dx, low)),
        at.point(Point(dx + width, low)),
        at.point(Point(dx + width, dy + text.height)),
        at.point(Point(dx, dy + text.height)),
    )


def text_bounds(text: Text) -> Bounds:
    corners = text_corners(text)
    xs, ys = [p.x for p in corners], [p.y for p in corners]
    return min(xs), min(ys), max(xs), max(ys)


def fitted(text: str, width: float, height: float, face: Face = Face.REGULAR) -> str:
    """The text, or as much of it as is at most `width` wide, ending in '…'."""
    if text_width(text, height, face) <= width:
        return text
    for length in range(len(text) - 1, 0, -1):
        shorter = text[:length].rstrip() + "…"
        if text_width(shorter, height, face) <= width:
            return shorter
    return "…"


def wrapped(text: str, width: float, height: float, face: Face = Face.REGULAR) -> list[str]:
    """The text broken between words into lines at most `width` wide; a longer word stands alone."""
    lines: list[str] = []
    for paragraph in text.splitlines() or [""]:
        current = ""
        for word in paragraph.split():
            longer = f"{current} {word}" if current else word
            if current and text_width(longer, height, face) > width:
                lines.append(current)
                current = word
            else:
                current = longer
        lines.append(current)
    return lines
