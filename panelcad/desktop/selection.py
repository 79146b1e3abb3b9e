"""What is selected and what the pointer is over: ids only; never in the file, never in undo."""

from collections.abc import Iterable

from PySide6.QtCore import QObject, Signal

from panelcad.editing.openings import is_opening


def _without_mixture(ids: tuple[str, ...]) -> tuple[str, ...]:
    """An opening of the sheet is selected alone: what is done with several things is not done with it."""
    things = tuple(one for one in ids if not is_opening(one))
    return ids if len(things) == len(ids) else things or ids[-1:]


class Selection(QObject):
    """Ids in the order they were chosen; the last one is the current one."""

    changed = Signal()
    hovered_changed = Signal()

    def __init__(self) -> None:
        super().__init__()
        self._ids: tuple[str, ...] = ()
        self._hovered = ""

    @property
    def ids(self) -> tuple[str, ...]:
        return self._ids

    @property
    def current(self) -> str:
        """The id chosen last, or ''."""
        return self._ids[-1] if self._ids else ""

    @property
    def hovered(self) -> str:
        return self._hovered

    def __contains__(self, owner: str) -> bool:
        return owner in self._ids

    def __len__(self) -> int:
        return len(self._ids)

    def set(self, ids: Iterable[str]) -> None:
        chosen = _without_mixture(tuple(dict.fromkeys(ids)))
        if chosen != self._ids:
            self._ids = chosen
            self.changed.emit()

    def add(self, ids: Iterable[str]) -> None:
        self.set((*self._ids, *ids))

    def toggle(self, ids: Iterable[str]) -> None:
        """Take out those that are in, add those that are not."""
        given = tuple(ids)
        self.set((*(i for i in self._ids if i not in given), *(i for i in given if i not in self._ids)))

    def clear(self) -> None:
        self.set(())

    def keep_only(self, known: Iterable[str]) -> None:
        """Drop what is no longer there."""
        there = set(known)
        self.set(i for i in self._ids if i in there)

    def hover(self, owner: str) -> None:
        if owner != self._hovered:
            self._hovered = owner
            self.hovered_changed.emit()
