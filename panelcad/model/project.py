"""One project: one aircraft, its panel as found, and the options proposed for it."""

from collections import Counter
from typing import Annotated, Any, Final, Self, TypeVar

from pydantic import Field, model_validator

from panelcad.errors import EditRefused, UnknownName
from panelcad.model.appearance import Appearance
from panelcad.model.base import Angle, Id, Length, Name, Record, Text, checked_once
from panelcad.model.cutout import Cutout, Mounting
from panelcad.model.equipment import EquipmentUnit, Place
from panelcad.model.finding import Acceptance
from panelcad.model.flight import Flight
from panelcad.model.markup import Dimension, DrawingNote, Group
from panelcad.model.pilot import Light, Purpose
from panelcad.model.planning import Circuit, ElectricalSystem, OptionPlanning, Planning
from panelcad.model.plate import Plate
from panelcad.model.profile import Profile
from panelcad.model.release import Issued, OpenedRevision, Release
from panelcad.model.surroundings import Surroundings
from panelcad.units import LengthUnit

AS_FOUND = "as-found"
Named = TypeVar("Named", Plate, Dimension, "Item")


class Item(Record):
    """A fitted thing: its bezel, case and bodies come from its cutout, its metal is the cut it names.

    An item with a cutout but no plate is not placed yet; one without a cutout is mounted elsewhere in the aircraft.
    """

    id: Id
    name: Name
    cutout: Id | None = None
    cut: Id | None = None
    plate: Id | None = None
    x: Length = 0.0
    y: Length = 0.0
    rotation: Angle = 0.0
    mounting: Mounting | None = None
    unit: Id | None = None
    """The carried unit of equipment it is."""
    place: Place | None = None
    """Where in the aircraft it sits, if elsewhere than its unit says."""
    arm: Length | None = None
    """Its station arm from the weighing datum, positive aft."""
    purpose: Purpose | None = None
    """What it controls, where its cutout does not say."""
    engine: Annotated[int, Field(ge=1, le=8, strict=True)] | None = None
    """The engine, counted from the left, that it shows or controls."""
    light: Light | None = None
    reset_in_flight: bool = False
    """A breaker or fuse that must be reset or replaced in flight (14 CFR 23.1357(d))."""
    circuit: Circuit = Circuit()
    notes: Text = ""


class Option(Record):
    """One proposal, or the panel as found. Each owns its plates."""

    id: Id
    name: Name
    summary: Text = ""
    plates: Annotated[tuple[Plate, ...], Field(min_length=1)]
    items: tuple[Item, ...] = ()
    acceptances: tuple[Acceptance, ...] = ()
    appearance: Appearance = Appearance()
    planning: OptionPlanning = OptionPlanning()
    groups: tuple[Group, ...] = ()
    locked: tuple[Id, ...] = ()
    """What the window neither moves nor takes away until it is unlocked."""
    dimensions: tuple[Dimension, ...] = ()
    drawing_notes: tuple[DrawingNote, ...] = ()

    @model_validator(mode="after")
    @checked_once
    def _hangs_together(self) -> None:
        _each_once("id", [*(p.id for p in self.plates), *self.cut_ids(), *(i.id for i in self.items), *self.mark_ids()])
        _marks_are_at_home(self)
        plates = {plate.id: plate for plate in self.plates}
        for plate in self.plates:
            if plate.over is not None and plate.over not in plates:
                raise ValueError(f"plate '{plate.id}' lies over '{plate.over}', which is not there")
        _items_are_at_home(self)

    def plate(self, plate_id: str) -> Plate:
        return _named("plate", plate_id, self.plates)

    def dimension(self, dimension_id: str) -> Dimension:
        return _named("dimension", dimension_id, self.dimensions)

    def item(self, item_id: str) -> Item:
        return _named("item", item_id, self.items)

    def cut_ids(self) -> tuple[str, ...]:
        return tuple(cut.id for plate in self.plates for cut in plate.cuts)

    def marks(self) -> tuple[Group | Dimension | DrawingNote, ...]:
        """Groups, dimensions and notes."""
        return (*self.groups, *self.dimensions, *self.drawing_notes)

    def mark_ids(self) -> tuple[str, ...]:
        return tuple(mark.id for mark in self.marks())

    def part_ids(self) -> frozenset[str]:
        """The ids of plates, items, cuts, attach screws and engravings."""
        screws = (screw.id for plate in self.plates for screw in plate.attach_screws)
        engravings = (engraving.id for plate in self.plates for engraving in plate.engravings)
        plates, items = (plate.id for plate in self.plates), (item.id for item in self.items)
        return frozenset((*plates, *items, *self.cut_ids(), *screws, *engravings))


NOT_ENTERED: Final = "not entered"
"""What stands for a registration or type that nobody has said yet."""


class Aircraft(Record):
    """The aircraft as the papers name it. `datum` says in words what the origin of the axes is."""

    registration: Name
    type_name: Name
    datum: Name
    owner: Text = ""

    @property
    def known_registration(self) -> str:
        """The registration; '' where nobody has entered one."""
        registration = self.registration.strip()
        return "" if registration == NOT_ENTERED else registration


class Project(Record):
    title: Name
    unit: LengthUnit
    aircraft: Aircraft
    shop: Text = ""
    drawn_by: Text = ""
    surroundings: Surroundings = Surroundings()
    profile: Profile = Profile()
    cutouts: tuple[Cutout, ...] = ()
    units: tuple[EquipmentUnit, ...] = ()
    planning: Planning = Planning()
    as_found: Option
    options: tuple[Option, ...] = ()
    releases: tuple[Release, ...] = ()
    issues: tuple[Issued, ...] = ()
    """Which plates of each release left the shop when; it only grows, as the releases do."""
    opened_revisions: tuple[OpenedRevision, ...] = ()
    flight: Flight = Flight()
    """What every instrument shows in the appearance view."""
    notes: Text = ""

    @model_validator(mode="after")
    def _hangs_together(self) -> Self:
        if self.as_found.id != AS_FOUND:
            raise ValueError(f"the id '{AS_FOUND}' for the panel as found is expected")
        _each_once("option", [option.id for option in self.all_options])
        _each_once("cutout", [cutout.name for cutout in self.cutouts])
        known = {cutout.name for cutout in self.cutouts}
        _each_once("unit of equipment", [unit.name for unit in self.units])
        units = {unit.name for unit in self.units}
        for option in self.all_options:
            _cutouts_are_carried(option, known)
            _units_are_carried(option, units)
            _buses_are_there(option, self.electrical(option))
        return self

    @property
    def all_options(self) -> tuple[Option, ...]:
        """The panel as found, then the options."""
        return (self.as_found, *self.options)

    def option(self, name: str) -> Option:
        """The option with this id or name. Raises `UnknownName`."""
        for option in self.all_options:
            if name in {option.id, option.name}:
                return option
        raise UnknownName("option", name, tuple(option.id for option in self.all_options))

    def cutout(self, name: str) -> Cutout:
        """The carried cutout of this name. Raises `UnknownName`."""
        for cutout in self.cutouts:
            if cutout.name == name:
                return cutout
        raise UnknownName("cutout", name, tuple(cutout.name for cutout in self.cutouts))

    def unit_named(self, name: str) -> EquipmentUnit:
        """The carried unit of equipment of this name. Raises `UnknownName`."""
        for unit in self.units:
            if unit.name == name:
                return unit
        raise UnknownName("unit of equipment", name, tuple(unit.name for unit in self.units))

    def electrical(self, option: Option) -> ElectricalSystem | None:
        """The electrical system an option flies with: its own, or the aircraft's."""
        return option.planning.electrical or self.planning.electrical

    def locked_revision(self, option_id: str) -> str:
        """The revision that an option is locked at: its newest release, unless a later revision was opened; else ''."""
        released = [entry.revision for entry in self.releases if entry.option == option_id]
        opened = [entry.revision for entry in self.opened_revisions if entry.option == option_id]
        if not released or (opened and opened[-1] not in released):
            return ""
        return released[-1]

    def with_option(self, option: Option) -> "Project":
        """The project with this option in place of the one of the same id. Raises `EditRefused` for a locked one."""
        self._refuse_locked(option)
        return self.revised(**self._holding(option))

    def with_moved(self, option: Option) -> "Project":
        """As `with_option`, for one that differs from that of the same id by places alone."""
        self._refuse_locked(option)
        return self.standing_elsewhere(**self._holding(option))

    def _holding(self, option: Option) -> dict[str, Any]:
        if option.id == AS_FOUND:
            return {"as_found": option}
        return {"options": tuple(option if old.id == option.id else old for old in self.options)}

    def _refuse_locked(self, option: Option) -> None:
        locked = self.locked_revision(option.id)
        if locked and option != self.option(option.id):
            raise EditRefused(
                f"Option '{option.name}' is released as revision {locked} and locked; open a new revision to change it."
            )


def _named(kind: str, name: str, things: tuple[Named, ...]) -> Named:
    for thing in things:
        if thing.id == name:
            return thing
    raise UnknownName(kind, name, tuple(thing.id for thing in things))


def _each_once(kind: str, names: list[str]) -> None:
    if len(set(names)) == len(names):
        return
    for name, count in Counter(names).items():
        if count > 1:
            raise ValueError(f"the {kind} '{name}' is used {count} times; each may be used once")


def _items_are_at_home(option: Option) -> None:
    """Every item is on a plate that is there and uses a cut of that plate, or is on none."""
    cuts = {plate.id: {cut.id for cut in plate.cuts} for plate in option.plates}
    homes = {(plate_id, cut_id) for plate_id, ids in cuts.items() for cut_id in (*ids, None)}
    for item in option.items:
        if (item.plate, item.cut) not in homes or item.cutout is None:
            _item_is_at_home(item, cuts)


def _item_is_at_home(item: Item, cuts: dict[str, set[str]]) -> None:
    """`cuts` holds the ids of each plate's cuts."""
    if item.plate is None:
        if item.cut is not None:
            raise ValueError(f"item '{item.id}' names a cut but no plate")
        return
    if item.cutout is None:
        raise ValueError(f"item '{item.id}' is on plate '{item.plate}' but has no cutout")
    if item.plate not in cuts:
        raise ValueError(f"item '{item.id}' is on plate '{item.plate}', which is not there")
    if item.cut is not None and item.cut not in cuts[item.plate]:
        raise ValueError(f"item '{item.id}' uses cut '{item.cut}', which is not on plate '{item.plate}'")


def _marks_are_at_home(option: Option) -> None:
    """Dimensions and notes are on plates that are there, and hold on to parts that are there."""
    marks: tuple[Dimension | DrawingNote, ...] = (*option.dimensions, *option.drawing_notes)
    if not marks:
        return
    plates, known = {plate.id for plate in option.plates}, option.part_ids()
    for mark in marks:
        if mark.plate not in plates:
            raise ValueError(f"'{mark.id}' is drawn on plate '{mark.plate}', which is not there")
        for part in mark.parts:
            if part not in known:
                raise ValueError(f"'{mark.id}' holds on to '{part}', which is not there")


def _cutouts_are_carried(option: Option, known: set[str]) -> None:
    for plate in option.plates:
        for cut in plate.cuts:
            if cut.cutout is not None and cut.cutout not in known:
                raise ValueError(
                    f"cut '{cut.id}' of option '{option.id}' needs cutout '{cut.cutout}', which is not carried"
                )
    for item in option.items:
        if item.cutout is not None and item.cutout not in known:
            raise ValueError(
                f"item '{item.id}' of option '{option.id}' needs cutout '{item.cutout}', which is not carried"
            )


def _units_are_carried(option: Option, known: set[str]) -> None:
    for item in option.items:
        if item.unit is not None and item.unit not in known:
            raise ValueError(f"item '{item.id}' of option '{option.id}' is unit '{item.unit}', which is not carried")


def _buses_are_there(option: Option, system: ElectricalSystem | None) -> None:
    for item in option.items:
        if item.circuit.bus is None:
            continue
        if system is None:
            raise ValueError(f"item '{item.id}' is on bus '{item.circuit.bus}', but there is no electrical system")
        system.must_have(item.circuit.bus, f"item '{item.id}' of option '{option.id}'")
