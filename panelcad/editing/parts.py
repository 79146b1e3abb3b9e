"""The collections that parts with an id live in, so that an edit names them once."""

from collections.abc import Callable
from typing import Any, Final, TypeVar

from panelcad.model.base import Record
from panelcad.model.markup import DrawingNote
from panelcad.model.plate import AttachScrew, Cut, Engraving, Plate
from panelcad.model.project import Item, Option, Project
from panelcad.model.surroundings import DepthLimit, KeepOut, MovingPart, Obstacle, Surroundings

PlatePart = Cut | AttachScrew | Engraving
Standing = Obstacle | DepthLimit | MovingPart | KeepOut
STANDING: Final = (Obstacle, DepthLimit, MovingPart, KeepOut)
Thing = Item | PlatePart | Standing | DrawingNote
Holder = TypeVar("Holder", bound=Record)
Change = Callable[[tuple[Any, ...]], tuple[Any, ...]]

OPTION_PARTS: Final = ("items", "drawing_notes")
PLATE_PARTS: Final = ("cuts", "attach_screws", "engravings")
AROUND: Final = ("obstacles", "depth_limits", "moving_parts", "keep_outs")


def plate_parts(plate: Plate) -> tuple[PlatePart, ...]:
    return (*plate.cuts, *plate.attach_screws, *plate.engravings)


def standing_around(around: Surroundings) -> tuple[Standing, ...]:
    return (*around.obstacles, *around.depth_limits, *around.moving_parts, *around.keep_outs)


def all_things(project: Project, option: Option) -> tuple[Thing, ...]:
    """Every item, then each plate's parts, then notes, then what stands around the panel."""
    on_plates = (part for plate in option.plates for part in plate_parts(plate))
    return (*option.items, *on_plates, *option.drawing_notes, *standing_around(project.surroundings))


def with_parts(holder: Holder, collections: tuple[str, ...], change: Change) -> Holder:
    """The record with each collection changed; the very same record where `change` gave every collection back."""
    changed = _changed_parts(holder, collections, change)
    return holder.revised(**changed) if changed else holder


def with_things(project: Project, option_id: str, change: Change) -> Project:
    """The project with every collection of an option and its surroundings changed; what stays the same is shared."""
    option = project.option(option_id)
    changed = _changed_parts(option, OPTION_PARTS, change)
    plates = tuple(with_parts(plate, PLATE_PARTS, change) for plate in option.plates)
    if any(new is not old for new, old in zip(plates, option.plates, strict=True)):
        changed["plates"] = plates
    if changed:
        project = project.with_option(option.revised(**changed))
    around = with_parts(project.surroundings, AROUND, change)
    return project if around is project.surroundings else project.revised(surroundings=around)


def _changed_parts(holder: Record, collections: tuple[str, ...], change: Change) -> dict[str, tuple[Any, ...]]:
    before = {name: getattr(holder, name) for name in collections}
    after = {name: change(things) for name, things in before.items()}
    return {name: things for name, things in after.items() if things is not before[name]}
