"""Weight and cost of the options as bars beside each other."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from panelcad.drawing.charts.frame import TITLE_LETTER, Chart, ChartLook, Scale, bar, rule, ticks, words
from panelcad.drawing.display import Along, Face, Node

_NAMES = 62.0
_ROW = 8.0


@dataclass(frozen=True)
class Bar:
    """An option's value and how it is written; None where it is not known."""

    name: str
    value: float | None
    text: str


def bars_chart(title: str, bars: tuple[Bar, ...], look: ChartLook, width: float = 160.0) -> Chart:
    """A bar an option, to the left of the zero line where the value is negative."""
    height = 10.0 + _ROW * len(bars)
    values = [bar.value for bar in bars if bar.value is not None]
    marks = ticks(min([0.0, *values]), max([0.0, *values]) or 1.0)
    scale = Scale(marks[0], marks[-1], _NAMES, width - 34.0)
    nodes = [
        words(title, 0.0, height - 2.0, look, height=TITLE_LETTER, face=Face.BOLD, room=width),
        *(node for i, one in enumerate(bars) for node in _bar(one, height - 12.0 - _ROW * i, scale, look)),
        rule((scale.at(0.0), 1.0), (scale.at(0.0), height - 7.0), look.ink, 0.3),
    ]
    return Chart(title, width, height, tuple(nodes))


def _bar(one: Bar, y: float, scale: Scale, look: ChartLook) -> Iterator[Node]:
    yield words(one.name, _NAMES - 2.0, y, look, Along.RIGHT, room=_NAMES - 3.0)
    if one.value is None:
        yield words(one.text, scale.at(0.0) + 1.5, y, look, colour=look.limit)
        return
    ends = sorted((scale.at(0.0), scale.at(one.value)))
    if ends[1] > ends[0]:
        yield bar((ends[0], y - 2.2, ends[1], y + 2.2), look.series[0])
    yield words(one.text, ends[1] + 1.5, y, look)


def named_bars(
    names: tuple[str, ...], values: tuple[float | None, ...], write: Callable[[float], str]
) -> tuple[Bar, ...]:
    """A bar for each name, its value written by `write`, or 'not known'."""
    return tuple(
        Bar(name, value, "not known" if value is None else write(value))
        for name, value in zip(names, values, strict=True)
    )
