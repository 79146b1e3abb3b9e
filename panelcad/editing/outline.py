"""Draw an outline: corners, straight and bowed edges, cut-off corners; `panelcad.editing.sharp_outline` rounds them.

An edge bears the number of the corner it leaves; corners are numbered counter-clockwise from 0. Every change gives an
outline that does not cross itself, or raises `EditRefused`.
"""

import math
from typing import Final

from panelcad.editing.fixed import refuse_kept
from panelcad.editing.found_outline import with_outline
from panelcad.editing.refusal import edit
from panelcad.errors import EditRefused
from panelcad.geometry.contour import Chain, Contour, Rounded, Vertex
from panelcad.geometry.corner import bulge_through, cut_off, trimmed
from panelcad.geometry.point import Point, distance
from panelcad.geometry.segment import Arc, Segment
from panelcad.model.project import Project
from panelcad.model.shape import Corner, Outline, Shape

_FEWEST: Final = 2
_SAME: Final = 1e-6
"""mm: stored lengths are whole nanometres."""


def outline_of(shape: Shape) -> Outline:
    """Any shape as an outline, corner by corner, counter-clockwise."""
    return as_outline(shape.contour())


def as_outline(contour: Contour) -> Outline:
    chain = contour.chain if isinstance(contour, Rounded) else contour
    return Outline(corners=tuple(Corner(x=v.x, y=v.y, bulge=v.bulge) for v in chain.vertices))


@edit
def set_outline(project: Project, option_id: str, plate_id: str, shape: Shape) -> Project:
    """The plate with another outline, that of the panel as found while nothing else was decided.

    Raises `EditRefused` for a kept plate or an outline that crosses itself.
    """
    option = project.option(option_id)
    plate = option.plate(plate_id)
    refuse_kept(option, plate)
    refuse_crossing(shape)
    return with_outline(project, option, plate_id, shape)


@edit
def move_corner(outline: Outline, corner: int, x: float, y: float) -> Outline:
    """The corner at another place; the bows of its edges keep their proportion."""
    return _sound(_put(outline, corner, outline.corners[corner].revised(x=x, y=y)))


@edit
def add_corner(outline: Outline, edge: int, at: Point) -> Outline:
    """A corner more where the edge passes nearest to a point; the outline's course stays."""
    segment = edges(outline)[edge]
    spot = segment.nearest(at)
    first = outline.corners[edge].revised(bulge=trimmed(segment, segment.start, spot))
    second = Corner(x=spot.x, y=spot.y, bulge=trimmed(segment, spot, segment.end))
    corners = outline.corners
    return _sound(Outline(corners=(*corners[:edge], first, second, *corners[edge + 1 :])))


@edit
def remove_corner(outline: Outline, corner: int) -> Outline:
    """The outline without a corner: a straight edge joins its neighbours."""
    count = len(outline.corners)
    before = (corner - 1) % count
    straight = _put(outline, before, outline.corners[before].revised(bulge=0.0)).corners
    if count <= _FEWEST:
        raise EditRefused("An outline needs at least two corners.")
    return _sound(Outline(corners=tuple(one for i, one in enumerate(straight) if i != corner)))


@edit
def bow_through(outline: Outline, edge: int, through: Point) -> Outline:
    """The edge as the arc through a point."""
    segment = edges(outline)[edge]
    bulge = bulge_through(segment.start, through, segment.end)
    return _sound(_put(outline, edge, outline.corners[edge].revised(bulge=bulge)))


@edit
def bow_by(outline: Outline, edge: int, rise: float) -> Outline:
    """The edge as an arc whose middle stands `rise` mm outside its chord, inside where negative."""
    segment = edges(outline)[edge]
    bulge = bulge_of_rise(segment.start, segment.end, -rise)
    return _sound(_put(outline, edge, outline.corners[edge].revised(bulge=bulge)))


@edit
def bow_by_radius(outline: Outline, edge: int, radius: float) -> Outline:
    """The edge as an arc of this radius in mm, half a turn at most, on the side it is bowed to; outside if straight."""
    segment = edges(outline)[edge]
    is_inward = isinstance(segment, Arc) and segment.sweep < 0
    bulge = bulge_of_radius(segment.start, segment.end, abs(radius) if is_inward else -abs(radius))
    return _sound(_put(outline, edge, outline.corners[edge].revised(bulge=bulge)))


@edit
def chamfer_corner(outline: Outline, corner: int, leg: float) -> Outline:
    """The corner cut off by a straight line that takes `leg` mm off both edges."""
    segments = edges(outline)
    before, after = segments[corner - 1], segments[corner]
    try:
        new = cut_off(before, after, leg)
    except ValueError as error:
        raise EditRefused(f"{str(error).capitalize()}.") from error
    first = Corner(x=new.leaves.x, y=new.leaves.y)
    second = Corner(x=new.joins.x, y=new.joins.y, bulge=trimmed(after, new.joins, after.end))
    index = (corner - 1) % len(outline.corners)
    previous = outline.corners[index].revised(bulge=trimmed(before, before.start, new.leaves))
    corners = _put(outline, index, previous).corners
    return _sound(Outline(corners=(*corners[:corner], first, second, *corners[corner + 1 :])))


def bulge_of_rise(start: Point, end: Point, rise: float) -> float:
    """Of the arc whose middle stands `rise` mm to the left of the way from start to end, to the right if negative."""
    return -2 * rise / distance(start, end)


def bulge_of_radius(start: Point, end: Point, radius: float) -> float:
    """Of the arc of this radius, half a turn at most, bowed to the left of the way, to the right if negative."""
    half = distance(start, end) / 2
    if abs(radius) < half - _SAME:
        raise EditRefused("A radius of at least half the distance between the two points is expected.")
    rise = abs(radius) - math.sqrt(max(0.0, radius**2 - half**2))
    return bulge_of_rise(start, end, math.copysign(rise, radius))


def about_its_middle(outline: Outline) -> tuple[Outline, Point]:
    """The outline moved so that the middle of its box is its origin, and where that middle was."""
    x1, y1, x2, y2 = outline.contour().bounds
    at = Point((x1 + x2) / 2, (y1 + y2) / 2)
    moved = tuple(corner.revised(x=corner.x - at.x, y=corner.y - at.y) for corner in outline.corners)
    return Outline(corners=moved), at


def edges(outline: Outline) -> tuple[Segment, ...]:
    """The outline's lines and arcs in the order of its corners."""
    return Chain(tuple(Vertex(c.x, c.y, c.bulge) for c in outline.corners)).segments


def refuse_crossing(shape: Shape) -> None:
    """Raises `EditRefused` where the contour crosses or touches itself."""
    if crosses_itself(shape):
        raise EditRefused("The outline would cross itself.")


def crosses_itself(shape: Shape) -> bool:
    """Whether the contour crosses or touches itself."""
    from panelcad.geometry.polygon import polygon  # noqa: PLC0415 - shapely waits until an outline changes

    return not polygon(shape.contour()).is_valid


def _put(outline: Outline, index: int, corner: Corner) -> Outline:
    return Outline(corners=tuple(corner if i == index else old for i, old in enumerate(outline.corners)))


def _sound(outline: Outline) -> Outline:
    refuse_crossing(outline)
    return outline
