"""Actions on what is selected, and on what was done."""

from typing import Final

from PySide6.QtGui import QKeySequence

from panelcad.desktop.actions import Action
from panelcad.desktop.commands.file import has_panel
from panelcad.desktop.window_parts import Parts
from panelcad.editing.kinds import all_on, same_kind
from panelcad.editing.openings import is_opening
from panelcad.editing.remove import remove

_Keys = QKeySequence.StandardKey


def has_any(parts: Parts) -> bool:
    """Something is selected, be it an opening of the sheet."""
    return has_panel(parts) and len(parts.bench.selection) > 0


def has_selection(parts: Parts) -> bool:
    """Things are selected; an opening of the sheet is none, but belongs to it."""
    return has_any(parts) and not is_opening(parts.bench.selection.current)


def has_two(parts: Parts) -> bool:
    return has_panel(parts) and len(parts.bench.selection) > 1


def _undo(parts: Parts) -> None:
    """A tool that is at work takes its own last step back first."""
    tool = parts.toolbox.tool
    if tool is not None and tool.own_step:
        tool.take_back()
    else:
        parts.bench.document.undo()


def _redo(parts: Parts) -> None:
    parts.bench.document.redo()


def can_undo(parts: Parts) -> bool:
    tool = parts.toolbox.tool
    return bool(parts.bench.document.done) or bool(tool is not None and tool.own_step)


def can_redo(parts: Parts) -> bool:
    return bool(parts.bench.document.undone)


def _delete(parts: Parts) -> None:
    bench = parts.bench
    ids = bench.selection.ids
    what = bench.name_of(ids[0]) if len(ids) == 1 else f"{len(ids)} things"
    bench.edit(f"Take away {what}", lambda project, option: remove(project, option, ids))


def _select_all(parts: Parts) -> None:
    bench = parts.bench
    bench.selection.set(all_on(bench.document.option, bench.stage.plate_id))


def _select_kind(parts: Parts) -> None:
    """Everything on the plate of the same family, or the same sort of thing, as what is selected."""
    bench = parts.bench
    document, plate_id = bench.document, bench.stage.plate_id
    bench.selection.set(same_kind(document.project, document.option_id, plate_id, bench.selection.ids))


def _select_none(parts: Parts) -> None:
    parts.bench.selection.clear()


def _preferences(parts: Parts) -> None:
    from panelcad.desktop.dialogs.preferences import show_preferences  # noqa: PLC0415 - a dialog loads when it is opened

    show_preferences(parts.bench.settings, parts.window)


ACTIONS: Final = (
    Action("edit.undo", "&Undo", "&Edit", 0, _undo, _Keys.Undo, can_undo, icon="undo", on_bar=True, bar_group=1),
    Action(
        "edit.redo",
        "&Redo",
        "&Edit",
        0,
        _redo,
        "Ctrl+Y",
        can_redo,
        icon="redo",
        on_bar=True,
        bar_group=1,
        also="Ctrl+Shift+Z",
    ),
    Action("edit.delete", "&Take away", "&Edit", 1, _delete, _Keys.Delete, has_any, icon="delete"),
    Action("edit.select-all", "Select &all", "&Edit", 2, _select_all, _Keys.SelectAll, has_panel),
    Action("edit.select-kind", "Select the same &kind", "&Edit", 2, _select_kind, "Ctrl+Shift+F", has_selection),
    Action("edit.select-none", "Select n&othing", "&Edit", 2, _select_none, "Ctrl+Shift+A", has_any),
    Action("edit.preferences", "P&references…", "&Edit", 3, _preferences, "Ctrl+,", icon="settings"),
)
