"""What can be found by words: actions, panes, and sections of help."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import partial
from itertools import count
from typing import TYPE_CHECKING

from PySide6.QtGui import QAction, QKeySequence

from panelcad.desktop.actions import Action
from panelcad.desktop.commands.help_ import open_page
from panelcad.desktop.commands.needs import why_not_now
from panelcad.desktop.help.sections import Section, sections
from panelcad.desktop.panes.table import PANES, PaneKind
from panelcad.desktop.window_parts import Parts
from panelcad.errors import PanelcadError
from panelcad.library.search import Index

if TYPE_CHECKING:
    from panelcad.desktop.panes.docks import PaneDock


@dataclass(frozen=True)
class Findable:
    """`title` counts more than `more` when words are looked for; `shown` is what the list says."""

    title: str
    more: str
    shown: str
    hint: str
    run: Callable[[], object]
    enabled: bool = True
    why_not: str = ""
    """What is said of it while it cannot be done."""


class Finder:
    """Actions and panes come before help, which is looked through only once something is typed."""

    def __init__(self, parts: Parts) -> None:
        menus = parts.window.menus
        doing = [_action(action, menus.actions[action.id], menus.run) for action in menus.table.values()]
        doing += [_pane(kind, parts.window.docks.dock(kind.id)) for kind in PANES]
        self._doing = _Shelf(doing)
        self._help: _Shelf | None = None
        self._parts = parts

    def find(self, words: str) -> list[Findable]:
        """What suits the words, best first; every action and pane where there are none."""
        found = self._doing.find(words)
        return [*found, *self._help_shelf().find(words)] if words.strip() else found

    def _help_shelf(self) -> "_Shelf":
        if self._help is None:
            self._help = _Shelf(list(_help(self._parts)))
        return self._help


class _Shelf:
    def __init__(self, things: list[Findable]) -> None:
        self._things = {str(number): thing for number, thing in zip(count(), things, strict=False)}
        self._index = Index((name, thing.title, thing.more) for name, thing in self._things.items())

    def find(self, words: str) -> list[Findable]:
        return [self._things[name] for name in self._index.search(words)]


def _action(action: Action, made: QAction, run: Callable[[str], None]) -> Findable:
    menu = action.menu.replace("&", "")
    return Findable(
        action.plain_title,
        f"{menu} {action.hint} {action.words}",
        _with_keys(f"{menu}: {action.plain_title}", action.keys),
        action.hint,
        partial(run, action.id),
        made.isEnabled(),
        why_not_now(action),
    )


def _pane(kind: PaneKind, dock: "PaneDock") -> Findable:
    keys = dock.way.shortcut().toString(QKeySequence.SequenceFormat.NativeText)
    shown = _with_keys(f"Pane: {kind.title}", keys)
    return Findable(kind.title, f"pane {kind.id}", shown, "", dock.go, dock.way.isEnabled(), _why_no_pane(kind))


def _why_no_pane(kind: PaneKind) -> str:
    return f"{kind.title}: {'it comes with its tool' if kind.is_only_for_tool else 'open a panel first'}"


def _with_keys(words: str, keys: str) -> str:
    return f"{words}    {keys}" if keys else words


def _help(parts: Parts) -> Iterator[Findable]:
    """Nothing where the pages did not come with the program; asking for help itself says so."""
    try:
        found = sections()
    except (PanelcadError, OSError):
        return
    for section in found:
        yield _section(parts, section)


def _section(parts: Parts, section: Section) -> Findable:
    return Findable(section.title, section.page, f"Help: {section.words}", "", partial(open_page, parts, section.link))
