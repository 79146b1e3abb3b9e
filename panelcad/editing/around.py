"""What stands around the panel: obstacles, depth limits, moving parts, keep-outs in front, the pilot's eye."""

from typing import Any, Final

from panelcad.editing.ids import fresh_id, ids_in
from panelcad.editing.made import Made
from panelcad.editing.outline import refuse_crossing
from panelcad.editing.parts import Standing
from panelcad.editing.refusal import edit
from panelcad.errors import UnknownName
from panelcad.model.project import Project
from panelcad.model.surroundings import DepthLimit, Eye, KeepOut, MovingPart, Obstacle

_COLLECTION: Final[dict[type, str]] = {
    Obstacle: "obstacles",
    DepthLimit: "depth_limits",
    MovingPart: "moving_parts",
    KeepOut: "keep_outs",
}


@edit
def add_standing(project: Project, thing: Standing) -> Made:
    """The project with a thing more around the panel; its id is taken where no option uses it.

    Raises `UnknownName` where the plate it names is in no option.
    """
    _refuse_unknown_plate(project, thing.plate)
    refuse_crossing(thing.shape if isinstance(thing, DepthLimit) else thing.volume.shape)
    taken = frozenset().union(*(ids_in(project, option) for option in project.all_options))
    made = thing.revised(id=fresh_id(thing.id, taken))
    kind, around = _COLLECTION[type(thing)], project.surroundings
    around = around.revised(**{kind: (*getattr(around, kind), made)})
    return Made(project.revised(surroundings=around), (made.id,))


@edit
def revise_standing(project: Project, thing_id: str, **changes: Any) -> Project:
    """The thing with some fields changed; fields of its volume too: near, far, shape, x, y, rotation.

    Raises `UnknownName`.
    """
    around = project.surroundings
    for kind in _COLLECTION.values():
        things: tuple[Standing, ...] = getattr(around, kind)
        if any(thing.id == thing_id for thing in things):
            revised = tuple(_revised(thing, changes) if thing.id == thing_id else thing for thing in things)
            return project.revised(surroundings=around.revised(**{kind: revised}))
    known = tuple(thing.id for kind in _COLLECTION.values() for thing in getattr(around, kind))
    raise UnknownName("thing around the panel", thing_id, known)


@edit
def set_eye(project: Project, eye: Eye | None) -> Project:
    """The project with the pilot's eye there, or not given."""
    return project.revised(surroundings=project.surroundings.revised(eye=eye))


def _revised(thing: Standing, changes: dict[str, Any]) -> Standing:
    if isinstance(thing, DepthLimit):
        return thing.revised(**changes)
    inner = {key: value for key, value in changes.items() if key in type(thing.volume).model_fields}
    outer = {key: value for key, value in changes.items() if key not in inner}
    return thing.revised(**outer, volume=thing.volume.revised(**inner)) if inner else thing.revised(**outer)


def _refuse_unknown_plate(project: Project, plate_id: str) -> None:
    known = {plate.id for option in project.all_options for plate in option.plates}
    if plate_id not in known:
        raise UnknownName("plate", plate_id, tuple(sorted(known)))
