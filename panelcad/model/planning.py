"""What judging options needs besides the equipment: kind of flight, electrical system, weight and balance, costs.

Every part is optional; what is missing is reported as unknown.
"""

from collections import Counter
from decimal import Decimal
from enum import IntEnum, StrEnum
from typing import Annotated, Self

from pydantic import Field, model_validator

from panelcad.model.base import Id, Length, Name, NonNegativeLength, Number, PositiveLength, Record, Text
from panelcad.model.equipment import ALL_PHASES, Draw, Duty, Labour, Phase
from panelcad.model.function import Function, Supply
from panelcad.model.quantity import Currency, Exact, Mass, Minutes, Money, Percent, PositiveAmperes

NOTHING = Decimal(0)
Count = Annotated[int, Field(ge=0, le=20)]
Date = Annotated[str, Field(pattern=r"^\d{4}-\d{2}-\d{2}$")]


class FlightKind(StrEnum):
    """What the owner flies, and so what must be on board."""

    DAY_VFR = "day VFR"
    NIGHT_VFR = "night VFR"
    DAY_IFR = "day IFR"
    NIGHT_IFR = "night IFR"

    @property
    def is_ifr(self) -> bool:
        return self in {FlightKind.DAY_IFR, FlightKind.NIGHT_IFR}


class Fact(StrEnum):
    """What may be true of an aircraft or its use, and makes a rule apply."""

    OIL_PRESSURE_SYSTEM = "engine with an oil pressure system"
    LIQUID_COOLED = "liquid-cooled engine"
    AIR_COOLED = "air-cooled engine"
    ALTITUDE_ENGINE = "altitude engine"
    RETRACTABLE_GEAR = "retractable landing gear"
    PART_23_AFTER_1996 = "certificated under part 23 after 11 March 1996"
    MADE_AFTER_1978 = "made after 18 July 1978"
    FOR_HIRE = "flown for hire"
    OVER_WATER = "flown over water beyond gliding distance"
    ELT_REQUIRED = "ELT required by 14 CFR 91.207"
    TRANSPONDER_AIRSPACE = "flown where a transponder is required"
    ADSB_AIRSPACE = "flown where ADS-B out is required"
    ELECTRONIC_DISPLAYS = "electronic displays under 14 CFR 23.1311"
    RADIO_AIRSPACE = "flown where two-way radio is required"


class FactState(Record):
    """A fact, and whether it is true of this aircraft."""

    fact: Fact
    holds: bool


class Voltage(IntEnum):
    """Nominal system voltage as AC 43.13-1B table 11-6 names it: 14 V with a 12 V battery, 28 V with a 24 V one."""

    V14 = 14
    V28 = 28


class WireRun(Record):
    """One wire from breaker to load and back to ground; `length` includes the ground wire (AC 43.13-1B 11-68)."""

    gauge: Annotated[str, Field(pattern=r"^(2[0-4]|1[0-8]|[0-8]|00|000|0000)$")] | None = None
    length: PositiveLength | None = None


class AfterFailure(StrEnum):
    """What the pilot does with a load once the alternator has failed and the battery feeds what is left."""

    SHED = "shed"
    KEPT = "kept"
    LANDING = "on again for the landing"


class Circuit(Record):
    """How an item is fed. `breaker` comes before the one its unit states."""

    bus: Id | None = None
    breaker: PositiveAmperes | None = None
    wire: WireRun = WireRun()
    after_failure: AfterFailure = AfterFailure.SHED


class AircraftLoad(Record):
    """A load of the aircraft that is no unit of equipment: lights, pitot heat, pumps."""

    id: Id
    name: Name
    provides: tuple[Function, ...] = ()
    draw: Draw | None = None
    duty: Duty = Duty.CONTINUOUS
    phases: tuple[Phase, ...] = ALL_PHASES
    circuit: Circuit = Circuit()


class Bus(Record):
    id: Id
    name: Name
    fed_by: tuple[Id, ...] = ()
    """Alternators, the battery ('battery') or other buses."""


class Alternator(Record):
    id: Id
    name: Name
    rating: PositiveAmperes | None = None


class Battery(Record):
    """Rated capacity in Ah; `derate` is the share that may be counted on."""

    capacity: PositiveAmperes | None = None
    derate: Annotated[Number, Field(gt=0, le=1)] = 0.75


BATTERY = "battery"


class ElectricalSystem(Record):
    voltage: Voltage
    alternators: tuple[Alternator, ...] = ()
    battery: Battery | None = None
    buses: tuple[Bus, ...] = ()
    loads: tuple[AircraftLoad, ...] = ()
    recognition: Minutes = 5.0
    """Until the failure is noticed and loads are shed, in minutes."""
    landing: Minutes = 10.0
    """The emergency landing, in minutes."""
    endurance: Minutes = 30.0
    """How long the battery has to last in all, in minutes."""

    @model_validator(mode="after")
    def _hangs_together(self) -> Self:
        sources = [BATTERY, *(alternator.id for alternator in self.alternators), *(bus.id for bus in self.buses)]
        once("electrical part", [*sources, *(load.id for load in self.loads)])
        for bus in self.buses:
            for source in bus.fed_by:
                if source not in sources:
                    raise ValueError(f"bus '{bus.id}' is fed by '{source}', which is not there")
        self._buses_are_not_fed_in_a_circle()
        for load in self.loads:
            self.must_have(load.circuit.bus, f"load '{load.id}'")
        return self

    def must_have(self, bus: str | None, who: str) -> None:
        """Raises ValueError where `who` hangs on a bus that is not there."""
        if bus is not None and bus not in {b.id for b in self.buses}:
            raise ValueError(f"{who} is on bus '{bus}', which is not there")

    def _buses_are_not_fed_in_a_circle(self) -> None:
        feeders = {bus.id: set(bus.fed_by) for bus in self.buses}
        while free := [bus for bus, fed_by in feeders.items() if not fed_by & feeders.keys()]:
            for bus in free:
                del feeders[bus]
        if feeders:
            raise ValueError(f"bus '{min(feeders)}' is fed in a circle of buses")


class EnvelopePoint(Record):
    """A corner of the CG envelope: arm in the file's unit, mass in kg."""

    arm: Length
    mass: Mass


class Station(Record):
    """A place for useful load: seats, tanks, baggage. `least` is aboard in every case, such as the pilot."""

    id: Id
    name: Name
    arm: Length
    most: Mass
    least: Mass = 0.0
    is_fuel: bool = False

    @model_validator(mode="after")
    def _most_is_the_most(self) -> Self:
        if self.most < self.least:
            raise ValueError("a greatest load not below the least load is expected")
        return self


class WeightAndBalance(Record):
    """The last weight and balance sheet. Arms from the aircraft's own weighing datum, positive aft."""

    datum: Name
    on: Date | None = None
    empty_mass: Mass | None = None
    empty_arm: Length | None = None
    most_mass: Mass | None = None
    panel_arm: Length | None = None
    """The arm taken for what is mounted on the panel and has none of its own."""
    envelope: tuple[EnvelopePoint, ...] = ()
    stations: tuple[Station, ...] = ()
    least_fuel: Mass | None = None
    """The fuel of the extreme cases (AC 43.13-1B figure 10-10: half a pound per METO horsepower)."""
    chord: NonNegativeLength | None = None
    leading_edge: Length | None = None

    @model_validator(mode="after")
    def _hangs_together(self) -> Self:
        once("station", [station.id for station in self.stations])
        if self.envelope and len({(point.arm, point.mass) for point in self.envelope}) < 3:
            raise ValueError("at least three different corners of the CG envelope are expected")
        if self.empty_mass == 0:
            raise ValueError("an empty weight above zero, or none where it is not known, is expected")
        return self


class LineKind(StrEnum):
    """What a line of a quote is for."""

    EQUIPMENT = "equipment"
    LABOUR = "labour"
    SHEET_METAL = "sheet metal"
    SUNDRIES = "shipping and consumables"
    CREDIT = "credit for what is removed"


class CostLine(Record):
    """A line of the quote that belongs to no unit; a credit's amount is taken off."""

    name: Name
    kind: LineKind
    amount: Money


class Exchange(Record):
    """What one unit of another currency costs in the project's."""

    currency: Currency
    rate: Annotated[Exact, Field(gt=0)]


class CostSettings(Record):
    """What the shop charges; nothing here has a published norm, so nothing has a default but zero shares."""

    currency: Currency = "USD"
    hourly_rate: Money | None = None
    equipment_tax: Percent = NOTHING
    labour_tax: Percent = NOTHING
    exchange: tuple[Exchange, ...] = ()


class OptionCosts(Record):
    labour: tuple[Labour, ...] = ()
    lines: tuple[CostLine, ...] = ()
    equipment_discount: Percent = NOTHING
    contingency: Percent = NOTHING


class Planning(Record):
    """What all options of a project share."""

    flight: FlightKind | None = None
    requirements: tuple[Id, ...] = ()
    """Names of the required-equipment lists to judge by; none means the lists of 14 CFR for the kind of flight."""
    facts: tuple[FactState, ...] = ()
    engines: Count | None = None
    tanks: Count | None = None
    fitted: tuple[Function, ...] = ()
    """Functions the aircraft has without a listed unit: belts, position lights."""
    supplied: tuple[Supply, ...] = ()
    """What the aircraft supplies without a listed unit: pitot and static lines, antennas that stay."""
    electrical: ElectricalSystem | None = None
    weight: WeightAndBalance | None = None
    costs: CostSettings = CostSettings()


class OptionPlanning(Record):
    """What an option changes or adds."""

    flight: FlightKind | None = None
    electrical: ElectricalSystem | None = None
    """In place of the project's, where the option changes the alternator, the battery or the buses."""
    costs: OptionCosts = OptionCosts()
    notes: Text = ""


def once(kind: str, names: list[str]) -> None:
    """Raises ValueError where a name is used twice."""
    for name, count in Counter(names).items():
        if count > 1:
            raise ValueError(f"the {kind} '{name}' is used {count} times; each may be used once")
