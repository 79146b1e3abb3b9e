"""Lettering that lies across other lettering of the same plate, so that neither is read.

Lettering under a placard is found by `covered-words`, a placard across another by `bezels`.
"""

from collections.abc import Iterator
from itertools import combinations
from typing import Final, NamedTuple

from panelcad.checks.registry import FROM_THE_SEAT, rule
from panelcad.geometry.boxes import box_gap
from panelcad.geometry.gap import TIE, Gap, gap
from panelcad.geometry.point import middle
from panelcad.model.engraved import engraving_box
from panelcad.model.finding import Cure, Finding, Severity
from panelcad.model.kept import kept
from panelcad.model.layout import Layout
from panelcad.model.plate import Engraving

_CFR: Final = "14 CFR 23.1541(b) before amendment 23-64: not easily disfigured or obscured"


class _Crossing(NamedTuple):
    a: Engraving
    b: Engraving
    over: Gap


@rule(
    "crossed-words",
    title="Lettering across lettering",
    measures="overlap of the boxes that two engraved lines of one plate fill, as wide as they are cut",
    looks_at=FROM_THE_SEAT,
    severities=(Severity.WARNING,),
    source=_CFR,
)
def crossed_words(laid: Layout) -> Iterator[Finding]:
    for plate in laid.plates:
        for crossing in _crossings(plate.plate.engravings):
            yield _finding(crossing, plate.plate.id)


def _crossings(lines: tuple[Engraving, ...]) -> tuple[_Crossing, ...]:
    """Asked again only when some lettering of the plate has changed."""
    return kept("crossed words", (lines,), lambda: tuple(_found(lines)))


def _found(lines: tuple[Engraving, ...]) -> Iterator[_Crossing]:
    boxes = [(line, engraving_box(line)) for line in lines]
    bounded = [(line, box, box.bounds) for line, box in boxes]
    for (a, box, around), (b, other, beside) in combinations(bounded, 2):
        if box_gap(around, beside) == 0.0:
            over = gap(box, other)
            if over.distance < -TIE:
                yield _Crossing(a, b, over)


def _finding(crossing: _Crossing, plate_id: str) -> Finding:
    a, b, over = crossing
    return Finding(
        rule="crossed-words",
        severity=Severity.WARNING,
        problem="Lettering lies across other lettering",
        items=tuple(sorted((a.id, b.id))),
        plate=plate_id,
        measured=over.distance,
        required=0.0,
        where=(middle(over.a, over.b),),
        source=f"{_CFR}; 23.2610(a) since",
        cure=Cure(item=b.id, advice="move one of them, or make its words shorter or its letters lower"),
    )
