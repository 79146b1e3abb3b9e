"""What an owner reads about an instrument: from what its unit does in this option, from its name for a control."""

import re
from collections.abc import Callable
from typing import Final

from panelcad.drawing.faces.kind import FaceKind, reading
from panelcad.model.function import Function

_SCREENS: Final = {"flight display", "course display", "engine display", "engine cluster"}
_BOXES: Final = {
    "map display", "navigator", "com", "nav com", "nav", "adf", "dme", "transponder", "audio panel", "autopilot"
}  # fmt: skip
_DOES: Final = {
    Function.COM: "Talks with the tower and with other aircraft by radio.",
    Function.NAV: "Follows ground beacons and landing aids by radio.",
    Function.GLIDE_SLOPE: "Shows the height to fly on an instrument landing.",
    Function.ADF: "Points to radio beacons.",
    Function.DME: "Shows the distance to a ground station.",
    Function.GPS_NAVIGATION: "Finds the way by satellite.",
    Function.APPROACH_GUIDANCE: "Leads down to the runway by satellite.",
    Function.MOVING_MAP: "Shows a map that moves with the aircraft.",
    Function.TERRAIN: "Warns of high ground.",
    Function.TRAFFIC: "Shows other aircraft.",
    Function.WEATHER: "Shows the weather.",
    Function.LIGHTNING: "Shows lightning.",
    Function.AUDIO_SELECTION: "Chooses which radio is heard and which one speaks.",
    Function.INTERCOM: "Lets all on board talk to each other.",
    Function.MARKER_BEACON: "Lights up over the beacons before the runway.",
    Function.TRANSPONDER: "Answers radar with the aircraft's code.",
    Function.ALTITUDE_REPORTING: "Tells radar the height.",
    Function.ADSB_OUT: "Tells other aircraft where this one is (ADS-B out).",
    Function.ADSB_IN: "Receives where other aircraft are (ADS-B in).",
    Function.AUTOPILOT_ROLL: "Flies heading and course as set here.",
    Function.AUTOPILOT_PITCH: "Flies altitude and climb as set here.",
    Function.AUTOPILOT_TRIM: "Trims by itself.",
    Function.FLIGHT_DIRECTOR: "Shows on the attitude display how to fly what is set here.",
}


def instrument_words(kind: FaceKind, name: str, does: frozenset[Function] | None) -> str:
    """What stands in the page under an instrument's name.

    `does` are the functions that its unit gives in this option; None where no unit of equipment is entered for it, so
    that only the kind of face is known.
    """
    if kind.name in _CONTROLS:
        return _CONTROLS[kind.name](name)
    if does is None or kind.name not in _SCREENS | _BOXES:
        return reading(kind, name)
    if not does:
        return "Does nothing yet in this option: something it needs is missing."
    if kind.name in _SCREENS:
        return f"On one screen: {', '.join(function for function in Function if function in does)}."
    return " ".join(words for function, words in _DOES.items() if function in does) or reading(kind, name)


def _switch(name: str) -> str:
    if _ends(name, "selector"):
        return f"Sets {_the(_without(name, 'selector'))}."
    return f"Switches {_the(_without(name, 'toggle switch', 'rocker switch', 'switch'))} on and off."


def _rotary(name: str) -> str:
    if _ends(name, "dimmer"):
        return f"Dims {_the(_without(name, 'dimmer'))}."
    return f"Sets {_the(_without(name, 'selector', 'knob', 'control'))}."


def _breaker(name: str) -> str:
    rating = re.search(r",\s*([\d.,]+\s*A)$", name)
    plain = name[: rating.start()] if rating else name
    amperes = f" ({rating[1]})" if rating else ""
    return (
        f"Protects the wires of {_the(_without(plain, 'circuit breaker', 'breaker'))}{amperes}; pops out on overload."
    )


def _lamp(name: str) -> str:
    return f"Lights up for {_small(_without(name, 'lamp', 'light'))}."


def _button(name: str) -> str:
    return f"Push for {_small(_without(name, 'push button', 'button'))}."


def _legend_button(name: str) -> str:
    return f"Shows and sets {_the(_without(name, 'push button', 'button'))}."


def _pull(name: str) -> str:
    return f"Push and pull for {_the(_without(name, 'control', 'knob'))}."


_CONTROLS: Final[dict[str, Callable[[str], str]]] = {
    "toggle": _switch,
    "rocker": _switch,
    "rotary": _rotary,
    "breaker": _breaker,
    "lamp": _lamp,
    "push": _button,
    "legend push": _legend_button,
    "pull": _pull,
}


def _ends(name: str, word: str) -> bool:
    return name.casefold().endswith(f" {word}")


def _without(name: str, *words: str) -> str:
    """The name without the word for the control at its end."""
    for word in words:
        if _ends(name, word):
            return name[: -len(word) - 1].rstrip(" ,")
    return name


def _small(name: str) -> str:
    """The first letter small; abbreviations such as COM stay."""
    return name if name[1:2].isupper() else name[:1].lower() + name[1:]


def _the(name: str) -> str:
    """With an article; abbreviations, what has a number, and names that begin with an article have none."""
    small = _small(name)
    return small if small[:1].isupper() or small[-1:].isdigit() or small.startswith("the ") else f"the {small}"
