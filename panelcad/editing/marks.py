"""Dimensions and notes that stay on the drawing and follow what they hold on to."""

from typing import Any

from panelcad.editing.ids import fresh_id, ids_in
from panelcad.editing.refusal import edit
from panelcad.errors import UnknownName
from panelcad.model.markup import Along, Dimension, DrawingNote, Hook
from panelcad.model.project import Option, Project

Made = tuple[Project, str]


@edit
def add_dimension(  # noqa: PLR0913, PLR0917 - two ends, and how they are measured on which plate
    project: Project, option_id: str, plate_id: str, start: Hook, end: Hook, along: Along, offset: float
) -> Made:
    """The project with a dimension more, and its id; `offset` is how far its line stands off, in mm."""
    option = project.option(option_id)
    name = fresh_id("dimension-1", ids_in(project, option))
    made = Dimension(id=name, plate=plate_id, start=start, end=end, along=along, offset=offset)
    return project.with_option(option.revised(dimensions=(*option.dimensions, made))), name


@edit
def add_note(project: Project, option_id: str, note: DrawingNote) -> Made:
    """The project with a note more, and its id; the note's own id is taken where it is free."""
    option = project.option(option_id)
    name = fresh_id(note.id, ids_in(project, option))
    return project.with_option(option.revised(drawing_notes=(*option.drawing_notes, note.revised(id=name)))), name


@edit
def revise_mark(project: Project, option_id: str, mark_id: str, **changes: Any) -> Project:
    """The project with some fields of a dimension or a note changed. Raises `UnknownName`."""
    option = project.option(option_id)
    for kind in ("dimensions", "drawing_notes"):
        marks = getattr(option, kind)
        if any(mark.id == mark_id for mark in marks):
            revised = tuple(mark.revised(**changes) if mark.id == mark_id else mark for mark in marks)
            return project.with_option(option.revised(**{kind: revised}))
    raise UnknownName("dimension or note", mark_id, tuple(mark.id for mark in option.marks()))


def marks_without(option: Option, gone: frozenset[str]) -> dict[str, Any]:
    """The option's marks once these things are gone: a dimension goes with either end, a note stays without leader."""
    notes = (note for note in option.drawing_notes if note.id not in gone)
    groups = (group for group in option.groups if group.id not in gone and not gone.issuperset(group.members))
    return {
        "dimensions": tuple(d for d in option.dimensions if d.id not in gone and gone.isdisjoint(d.parts)),
        "drawing_notes": tuple(note if gone.isdisjoint(note.parts) else note.revised(to=None) for note in notes),
        "groups": tuple(g.revised(members=tuple(m for m in g.members if m not in gone)) for g in groups),
        "locked": tuple(one for one in option.locked if one not in gone),
    }
