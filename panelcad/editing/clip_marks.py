"""Which dimensions and notes are copied along with parts, and what they hold on to where they are pasted."""

from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass
from typing import Any, Final

from panelcad.editing.ids import fresh_name
from panelcad.editing.lookup import together
from panelcad.editing.parts import standing_around
from panelcad.geometry.point import Point
from panelcad.model.markup import Along, Dimension, DrawingNote, Group, Hook
from panelcad.model.plate import Engraving
from panelcad.model.project import Option, Project

_SIDEWAYS: Final = {Along.ACROSS: (0.0, 1.0), Along.UP: (1.0, 0.0), Along.STRAIGHT: (0.0, 0.0)}
"""Which way the line of a dimension that begins at the plate itself goes along, so that it lies on no other."""


@dataclass(frozen=True)
class Shift:
    """What each id becomes where it is pasted, and how far that is from where it was, in mm."""

    ids: Mapping[str, str]
    by: tuple[float, float]

    def dimension(self, dimension: Dimension, plate_id: str) -> Dimension:
        """The copy, holding on to the copies, and to this plate where it was measured from the other."""
        plates = {dimension.plate: plate_id}
        start, end = self._hook(dimension.start, plates), self._hook(dimension.end, plates)
        pull = _SIDEWAYS[dimension.along] if dimension.start.part in plates else (0.0, 0.0)
        offset = dimension.offset + pull[0] * self.by[0] + pull[1] * self.by[1]
        return dimension.revised(id=self.ids[dimension.id], plate=plate_id, start=start, end=end, offset=offset)

    def note(self, note: DrawingNote, plate_id: str) -> DrawingNote:
        """The copy, its leader pointing at the copy."""
        to = self._hook(note.to, {note.plate: plate_id}) if note.to is not None else None
        return note.revised(id=self.ids[note.id], plate=plate_id, to=to, x=note.x + self.by[0], y=note.y + self.by[1])

    def group(self, group: Group, name: str) -> Group:
        """The copies as a group."""
        return Group(id=self.ids[group.id], name=name, members=tuple(self.ids[one] for one in group.members))

    def _hook(self, hook: Hook, plates: Mapping[str, str]) -> Hook:
        if hook.part is not None:
            return hook.revised(part=plates.get(hook.part) or self.ids[hook.part])
        return hook.revised(x=hook.x + self.by[0], y=hook.y + self.by[1])


def dimensions_along(option: Option, chosen: Collection[str], copied: Collection[str]) -> tuple[Dimension, ...]:
    """The dimensions that go along when these parts are copied: those that measure nothing else.

    One that measures from a mere place of the plate, or from its edge, goes along where it was chosen itself.
    """
    return tuple(one for one in option.dimensions if _goes_along(one, chosen, copied))


def notes_along(option: Option, chosen: Collection[str], copied: Collection[str]) -> tuple[DrawingNote, ...]:
    """The chosen notes; the leader to a part that stays behind is taken off."""
    notes = (note for note in option.drawing_notes if note.id in chosen)
    return tuple(note if set(note.parts) <= {*copied, note.plate} else note.revised(to=None) for note in notes)


def groups_along(option: Option, copied: Collection[str]) -> tuple[Group, ...]:
    """The groups of which all is copied."""
    return tuple(one for one in option.groups if set(one.members) <= set(copied))


def attached(project: Project, option: Option, ids: Collection[str]) -> tuple[str, ...]:
    """The labels of the controls among these things, and the notes that point at one of them, by their ids."""
    parts = together(option, ids)
    from panelcad.editing.label_row import labels  # noqa: PLC0415 - shapely waits until it is asked

    mine = [label.words.id for one, label in labels(project, option).items() if one in parts]
    notes = [note.id for note in option.drawing_notes if not parts.isdisjoint(note.parts)]
    return tuple(one for one in (*mine, *notes) if one not in ids)


def measured_to_others(option: Option, parts: Collection[str], dimensions: Collection[Dimension]) -> tuple[str, ...]:
    """The ids of the dimensions that hold on to one of these parts and are not among those that go along."""
    along = {dimension.id for dimension in dimensions}
    return tuple(one.id for one in option.dimensions if one.id not in along and not set(one.parts).isdisjoint(parts))


def staying_behind(
    project: Project, option: Option, chosen: Collection[str], dimensions: Collection[Dimension]
) -> tuple[str, ...]:
    """Those of the chosen that are not copied: dimensions of what is not copied, and what stands around the panel."""
    along = {dimension.id for dimension in dimensions}
    measures = (one.id for one in option.dimensions if one.id in chosen and one.id not in along)
    around = (thing.id for thing in standing_around(project.surroundings) if thing.id in chosen)
    return (*measures, *around)


@dataclass(frozen=True)
class Marks:
    """What is drawn on what is copied, and how it is grouped."""

    dimensions: tuple[Dimension, ...]
    drawing_notes: tuple[DrawingNote, ...]
    groups: tuple[Group, ...]

    def beside(self, option: Option, plate_id: str, shift: Shift) -> dict[str, Any]:
        """The option's marks with the copies of these beside them."""
        taken = {group.name for group in option.groups}
        groups: list[Group] = []
        for one in self.groups:
            groups.append(shift.group(one, fresh_name(one.name, taken)))
            taken.add(groups[-1].name)
        return {
            "dimensions": (*option.dimensions, *(shift.dimension(one, plate_id) for one in self.dimensions)),
            "drawing_notes": (*option.drawing_notes, *(shift.note(one, plate_id) for one in self.drawing_notes)),
            "groups": (*option.groups, *groups),
        }


def bare_places(dimensions: Iterable[Dimension]) -> tuple[Point, ...]:
    """The mere places of a plate that these dimensions measure from or to."""
    hooks = (hook for dimension in dimensions for hook in (dimension.start, dimension.end))
    return tuple(Point(hook.x, hook.y) for hook in hooks if hook.part is None)


def words_and_places(option: Option, plate_id: str) -> tuple[Point, ...]:
    """Where the lettering and the notes of a plate stand, and the mere places that are measured on it."""
    notes = (note for note in option.drawing_notes if note.plate == plate_id)
    measured = (dimension for dimension in option.dimensions if dimension.plate == plate_id)
    words: tuple[Engraving | DrawingNote, ...] = (*option.plate(plate_id).engravings, *notes)
    return (*(Point(one.x, one.y) for one in words), *bare_places(measured))


def _goes_along(dimension: Dimension, chosen: Collection[str], copied: Collection[str]) -> bool:
    measured = (dimension.start.part, dimension.end.part)
    if dimension.id in chosen:
        return all(part is None or part == dimension.plate or part in copied for part in measured)
    return all(part is not None and part in copied for part in measured)
