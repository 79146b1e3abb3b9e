"""Dimensions and notes that stay on the drawing and follow what they hold on to."""

from collections.abc import Collection
from typing import Any, Final

from panelcad.editing.ids import fresh_id, ids_in
from panelcad.editing.refusal import edit
from panelcad.errors import UnknownName
from panelcad.model.layout import layout
from panelcad.model.marked import line_ends, measured, off_line
from panelcad.model.markup import Along, Dimension, DrawingNote, Hook
from panelcad.model.project import Option, Project

Made = tuple[Project, str]
_LEVEL: Final = {Along.ACROSS: 1, Along.UP: 0}
"""Which coordinate tells where a dimension line stands."""


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
def pull_dimensions(project: Project, option_id: str, ids: Collection[str], dx: float, dy: float) -> Project:
    """The project with the lines of these dimensions pulled by mm: nearer to what they measure, or farther from it.

    What is not a dimension is left as it is.
    """
    option = project.option(option_id)
    pulled = tuple(_pulled(project, option, one, dx, dy) if one.id in ids else one for one in option.dimensions)
    return project.with_option(option.revised(dimensions=pulled))


def _pulled(project: Project, option: Option, dimension: Dimension, dx: float, dy: float) -> Dimension:
    across, up = off_line(measured(layout(project, option).plate(dimension.plate), dimension), dimension.along)
    return dimension.revised(offset=dimension.offset + dx * across + dy * up)


def in_line(project: Project, option_id: str, dimension_id: str, reach: float) -> tuple[Project, str]:
    """The project with a dimension line brought in line with the nearest other within `reach` mm, and that one's id.

    Only lines that run the same way can be in line: across with across, up with up. '' where none is near.
    """
    option = project.option(option_id)
    dimension = option.dimension(dimension_id)
    axis = _LEVEL.get(dimension.along)
    if axis is None:
        return project, ""
    plate = layout(project, option).plate(dimension.plate)
    here = line_ends(measured(plate, dimension), dimension)[0][axis]
    others = (
        one
        for one in option.dimensions
        if one.id != dimension_id and (one.plate, one.along) == (dimension.plate, dimension.along)
    )
    away = {one.id: line_ends(measured(plate, one), one)[0][axis] - here for one in others}
    nearest = min(away, key=lambda one: abs(away[one]), default="")
    if not nearest or abs(away[nearest]) > reach:
        return project, ""
    return revise_mark(project, option_id, dimension_id, offset=dimension.offset + away[nearest]), nearest


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
