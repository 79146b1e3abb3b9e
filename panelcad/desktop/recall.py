"""The selection that goes with each step: undo selects again what the step was done to, redo what it led to."""

from collections.abc import Collection
from typing import Final

from panelcad.desktop.document import Document, Step
from panelcad.desktop.selection import Selection

_NOTHING: Final[tuple[str, ...]] = ()


class Recall:
    """Each time that the document has changed, `note` is called before the picture is shown anew, which drops from the
    selection what is gone, and `bring_back` after it.
    """

    def __init__(self, document: Document, selection: Selection) -> None:
        self._document, self._selection = document, selection
        self._forget()
        document.replaced.connect(self._forget)

    def _forget(self) -> None:
        self._done: list[Step] = []
        self._undone: list[Step] = []
        self._before: dict[int, tuple[str, ...]] = {}
        self._after: dict[int, tuple[str, ...]] = {}
        self._wanted: tuple[str, ...] | None = None

    def note(self) -> None:
        """Remember what is selected now, and what this change is to bring back."""
        done, undone, chosen = self._document.done, self._document.undone, self._selection.ids
        self._wanted = None
        if _went_over(self._done, undone):
            step = id(undone[-1])
            self._after[step] = chosen
            self._wanted = self._before.get(step, _NOTHING)
        elif _went_over(self._undone, done):
            self._wanted = self._after.get(id(done[-1]), _NOTHING)
        elif done and not _ends_alike(done, self._done):
            self._before[id(done[-1])] = chosen
        self._done, self._undone = list(done), list(undone)
        alive = {id(step) for step in (*done, *undone)}
        self._before = {step: ids for step, ids in self._before.items() if step in alive}
        self._after = {step: ids for step, ids in self._after.items() if step in alive}

    def bring_back(self, known: Collection[str]) -> None:
        """Select what was selected, as far as it is there."""
        if self._wanted is not None:
            self._selection.set(one for one in self._wanted if one in known)
            self._wanted = None


def _went_over(there: list[Step], here: list[Step]) -> bool:
    """Whether the last step of one list is now the last of the other."""
    return bool(there) and bool(here) and there[-1] is here[-1]


def _ends_alike(a: list[Step], b: list[Step]) -> bool:
    return bool(a) and bool(b) and a[-1] is b[-1]
