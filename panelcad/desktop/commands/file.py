"""Actions on files."""

from typing import Final

from PySide6.QtGui import QKeySequence

from panelcad.desktop.actions import Action
from panelcad.desktop.window_parts import Parts

_Keys = QKeySequence.StandardKey


def _new(parts: Parts) -> None:
    from panelcad.desktop.dialogs.new_project import ask_for_project  # noqa: PLC0415 - a dialog loads when it is opened

    project = ask_for_project(parts.window, parts.bench.settings)
    if project is not None:
        parts.desk.new(project)


def _open(parts: Parts) -> None:
    parts.desk.ask_and_open()


def _save(parts: Parts) -> None:
    parts.desk.save()


def _save_as(parts: Parts) -> None:
    parts.desk.save_as()


def _release(parts: Parts) -> None:
    from panelcad.desktop.dialogs.release import release_option  # noqa: PLC0415 - the writers load when they are needed

    release_option(parts)


def _close(parts: Parts) -> None:
    parts.window.show_start_page()


def _quit(parts: Parts) -> None:
    parts.window.close()


def has_panel(parts: Parts) -> bool:
    """A project is on the screen."""
    return parts.window.shows_panel


ACTIONS: Final = (
    Action("file.new", "&New…", "&File", 0, _new, _Keys.New, icon="new", on_bar=True, hint="Begin a project"),
    Action("file.open", "&Open…", "&File", 0, _open, _Keys.Open, icon="open", on_bar=True, hint="Open a project file"),
    Action("file.save", "&Save", "&File", 1, _save, _Keys.Save, has_panel, icon="save", on_bar=True),
    Action("file.save-as", "Save &as…", "&File", 1, _save_as, "Ctrl+Shift+S", has_panel),
    Action(
        "file.release",
        "&Release to the machinist…",
        "&File",
        2,
        _release,
        "Ctrl+R",
        has_panel,
        icon="release",
        hint="Write the cutting files and papers of this option",
        on_bar=True,
    ),
    Action("file.start", "S&tart page", "&File", 3, _close, "Ctrl+W", has_panel),
    Action("file.quit", "&Quit", "&File", 3, _quit, "Ctrl+Q"),
)
