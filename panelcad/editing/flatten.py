"""A bent plate's flat pattern: straight flanges laid out beside the edge they stand on, with their bend lines."""

from typing import Final

from panelcad.editing.fixed import refuse_kept
from panelcad.editing.refusal import edit
from panelcad.errors import EditRefused
from panelcad.geometry.contour import Chain, Contour, Rounded
from panelcad.geometry.point import Point, distance
from panelcad.geometry.segment import Line, Segment
from panelcad.model.bending import allowance, deduction, setback
from panelcad.model.plate import Bend, Plate
from panelcad.model.project import Project
from panelcad.model.shape import Corner, Outline

_ON_EDGE: Final = 0.01
"""How far in mm the ends of a bend line may lie off the ends of the edge it bends."""
_SHARPEST: Final = 165.0
"""Degrees; the mould line of a sharper bend runs away to infinity."""


@edit
def flatten(project: Project, option_id: str, plate_id: str) -> Project:
    """The project with a plate's outline entered as its flat pattern, by the profile's neutral axis.

    Only straight flanges along a whole straight edge are laid out. Raises `EditRefused`, `UnknownName`.
    """
    option = project.option(option_id)
    plate = option.plate(plate_id)
    refuse_kept(option, plate)
    flat = flat_pattern(plate, project.profile.bend_neutral)
    return project.with_option(option.revised(plates=tuple(flat if p is plate else p for p in option.plates)))


def flat_pattern(plate: Plate, neutral: float) -> Plate:
    """The plate laid out flat: its outline with the flanges, each bend line in the middle of its bend."""
    if plate.is_flat_pattern:
        raise EditRefused(f"Plate '{plate.name}' is entered as a flat pattern already.")
    if not plate.bends:
        raise EditRefused(f"Plate '{plate.name}' has no bends to lay out.")
    chain = _chain(plate.outline.contour())
    flanges = {_edge_of(bend, chain, plate): bend for bend in plate.bends}
    corners: list[Corner] = []
    for i, vertex in enumerate(chain.vertices):
        corners.append(Corner(x=vertex.x, y=vertex.y, bulge=vertex.bulge))
        if i in flanges:
            corners.extend(_flange(chain.segments[i], flanges[i], plate, neutral))
    bends = tuple(_flat_bend(chain.segments[edge], bend, plate, neutral) for edge, bend in flanges.items())
    return plate.revised(outline=Outline(corners=tuple(corners)), bends=bends, is_flat_pattern=True)


def _chain(contour: Contour) -> Chain:
    return contour.chain if isinstance(contour, Rounded) else contour


def _edge_of(bend: Bend, chain: Chain, plate: Plate) -> int:
    """The number of the straight edge that the bend stands on."""
    ends = Point(bend.x1, bend.y1), Point(bend.x2, bend.y2)
    for number, segment in enumerate(chain.segments):
        if isinstance(segment, Line) and _joins(segment, *ends):
            return number
    raise EditRefused(
        f"Plate '{plate.name}' is not laid out flat: a bend line does not run along a whole straight edge."
    )


def _joins(edge: Line, one: Point, other: Point) -> bool:
    ways = ((one, other), (other, one))
    return any(distance(edge.start, a) <= _ON_EDGE and distance(edge.end, b) <= _ON_EDGE for a, b in ways)


def _flange(edge: Segment, bend: Bend, plate: Plate, neutral: float) -> tuple[Corner, Corner]:
    """The two outer corners of a flange laid out flat beside its edge."""
    if bend.angle > _SHARPEST:
        raise EditRefused(
            f"Plate '{plate.name}' is not laid out flat: a bend of {bend.angle:g}° is no straight flange."
        )
    out = bend.flange - deduction(bend, plate.thickness, neutral)
    if out <= 0.0 or bend.flange < setback(bend, plate.thickness):
        raise EditRefused(
            f"Plate '{plate.name}' is not laid out flat: a flange is not entered, or is lower than its bend."
        )
    start, end = (_beside(edge, corner, out) for corner in (edge.start, edge.end))
    return Corner(x=start.x, y=start.y), Corner(x=end.x, y=end.y)


def _flat_bend(edge: Segment, bend: Bend, plate: Plate, neutral: float) -> Bend:
    """The bend line in the middle of the flat strip that goes into the bend."""
    inward = setback(bend, plate.thickness) - allowance(bend, plate.thickness, neutral) / 2
    start, end = (_beside(edge, corner, -inward) for corner in (edge.start, edge.end))
    return bend.revised(x1=start.x, y1=start.y, x2=end.x, y2=end.y, flange=0.0)


def _beside(edge: Segment, corner: Point, outward: float) -> Point:
    """A point `outward` mm to the right of a counter-clockwise outline's edge."""
    dx, dy = edge.end.x - edge.start.x, edge.end.y - edge.start.y
    span = distance(edge.start, edge.end)
    return corner.moved(dy / span * outward, -dx / span * outward)
