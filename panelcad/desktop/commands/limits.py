"""Actions on the limits that the project is judged by."""

from pathlib import Path
from typing import Final

from PySide6.QtWidgets import QFileDialog

from panelcad.desktop.actions import Action
from panelcad.desktop.asking import LIMITS_FILES
from panelcad.desktop.commands.file import has_panel
from panelcad.desktop.window_parts import Parts


def _take(parts: Parts) -> None:
    name, _ = QFileDialog.getOpenFileName(parts.window, "Take a shop's limits", str(parts.desk.folder()), LIMITS_FILES)
    if name:
        take_limits(parts, Path(name))


def _write(parts: Parts) -> None:
    suggested = str(parts.desk.folder() / "limits.toml")
    name, _ = QFileDialog.getSaveFileName(parts.window, "Write the limits", suggested, LIMITS_FILES)
    if name:
        write_limits(parts, Path(name))


def take_limits(parts: Parts, file: Path) -> None:
    """Judge the project by the limits in this file: one step that can be undone."""
    from panelcad.checks.profile_file import read_profile  # noqa: PLC0415 - the rules load with the first check
    from panelcad.editing.limits import with_limits  # noqa: PLC0415 - as above

    parts.bench.edit("Take limits", lambda project, _: with_limits(project, read_profile(file)))


def write_limits(parts: Parts, file: Path) -> None:
    """Write all limits, with their sources, to a file that a person can edit."""
    from panelcad.checks.profile_file import profile_text  # noqa: PLC0415 - as above
    from panelcad.store.atomic import write_atomically  # noqa: PLC0415 - as above

    project = parts.bench.document.project
    try:
        write_atomically(file, profile_text(project.profile, project.unit).encode())
    except OSError as fault:
        parts.asking.tell("Not written", f"{file} cannot be written ({fault.strerror}).")


FILE_ACTIONS: Final = (
    Action(
        "file.take-limits",
        "Take a shop's &limits…",
        "&File",
        2,
        _take,
        None,
        has_panel,
        hint="Judge this project by the limits in a TOML file",
    ),
    Action(
        "file.write-limits",
        "&Write the limits…",
        "&File",
        2,
        _write,
        None,
        has_panel,
        hint="Write all limits with their sources to a TOML file, to edit there",
    ),
)
