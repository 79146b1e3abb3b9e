"""Where each thing with a place is kept, so that an edit of a few goes straight to them."""

from collections import defaultdict
from collections.abc import Mapping
from operator import is_not
from typing import Any, NamedTuple

from panelcad.editing.parts import AROUND, OPTION_PARTS, PLATE_PARTS, Holder, Thing
from panelcad.model.base import Record
from panelcad.model.kept import kept_lately
from panelcad.model.plate import Plate
from panelcad.model.project import Option, Project

Moved = defaultdict[tuple[str, str], dict[int, Thing]]
"""By plate (none for items, notes and what stands around) and collection: what stands at which place of it now."""


class Seat(NamedTuple):
    """A thing, the plate that holds it (None for an item, a note and what stands around), and its place there."""

    thing: Thing
    plate: Plate | None
    collection: str
    number: int

    @property
    def holder(self) -> tuple[str, str]:
        return self.plate.id if self.plate else "", self.collection


def seats(project: Project, option: Option) -> Mapping[str, Seat]:
    """The seat of every item, part of a plate, note and thing around the panel, by id."""
    return kept_lately("seats", (option, project.surroundings), lambda: _seats(project, option))


def _seats(project: Project, option: Option) -> dict[str, Seat]:
    found = _of(option, None, OPTION_PARTS)
    for plate in option.plates:
        found |= _of(plate, plate, PLATE_PARTS)
    return found | _of(project.surroundings, None, AROUND)


def _of(holder: Record, plate: Plate | None, collections: tuple[str, ...]) -> dict[str, Seat]:
    return {
        thing.id: Seat(thing, plate, collection, number)
        for collection in collections
        for number, thing in enumerate(getattr(holder, collection))
    }


def with_moved(project: Project, option_id: str, moved: Mapping[str, Thing]) -> Project:
    """The project with these in place of the things of the same ids, from which they differ by their places alone."""
    option = project.option(option_id)
    known = seats(project, option)
    new: Moved = defaultdict(dict)
    for one, thing in moved.items():
        new[known[one].holder][known[one].number] = thing
    plates = tuple(_after(plate, plate.id, PLATE_PARTS, new) for plate in option.plates)
    after = _after(option, "", OPTION_PARTS, new)
    if any(map(is_not, plates, option.plates)):
        after = after.standing_elsewhere(plates=plates)
    if after is not option:
        project = project.with_moved(after)
    around = _after(project.surroundings, "", AROUND, new)
    return project if around is project.surroundings else project.standing_elsewhere(surroundings=around)


def _after(holder: Holder, plate_id: str, collections: tuple[str, ...], new: Moved) -> Holder:
    """The record with what moved in place of what stood there; the very same one where nothing of it moved."""
    changes = {name: new[plate_id, name] for name in collections if (plate_id, name) in new}
    after = {name: _with(getattr(holder, name), moved) for name, moved in changes.items()}
    return holder.standing_elsewhere(**after) if after else holder


def _with(things: tuple[Any, ...], moved: dict[int, Thing]) -> tuple[Any, ...]:
    row = list(things)
    for number, thing in moved.items():
        row[number] = thing
    return tuple(row)
