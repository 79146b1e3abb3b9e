"""Lights: colours that mean what the regulation says, and light to read by at night."""

from collections.abc import Iterator
from typing import Final

from panelcad.checks.pilot_sight import Seen, seen_items, seen_where
from panelcad.checks.registry import TheWhole, rule
from panelcad.model.finding import Finding, Severity
from panelcad.model.function import Function
from panelcad.model.layout import Layout, PlacedItem
from panelcad.model.pilot import Light, LightColour, LightMeaning
from panelcad.model.planning import FlightKind

LAMPS: Final = "lamps"
COLOURS: Final = {
    LightMeaning.WARNING: LightColour.RED,
    LightMeaning.CAUTION: LightColour.AMBER,
    LightMeaning.SAFE_OPERATION: LightColour.GREEN,
}
_CFR_1322: Final = "14 CFR 23.1322, amendment 23-43"
_CFR_1381: Final = "14 CFR 23.1381 before amendment 23-64"
_NIGHT: Final = {FlightKind.NIGHT_VFR, FlightKind.NIGHT_IFR}


@rule(
    "light-colour",
    title="Colour of warning, caution and advisory lights",
    measures="whether each light's colour means what it tells: red warning, amber caution, green safe operation",
    looks_at=TheWhole(),
    severities=(Severity.WARNING, Severity.ADVICE),
    source=_CFR_1322,
)
def light_colour(laid: Layout) -> Iterator[Finding]:
    for seen in seen_where(laid, "light", _is_light):
        light = seen.item.item.light
        if light is not None and not colour_fits(light):
            yield _about(seen, f"A {light.colour} light tells {_told(light)}", Severity.WARNING)
        elif light is None:
            yield _about(seen, "Colour and meaning of a light are not entered", Severity.ADVICE)


def _is_light(item: PlacedItem) -> bool:
    """Whether it has a light's meaning, or is a lamp to be told by and not to read by."""
    tells = item.cutout.family == LAMPS and Function.INSTRUMENT_LIGHTING not in item.shows
    return item.item.light is not None or tells


def colour_fits(light: Light) -> bool:
    """Whether a light has the colour of its meaning; any other meaning has none of the three colours."""
    wanted = COLOURS.get(light.meaning)
    return light.colour is wanted if wanted else light.colour not in COLOURS.values()


def _told(light: Light) -> str:
    return "something else" if light.meaning is LightMeaning.OTHER else f"{light.meaning}"


def _about(seen: Seen, problem: str, severity: Severity) -> Finding:
    return Finding(
        rule="light-colour",
        severity=severity,
        problem=problem,
        items=(seen.id,),
        plate=seen.plate.id,
        where=(seen.item.centre,),
        source=_CFR_1322,
    )


@rule(
    "instrument-lights",
    title="Instrument lights for night",
    measures="whether an option for night flight has instrument lights; a dome light is none",
    looks_at=TheWhole(),
    severities=(Severity.WARNING,),
    source=_CFR_1381,
)
def instrument_lights(laid: Layout) -> Iterator[Finding]:
    planning = laid.project.planning
    flight = laid.option.planning.flight or planning.flight
    if flight not in _NIGHT or Function.INSTRUMENT_LIGHTING in planning.fitted or _has_lights(laid):
        return
    plate = laid.plates[0].plate.id
    yield Finding(
        rule="instrument-lights",
        severity=Severity.WARNING,
        problem="No instrument lights for a flight at night",
        items=(plate,),
        plate=plate,
        source=_CFR_1381,
    )


def _has_lights(laid: Layout) -> bool:
    units = {unit.name: unit for unit in laid.project.units}
    provided = [units[item.unit].provides for item in laid.option.items if item.unit in units]
    fitted = any(Function.INSTRUMENT_LIGHTING in seen.item.shows for seen in seen_items(laid))
    return fitted or any(Function.INSTRUMENT_LIGHTING in functions for functions in provided)
