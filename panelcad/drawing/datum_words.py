"""Where a plate's axes begin, in the same words on drawing and cutting file, and how to find them on the part."""

from typing import Final

from panelcad.model.layout import PlateLayout
from panelcad.model.plate import Frame, Plate
from panelcad.model.project import Project
from panelcad.units import LengthUnit, format_number

_SAME: Final = 1e-6
"""mm: stored lengths end at the nanometre."""


def datum_of(project: Project, plate: Plate) -> str:
    """The aircraft's datum, or the own origin of a plate that stands elsewhere in it, in the project's unit."""
    aircraft, frame = project.aircraft.datum, plate.frame
    if frame == Frame():
        return aircraft
    places = zip("XYZ", (frame.x, frame.y, frame.z), strict=True)
    where = ", ".join(f"{axis} {format_number(value, project.unit)}" for axis, value in places)
    return f"the plate's own origin, which is at {where} from the aircraft's datum ({aircraft})"


def datum_on_part(plate: PlateLayout, unit: LengthUnit) -> str:
    """How an inspector finds both axes from the edges of the part: 'On the part: X 0 is half the width, 20.000 ...'."""
    x1, y1, x2, y2 = plate.outline.bounds
    across = _axis("X", (x1, x2), ("left", "right"), unit, half="half the width")
    upward = _axis("Y", (y1, y2), ("lower", "upper"), unit, half="half the height")
    return f"On the part: {across}; {upward}."


def _axis(axis: str, edges: tuple[float, float], names: tuple[str, str], unit: LengthUnit, half: str) -> str:
    """Where an axis' zero is between the two edges of the box, or beside them."""
    for edge, name in zip(edges, names, strict=True):
        if abs(edge) < _SAME:
            return f"{axis} 0 is the {name} edge"
    low, high = edges
    away = f"{_from(low, names[0], unit)} and {_from(high, names[1], unit)}"
    if abs(low + high) < _SAME:
        return f"{axis} 0 is {half}, {format_number(high, unit)} from the {names[0]} and the {names[1]} edge"
    return f"{axis} 0 is {away}" if low < 0.0 < high else f"{axis} 0 is off the sheet, {away}"


def _from(edge: float, name: str, unit: LengthUnit) -> str:
    return f"{format_number(abs(edge), unit)} from the {name} edge"
