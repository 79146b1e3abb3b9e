"""Which findings the list shows."""

from collections.abc import Collection
from dataclasses import dataclass
from typing import Final

from panelcad.desktop.canvas.badge import MarkKind
from panelcad.model.finding import Finding


@dataclass(frozen=True)
class Filter:
    words: str
    kinds: frozenset[MarkKind] = frozenset(MarkKind)
    only_selected: bool = False

    def lets_pass(self, finding: Finding, kind: MarkKind, selected: Collection[str]) -> bool:
        """Whether the list shows it while these things, and what moves with them, are selected."""
        is_about = not self.only_selected or any(one in selected for one in finding.items)
        return kind in self.kinds and is_about


FILTERS: Final = (
    Filter("Everything"),
    Filter("Errors", frozenset({MarkKind.ERROR})),
    Filter("Errors and warnings", frozenset({MarkKind.ERROR, MarkKind.WARNING})),
    Filter("Advice", frozenset({MarkKind.ADVICE})),
    Filter("Accepted", frozenset({MarkKind.ACCEPTED})),
    Filter("About what is selected", only_selected=True),
)
