"""Turn things: each about its own origin, or all of them about one point. Labels go along and stay upright."""

from collections.abc import Collection
from dataclasses import replace
from typing import Final

from panelcad.editing.extents import bodies, middle
from panelcad.editing.labels_along import with_labels
from panelcad.editing.lookup import bundles, together
from panelcad.editing.move import standing
from panelcad.editing.parts import all_things
from panelcad.editing.places import stand
from panelcad.editing.refusal import edit
from panelcad.editing.taken_along import taken_along
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point
from panelcad.model.markup import DrawingNote
from panelcad.model.plate import AttachScrew
from panelcad.model.project import Option, Project

STEPS: Final = (1.0, 5.0, 15.0, 45.0, 90.0)
"""Degrees that a turn in steps may use."""


@edit
def rotate_by(project: Project, option_id: str, ids: Collection[str], degrees: float) -> Project:
    """Each thing turned about its own origin, counter-clockwise; what belongs to it turns about the same point."""
    option = project.option(option_id)
    here = standing(project, option, together(option, ids))
    where: dict[str, Placement] = {}
    for bundle in bundles(option, ids):
        pivot = Point(here[bundle.anchor].x, here[bundle.anchor].y)
        where |= {one: turned(here[one], pivot, degrees) for one in bundle.ids}
    return stand(project, option.id, where)


def rotate_to(project: Project, option_id: str, part_id: str, degrees: float) -> Project:
    """One thing turned so that its own x axis points `degrees` counter-clockwise of the plate's."""
    here = standing(project, project.option(option_id), (part_id,))[part_id]
    return rotate_by(project, option_id, (part_id,), degrees - here.rotation)


@edit
def rotate_about(project: Project, option_id: str, ids: Collection[str], pivot: Point, degrees: float) -> Project:
    """Everything named turned as one about a point of the plate, counter-clockwise."""
    option = project.option(option_id)
    here = standing(project, option, together(option, ids))
    return stand(project, option.id, {one: turned(place, pivot, degrees) for one, place in here.items()})


def turn_as_one(project: Project, option_id: str, ids: Collection[str], degrees: float) -> Project:
    """Everything named, and what is taken along with it, turned as one about its common centre, counter-clockwise."""
    option = project.option(option_id)
    whole = taken_along(project, option, ids)
    turned_round = rotate_about(project, option_id, whole, middle(project, option, whole), degrees)
    return with_labels(project, turned_round, option_id, whole)


def turn_each(project: Project, option_id: str, ids: Collection[str], degrees: float) -> Project:
    """Each thing turned about its own origin, each group and stack as one about its centre, counter-clockwise."""
    option, made = project.option(option_id), project
    whole = taken_along(project, option, ids)
    for body in bodies(project, option, whole):
        made = rotate_about(made, option_id, body.ids, body.origin, degrees)
    return with_labels(project, made, option_id, whole)


def can_turn(project: Project, option: Option, ids: Collection[str]) -> bool:
    """Whether a turn would change anything: a screw and a note alone look the same at any angle."""
    wanted = together(option, ids)
    things = [thing for thing in all_things(project, option) if thing.id in wanted]
    return len(things) > 1 or any(not isinstance(thing, AttachScrew | DrawingNote) for thing in things)


def turned(place: Placement, pivot: Point, degrees: float) -> Placement:
    """A place turned about a point; quarter turns are exact."""
    spot = Placement(rotation=degrees).point(Point(place.x - pivot.x, place.y - pivot.y))
    return replace(place, x=pivot.x + spot.x, y=pivot.y + spot.y, rotation=(place.rotation + degrees) % 360.0)
