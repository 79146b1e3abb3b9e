"""Findings that no move cures: a figure is missing, and an action asks for it."""

from typing import Final

from panelcad.desktop.actions import Action, all_actions

_ASKED_BY: Final = {"eye-point": "panel.eye"}
"""The action by the rule's id."""


_AMONG_LIMITS: Final = (
    "It is entered among the limits: File, Write the limits gives a file of all of them; File, Take a shop's limits "
    "reads it."
)
_WITH_THE_CUTOUT: Final = "It is entered in the cutout's file: Help, Cutouts says under which name."
_MISSING: Final = {
    "machine-bed": _AMONG_LIMITS,
    "stock": _AMONG_LIMITS,
    "letter-stroke": _AMONG_LIMITS,
    "bundle-bend": _WITH_THE_CUTOUT,
    "hose-bend": _WITH_THE_CUTOUT,
    "compass": _WITH_THE_CUTOUT,
    "clamp-adjuster": _WITH_THE_CUTOUT,
    "tray-support": "A tray support is entered behind the panel: Panel, Draw an obstacle (Shift+B), of that kind.",
}
"""Where what a rule misses is entered, by the rule's id; nothing for what is entered nowhere."""


def where_entered(rule_id: str) -> str:
    """In words, where the figure is entered without which this rule cannot judge; '' where there is no such place."""
    return _MISSING.get(rule_id, "")


def asked_by(rule_id: str) -> Action | None:
    """What asks for the figure that this rule misses; None for a rule that misses none."""
    wanted = _ASKED_BY.get(rule_id)
    return next((action for action in all_actions() if action.id == wanted), None)


def where_asked(action: Action) -> str:
    """In words that lead there through the menus."""
    return f"It is entered under {action.menu.replace('&', '')}, {action.plain_title}."
