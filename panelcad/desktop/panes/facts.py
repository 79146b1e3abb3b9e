"""What is known of a cutout, each figure with where it comes from."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import singledispatch

from panelcad.model.cutout import Cutout
from panelcad.model.hole import HoleGroup
from panelcad.model.layout import hole_spots
from panelcad.model.shape import Circle, Rectangle, Slot
from panelcad.units import LengthUnit, format_length, format_number


@dataclass(frozen=True)
class Fact:
    what: str
    figure: str
    source: str


def facts(cutout: Cutout, unit: LengthUnit) -> tuple[Fact, ...]:
    """Openings, holes, bezel, bodies, rack and grip, in this order."""
    return tuple(_facts(cutout, unit))


def _facts(cutout: Cutout, unit: LengthUnit) -> Iterator[Fact]:
    for opening in cutout.openings:
        yield Fact(opening.purpose.capitalize(), size(opening.shape, unit), str(opening.source))
    for group in cutout.holes:
        yield Fact(group.purpose.capitalize(), _holes(group, unit), str(group.source))
    if cutout.bezel is not None:
        yield Fact("Bezel", size(cutout.bezel.shape, unit), str(cutout.bezel.source))
    for body in cutout.bodies:
        reach = f"{size(body.shape, unit)}, {format_length(body.near, unit)} to {format_length(body.far, unit)}"
        yield Fact(body.kind.value.capitalize(), reach, str(body.source))
    if cutout.rack is not None:
        rack = f"{format_length(cutout.rack.height, unit)} high, rails {format_length(cutout.rack.rail_distance, unit)}"
        yield Fact("Rack unit", rack, str(cutout.rack.source))
    if cutout.grip is not None:
        grip = f"{format_number(cutout.grip.least, unit)} to {format_length(cutout.grip.most, unit)}"
        yield Fact("Grips a sheet of", grip, str(cutout.grip.source))


def _holes(group: HoleGroup, unit: LengthUnit) -> str:
    return f"{len(hole_spots(group))} × Ø {format_length(group.form.diameter, unit)}, {group.form.kind.value}"


@singledispatch
def size(shape: object, unit: LengthUnit) -> str:
    """The size of a shape as people say it: 'Ø 3.125 in', '6.250 × 1.500 in'."""
    x1, y1, x2, y2 = shape.contour().bounds  # type: ignore[attr-defined]
    return f"{format_number(x2 - x1, unit)} × {format_length(y2 - y1, unit)}"


@size.register
def _(shape: Circle, unit: LengthUnit) -> str:
    return f"Ø {format_length(shape.diameter, unit)}"


@size.register
def _(shape: Rectangle, unit: LengthUnit) -> str:
    rounded = f", R {format_number(shape.corner_radius, unit)}" if shape.corner_radius else ""
    return f"{format_number(shape.width, unit)} × {format_length(shape.height, unit)}{rounded}"


@size.register
def _(shape: Slot, unit: LengthUnit) -> str:
    return f"{format_number(shape.length, unit)} × {format_length(shape.width, unit)} slot"
