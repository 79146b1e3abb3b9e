"""Actions that explain."""

from typing import Final

from PySide6.QtGui import QKeySequence

from panelcad.desktop.actions import Action
from panelcad.desktop.window_parts import Parts


def _shortcuts(parts: Parts) -> None:
    from panelcad.desktop.dialogs.shortcuts import show_shortcuts  # noqa: PLC0415 - a dialog loads when it is opened

    show_shortcuts(parts.window)


def _cautions(parts: Parts) -> None:
    from panelcad.desktop.dialogs.cautions import show_cautions  # noqa: PLC0415

    show_cautions(parts.window)


def _find(parts: Parts) -> None:
    from panelcad.desktop.dialogs.command_search import find_action  # noqa: PLC0415

    find_action(parts.window.menus, parts.window)


ACTIONS: Final = (
    Action("help.find", "&Find an action…", "&Help", 0, _find, "Ctrl+Space", icon="search", hint="By words"),
    Action(
        "help.shortcuts",
        "&Keyboard shortcuts",
        "&Help",
        0,
        _shortcuts,
        QKeySequence.StandardKey.HelpContents,
        icon="help",
    ),
    Action("help.cautions", "&Cautions", "&Help", 0, _cautions),
)
