"""Actions on files."""

from typing import Final

from PySide6.QtGui import QKeySequence

from panelcad.desktop.actions import Action
from panelcad.desktop.window_parts import Parts
from panelcad.errors import PanelcadError
from panelcad.model.project import Project

_Keys = QKeySequence.StandardKey


def _new(parts: Parts) -> None:
    from panelcad.desktop.dialogs.new_project import ask_for_project  # noqa: PLC0415 - a dialog loads when it is opened

    panel = ask_for_project(parts.window, parts.bench.settings)
    if panel is not None and parts.desk.new(_judged_by_the_shop(parts, panel.project)) and panel.next_action:
        parts.window.menus.run(panel.next_action)


def _judged_by_the_shop(parts: Parts, project: Project) -> Project:
    """With the limits that the preferences name, or with the usual ones and a word on it where they cannot be read."""
    file = parts.bench.settings.limits_file
    if file is None:
        return project
    from panelcad.checks.profile_file import read_profile  # noqa: PLC0415 - the rules load with the first check
    from panelcad.editing.limits import with_limits  # noqa: PLC0415 - as above

    try:
        return with_limits(project, read_profile(file))
    except PanelcadError as fault:
        parts.asking.tell("The limits cannot be used", f"{fault}\n\nThe panel begins with the program's own limits.")
        return project


def _open(parts: Parts) -> None:
    parts.desk.ask_and_open()


def _save(parts: Parts) -> None:
    parts.desk.save()


def _save_as(parts: Parts) -> None:
    parts.desk.save_as()


def _release(parts: Parts) -> None:
    from panelcad.desktop.dialogs.release import release_option  # noqa: PLC0415 - the writers load when they are needed

    release_option(parts)


def _take_in(parts: Parts) -> None:
    from panelcad.desktop.dialogs.take_in import take_in_drawing  # noqa: PLC0415 - as above

    take_in_drawing(parts)


def _revise(parts: Parts) -> None:
    from panelcad.desktop.dialogs.revision import revise_option  # noqa: PLC0415 - as above

    revise_option(parts)


def _verify(parts: Parts) -> None:
    from panelcad.desktop.dialogs.verifying import verify_paper  # noqa: PLC0415 - as above

    verify_paper(parts)


def _close(parts: Parts) -> None:
    parts.window.show_start_page()


def _quit(parts: Parts) -> None:
    parts.window.close()


def has_panel(parts: Parts) -> bool:
    """A project is on the screen."""
    return parts.window.shows_panel


def _is_locked(parts: Parts) -> bool:
    """The option on the screen is released and may not change."""
    document = parts.bench.document
    return has_panel(parts) and bool(document.project.locked_revision(document.option_id))


ACTIONS: Final = (
    Action("file.new", "&New…", "&File", 0, _new, _Keys.New, icon="new", on_bar=True, hint="Begin a project"),
    Action("file.open", "&Open…", "&File", 0, _open, _Keys.Open, icon="open", on_bar=True, hint="Open a project file"),
    Action(
        "file.take-in",
        "Take in a dra&wing…",
        "&File",
        0,
        _take_in,
        None,
        has_panel,
        hint="Make the largest contour of a DXF the outline of this plate",
    ),
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
    Action(
        "file.revision",
        "Open a new re&vision…",
        "&File",
        2,
        _revise,
        None,
        _is_locked,
        hint="Let a released option change again, toward its next revision",
    ),
    Action(
        "file.verify",
        "&Verify a cutting file or paper…",
        "&File",
        2,
        _verify,
        None,
        has_panel,
        hint="Hold a DXF, another paper, a release's folder or a code against the project",
    ),
    Action("file.start", "S&tart page", "&File", 3, _close, "Ctrl+W", has_panel),
    Action("file.quit", "&Quit", "&File", 3, _quit, "Ctrl+Q"),
)
