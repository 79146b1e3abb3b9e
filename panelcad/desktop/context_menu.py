"""The menu at the pointer: what one mostly does with the thing there."""

from typing import Final

from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QMenu

from panelcad.desktop.actions import with_mnemonics
from panelcad.desktop.canvas.gesture import Pointer
from panelcad.desktop.tools.picking import all_at, opening_at, picked_at
from panelcad.desktop.window_parts import Parts

_ON_A_THING: Final = (
    ("edit.cut", "edit.copy", "edit.duplicate", "edit.delete"),
    ("place.label", "place.replace", "panel.cut-size", "panel.standing", "arrange.repeat"),
    ("arrange.turn-left", "arrange.turn-right", "arrange.turn"),
    ("place.higher", "place.lower"),
    ("arrange.to-pilot", "arrange.to-middle"),
    ("arrange.group", "arrange.ungroup", "arrange.lock", "arrange.unlock"),
    ("edit.select-kind", "view.selection"),
)
_ON_THE_SHEET: Final = (
    ("edit.paste", "edit.select-all"),
    ("place.basic-t", "place.stack", "place.row"),
    ("view.all", "view.grid", "view.snap"),
)


_CHANGE_OPENING: Final = "&Change this opening…"


_IN_THE_LIBRARY: Final = ("place.own-like", "place.own-change", "place.own-forget")


class ContextMenu:
    def __init__(self, parts: Parts) -> None:
        self._parts = parts
        parts.bench.view.menu_wanted.connect(self.open)
        parts.window.docks.dock("library").visibilityChanged.connect(self._offer_in_the_library)

    def _offer_in_the_library(self) -> None:
        """The list of cutouts has a menu of its own, once it is seen."""
        from panelcad.desktop.panes.library import CutoutList  # noqa: PLC0415 - made by then, with its pictures

        listed = self._parts.window.docks.dock("library").widget().findChild(CutoutList)
        if listed is not None and not listed.actions():
            listed.setContextMenuPolicy(Qt.ContextMenuPolicy.ActionsContextMenu)
            listed.addActions([self._parts.window.menus.actions[name] for name in _IN_THE_LIBRARY])

    def open(self, pointer: Pointer, where: QPoint) -> None:
        picked = picked_at(self._parts.bench, pointer)
        if picked and picked not in self._parts.bench.selection:
            self._parts.bench.selection.set((picked,))
        menu = self.made(pointer, picked)
        menu.exec(where)
        menu.deleteLater()

    def _add(self, menu: QMenu, action: QAction, title: str) -> None:
        """The action under a key of its own in this menu."""
        entry = menu.addAction(action.icon(), title)
        entry.setShortcut(action.shortcut())
        entry.setShortcutVisibleInContextMenu(True)
        entry.setShortcutContext(Qt.ShortcutContext.WidgetShortcut)
        entry.setCheckable(action.isCheckable())
        entry.setChecked(action.isChecked())
        entry.triggered.connect(action.trigger)

    def _add_opening(self, menu: QMenu, title: str, opening: int) -> None:
        from panelcad.desktop.dialogs.openings import change_opening  # noqa: PLC0415 - a dialog's module loads late

        parts = self._parts
        entry = menu.addAction(title)
        entry.triggered.connect(lambda: change_opening(parts.bench, parts.window, opening))
        menu.addSeparator()

    def made(self, pointer: Pointer, picked: str) -> QMenu:
        """The menu for this place; everything that lies there can be chosen where several things do."""
        menu = QMenu(self._parts.window)
        actions = self._parts.window.menus.actions
        sections = _ON_A_THING if picked else _ON_THE_SHEET
        offered = [[n for n in names if n in actions and actions[n].isEnabled()] for names in sections]
        titles = [actions[name].text() for names in offered for name in names]
        change, *marked = with_mnemonics([_CHANGE_OPENING, *titles])
        opening = opening_at(self._parts.bench, pointer)
        if opening is not None:
            self._add_opening(menu, change, opening)
        left = iter(marked)
        for names in offered:
            for name in names:
                self._add(menu, actions[name], next(left))
            menu.addSeparator()
        under = all_at(self._parts.bench, pointer)
        if len(under) > 1:
            choose = menu.addMenu("Select what lies &here")
            for part in under:
                entry = choose.addAction(self._parts.bench.name_of(part))
                entry.triggered.connect(lambda _=False, part=part: self._parts.bench.selection.set((part,)))
        return menu
