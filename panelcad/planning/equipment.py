"""The equipment of an option: its items that are units, and what the aircraft has besides them."""

from dataclasses import dataclass
from functools import cached_property

from panelcad.model.equipment import EquipmentUnit, Place
from panelcad.model.function import Function, Supply
from panelcad.model.planning import ElectricalSystem, FlightKind
from panelcad.model.project import Item, Option, Project
from panelcad.planning.nameless import nameless


@dataclass(frozen=True)
class Fitted:
    """A unit of equipment where an item puts it."""

    item: Item
    unit: EquipmentUnit

    @property
    def id(self) -> str:
        return self.item.id

    @property
    def name(self) -> str:
        return self.item.name

    @property
    def place(self) -> Place:
        return self.item.place or self.unit.place

    @property
    def is_unplaced(self) -> bool:
        """True where it belongs on a panel and nobody has put it there yet."""
        return self.place is Place.PANEL and self.item.plate is None

    @property
    def place_words(self) -> str:
        """'panel', 'radio bay', 'not placed yet'."""
        return "not placed yet" if self.is_unplaced else self.place.value


@dataclass(frozen=True, eq=False)
class Equipment:
    """All units of an option, with the project's and the option's settings at hand. Compared by identity."""

    project: Project
    option: Option
    units: tuple[Fitted, ...]

    @cached_property
    def system(self) -> ElectricalSystem | None:
        return self.project.electrical(self.option)

    @cached_property
    def supplied(self) -> frozenset[Supply]:
        return frozenset(self.project.planning.supplied)

    @cached_property
    def nameless(self) -> tuple[Item, ...]:
        """Equipment that is named as no unit, so that nobody knows what it does."""
        return nameless(self.project, self.option)

    @property
    def flight(self) -> FlightKind | None:
        """The kind of flight the option is judged for; None where nobody said."""
        return self.option.planning.flight or self.project.planning.flight

    def unit(self, item_id: str) -> Fitted:
        return next(fitted for fitted in self.units if fitted.id == item_id)

    def providers(self, function: Function) -> tuple[Fitted, ...]:
        """The units made to provide a function, whether or not their needs are met."""
        return tuple(fitted for fitted in self.units if function in fitted.unit.provides)


def equipment(project: Project, option: Option) -> Equipment:
    """The option's units, in the option's order."""
    units = {unit.name: unit for unit in project.units}
    return Equipment(project, option, tuple(Fitted(i, units[i.unit]) for i in option.items if i.unit is not None))


@dataclass(frozen=True)
class Change:
    """What an option does to the aircraft as found. Items of the same id and unit are the same thing."""

    removed: tuple[Fitted, ...]
    installed: tuple[Fitted, ...]
    kept: tuple[tuple[Fitted, Fitted], ...]
    """As found and now, where it may sit elsewhere."""
    nameless: tuple[Item, ...] = ()
    """Equipment put in that is named as no unit."""


def change(project: Project, option: Option) -> Change:
    """What comes out, what goes in and what stays."""
    before = {_identity(fitted): fitted for fitted in equipment(project, project.as_found).units}
    after = {_identity(fitted): fitted for fitted in equipment(project, option).units}
    known = {item.id for item in nameless(project, project.as_found)}
    return Change(
        removed=tuple(fitted for key, fitted in before.items() if key not in after),
        installed=tuple(fitted for key, fitted in after.items() if key not in before),
        kept=tuple((fitted, after[key]) for key, fitted in before.items() if key in after),
        nameless=tuple(item for item in nameless(project, option) if item.id not in known),
    )


def _identity(fitted: Fitted) -> tuple[str, str]:
    return fitted.id, fitted.unit.name
