"""Actions of planning: the aircraft's data, the owner's comparison, the shop's papers."""

from collections.abc import Callable
from datetime import UTC, datetime
from pathlib import Path
from typing import Final

from panelcad.desktop.actions import Action
from panelcad.desktop.commands.file import has_panel
from panelcad.desktop.long_work import Stopped, Tell, done_beside
from panelcad.desktop.window_parts import Parts
from panelcad.errors import PanelcadError


def _silent(_words: str) -> None:
    """Nobody waits for it."""


def _aircraft(parts: Parts) -> None:
    from panelcad.desktop.dialogs.aircraft.dialog import AircraftData  # noqa: PLC0415 - a dialog loads when it is opened

    AircraftData(parts.bench, parts.window).exec()


def _comparison(parts: Parts) -> None:
    folder = parts.asking.folder("Where should the comparison go?", _start(parts))
    if folder is not None:
        _write(parts, "Comparing the options", lambda tell: (write_comparison_of(parts, folder, tell),))


def write_comparison_of(parts: Parts, folder: Path, tell: Tell = _silent) -> Path:
    """Write the owner's report of all options into a folder; the file."""
    from panelcad.outputs.papers.write import write_comparison  # noqa: PLC0415 - the writers load when they are needed
    from panelcad.planning.compare import compare  # noqa: PLC0415

    file = folder / f"{_stem(parts)}-comparison.pdf"
    comparison = compare(parts.bench.document.project)
    tell(f"Writing {file.name}")
    write_comparison(comparison, file)
    return file


def _papers(parts: Parts) -> None:
    folder = parts.asking.folder("Where should the planning papers go?", _start(parts))
    if folder is not None:
        _write(parts, "Judging the option", lambda tell: write_papers_of(parts, folder, tell))


def write_papers_of(parts: Parts, folder: Path, tell: Tell = _silent) -> tuple[Path, ...]:
    """Write the shop's planning papers of the option on the canvas into a folder; the files."""
    from panelcad.outputs.papers.write import write_option_papers  # noqa: PLC0415 - the writers load when needed
    from panelcad.planning.judge import judge  # noqa: PLC0415

    document = parts.bench.document
    today = datetime.now(UTC).astimezone().date().isoformat()
    judgement = judge(document.project, document.option)
    tell("Writing the papers")
    return write_option_papers(judgement, folder, today)


def _write(parts: Parts, first: str, write: Callable[[Tell], tuple[Path, ...]]) -> None:
    try:
        files = done_beside(parts.window, "Writing papers", first, write)
    except Stopped:
        parts.bench.told.emit("Stopped: nothing was written")
        return
    except (PanelcadError, OSError) as fault:
        parts.asking.tell("Nothing was written", str(fault))
        return
    parts.bench.told.emit(f"Wrote {files[0]}" if len(files) == 1 else f"Wrote {len(files)} files to {files[0].parent}")


def _start(parts: Parts) -> Path:
    path = parts.bench.document.path
    return path.parent if path is not None else Path.home()


def _stem(parts: Parts) -> str:
    return parts.bench.document.name.removesuffix(".json").removesuffix(".panel").replace(" ", "-").lower()


EDIT_ACTIONS: Final = (
    Action(
        "edit.aircraft",
        "Aircraft, flight and &costs…",
        "&Edit",
        9,
        _aircraft,
        "Ctrl+I",
        has_panel,
        hint="What planning needs to know: flight, electrical system, weight and balance, rates",
    ),
)
FILE_ACTIONS: Final = (
    Action(
        "file.comparison",
        "&Comparison for the owner…",
        "&File",
        2,
        _comparison,
        None,
        has_panel,
        hint="Write the options side by side in plain words (PDF)",
    ),
    Action(
        "file.planning",
        "&Planning papers…",
        "&File",
        2,
        _papers,
        None,
        has_panel,
        hint="Write load analysis, schedules, weight and balance revision and equipment list of this option",
    ),
)
