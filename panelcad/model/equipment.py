"""A unit of equipment: where it is mounted, what it does, needs, draws, weighs and costs.

What nobody entered stays None: it is reported as unknown and never taken as zero.
"""

from enum import StrEnum
from typing import Annotated, Self

from pydantic import Field, model_validator

from panelcad.model.base import Id, Name, Record, Text
from panelcad.model.function import Control, Function, Supply
from panelcad.model.quantity import Amperes, Currency, Hours, Mass, Minutes, Money, PositiveAmperes
from panelcad.model.source import Source


class Place(StrEnum):
    """Where in the aircraft a unit sits."""

    PANEL = "panel"
    BEHIND_PANEL = "behind the panel"
    RADIO_BAY = "radio bay"
    FIREWALL = "firewall"
    ENGINE = "engine"
    CABIN = "cabin"
    BAGGAGE = "baggage compartment"
    WING = "wing"
    TAIL = "tail"
    ROOF = "cabin roof"
    BELLY = "belly"


class Power(StrEnum):
    """What keeps a unit going."""

    ELECTRICAL = "electrical"
    OWN_BATTERY = "electrical with its own battery"
    VACUUM = "vacuum"
    NONE = "none"


class Duty(StrEnum):
    """Continuous loads draw all through a phase of flight, intermittent ones for moments (14 CFR 125.205(h))."""

    CONTINUOUS = "continuous"
    INTERMITTENT = "intermittent"


class Phase(StrEnum):
    """Phases of flight of a load analysis."""

    START = "start"
    TAXI = "taxi"
    TAKE_OFF = "take-off and climb"
    CRUISE = "cruise"
    LANDING = "landing"
    EMERGENCY = "emergency"


ALL_PHASES = tuple(Phase)


class Strength(StrEnum):
    """How much a need matters: without a required one the unit does not work; an advised one is good practice."""

    REQUIRED = "required"
    ADVISED = "advised"
    RENEWED = "renewed with it"


class Draw(Record):
    """What a unit draws at one system voltage, in A. `peak` is the most, as while transmitting."""

    continuous: Amperes | None = None
    peak: Amperes | None = None

    @model_validator(mode="after")
    def _peak_is_the_most(self) -> Self:
        if self.peak is not None and self.continuous is not None and self.peak < self.continuous:
            raise ValueError("a peak current not below the continuous current is expected")
        return self


class Need(Record):
    """Something the unit needs from another: a supply, or a controller because it has no face of its own.

    `for_functions` are the functions that go when the need is not met; empty means the whole unit goes.
    """

    supply: Supply | None = None
    controller: Control | None = None
    for_functions: tuple[Function, ...] = ()
    strength: Strength = Strength.REQUIRED
    why: Text = ""

    @model_validator(mode="after")
    def _names_one_thing(self) -> Self:
        if (self.supply is None) == (self.controller is None):
            raise ValueError("either a supply or a controller is expected")
        return self

    @property
    def words(self) -> str:
        """'heading source', or 'a controller for its transponder'."""
        return self.supply.value if self.supply else f"controller ({self.controller})"


class LabourTask(StrEnum):
    REMOVAL = "removal"
    INSTALLATION = "installation"
    WIRING = "wiring"
    SHEET_METAL = "sheet metal"
    CONFIGURATION = "configuration"
    PITOT_STATIC_TEST = "pitot-static and altimeter test"
    TRANSPONDER_TEST = "transponder test"
    COMPASS_SWING = "compass swing"
    FLIGHT_TEST = "flight test"
    PAPERWORK = "paperwork"


class Labour(Record):
    """Hours of one task."""

    task: LabourTask
    hours: Hours


class Standard(Record):
    """The technical standard order a unit meets for one function, as its maker states it."""

    function: Function
    tso: Name


class EquipmentUnit(Record):
    """A generic unit of the library or one of the user's own; masses in kg, currents in A, money exact."""

    name: Id
    title: Name
    family: Id
    words: tuple[Name, ...] = ()
    cutout: Id | None = None
    """What it is mounted in on the panel; None for a unit mounted elsewhere."""
    place: Place = Place.PANEL
    provides: tuple[Function, ...] = ()
    supplies: tuple[Supply, ...] = ()
    controls: tuple[Control, ...] = ()
    needs: tuple[Need, ...] = ()
    engines: Annotated[int, Field(ge=1, le=4)] = 1
    """How many engines its engine readings are for."""
    tanks: Annotated[int, Field(ge=1, le=8)] = 1
    """How many tanks its fuel quantity reading is for."""
    power: Power = Power.ELECTRICAL
    unpowered: tuple[Function, ...] = ()
    """What it still gives without electrical power: the pointer of an encoding altimeter, a slip ball."""
    duty: Duty = Duty.CONTINUOUS
    phases: tuple[Phase, ...] = ALL_PHASES
    draw_14: Draw | None = None
    draw_28: Draw | None = None
    own_battery: Minutes | None = None
    """How long its own battery lasts, in minutes."""
    breaker: PositiveAmperes | None = None
    """The breaker its maker states; it comes before any table (AC 43.13-1B paragraph 11-47)."""
    mass: Mass | None = None
    price: Money | None = None
    currency: Currency = "USD"
    labour: tuple[Labour, ...] | None = None
    standards: tuple[Standard, ...] = ()
    source: Source
    notes: Text = Field(default="")

    @model_validator(mode="after")
    def _hangs_together(self) -> Self:
        if (self.cutout is None) == (self.place is Place.PANEL):
            raise ValueError("a cutout for a unit on the panel, and none for a unit elsewhere, is expected")
        for need in self.needs:
            self._need_makes_sense(need)
        if not set(self.unpowered) <= set(self.provides):
            raise ValueError(f"unit '{self.name}' gives something without power that it does not provide")
        for listed in (self.provides, self.supplies, self.controls, self.phases):
            if len(set(listed)) != len(listed):
                raise ValueError(f"unit '{self.name}' lists something twice")
        return self

    def _need_makes_sense(self, need: Need) -> None:
        if need.supply is not None and need.supply in self.supplies:
            raise ValueError(f"unit '{self.name}' needs the {need.supply} that it supplies itself: a circular need")
        if need.controller is not None and need.controller in self.controls:
            raise ValueError(f"unit '{self.name}' needs a controller ({need.controller}) that it is itself")
        foreign = [function.value for function in need.for_functions if function not in self.provides]
        if foreign:
            raise ValueError(f"unit '{self.name}' needs something for '{foreign[0]}', which it does not provide")

    def draw(self, nominal: int) -> Draw | None:
        """What it draws in a system of 14 or 28 V nominal; None where nobody entered it."""
        return {14: self.draw_14, 28: self.draw_28}[nominal]
