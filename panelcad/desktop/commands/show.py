"""Actions that show the work to its owner: flip to the panel as found, the full-screen view, pictures and proposal."""

from typing import Final

from panelcad.desktop.actions import Action
from panelcad.desktop.commands.file import has_panel
from panelcad.desktop.long_work import Stopped, done_beside
from panelcad.desktop.window_parts import Parts
from panelcad.errors import PanelcadError
from panelcad.model.project import AS_FOUND


def _flip(parts: Parts) -> None:
    """Show the panel as found, or go back to the option that was shown before it."""
    bench, document = parts.bench, parts.bench.document
    if document.option_id != AS_FOUND:
        bench.flipped_from = document.option_id
        document.look_at(AS_FOUND)
        return
    known = [option.id for option in document.project.options]
    document.look_at(bench.flipped_from if bench.flipped_from in known else known[0])


def _has_options(parts: Parts) -> bool:
    return has_panel(parts) and bool(parts.bench.document.project.options)


def _show_owner(parts: Parts) -> None:
    from panelcad.desktop.owner_view import OwnerView  # noqa: PLC0415 - faces load when they are first looked at

    document = parts.bench.document
    OwnerView(document.project, AS_FOUND, document.option_id, parts.window).showFullScreen()


def _option_look(parts: Parts) -> None:
    from panelcad.desktop.dialogs.look import option_look  # noqa: PLC0415 - a dialog loads when it is first opened

    option_look(parts.bench, parts.window)


def _flight_shown(parts: Parts) -> None:
    from panelcad.desktop.dialogs.flight import flight_shown  # noqa: PLC0415

    flight_shown(parts.bench, parts.window)


def _photograph(parts: Parts) -> None:
    from panelcad.desktop.dialogs.photograph import plate_photograph  # noqa: PLC0415

    plate_photograph(parts)


def _take_photograph_away(parts: Parts) -> None:
    from panelcad.desktop.dialogs.photograph import take_away  # noqa: PLC0415

    take_away(parts)


def _has_photograph(parts: Parts) -> bool:
    return has_panel(parts) and parts.bench.document.option.appearance.photograph is not None


def _write_preview(parts: Parts) -> None:
    from panelcad.outputs.preview import PreviewOptions, write_preview  # noqa: PLC0415 - the writers load when needed

    folder = parts.asking.folder("Where to write pictures, proposal and page", parts.desk.folder())
    if folder is None:
        return
    project = parts.bench.document.project
    try:
        files = done_beside(
            parts.window,
            "For the owner",
            "Drawing",
            lambda tell: write_preview(project, folder, PreviewOptions(tell=tell)),
        )
    except Stopped:
        parts.bench.told.emit("Stopped: nothing was written")
        return
    except (PanelcadError, OSError) as fault:
        parts.asking.tell("Nothing was written", str(fault))
        return
    parts.bench.told.emit(f"Wrote {len(files)} files to {folder}")


FILE_ACTIONS: Final = (
    Action(
        "file.preview",
        "Pictures and proposal for the &owner…",
        "&File",
        2,
        _write_preview,
        "Ctrl+Shift+P",
        has_panel,
        hint="Write pictures of every option, the proposal (PDF) and one page (HTML) that opens on a phone",
    ),
)
VIEW_ACTIONS: Final = (
    Action(
        "view.flip",
        "&Flip to as found and back",
        "&View",
        0,
        _flip,
        "F4",
        _has_options,
        hint="Shows the panel as found, and with the same key the option again",
    ),
    Action(
        "view.owner",
        "Show to the o&wner…",
        "&View",
        0,
        _show_owner,
        "F11",
        has_panel,
        hint="Two options on the whole screen with a line to wipe between them; Escape closes it",
    ),
)
LOOK_ACTIONS: Final = (
    Action(
        "view.look",
        "How it &looks…",
        "&View",
        4,
        _option_look,
        None,
        has_panel,
        hint="Finish, colours, edge, glareshield and yokes of this option",
    ),
    Action(
        "view.flight",
        "The fligh&t that instruments show…",
        "&View",
        4,
        _flight_shown,
        None,
        has_panel,
        hint="Heading, altitude, airspeed and frequencies, the same on every instrument",
    ),
    Action(
        "view.photograph",
        "P&hotograph of the panel…",
        "&View",
        4,
        _photograph,
        None,
        has_panel,
        hint="Lay a photograph on the sheet, set straight and to scale by four places you have measured",
    ),
    Action(
        "view.no-photograph",
        "Ta&ke the photograph away",
        "&View",
        4,
        _take_photograph_away,
        None,
        _has_photograph,
    ),
)
