"""How a file, or its lettering, lies as a whole, in words."""

from collections.abc import Iterator
from typing import Final

from panelcad.geometry.point import Point
from panelcad.outputs.verify_lie import Lie
from panelcad.units import MM_PER_INCH, LengthUnit, decimals, format_number

_TURNS: Final = {
    90.0: "turned by 90 degrees counter-clockwise",
    180.0: "turned by 180 degrees",
    270.0: "turned by 90 degrees clockwise",
}
_SCALES: Final = {
    MM_PER_INCH: "25.4 (millimetres read as inches?)",
    1 / MM_PER_INCH: "1/25.4 (inches read as millimetres?)",
    1000.0: "1000 (millimetres read as metres?)",
    1 / 1000.0: "1/1000 (metres read as millimetres?)",
}


def lie_text(lie: Lie, unit: LengthUnit) -> str:
    """Such as 'mirrored left to right, shifted by x 1.000, y 0.000 in'."""
    return ", ".join(_lie_words(lie, unit))


def _lie_words(lie: Lie, unit: LengthUnit) -> Iterator[str]:
    if lie.scale != 1.0:
        yield _scale_text(lie.was_scaled)
    if lie.mirrored:
        yield lie.mirrored
    if lie.turned:
        yield _TURNS[lie.turned]
    if lie.shift != Point(0.0, 0.0):
        x, y = (format_number(way, unit, places=decimals(unit) + 1) for way in lie.shift)
        yield f"shifted by x {x}, y {y} {unit.value}"


def _scale_text(times: float) -> str:
    named = next((words for scale, words in _SCALES.items() if abs(times / scale - 1.0) < 1e-9), None)
    return f"scaled by {named}" if named else f"scaled by {times:.6g}"
