"""Load by phase against the alternator's limit: a bar a phase, continuous below, for moments above."""

from collections.abc import Iterator

from panelcad.drawing.charts.frame import (
    LETTER,
    TITLE_LETTER,
    Chart,
    ChartLook,
    Scale,
    across_grid,
    bar,
    key,
    rule,
    ticks,
    words,
)
from panelcad.drawing.display import Along, Face, Node
from panelcad.drawing.lettering import wrapped
from panelcad.planning.electrical.capacity import LIMIT
from panelcad.planning.electrical.judge import Electrical

_LEFT, _LOW, _HEAD = 12.0, 13.0, 13.0


def load_chart(
    figures: Electrical, title: str, look: ChartLook, *, width: float = 160.0, height: float = 75.0
) -> Chart:
    """The load of each phase in A; loads of which the current is not known are in no bar, and the chart says so."""
    most = max([row.continuous + row.intermittent for row in figures.phases] + [figures.rating or 0.0, 1.0])
    marks = ticks(0.0, most)
    scale = Scale(0.0, marks[-1], _LOW, height - _HEAD)
    right = width - 26.0
    nodes = [
        words(title, 0.0, height - 2.0, look, height=TITLE_LETTER, face=Face.BOLD, room=width),
        *key((("continuous", look.series[0]), ("for moments", look.series[1])), _LEFT, height - 7.5, look, 80.0),
        words("A", _LEFT - 1.5, height - 7.5, look, Along.RIGHT),
        *across_grid(marks, scale, _LEFT, right, look),
        *_bars(figures, scale, right, look),
        *_limits(figures, scale, right, look),
    ]
    if figures.unknown:
        told = f"{len(figures.unknown)} load(s) of unknown current are in no bar"
        nodes.append(words(told, _LEFT, 1.5, look, colour=look.limit))
    return Chart(title, width, height, tuple(nodes))


def _bars(figures: Electrical, scale: Scale, right: float, look: ChartLook) -> Iterator[Node]:
    pitch = (right - _LEFT) / len(figures.phases)
    for place, row in enumerate(figures.phases):
        left = _LEFT + (place + 0.22) * pitch
        edge = left + 0.56 * pitch
        foot, top = scale.at(row.continuous), scale.at(row.continuous + row.intermittent)
        if row.continuous:
            yield bar((left, scale.at(0.0), edge, foot), look.series[0])
        if row.intermittent:
            yield bar((left, foot, edge, top), look.series[1])
        middle = (left + edge) / 2
        more = f" + {row.intermittent:.1f}" if row.intermittent else ""
        yield words(f"{row.continuous:.1f}{more}", middle, top + 2.0, look, Along.CENTRE, face=Face.BOLD)
        for i, text in enumerate(wrapped(row.phase.value, pitch - 1.0, LETTER)):
            yield words(text, middle, _LOW - 3.0 - 3.0 * i, look, Along.CENTRE, room=pitch - 1.0)


def _limits(figures: Electrical, scale: Scale, right: float, look: ChartLook) -> Iterator[Node]:
    if figures.rating is None:
        return
    for value, name in (
        (figures.rating, f"rated {figures.rating:g} A"),
        (LIMIT * figures.rating, f"80 %: {LIMIT * figures.rating:g} A"),
    ):
        y = scale.at(value)
        yield rule((_LEFT, y), (right, y), look.limit, 0.35, (2.0, 1.0))
        yield words(name, right + 1.5, y, look, colour=look.limit)
