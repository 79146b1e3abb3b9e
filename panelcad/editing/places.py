"""Everything that has a place on a plate: read where it stands, and stand it elsewhere."""

from collections.abc import Mapping
from functools import singledispatch

from panelcad.editing.fixed import refuse_fixed
from panelcad.editing.parts import Thing, all_things
from panelcad.editing.seats import seats, with_moved
from panelcad.geometry.placement import Placement
from panelcad.model.markup import DrawingNote
from panelcad.model.plate import AttachScrew, Cut, Engraving
from panelcad.model.project import Item, Option, Project
from panelcad.model.surroundings import DepthLimit, KeepOut, MovingPart, Obstacle


def places(project: Project, option: Option) -> dict[str, Placement]:
    """Where everything stands, by id, in its plate's axes; items that are not placed yet are left out."""
    return {thing.id: place_of(thing) for thing in all_things(project, option) if _is_placed(thing)}


def places_among(project: Project, option: Option, ids: frozenset[str]) -> dict[str, Placement]:
    """Where these of all things stand; what has no place is left out."""
    known = seats(project, option)
    things = (known[one].thing for one in sorted(ids & known.keys()))
    return {thing.id: place_of(thing) for thing in things if _is_placed(thing)}


def stand(project: Project, option_id: str, where: Mapping[str, Placement]) -> Project:
    """The project with these things standing there. Raises `EditRefused` where one of them cannot move."""
    option = project.option(option_id)
    refuse_fixed(project, option, where)
    known = seats(project, option)
    moved = {one: stood(known[one].thing, place) for one, place in where.items() if one in known}
    return with_moved(project, option_id, moved)


@singledispatch
def place_of(thing: object) -> Placement:
    """Where a thing stands on its plate."""
    raise TypeError(f"{type(thing).__name__} has no place")


@place_of.register
def _(thing: Item | DepthLimit | Engraving) -> Placement:
    return Placement(thing.x, thing.y, thing.rotation)


@place_of.register
def _(thing: Cut) -> Placement:
    return Placement(thing.x, thing.y, thing.rotation, thing.mirrored)


@place_of.register
def _(thing: AttachScrew | DrawingNote) -> Placement:
    return Placement(thing.x, thing.y)


@place_of.register
def _(thing: Obstacle | MovingPart | KeepOut) -> Placement:
    return Placement(thing.volume.x, thing.volume.y, thing.volume.rotation)


@singledispatch
def stood(thing: object, place: Placement) -> Thing:
    """The same thing standing at another place."""
    raise TypeError(f"{type(thing).__name__} cannot stand at {place}")


@stood.register
def _(thing: Item | DepthLimit | Engraving, place: Placement) -> Thing:
    return thing.revised(x=place.x, y=place.y, rotation=place.rotation)


@stood.register
def _(thing: Cut, place: Placement) -> Thing:
    return thing.revised(x=place.x, y=place.y, rotation=place.rotation, mirrored=place.mirrored)


@stood.register
def _(thing: AttachScrew | DrawingNote, place: Placement) -> Thing:
    return thing.revised(x=place.x, y=place.y)


@stood.register
def _(thing: Obstacle | MovingPart | KeepOut, place: Placement) -> Thing:
    return thing.revised(volume=thing.volume.revised(x=place.x, y=place.y, rotation=place.rotation))


def _is_placed(thing: Thing) -> bool:
    return not isinstance(thing, Item) or thing.plate is not None
