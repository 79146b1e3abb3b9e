"""Actions that place arrangements, and put one thing in another's place."""

from collections.abc import Callable
from importlib import import_module
from typing import Final

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeySequence
from PySide6.QtWidgets import QLineEdit

from panelcad.desktop.actions import Action
from panelcad.desktop.commands.edit import has_selection
from panelcad.desktop.commands.file import has_panel
from panelcad.desktop.window_parts import Parts
from panelcad.editing.stack import is_stack
from panelcad.editing.stack_order import step_in_stack

_DIALOGS: Final = "panelcad.desktop.dialogs"


def dialog(module: str, function: str) -> Callable[[Parts], None]:
    """Open a dialog of the package; it is loaded when it is first opened."""

    def run(parts: Parts) -> None:
        getattr(import_module(f"{_DIALOGS}.{module}"), function)(parts.bench, parts.window)

    return run


def _find_cutout(parts: Parts) -> None:
    """To the library's search field."""
    dock = parts.window.docks.dock("library")
    dock.show()
    dock.raise_()
    search = dock.widget().findChild(QLineEdit, "search")
    if search is not None:
        search.setFocus(Qt.FocusReason.ShortcutFocusReason)
        search.selectAll()


def has_unit(parts: Parts) -> bool:
    """One unit of a stack is selected."""
    if not has_panel(parts) or len(parts.bench.selection) != 1:
        return False
    document, current = parts.bench.document, parts.bench.selection.current
    cuts = (item.cut for item in document.option.items if item.id == current and item.cut is not None)
    return any(is_stack(document.project, document.option, cut) for cut in cuts)


def has_words(parts: Parts) -> bool:
    """Something is selected that takes a label, or that carries words itself."""
    document = parts.bench.document
    if not has_selection(parts):
        return False
    from panelcad.editing.label_row import controls  # noqa: PLC0415 - shapely waits until it is asked
    from panelcad.editing.placards import placards  # noqa: PLC0415 - as above

    chosen = document.project, document.option, parts.bench.selection.ids
    return bool(controls(*chosen) or placards(*chosen))


def _in_stack(by: int) -> Callable[[Parts], None]:
    def run(parts: Parts) -> None:
        unit = parts.bench.selection.current
        parts.bench.edit("Order of the stack", lambda project, option: step_in_stack(project, option, unit, by))

    return run


_MENU: Final = "&Place"
ACTIONS: Final = (
    Action("place.find", "&From the library…", _MENU, 0, _find_cutout, QKeySequence.StandardKey.Find, has_panel),
    Action(
        "place.basic-t",
        "Basic &T…",
        _MENU,
        0,
        dialog("arrangements", "basic_t"),
        "Ctrl+T",
        has_panel,
        hint="Airspeed, attitude, altitude, direction, turn and vertical speed in their places",
    ),
    Action(
        "place.stack",
        "&Stack of rack units…",
        _MENU,
        0,
        dialog("arrangements", "stack_of"),
        "Ctrl+Shift+T",
        has_panel,
        hint="Units one above the other in one opening",
    ),
    Action("place.higher", "&Higher in its stack", _MENU, 0, _in_stack(-1), "Ctrl+Up", has_unit),
    Action("place.lower", "&Lower in its stack", _MENU, 0, _in_stack(1), "Ctrl+Down", has_unit),
    Action(
        "place.row",
        "&Row of switches or breakers…",
        _MENU,
        0,
        dialog("arrangements", "row_of"),
        "Ctrl+Shift+R",
        has_panel,
    ),
    Action(
        "place.label",
        "&Label…",
        _MENU,
        0,
        dialog("label_row", "label_controls"),
        None,
        has_words,
        hint="Lettering below each of the controls that are selected, or the words of a placard; L does it meanwhile",
        words="engrave lettering switches breakers placard words",
        takes_key_of="tool.lettering",
    ),
    Action(
        "place.replace",
        "Re&place with another…",
        _MENU,
        1,
        dialog("replacement", "replace_in_place"),
        "Ctrl+H",
        has_selection,
        hint="Another cutout in the same place",
    ),
)
