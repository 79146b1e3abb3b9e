"""What stands around the panel made larger or smaller by one of its corners or sides; the opposite one stays."""

from typing import Final, NamedTuple

from panelcad.editing.around import revise_standing
from panelcad.editing.depths import shape_of
from panelcad.editing.fixed import refuse_locked
from panelcad.editing.parts import Standing, standing_around
from panelcad.editing.places import place_of
from panelcad.editing.refusal import edit
from panelcad.errors import EditRefused, UnknownName
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point
from panelcad.model.project import Project
from panelcad.model.shape import Circle, Rectangle, Shape, Slot


class Pull(NamedTuple):
    """Which side is pulled, in the thing's own axes: -1 left, 1 right, 0 neither; -1 lower, 1 upper, 0 neither."""

    across: int
    up: int


SIDES: Final = (Pull(1, 0), Pull(0, 1), Pull(-1, 0), Pull(0, -1))
CORNERS: Final = (Pull(1, 1), Pull(-1, 1), Pull(-1, -1), Pull(1, -1))


def pulls(thing: Standing) -> tuple[Pull, ...]:
    """By what it can be pulled; a free contour by nothing."""
    shape = shape_of(thing)
    if isinstance(shape, Rectangle | Slot):
        return (*SIDES, *CORNERS)
    return SIDES if isinstance(shape, Circle) else ()


def pulled_place(thing: Standing, pull: Pull) -> Point:
    """Where that side's middle, or that corner, is on the plate."""
    width, height = _size(shape_of(thing))
    return place_of(thing).point(Point(pull.across * width / 2, pull.up * height / 2))


@edit
def stretch(project: Project, option_id: str, thing_id: str, pull: Pull, to: Point) -> Project:
    """The project with that side or corner of a thing brought to a place of its plate; a circle grows about its middle.

    Raises `EditRefused` where nothing would be left of it or it is locked, and `UnknownName`.
    """
    refuse_locked(project.option(option_id), (thing_id,))
    thing = _thing(project, thing_id)
    place, shape = place_of(thing), shape_of(thing)
    local = _inside(place, to)
    if isinstance(shape, Circle):
        radius = local.x * pull.across + local.y * pull.up
        _refuse_nothing(radius)
        return revise_standing(project, thing_id, shape=shape.revised(diameter=2 * radius))
    width, height = _size(shape)
    wide = width / 2 + pull.across * local.x if pull.across else width
    high = height / 2 + pull.up * local.y if pull.up else height
    _refuse_nothing(min(wide, high))
    middle = place.point(Point(pull.across * (wide - width) / 2, pull.up * (high - height) / 2))
    return revise_standing(project, thing_id, shape=_sized(shape, wide, high), x=middle.x, y=middle.y)


def _thing(project: Project, thing_id: str) -> Standing:
    known = {thing.id: thing for thing in standing_around(project.surroundings)}
    if thing_id not in known:
        raise UnknownName("thing around the panel", thing_id, tuple(known))
    return known[thing_id]


def _size(shape: Shape) -> tuple[float, float]:
    x1, y1, x2, y2 = shape.contour().bounds
    return x2 - x1, y2 - y1


def _sized(shape: Shape, width: float, height: float) -> Shape:
    if isinstance(shape, Rectangle):
        radius = min(shape.corner_radius, width / 2, height / 2)
        return shape.revised(width=width, height=height, corner_radius=radius)
    if isinstance(shape, Slot):
        return shape.revised(length=width, width=height)
    raise EditRefused("A free contour cannot be stretched; give it another shape first.")


def _inside(place: Placement, at: Point) -> Point:
    """A place of the plate in the thing's own axes."""
    return Placement(rotation=-place.rotation % 360.0).point(Point(at.x - place.x, at.y - place.y))


def _refuse_nothing(length: float) -> None:
    if length <= 0:
        raise EditRefused("A size larger than 0 is expected.")
