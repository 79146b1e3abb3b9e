"""Which face an item gets: from its cutout's family, else from the words of its name, its unit and its cutout."""

import re
from typing import Final

from panelcad.drawing.faces import kinds_avionics, kinds_engine, kinds_flight, kinds_hardware
from panelcad.drawing.faces.kind import FaceKind
from panelcad.model.cutout import Control, Cutout
from panelcad.model.equipment import EquipmentUnit
from panelcad.model.project import Item

KINDS: Final[tuple[FaceKind, ...]] = (
    *kinds_flight.KINDS,
    *kinds_engine.KINDS,
    *kinds_avionics.KINDS,
    *kinds_hardware.KINDS,
)
BY_NAME: Final = {kind.name: kind for kind in KINDS}
HARDWARE: Final = {
    "blanks": ("blank",),
    "breakers": ("breaker", "toggle"),
    "coaxial-connectors": ("coaxial",),
    "d-subminiature": ("connector",),
    "engine-controls": ("pull",),
    "jacks": ("jack",),
    "key-switches": ("key switch",),
    "lamps": ("lamp", "legend push"),
    "outlets": ("outlet", "power socket"),
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
