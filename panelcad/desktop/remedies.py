"""Findings that no move cures: a figure is missing, and an action asks for it."""

from typing import Final

from panelcad.desktop.actions import Action, all_actions

_ASKED_BY: Final = {"eye-point": "panel.eye"}
"""The action by the rule's id."""


def asked_by(rule_id: str) -> Action | None:
    """What asks for the figure that this rule misses; None for a rule that misses none."""
    wanted = _ASKED_BY.get(rule_id)
    return next((action for action in all_actions() if action.id == wanted), None)


def where_asked(action: Action) -> str:
    """In words that lead there through the menus."""
    return f"It is entered under {action.menu.replace('&', '')}, {action.plain_title}."
