"""Menus and tool bar, made of the table of actions."""

from typing import TYPE_CHECKING, Final

from PySide6.QtCore import QKeyCombination
from PySide6.QtGui import QAction, QKeySequence
from PySide6.QtWidgets import QMenu

from panelcad.desktop.actions import MENUS, Action, all_actions, with_mnemonics
from panelcad.desktop.bar import Bar
from panelcad.desktop.choosers import OptionChooser, PlateChooser, ViewChooser
from panelcad.desktop.commands.help_ import open_page
from panelcad.desktop.commands.needs import why_not_now
from panelcad.desktop.help.pages import GUIDE, REFERENCE, Page
from panelcad.desktop.icons import icon
from panelcad.desktop.window_parts import Parts

if TYPE_CHECKING:
    from panelcad.desktop.panes.docks import Docks

_RECENT, _DOING, _LOOKING_UP = "Open &recent", "&Doing things", "&Looking things up"
_PANES: Final = "&Panes"
_SUBMENUS: Final = {"&File": (_RECENT,), "&View": (_PANES,), "&Help": (_DOING, _LOOKING_UP)}
_EXPLAINED: Final = "F1 explains it while it is in hand"


class Menus:
    """`actions` holds the Qt action of each action id."""

    def __init__(self, parts: Parts, docks: "Docks") -> None:
        self._parts = parts
        self.table = {action.id: action for action in all_actions()}
        self.actions = {action.id: self._made(action) for action in self.table.values()}
        self._titles: dict[str, str] = {}
        self._give_mnemonics()
        self._menus = {title: self._menu(title) for title in MENUS}
        self._add_panes(docks)
        self._add_recent()
        self._add_pages_of_help()
        self.bar = self._bar()
        bench = parts.bench
        for signal in (
            bench.document.changed,
            bench.document.replaced,
            bench.document.option_changed,
            bench.document.saved,
            bench.selection.changed,
            bench.settings.changed,
            bench.stage.view_changed,
            bench.drawing.went_on,
            bench.section.shown,
            parts.toolbox.changed,
        ):
            signal.connect(self.refresh)
        self._icons_are_painted = False
        bench.theme_changed.connect(self._paint_icons)
        self.refresh()

    def _made(self, action: Action) -> QAction:
        made = QAction(action.title, self._parts.window)
        made.setObjectName(action.id)
        if action.shortcut is not None:
            made.setShortcuts([QKeySequence(keys) for keys in (action.shortcut, action.also) if keys])
        made.setCheckable(action.checked is not None)
        keys = f"  ({action.keys})" if action.keys else ""
        is_tool = action.id.startswith("tool.") and action.checked is not None
        lines = (f"{action.plain_title}{keys}", action.hint, _EXPLAINED if is_tool else "")
        made.setToolTip("\n".join(line for line in lines if line))
        made.setStatusTip(action.hint)
        made.triggered.connect(lambda: self.run(action.id))
        self._parts.window.addAction(made)
        return made

    def run(self, action_id: str) -> None:
        """Do what an action does, if it can be done now."""
        action = self.table[action_id]
        if action.enabled(self._parts):
            action.run(self._parts)
            self.refresh()

    def has_single_key(self, keys: QKeyCombination) -> bool:
        """Whether this is the key of an action."""
        return any(QKeySequence(keys) in made.shortcuts() for made in self.actions.values())

    def why_not(self, keys: QKeyCombination) -> str:
        """Why the action that has this key cannot be done now; '' where none has it, or it can."""
        found = (self.table[name] for name, made in self.actions.items() if QKeySequence(keys) in made.shortcuts())
        return next((why_not_now(one) for one in found if not self.actions[one.id].isEnabled()), "")

    def _give_mnemonics(self) -> None:
        """Each entry of a menu gets a letter of its own; the one its title marks where that is free."""
        for menu in MENUS:
            mine = {action.id: action.title for action in self.table.values() if action.menu == menu}
            mine |= {title: title for title in _SUBMENUS.get(menu, ())}
            self._titles |= dict(zip(mine, with_mnemonics(list(mine.values())), strict=True))
        for name, made in self.actions.items():
            made.setText(self._titles[name])

    def _menu(self, title: str) -> QMenu:
        menu = self._parts.window.menuBar().addMenu(title)
        menu.aboutToShow.connect(self.make_ready)
        section = None
        of_menu = (action for action in self.table.values() if action.menu == title)
        for action in sorted(of_menu, key=lambda action: action.section):
            if section is not None and action.section != section:
                menu.addSeparator()
            section = action.section
            menu.addAction(self.actions[action.id])
        return menu

    def _add_panes(self, docks: "Docks") -> None:
        """In a menu of their own, so that the menu they hang on is no longer than a low screen."""
        panes = QMenu(self._titles[_PANES], self._parts.window)
        for dock in docks.all:
            panes.addAction(dock.way)
        self._menus["&View"].insertMenu(self.actions["view.panes-away"], panes)

    def _add_recent(self) -> None:
        menu = QMenu(self._titles[_RECENT], self._parts.window)
        menu.aboutToShow.connect(lambda: self._fill_recent(menu))
        self._menus["&File"].insertMenu(self.actions["file.save"], menu)
        self._menus["&File"].insertSeparator(self.actions["file.save"])

    def _fill_recent(self, menu: QMenu) -> None:
        menu.clear()
        for path in self._parts.bench.settings.recent_files:
            entry = menu.addAction(str(path))
            entry.setEnabled(path.exists())
            entry.triggered.connect(lambda _=False, path=path: self._parts.desk.open(path))
        if menu.isEmpty():
            menu.addAction("No file yet").setEnabled(False)

    def _add_pages_of_help(self) -> None:
        menu = self._menus["&Help"]
        menu.addSeparator()
        for title, files in ((_DOING, GUIDE), (_LOOKING_UP, REFERENCE)):
            pages = menu.addMenu(self._titles[title])
            pages.aboutToShow.connect(lambda pages=pages, files=files: self._fill_pages(pages, files))

    def _fill_pages(self, menu: QMenu, files: tuple[str, ...]) -> None:
        """The titles are read when somebody first looks."""
        if menu.isEmpty():
            for file, title in zip(files, with_mnemonics([Page(file).title for file in files]), strict=True):
                menu.addAction(title).triggered.connect(lambda _=False, file=file: open_page(self._parts, file))

    def _bar(self) -> Bar:
        bar = Bar(tuple(chooser(self._parts.bench) for chooser in (OptionChooser, PlateChooser, ViewChooser)))
        self._parts.window.addToolBar(bar)
        on_bar = sorted((a for a in self.table.values() if a.on_bar), key=lambda a: a.bar_group)
        group = 0
        for action in on_bar:
            if action.bar_group != group:
                bar.addSeparator()
                group = action.bar_group
            bar.addAction(self.actions[action.id])
        bar.add_choosers()
        return bar

    def make_ready(self) -> None:
        """Paint the icons, before they are seen for the first time."""
        if not self._icons_are_painted:
            self._paint_icons()

    def _paint_icons(self) -> None:
        self._icons_are_painted = True
        theme = self._parts.bench.theme
        for action in self.table.values():
            if action.icon:
                self.actions[action.id].setIcon(icon(action.icon, theme.ink, theme.disabled))

    def refresh(self) -> None:
        """What can be done now, and what is switched on."""
        for action in self.table.values():
            made = self.actions[action.id]
            made.setEnabled(action.enabled(self._parts))
            if action.checked is not None:
                made.setChecked(action.checked(self._parts))
        self._hand_keys_over()
        self._name_steps()

    def _hand_keys_over(self) -> None:
        """A key that two actions have is that of the one that asks for it while it can be done."""
        for action in self.table.values():
            if action.takes_key_of:
                owner = self.table[action.takes_key_of]
                keys = [QKeySequence(owner.shortcut)] if owner.shortcut is not None else []
                is_taken = self.actions[action.id].isEnabled()
                _set_keys(self.actions[owner.id], [] if is_taken else keys)
                _set_keys(self.actions[action.id], keys if is_taken else [])

    def _name_steps(self) -> None:
        """Say what undo takes back."""
        document, tool = self._parts.bench.document, self._parts.toolbox.tool
        done, undone = ([step.title for step in steps] for steps in (document.done, document.undone))
        if tool is not None and tool.own_step:
            done.append(tool.own_step)
        for action_id, titles in (("edit.undo", done), ("edit.redo", undone)):
            word = self._titles[action_id]
            what = titles[-1].replace("&", "&&") if titles else ""
            self.actions[action_id].setText(f"{word} '{what}'" if what else word)


def _set_keys(action: QAction, keys: list[QKeySequence]) -> None:
    if action.shortcuts() != keys:
        action.setShortcuts(keys)
