"""Copy and paste: parts of one plate with what is drawn on them and the cutouts and equipment they need.

What is copied can be pasted into any option of any project.
"""

from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass
from typing import Any, Final, Literal

from pydantic import ValidationError

from panelcad.editing.carry import carry, carry_unit
from panelcad.editing.clip_marks import (
    Marks,
    Shift,
    bare_places,
    dimensions_along,
    groups_along,
    notes_along,
    staying_behind,
)
from panelcad.editing.fixed import new_cut_state, refuse_kept
from panelcad.editing.ids import fresh_id, fresh_name, ids_in
from panelcad.editing.lookup import plate_holding, together
from panelcad.editing.made import Made
from panelcad.editing.parts import standing_around
from panelcad.editing.place import names_in, with_plate
from panelcad.editing.refusal import edit
from panelcad.errors import EditRefused, UnusableInput
from panelcad.geometry.point import Point
from panelcad.model.base import Record
from panelcad.model.cutout import Cutout
from panelcad.model.equipment import EquipmentUnit
from panelcad.model.markup import Dimension, DrawingNote, Group
from panelcad.model.planning import Circuit
from panelcad.model.plate import AttachScrew, Cut, Engraving, Plate
from panelcad.model.project import Item, Option, Project

Part = Item | Cut | AttachScrew | Engraving
SOURCE: Final = "the clipboard"


class Clip(Record):
    """Parts of one plate and what is drawn on it; lengths in mm, places as they were there."""

    holds: Literal["panelcad parts 1"] = "panelcad parts 1"
    items: tuple[Item, ...] = ()
    cuts: tuple[Cut, ...] = ()
    attach_screws: tuple[AttachScrew, ...] = ()
    engravings: tuple[Engraving, ...] = ()
    dimensions: tuple[Dimension, ...] = ()
    drawing_notes: tuple[DrawingNote, ...] = ()
    groups: tuple[Group, ...] = ()
    cutouts: tuple[Cutout, ...] = ()
    units: tuple[EquipmentUnit, ...] = ()

    @property
    def places(self) -> tuple[Point, ...]:
        """Where everything in it stood on its plate."""
        standing: tuple[Part | DrawingNote, ...] = (*self.parts, *self.drawing_notes)
        return (*(Point(one.x, one.y) for one in standing), *bare_places(self.dimensions))

    @property
    def parts(self) -> tuple[Part, ...]:
        return (*self.items, *self.cuts, *self.attach_screws, *self.engravings)


@dataclass(frozen=True)
class _Fresh:
    """What each id and name of the clip becomes where it is pasted."""

    ids: Mapping[str, str]
    labels: Mapping[str, str]
    cutouts: Mapping[str, str]
    units: Mapping[str, str]
    by: tuple[float, float]

    def moved(self, part: Part) -> dict[str, Any]:
        return {"id": self.ids[part.id], "x": part.x + self.by[0], "y": part.y + self.by[1]}


def copy(project: Project, option_id: str, ids: Collection[str]) -> Clip:
    """These parts, and what belongs to them, to be pasted elsewhere.

    A dimension goes along when all that it measures does, a note when it is named.

    Raises `EditRefused` where they are on several plates, `UnknownName`.
    """
    option = project.option(option_id)
    plate = plate_of(project, option_id, ids)
    wanted = together(option, ids)
    items = tuple(item if item.cut in wanted else item.revised(cut=None) for item in _among(option.items, wanted))
    cuts = _among(plate.cuts, wanted)
    cutouts = {item.cutout for item in items} | {cut.cutout for cut in cuts}
    units = {item.unit for item in items}
    screws, engravings = _among(plate.attach_screws, wanted), _among(plate.engravings, wanted)
    copied = {part.id for part in (*items, *cuts, *screws, *engravings)}
    return Clip(
        items=items,
        cuts=cuts,
        attach_screws=screws,
        engravings=engravings,
        dimensions=dimensions_along(option, ids, copied),
        drawing_notes=notes_along(option, ids, copied),
        groups=groups_along(option, copied),
        cutouts=tuple(cutout for cutout in project.cutouts if cutout.name in cutouts),
        units=tuple(unit for unit in project.units if unit.name in units),
    )


def left_out(project: Project, option_id: str, ids: Collection[str], clip: Clip) -> tuple[str, ...]:
    """Those of these ids that a clip made of them does not hold."""
    return staying_behind(project, project.option(option_id), ids, clip.dimensions)


def plate_of(project: Project, option_id: str, ids: Collection[str]) -> Plate:
    """The one plate that what can be copied of these stands on. Raises `EditRefused`, `UnknownName`."""
    option = project.option(option_id)
    drawn = {note.id: note.plate for note in option.drawing_notes}
    drawn |= {dimension.id: dimension.plate for dimension in option.dimensions}
    around = {thing.id for thing in standing_around(project.surroundings)}
    parts = together(option, ids) - around - drawn.keys()
    plates = {plate_holding(option, one).id for one in parts}
    plates |= {drawn[mark.id] for mark in notes_along(option, ids, parts)}
    plates |= {drawn[mark.id] for mark in dimensions_along(option, ids, parts)}
    if not plates and around.isdisjoint(ids):
        raise EditRefused("A dimension is copied together with what it measures.")
    if not plates:
        raise EditRefused("What stands around the panel is not copied.")
    if len(plates) != 1:
        raise EditRefused("Only things of one plate can be copied together.")
    return option.plate(plates.pop())


@edit
def paste(  # noqa: PLR0913, PLR0917 - what, and where on which plate
    project: Project, option_id: str, plate_id: str, clip: Clip, dx: float = 0.0, dy: float = 0.0
) -> Made:
    """The clip's parts on a plate, moved by mm, under fresh ids; its cuts are new metal to take away.

    Raises `EditRefused` for metal on a kept plate, `UnknownName`.
    """
    project, cutouts = _with_cutouts(project, clip)
    project, units = _with_units(project, clip, cutouts)
    option = project.option(option_id)
    if clip.cuts or clip.attach_screws or clip.engravings:
        refuse_kept(option, option.plate(plate_id))
    fresh = _Fresh(_fresh_ids(project, option, clip), _fresh_labels(option, clip), cutouts, units, (dx, dy))
    buses = _buses(project, option)
    plate_id = option.plate(plate_id).id
    items = tuple(_item(fresh, item, plate_id, buses) for item in clip.items)
    option = _with_metal(option, plate_id, clip, fresh)
    marks = Marks(clip.dimensions, clip.drawing_notes, clip.groups).beside(option, plate_id, Shift(fresh.ids, (dx, dy)))
    option = option.revised(items=(*option.items, *items), **marks)
    groups = {group.id for group in clip.groups}
    return Made(project.with_option(option), tuple(new for old, new in fresh.ids.items() if old not in groups))


def to_text(clip: Clip) -> str:
    """The clip as JSON text for the clipboard."""
    return clip.model_dump_json()


def from_text(text: str) -> Clip:
    """The clip in the clipboard's text. Raises `UnusableInput` where it holds something else."""
    try:
        return Clip.model_validate_json(text)
    except ValidationError:
        raise UnusableInput(SOURCE, "", "it holds no parts of a panel", "parts copied in panelcad") from None


def _among(things: Iterable[Any], wanted: frozenset[str]) -> tuple[Any, ...]:
    return tuple(thing for thing in things if thing.id in wanted)


def _with_cutouts(project: Project, clip: Clip) -> tuple[Project, dict[str, str]]:
    names: dict[str, str] = {}
    for cutout in clip.cutouts:
        project, names[cutout.name] = carry(project, cutout)
    return project, names


def _with_units(project: Project, clip: Clip, cutouts: Mapping[str, str]) -> tuple[Project, dict[str, str]]:
    names: dict[str, str] = {}
    for unit in clip.units:
        cutout = cutouts.get(unit.cutout, unit.cutout) if unit.cutout else None
        project, names[unit.name] = carry_unit(project, unit.revised(cutout=cutout))
    return project, names


def _fresh_ids(project: Project, option: Option, clip: Clip) -> dict[str, str]:
    taken, fresh = set(ids_in(project, option)), dict[str, str]()
    for part in (*clip.parts, *clip.dimensions, *clip.drawing_notes, *clip.groups):
        fresh[part.id] = fresh_id(part.id, taken)
        taken.add(fresh[part.id])
    return fresh


def _fresh_labels(option: Option, clip: Clip) -> dict[str, str]:
    """An item and its cut that bear one name go on bearing one."""
    taken, fresh = names_in(option), dict[str, str]()
    named: tuple[Item | Cut, ...] = (*clip.items, *clip.cuts)
    for part in named:
        if part.name not in fresh:
            fresh[part.name] = fresh_name(part.name, taken)
            taken.add(fresh[part.name])
    return fresh


def _item(fresh: _Fresh, item: Item, plate_id: str, buses: frozenset[str]) -> Item:
    return item.revised(
        **fresh.moved(item),
        name=fresh.labels[item.name],
        plate=plate_id,
        cut=fresh.ids[item.cut] if item.cut else None,
        cutout=fresh.cutouts.get(item.cutout or "", item.cutout),
        unit=fresh.units.get(item.unit or "", item.unit),
        circuit=item.circuit if item.circuit.bus is None or item.circuit.bus in buses else Circuit(),
    )


def _with_metal(option: Option, plate_id: str, clip: Clip, fresh: _Fresh) -> Option:
    plate = option.plate(plate_id)
    cuts = (
        cut.revised(
            **fresh.moved(cut),
            name=fresh.labels[cut.name],
            state=new_cut_state(option),
            cutout=fresh.cutouts.get(cut.cutout or "", cut.cutout),
        )
        for cut in clip.cuts
    )
    screws = (screw.revised(**fresh.moved(screw)) for screw in clip.attach_screws)
    engravings = (engraving.revised(**fresh.moved(engraving)) for engraving in clip.engravings)
    return with_plate(
        option,
        plate.revised(
            cuts=(*plate.cuts, *cuts),
            attach_screws=(*plate.attach_screws, *screws),
            engravings=(*plate.engravings, *engravings),
        ),
    )


def _buses(project: Project, option: Option) -> frozenset[str]:
    system = project.electrical(option)
    return frozenset(bus.id for bus in system.buses) if system else frozenset()
