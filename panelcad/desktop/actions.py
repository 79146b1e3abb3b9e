"""Everything a person can do, in one table that menus, tool bar, shortcut list, command search and tests read."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from PySide6.QtGui import QKeySequence

if TYPE_CHECKING:
    from panelcad.desktop.window_parts import Parts

Run = Callable[["Parts"], None]
Test = Callable[["Parts"], bool]
Shortcut = QKeySequence.StandardKey | str


def always(parts: "Parts") -> bool:  # noqa: ARG001 - a condition that never fails
    return True


@dataclass(frozen=True)
class Action:
    """`menu` is the menu's title, `&` before its mnemonic; a change of `section` within a menu draws a line."""

    id: str
    title: str
    menu: str
    section: int
    run: Run
    shortcut: Shortcut | None = None
    enabled: Test = always
    checked: Test | None = None
    icon: str = ""
    hint: str = ""
    on_bar: bool = False
    bar_group: int = 0
    words: str = ""
    """More words that somebody may look for it by."""
    also: str = ""
    """Another key for the same, which menus do not show."""
    takes_key_of: str = ""
    """The id of an action whose key does this instead while this can be done."""

    @property
    def plain_title(self) -> str:
        """The title without mnemonic and dots."""
        return self.title.replace("&", "").rstrip("…")

    @property
    def keys(self) -> str:
        """The shortcut as the platform writes it, or ''."""
        if self.shortcut is None:
            return ""
        return QKeySequence(self.shortcut).toString(QKeySequence.SequenceFormat.NativeText)


OPTION_MENU: Final = "Opt&ion"
MENUS: Final = ("&File", "&Edit", "&Place", "&Arrange", "Pane&l", OPTION_MENU, "&View", "&Tools", "&Help")


def all_actions() -> tuple[Action, ...]:
    """Every action, in the order of the menus."""
    from panelcad.desktop.commands import (  # noqa: PLC0415 - they import this
        arrange,
        clipboard,
        edit,
        file,
        help_,
        limits,
        options,
        own,
        panel,
        placing,
        planning,
        show,
        tools,
        view,
    )

    return (
        *file.ACTIONS,
        *show.FILE_ACTIONS,
        *planning.FILE_ACTIONS,
        *limits.FILE_ACTIONS,
        *edit.ACTIONS[:2],
        *clipboard.ACTIONS,
        *edit.ACTIONS[2:],
        *planning.EDIT_ACTIONS,
        *placing.ACTIONS,
        *own.ACTIONS,
        *arrange.ACTIONS,
        *panel.ACTIONS,
        *options.ACTIONS,
        *show.VIEW_ACTIONS,
        *view.ACTIONS,
        *show.LOOK_ACTIONS,
        *view.PANE_ACTIONS,
        *tools.actions(),
        *help_.ACTIONS,
    )


def with_mnemonics(titles: list[str]) -> list[str]:
    """The titles, each with `&` before a letter that no other of them has; titles that find none free go without.

    >>> with_mnemonics(["&Copy", "&Cut"])
    ['&Copy', 'C&ut']
    """
    taken: set[str] = set()
    marked = {title: title[title.index("&") + 1].lower() for title in titles if "&" in title}
    wished = set(marked.values())
    return [_with_mnemonic(title, marked.get(title, ""), taken, wished) for title in titles]


def _with_mnemonic(title: str, wish: str, taken: set[str], wished: set[str]) -> str:
    plain = title.replace("&", "")
    letters = [char.lower() for char in plain if char.isalpha()]
    free = [letter for letter in letters if letter not in taken]
    chosen = wish if wish in free else next((one for one in free if one not in wished), next(iter(free), ""))
    if not chosen:
        return plain
    taken.add(chosen)
    place = plain.lower().index(chosen)
    return f"{plain[:place]}&{plain[place:]}"
