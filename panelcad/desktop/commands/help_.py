"""Actions that explain."""

from typing import Final

from PySide6.QtGui import QKeySequence

from panelcad.desktop.actions import Action
from panelcad.desktop.help.ask import link_for
from panelcad.desktop.help.pages import KEYS
from panelcad.desktop.window_parts import Parts
from panelcad.errors import PanelcadError


def _help(parts: Parts) -> None:
    open_page(parts, link_for(parts))


def _keys(parts: Parts) -> None:
    open_page(parts, KEYS)


def open_page(parts: Parts, link: str) -> None:
    """Show a page of help, or a section of it, by its link from docs/."""
    from panelcad.desktop.help.window import open_help  # noqa: PLC0415 - help loads when it is first asked for

    try:
        open_help(link, parts.window)
    except (PanelcadError, OSError) as fault:
        parts.asking.tell("Help cannot be shown", str(fault))


def _cautions(parts: Parts) -> None:
    from panelcad.desktop.dialogs.cautions import show_cautions  # noqa: PLC0415

    show_cautions(parts.window)


def _find(parts: Parts) -> None:
    from panelcad.desktop.dialogs.command_search import find_action  # noqa: PLC0415

    find_action(parts)


ACTIONS: Final = (
    Action(
        "help.here",
        "&Help on this",
        "&Help",
        0,
        _help,
        QKeySequence.StandardKey.HelpContents,
        icon="help",
        hint="Explains the tool in hand, or the pane or finding one is at",
    ),
    Action(
        "help.find",
        "&Find an action…",
        "&Help",
        0,
        _find,
        "Ctrl+Space",
        icon="search",
        hint="By words; panes and help too",
    ),
    Action("help.shortcuts", "&Keys", "&Help", 0, _keys, hint="Every key and what it does"),
    Action("help.cautions", "&Cautions", "&Help", 0, _cautions),
)
