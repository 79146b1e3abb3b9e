"""Which face an item gets: from its cutout's family, else from the words of its name, its unit and its cutout."""

import re
from collections.abc import Callable
from dataclasses import dataclass
from typing import Final

from panelcad.drawing.display import Node
from panelcad.drawing.faces import (
    airspeed,
    altimeter,
    attitude,
    clock,
    console,
    course,
    engine_display,
    flight_display,
    hardware,
    heading,
    navigator,
    plates,
    radar,
    radio,
    turn,
    vertical_speed,
)
from panelcad.drawing.faces import engine_gauges as engine
from panelcad.drawing.faces.frame import Frame
from panelcad.model.cutout import Control, Cutout
from panelcad.model.equipment import EquipmentUnit
from panelcad.model.flight import Flight
from panelcad.model.project import Item

Draw = Callable[[Frame, Flight], tuple[Node, ...]]


@dataclass(frozen=True)
class FaceKind:
    """One kind of face: its name, the words that ask for it, how it is drawn, and what an owner reads about it.

    `square_draw` is used where the bezel is about as wide as high. A labelled face shows the item's name.
    """

    name: str
    words: tuple[str, ...]
    draw: Draw
    reads: str
    square_draw: Draw | None = None

    @property
    def labelled(self) -> bool:
        return self.name in _LABELLED

    def drawn_for(self, frame: Frame) -> Draw:
        square = abs(frame.width - frame.height) <= 0.12 * max(frame.width, frame.height)
        return self.square_draw if self.square_draw is not None and square else self.draw


_E = engine
KINDS: Final[tuple[FaceKind, ...]] = (
    FaceKind(
        "airspeed",
        ("airspeed", "airspeed indicator", "asi"),
        airspeed.draw,
        "How fast the aircraft moves through the air, in knots. White is the range for flaps, green the normal range, "
        "yellow for smooth air only, the red line is never exceeded.",
    ),
    FaceKind(
        "altimeter",
        ("altimeter", "encoding altimeter", "altitude"),
        altimeter.draw,
        "Height above sea level in feet: the long pointer reads hundreds, the short one thousands. "
        "The knob sets the local air pressure.",
    ),
    FaceKind(
        "attitude",
        ("attitude", "attitude indicator", "artificial horizon", "horizon", "gyro horizon"),
        attitude.draw,
        "Whether the nose is up or down and the wings are level, without looking outside.",
    ),
    FaceKind(
        "turn",
        ("turn coordinator", "turn and slip indicator", "turn and bank", "rate of turn", "wing leveller"),
        turn.draw,
        "How fast the aircraft turns, and with the ball whether the turn is clean.",
    ),
    FaceKind(
        "heading",
        ("heading indicator", "directional gyro", "heading", "dg"),
        heading.draw,
        "Which way the nose points. A gyro keeps it steady; it is set to the compass from time to time.",
    ),
    FaceKind(
        "bearing",
        ("bearing indicator", "bearing", "adf indicator", "rmi"),
        heading.draw_bearing,
        "Which way the chosen radio beacon lies.",
    ),
    FaceKind(
        "vertical speed",
        ("vertical speed", "vertical speed indicator", "rate of climb", "climb indicator", "vsi"),
        vertical_speed.draw,
        "How fast the aircraft climbs or sinks, in hundreds of feet a minute.",
    ),
    FaceKind(
        "course deviation",
        ("course deviation", "course indicator", "cdi", "omnirange indicator", "vor indicator"),
        course.draw,
        "Whether the chosen course lies left or right, and on an approach whether the glide path lies above or below.",
    ),
    FaceKind(
        "course display",
        (
            "heading and course display",
            "heading and course indicator",
            "flight display heading",
            "heading display",
            "hsi",
        ),
        flight_display.draw_heading_display,
        "Heading, course and deviation in one picture, as if seen from above.",
    ),
    FaceKind(
        "tachometer",
        ("tachometer", "rpm", "engine speed", "tach"),
        _E.draw(_E.TACHOMETER),
        "Revolutions of the engine a minute.",
    ),
    FaceKind(
        "manifold and fuel flow",
        ("manifold pressure and fuel flow", "manifold pressure fuel flow"),
        _E.draw_pair(_E.MANIFOLD, _E.FUEL_FLOW),
        "How much power is set (left) and how much fuel it takes an hour (right).",
    ),
    FaceKind("manifold", ("manifold pressure", "manifold", "boost"), _E.draw(_E.MANIFOLD), "How much power is set."),
    FaceKind("fuel flow", ("fuel flow",), _E.draw(_E.FUEL_FLOW), "How much fuel the engine takes an hour."),
    FaceKind(
        "oil",
        ("oil pressure and temperature", "oil pressure temperature"),
        _E.draw_pair(_E.OIL_TEMPERATURE, _E.OIL_PRESSURE),
        "Temperature (left) and pressure (right) of the engine's oil.",
    ),
    FaceKind(
        "oil temperature", ("oil temperature", "oil temp"), _E.draw(_E.OIL_TEMPERATURE), "Temperature of the oil."
    ),
    FaceKind("oil pressure", ("oil pressure", "oil press"), _E.draw(_E.OIL_PRESSURE), "Pressure of the oil."),
    FaceKind("fuel pressure", ("fuel pressure",), _E.draw(_E.FUEL_PRESSURE), "Pressure of the fuel at the engine."),
    FaceKind(
        "fuel",
        ("fuel quantity", "fuel gauge", "fuel", "fuel level"),
        _E.draw_pair(_E.FUEL_LEFT, _E.FUEL_RIGHT),
        "How much fuel is in the left and the right tank.",
    ),
    FaceKind(
        "fuel left", ("fuel left", "fuel quantity left", "left fuel"), _E.draw(_E.FUEL_LEFT), "Fuel in the left tank."
    ),
    FaceKind(
        "fuel right",
        ("fuel right", "fuel quantity right", "right fuel"),
        _E.draw(_E.FUEL_RIGHT),
        "Fuel in the right tank.",
    ),
    FaceKind(
        "cylinder and exhaust",
        ("cylinder head and exhaust", "cylinder exhaust", "cylinder head and exhaust gas temperature"),
        _E.draw_pair(_E.EXHAUST, _E.CYLINDER),
        "How hot the exhaust gas and the cylinder heads are: for setting the mixture and sparing the engine.",
    ),
    FaceKind(
        "cylinder",
        ("cylinder head", "cht", "cylinder temperature"),
        _E.draw(_E.CYLINDER),
        "How hot the cylinder heads are.",
    ),
    FaceKind("exhaust", ("exhaust gas", "exhaust", "egt"), _E.draw(_E.EXHAUST), "How hot the exhaust gas is."),
    FaceKind(
        "load", ("accelerometer", "load factor"), _E.draw(_E.LOAD), "How hard the aircraft is pulled or pushed, in g."
    ),
    FaceKind("coolant", ("coolant", "water temperature"), _E.draw(_E.COOLANT), "Temperature of the coolant."),
    FaceKind(
        "suction",
        ("suction", "vacuum gauge", "gyro pressure"),
        _E.draw(_E.SUCTION),
        "Whether the pump drives the gyros.",
    ),
    FaceKind(
        "volts and amperes",
        ("voltmeter and ammeter", "volts and amperes", "volt amp"),
        _E.draw_pair(_E.VOLTS, _E.AMPERES),
        "Voltage of the bus and current into the battery.",
    ),
    FaceKind("voltmeter", ("voltmeter", "volts", "voltage"), _E.draw(_E.VOLTS), "Voltage of the bus."),
    FaceKind(
        "ammeter", ("ammeter", "amperes", "load meter"), _E.draw(_E.AMPERES), "Current into or out of the battery."
    ),
    FaceKind(
        "outside air",
        ("outside air", "outside air temperature", "oat"),
        _E.draw(_E.OUTSIDE_AIR),
        "Temperature of the air outside: ice, performance.",
    ),
    FaceKind(
        "carburettor",
        ("carburettor", "carburetor", "carb temperature"),
        _E.draw(_E.CARBURETTOR),
        "Temperature in the carburettor; yellow is where ice forms.",
    ),
    FaceKind(
        "engine cluster",
        ("engine cluster", "cluster gauge", "engine instruments", "cluster"),
        _E.draw_four((_E.OIL_TEMPERATURE, _E.OIL_PRESSURE, _E.FUEL_LEFT, _E.FUEL_RIGHT)),
        "Oil temperature and pressure, and fuel in both tanks, in one place.",
    ),
    FaceKind(
        "engine display",
        ("engine display", "engine monitor", "round engine monitor", "engine and map"),
        engine_display.draw,
        "Power, temperatures, pressures, fuel and each cylinder on one screen; it warns before a limit is reached.",
        engine_display.draw_round,
    ),
    FaceKind(
        "flight display",
        (
            "flight display",
            "round flight display",
            "standby display",
            "backup flight display",
            "primary display",
            "efis",
        ),
        flight_display.draw,
        "Attitude, airspeed, altitude, heading and course on one screen.",
        flight_display.draw_round,
    ),
    FaceKind(
        "map display",
        ("map display", "map and engine display", "multifunction display", "map"),
        flight_display.draw_map,
        "A map that moves with the aircraft, with the route, airfields and airspace.",
    ),
    FaceKind(
        "navigator",
        ("navigator", "compact navigator", "large navigator", "gps navigator", "gps"),
        navigator.draw,
        "Finds the way by satellite: route, map and approaches, in many units with a COM and a NAV radio built in.",
    ),
    FaceKind(
        "com",
        ("com", "com radio", "transceiver", "communication radio", "round com"),
        radio.draw_com,
        "The radio for talking to the tower and to other aircraft: the frequency in use, and the next one.",
    ),
    FaceKind(
        "nav com",
        ("nav com", "nav/com", "navcom", "radio control head"),
        radio.draw_nav_com,
        "Two radios in one: COM for talking, NAV for following ground beacons and landing aids.",
    ),
    FaceKind(
        "nav",
        ("nav", "nav receiver", "navigation receiver", "omnirange"),
        radio.draw_nav,
        "The receiver for ground beacons and landing aids.",
    ),
    FaceKind(
        "adf",
        ("adf", "adf receiver", "beacon receiver", "radio compass"),
        radio.draw_adf,
        "The receiver for radio beacons.",
    ),
    FaceKind(
        "dme", ("dme", "distance measuring"), radio.draw_dme, "Distance to a ground station, and the speed toward it."
    ),
    FaceKind(
        "transponder",
        ("transponder", "mode s", "squawk"),
        radio.draw_transponder,
        "Answers radar with the aircraft's code and height, and with ADS-B tells other aircraft where it is.",
    ),
    FaceKind(
        "audio panel",
        ("audio panel", "audio", "intercom", "audio selector"),
        console.draw_audio,
        "Chooses which radio is heard and which one speaks, and lets all on board talk to each other.",
    ),
    FaceKind(
        "autopilot",
        ("autopilot", "autopilot controller", "flight director"),
        console.draw_autopilot,
        "Flies heading, course, altitude and climb as set here.",
    ),
    FaceKind(
        "annunciators",
        ("annunciator panel", "annunciators", "warning panel"),
        console.draw_annunciators,
        "Lights up what needs attention: red at once, amber soon.",
    ),
    FaceKind(
        "weather radar",
        ("weather radar", "radar display", "radar"),
        radar.draw,
        "Rain ahead, from the aircraft's own radar: green light, yellow moderate, red heavy.",
    ),
    FaceKind("clock", ("clock", "chronometer"), plates.draw_meter, "The time.", clock.draw),
    FaceKind("digital clock", ("digital clock",), plates.draw_meter, "The time and a timer.", plates.draw_clock),
    FaceKind(
        "hour meter",
        ("hour meter", "hours", "hobbs"),
        plates.draw_meter,
        "How many hours the engine has run.",
        _E.draw_hours,
    ),
    FaceKind(
        "compass",
        ("compass", "magnetic compass", "vertical card compass"),
        clock.draw_compass,
        "The magnetic direction, with nothing that can fail.",
    ),
    FaceKind(
        "slip", ("slip indicator", "inclinometer", "slip"), plates.draw_slip, "Whether the aircraft slips sideways."
    ),
    FaceKind(
        "gear",
        ("landing gear", "gear position", "gear indicator"),
        plates.draw_gear,
        "Whether the wheels are down and locked.",
    ),
    FaceKind(
        "elt",
        ("elt", "elt switch", "emergency locator"),
        plates.draw_small_switch_plate,
        "Arms and tests the emergency locator transmitter.",
    ),
    FaceKind(
        "toggle", ("toggle switch", "toggle breaker", "switch"), hardware.draw_toggle, "Switches {label} on and off."
    ),
    FaceKind("rocker", ("rocker switch",), hardware.draw_rocker, "Switches {label} on and off."),
    FaceKind("rotary", ("rotary", "dimmer", "selector", "potentiometer"), hardware.draw_rotary, "Sets {label}."),
    FaceKind("push", ("push button",), hardware.draw_push, "Push for {label}."),
    FaceKind(
        "legend push", ("lit legend push button", "legend button"), hardware.draw_legend_push, "Shows and sets {label}."
    ),
    FaceKind(
        "breaker",
        ("breaker", "circuit breaker"),
        hardware.draw_breaker,
        "Protects the wires of {label}; pops out on overload.",
    ),
    FaceKind("jack", ("jack", "headset socket", "headset"), hardware.draw_jack, "Headsets plug in here."),
    FaceKind(
        "outlet", ("outlet", "charging", "power socket", "usb"), hardware.draw_outlet, "Charges tablets and telephones."
    ),
    FaceKind("lamp", ("lamp", "light", "post light"), hardware.draw_lamp, "Lights up for {label}."),
    FaceKind("vent", ("vent",), hardware.draw_vent, "Fresh air."),
    FaceKind(
        "key switch",
        ("key switch", "ignition"),
        hardware.draw_key_switch,
        "Chooses the magnetos and starts the engine.",
    ),
    FaceKind(
        "pull",
        ("throttle", "mixture", "propeller control", "control"),
        hardware.draw_pull,
        "Push and pull for {label}.",
    ),
    FaceKind("connector", ("d-subminiature", "connector"), plates.draw_connector, "A connector for the workshop."),
    FaceKind("coaxial", ("coaxial",), plates.draw_coaxial, "A coaxial connector."),
    FaceKind("placard", ("placard",), plates.draw_placard, "A placard."),
    FaceKind("rail panel", ("rail panel",), plates.draw_rail_panel, "A control panel."),
    FaceKind("meter", ("panel instrument", "panel meter"), plates.draw_meter, "Shows a value in figures."),
    FaceKind("blank", ("blank", "plug"), plates.draw_blank, "Covers a place that is not used."),
    FaceKind("indicator", ("indicator", "clamp-mounted instrument"), plates.draw_indicator, "{label}."),
    FaceKind("unit", ("rack unit", "radio opening"), plates.draw_plain, "{label}."),
)

BY_NAME: Final = {kind.name: kind for kind in KINDS}
_LABELLED: Final = frozenset(
    {"com", "nav", "nav com", "push", "legend push", "breaker", "lamp", "pull", "placard", "rail panel", "meter"}
    | {"clock", "digital clock", "hour meter", "indicator", "unit"}
)
HARDWARE: Final = {
    "blanks": ("blank",),
    "breakers": ("breaker", "toggle"),
    "coaxial-connectors": ("coaxial",),
    "d-subminiature": ("connector",),
    "engine-controls": ("pull",),
    "jacks": ("jack",),
    "key-switches": ("key switch",),
    "lamps": ("lamp", "legend push"),
    "outlets": ("outlet",),
    "placards": ("placard",),
    "push-buttons": ("push",),
    "rocker-switches": ("rocker",),
    "rotary-controls": ("rotary",),
    "toggle-switches": ("toggle",),
    "vents": ("vent",),
}
"""Families whose cutout says what the thing is; an item's name there says what it is for ('COM 1' on a breaker)."""
_CONTROLS: Final[dict[Control | None, str]] = {
    Control.TOGGLE: "toggle",
    Control.ROCKER: "rocker",
    Control.PUSH_BUTTON: "push",
    Control.PUSH_PULL: "pull",
    Control.KEY: "key switch",
}
_FALLBACKS: Final = {"indicator", "unit", "toggle", "push", "lamp", "connector", "pull", "meter", "placard"}
"""Kinds whose words are too general to be found in the name of something else."""


def kind_of(item: Item, cutout: Cutout, unit: EquipmentUnit | None = None) -> FaceKind:
    """The face for an item."""
    allowed = HARDWARE.get(cutout.family)
    if allowed is not None:
        found = _best(cutout.title, tuple(BY_NAME[name] for name in allowed))
        return found or BY_NAME[allowed[0]]
    specific = tuple(kind for kind in KINDS if kind.name not in _FALLBACKS)
    titles = (item.name, unit.title if unit else "", cutout.title)
    for text in (*titles, " ".join(cutout.words)):
        found = _best(text, specific)
        if found is not None:
            return found
    if len(cutout.shows) == 1 and (shown := _best(cutout.shows[0].value, specific)) is not None:
        return shown
    if cutout.control in _CONTROLS:
        return BY_NAME[_CONTROLS[cutout.control]]
    return _best(cutout.title, KINDS) or BY_NAME["indicator"]


def _best(text: str, kinds: tuple[FaceKind, ...]) -> FaceKind | None:
    """The kind with the longest of its words in the text."""
    plain = f" {_plain(text)} "
    found = [(len(word), kind) for kind in kinds for word in kind.words if f" {_plain(word)} " in plain]
    return max(found, key=lambda pair: pair[0])[1] if found else None


def _plain(text: str) -> str:
    """Small letters and digits with single blanks between."""
    return " ".join(re.findall(r"[a-z0-9]+", text.casefold()))


def reading(kind: FaceKind, label: str) -> str:
    """What an owner reads about an instrument."""
    return kind.reads.format(label=label)
