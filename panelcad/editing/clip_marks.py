"""Which dimensions and notes are copied along with parts, and what they hold on to where they are pasted."""

from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass
from typing import Any

from panelcad.editing.parts import standing_around
from panelcad.geometry.point import Point
from panelcad.model.markup import Dimension, DrawingNote, Hook
from panelcad.model.plate import Engraving
from panelcad.model.project import Option, Project


@dataclass(frozen=True)
class Shift:
    """What each id becomes where it is pasted, and how far that is from where it was, in mm."""

    ids: Mapping[str, str]
    by: tuple[float, float]

    def dimension(self, dimension: Dimension, plate_id: str) -> Dimension:
        """The copy, holding on to the copies."""
        start, end = self._hook(dimension.start), self._hook(dimension.end)
        return dimension.revised(id=self.ids[dimension.id], plate=plate_id, start=start, end=end)

    def note(self, note: DrawingNote, plate_id: str) -> DrawingNote:
        """The copy, its leader pointing at the copy."""
        to = self._hook(note.to) if note.to is not None else None
        return note.revised(id=self.ids[note.id], plate=plate_id, to=to, x=note.x + self.by[0], y=note.y + self.by[1])

    def _hook(self, hook: Hook) -> Hook:
        if hook.part is not None:
            return hook.revised(part=self.ids[hook.part])
        return hook.revised(x=hook.x + self.by[0], y=hook.y + self.by[1])


def dimensions_along(option: Option, chosen: Collection[str], copied: Collection[str]) -> tuple[Dimension, ...]:
    """The dimensions that go along when these parts are copied: those that measure nothing else.

    One that measures from a mere place of the plate goes along where it was chosen itself.
    """
    return tuple(one for one in option.dimensions if _goes_along(one, chosen, copied))


def notes_along(option: Option, chosen: Collection[str], copied: Collection[str]) -> tuple[DrawingNote, ...]:
    """The chosen notes; the leader to a part that stays behind is taken off."""
    notes = (note for note in option.drawing_notes if note.id in chosen)
    return tuple(note if set(note.parts) <= set(copied) else note.revised(to=None) for note in notes)


def staying_behind(
    project: Project, option: Option, chosen: Collection[str], dimensions: Collection[Dimension]
) -> tuple[str, ...]:
    """Those of the chosen that are not copied: dimensions of what is not copied, and what stands around the panel."""
    along = {dimension.id for dimension in dimensions}
    measures = (one.id for one in option.dimensions if one.id in chosen and one.id not in along)
    around = (thing.id for thing in standing_around(project.surroundings) if thing.id in chosen)
    return (*measures, *around)


def marks_with(option: Option, dimensions: Collection[Dimension], notes: Collection[DrawingNote]) -> dict[str, Any]:
    """The option's dimensions and notes with these beside them."""
    return {
        "dimensions": (*option.dimensions, *dimensions),
        "drawing_notes": (*option.drawing_notes, *notes),
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
        return all(part is None or part in copied for part in measured)
    return all(part is not None and part in copied for part in measured)
