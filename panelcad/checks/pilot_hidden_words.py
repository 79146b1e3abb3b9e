"""Words that glareshield or yoke hide from the pilot's eye.

Knobs and levers are known as boxes over their whole travel, which would hide too much; what stands over words is found
by `covered-words`.
"""

from collections.abc import Iterator
from typing import Final, NamedTuple

from shapely.geometry.base import BaseGeometry

from panelcad.checks.pilot_hidden import PILOT, hidden_from
from panelcad.checks.pilot_words import Words, words_on
from panelcad.checks.registry import FROM_THE_SEAT, rule
from panelcad.geometry.gap import TIE
from panelcad.geometry.point import Point
from panelcad.geometry.polygon import polygon
from panelcad.model.finding import Finding, Measure, Severity
from panelcad.model.layout import Layout, PlateLayout
from panelcad.model.profile import limit_source

_CFR: Final = "14 CFR 23.1541(b) before amendment 23-64: conspicuous, not easily obscured"


class _Hidden(NamedTuple):
    words: Words
    share: float
    at: Point


@rule(
    "hidden-words",
    title="Words hidden from the pilot's eye",
    measures="share of each engraved line and placard that glareshield and yoke in neutral hide from the pilot's eye; "
    "the worst of a plate is shown",
    looks_at=FROM_THE_SEAT,
    severities=(Severity.ADVICE,),
    limits=("hidden_share",),
    source=_CFR,
)
def hidden_words(laid: Layout) -> Iterator[Finding]:
    limit = laid.project.profile.hidden_share
    for plate in laid.plates:
        dark = hidden_from(plate.plate, laid, PILOT)
        hidden = [each for words in words_on(plate) if (each := _hidden(words, dark)).share > limit + TIE]
        if hidden:
            yield _finding(hidden, plate, limit)


def _hidden(words: Words, dark: BaseGeometry) -> _Hidden:
    box = polygon(words.box)
    part = box.intersection(dark)
    middle = part.representative_point() if part.area > 0.0 else box.centroid
    return _Hidden(words, part.area / box.area, Point(middle.x, middle.y))


def _finding(hidden: list[_Hidden], plate: PlateLayout, limit: float) -> Finding:
    worst = max(hidden, key=lambda each: each.share)
    return Finding(
        rule="hidden-words",
        severity=Severity.ADVICE,
        problem="Words are hidden from the pilot's eye",
        items=tuple(sorted(each.words.id for each in hidden)),
        plate=plate.plate.id,
        measure=Measure.RATIO,
        measured=worst.share,
        required=limit,
        more_is_worse=True,
        where=(worst.at,),
        source=f"{_CFR}; {limit_source('hidden_share')}",
    )
