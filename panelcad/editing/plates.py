"""Plates and what is drawn on them: state, measures, inner openings, bends, attach screws, lettering."""

from typing import Any

from panelcad.editing.fixed import refuse_kept
from panelcad.editing.ids import fresh_id, fresh_name, ids_in
from panelcad.editing.made import Made
from panelcad.editing.marks import marks_without
from panelcad.editing.outline import refuse_crossing
from panelcad.editing.place import with_plate
from panelcad.editing.refusal import edit
from panelcad.errors import EditRefused, UnknownName
from panelcad.model.cutout import Opening
from panelcad.model.hole import HoleForm
from panelcad.model.plate import AttachScrew, Backing, Bend, Engraving, Plate
from panelcad.model.project import Option, Project


@edit
def add_plate(project: Project, option_id: str, plate: Plate) -> Made:
    """The option with a plate more; its id and name are taken where they are free. The id made is the plate's."""
    option = project.option(option_id)
    plate_id = fresh_id(plate.id, ids_in(project, option))
    refuse_crossing(plate.outline)
    made = plate.revised(id=plate_id, name=fresh_name(plate.name, {other.name for other in option.plates}))
    return Made(project.with_option(option.revised(plates=(*option.plates, made))), (plate_id,))


@edit
def remove_plate(project: Project, option_id: str, plate_id: str) -> Project:
    """The option without a plate and all that is on it.

    Raises `EditRefused` for the last plate and for one that an overlay lies on, `UnknownName`.
    """
    option = project.option(option_id)
    gone = option.plate(plate_id)
    if len(option.plates) == 1:
        raise EditRefused(f"'{gone.name}' is the only plate.")
    for other in option.plates:
        if other.over == plate_id:
            raise EditRefused(f"'{other.name}' lies on '{gone.name}'; remove the overlay first.")
    items = tuple(item for item in option.items if item.plate != plate_id)
    away = frozenset({plate_id} | _ids_on(option, gone))
    marks = marks_without(option, away)
    marks["drawing_notes"] = tuple(note for note in marks["drawing_notes"] if note.plate != plate_id)
    marks["dimensions"] = tuple(mark for mark in marks["dimensions"] if mark.plate != plate_id)
    plates = tuple(plate for plate in option.plates if plate.id != plate_id)
    return project.with_option(option.revised(plates=plates, items=items, **marks))


@edit
def revise_plate(project: Project, option_id: str, plate_id: str, **changes: Any) -> Project:
    """The plate with some fields changed: name, state, role, frame, thickness, alloy, notes.

    What is measured on a kept plate stays: only its name, notes, frame, sway and state change. Raises `EditRefused`,
    `UnknownName`.
    """
    option = project.option(option_id)
    plate = option.plate(plate_id)
    if not changes.keys() <= {"name", "notes", "frame", "sway", "state"}:
        refuse_kept(option, plate)
    return project.with_option(with_plate(option, plate.revised(**changes)))


@edit
def add_inner_opening(project: Project, option_id: str, plate_id: str, opening: Opening) -> Project:
    """The plate with an opening more that belongs to the sheet itself, such as the one for the control column."""
    option, plate = _changeable(project, option_id, plate_id)
    refuse_crossing(opening.shape)
    return project.with_option(with_plate(option, plate.revised(inner_openings=(*plate.inner_openings, opening))))


@edit
def revise_inner_opening(project: Project, option_id: str, plate_id: str, index: int, **changes: Any) -> Project:
    """The opening of this number (0 is the first) with some fields changed."""
    option, plate = _changeable(project, option_id, plate_id)
    changed = plate.inner_openings[index].revised(**changes)
    refuse_crossing(changed.shape)
    openings = tuple(changed if i == index else old for i, old in enumerate(plate.inner_openings))
    return project.with_option(with_plate(option, plate.revised(inner_openings=openings)))


@edit
def remove_inner_opening(project: Project, option_id: str, plate_id: str, index: int) -> Project:
    """The plate without the opening of this number (0 is the first)."""
    option, plate = _changeable(project, option_id, plate_id)
    openings = tuple(opening for i, opening in enumerate(plate.inner_openings) if i != index)
    return project.with_option(with_plate(option, plate.revised(inner_openings=openings)))


@edit
def set_bends(project: Project, option_id: str, plate_id: str, bends: tuple[Bend, ...]) -> Project:
    """The plate with these bend lines and no others."""
    option, plate = _changeable(project, option_id, plate_id)
    return project.with_option(with_plate(option, plate.revised(bends=bends)))


@edit
def add_attach_screw(  # noqa: PLR0913, PLR0917 - what, and where on which plate
    project: Project,
    option_id: str,
    plate_id: str,
    form: HoleForm,
    x: float,
    y: float,
    backing: Backing | None = None,
) -> Made:
    """A screw that holds the plate, at a point in mm. The id made is the screw's. Raises `EditRefused`."""
    option, plate = _changeable(project, option_id, plate_id)
    screw = AttachScrew(id=fresh_id("attach-1", ids_in(project, option)), x=x, y=y, form=form, backing=backing)
    plate = plate.revised(attach_screws=(*plate.attach_screws, screw))
    return Made(project.with_option(with_plate(option, plate)), (screw.id,))


@edit
def add_engraving(project: Project, option_id: str, plate_id: str, engraving: Engraving) -> Made:
    """A line of lettering more; its id is taken where it is free. The id made is the engraving's."""
    option, plate = _changeable(project, option_id, plate_id)
    made = engraving.revised(id=fresh_id(engraving.id, ids_in(project, option)))
    plate = plate.revised(engravings=(*plate.engravings, made))
    return Made(project.with_option(with_plate(option, plate)), (made.id,))


@edit
def revise_part(project: Project, option_id: str, part_id: str, **changes: Any) -> Project:
    """An attach screw, an engraving or a cut with some fields changed: form, text, height, state, openings.

    Raises `EditRefused` where it is in metal that stays as it is, `UnknownName`.
    """
    option = project.option(option_id)
    for plate in option.plates:
        for kind in ("attach_screws", "engravings", "cuts"):
            parts = getattr(plate, kind)
            if all(part.id != part_id for part in parts):
                continue
            refuse_kept(option, plate)
            revised = tuple(part.revised(**changes) if part.id == part_id else part for part in parts)
            return project.with_option(with_plate(option, plate.revised(**{kind: revised})))
    raise UnknownName("part of a plate", part_id, option.cut_ids())


def _changeable(project: Project, option_id: str, plate_id: str) -> tuple[Option, Plate]:
    """Raises `EditRefused` for a kept plate."""
    option = project.option(option_id)
    plate = option.plate(plate_id)
    refuse_kept(option, plate)
    return option, plate


def _ids_on(option: Option, plate: Plate) -> set[str]:
    parts = {screw.id for screw in plate.attach_screws} | {engraving.id for engraving in plate.engravings}
    return parts | {cut.id for cut in plate.cuts} | {item.id for item in option.items if item.plate == plate.id}
