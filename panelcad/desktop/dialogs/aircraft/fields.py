"""The fields of the aircraft's data, by table."""

from typing import Any, Final

from panelcad.desktop.dialogs.aircraft.field import Field, Kind
from panelcad.model.equipment import Duty, LabourTask
from panelcad.model.planning import AfterFailure, FlightKind, LineKind, Voltage

NOT_STATED: Final = (None, "not stated")


def _words_of(values: Any) -> tuple[tuple[Any, str], ...]:
    return tuple((value, str(value)) for value in values)


FLIGHT: Final = (
    Field("flight", "Kind of flight", Kind.CHOICE, (NOT_STATED, *_words_of(FlightKind))),
    Field("engines", "Engines", Kind.COUNT),
    Field("tanks", "Fuel tanks", Kind.COUNT),
    Field("requirements", "Lists of required equipment", Kind.NAMES),
)
OPTION_FLIGHT: Final = (
    Field("flight", "Kind of flight", Kind.CHOICE, ((None, "as the project"), *_words_of(FlightKind))),
)
SYSTEM: Final = (
    Field("voltage", "System", Kind.CHOICE, (NOT_STATED, (Voltage.V14, "14 V"), (Voltage.V28, "28 V"))),
    Field("capacity", "Battery, Ah", Kind.NUMBER),
    Field("derate", "Share of it that counts", Kind.NUMBER),
    Field("recognition", "Until loads are shed, min", Kind.NUMBER),
    Field("landing", "Emergency landing, min", Kind.NUMBER),
    Field("endurance", "Battery must last, min", Kind.NUMBER),
)
_NAME: Final = Field("name", "Name", Kind.WORDS, needed="a name")
ALTERNATORS: Final = (_NAME, Field("rating", "Rating, A", Kind.NUMBER))
BUSES: Final = (_NAME, Field("fed_by", "Fed by (names, or battery)", Kind.NAMES))
LOADS: Final = (
    _NAME,
    Field("continuous", "Continuous, A", Kind.NUMBER),
    Field("peak", "Peak, A", Kind.NUMBER),
    Field("duty", "Duty", Kind.CHOICE, _words_of(Duty)),
    Field("bus", "Bus", Kind.WORDS),
    Field("breaker", "Breaker, A", Kind.NUMBER),
    Field("after_failure", "After alternator failure", Kind.CHOICE, _words_of(AfterFailure)),
)
SHEET: Final = (
    Field("datum", "Weighing datum", Kind.WORDS),
    Field("on", "Date of the last sheet (2026-03-01)", Kind.WORDS),
    Field("empty_mass", "Empty weight", Kind.MASS),
    Field("empty_arm", "Empty CG", Kind.LENGTH),
    Field("most_mass", "Greatest weight", Kind.MASS),
    Field("panel_arm", "Arm of the panel", Kind.LENGTH),
    Field("least_fuel", "Fuel of the extreme cases", Kind.MASS),
    Field("chord", "Mean aerodynamic chord", Kind.LENGTH),
    Field("leading_edge", "Its leading edge", Kind.LENGTH),
)
ENVELOPE: Final = (
    Field("arm", "Arm", Kind.LENGTH, needed="an arm"),
    Field("mass", "Weight", Kind.MASS, needed="a weight"),
)
STATIONS: Final = (
    _NAME,
    Field("arm", "Arm", Kind.LENGTH, needed="an arm"),
    Field("most", "Most", Kind.MASS, needed="a weight"),
    Field("least", "Always aboard", Kind.MASS),
    Field("is_fuel", "Holds", Kind.CHOICE, ((False, "load"), (True, "fuel"))),
)
RATES: Final = (
    Field("currency", "Currency (USD, EUR)", Kind.WORDS),
    Field("hourly_rate", "Hourly rate", Kind.MONEY),
    Field("equipment_tax", "Tax on equipment, %", Kind.MONEY),
    Field("labour_tax", "Tax on labour, %", Kind.MONEY),
)
EXCHANGE: Final = (
    Field("currency", "Other currency", Kind.WORDS, needed="a currency"),
    Field("rate", "One of it costs", Kind.MONEY, needed="a rate"),
)
OPTION_SHARES: Final = (
    Field("equipment_discount", "Discount on equipment, %", Kind.MONEY),
    Field("contingency", "Contingency, %", Kind.MONEY),
)
LABOUR: Final = (
    Field("task", "Task", Kind.CHOICE, _words_of(LabourTask)),
    Field("hours", "Hours", Kind.MONEY, needed="hours"),
)
LINES: Final = (
    Field("name", "Line of the quote", Kind.WORDS, needed="a name"),
    Field("kind", "Kind", Kind.CHOICE, _words_of(LineKind)),
    Field("amount", "Amount", Kind.MONEY, needed="an amount"),
)
