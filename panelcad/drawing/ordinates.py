"""Ordinate dimensions: from one datum, each value at the end of an extension line, without arrows (ASME Y14.5, 1.9.2;
running dimensions of ISO 129-1). Texts that would stand too close are spread and their lines cranked.
"""

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from enum import Enum
from typing import Final

from panelcad.drawing.display import Across, Along, Bounds, Node, Path, Text
from panelcad.drawing.inks import Inks
from panelcad.drawing.spread import spread
from panelcad.geometry.point import Point
from panelcad.geometry.track import Track, polyline

PITCH: Final = 1.44
"""From text to text along a side, in heights of the letters."""
_RUN: Final = 3.0
_CRANK: Final = 6.0
_SAME: Final = 0.005
"""Values nearer than this on paper are one ordinate."""


def reach(height: float) -> float:
    """Room in mm that ordinates need outside the view's box: run, crank, and a value of nine characters."""
    return _RUN + _CRANK + 2.0 + 6.0 * height


class Side(Enum):
    BOTTOM = "bottom"
    TOP = "top"
    LEFT = "left"
    RIGHT = "right"

    @property
    def is_across(self) -> bool:
        """Whether its values run along x."""
        return self in {Side.BOTTOM, Side.TOP}


@dataclass(frozen=True)
class Mark:
    """A feature to be measured: its centre on paper, and its values in words; an empty one is not measured."""

    at: Point
    x_text: str
    y_text: str
    is_reference: bool = False


@dataclass(frozen=True)
class Ordinate:
    """One value: where it is measured along a side, how far into the view its line reaches, and its words."""

    along: float
    inner: float
    text: str


@dataclass(frozen=True)
class Ordinates:
    """What is drawn, and how far in mm the farthest text had to move from its line."""

    nodes: tuple[Node, ...]
    texts: tuple[Text, ...]
    lines: tuple[Track, ...]
    shift: float = 0.0


class Shared(Enum):
    """Which sides bear the ordinates: whichever is nearer, or left and bottom, or right and top alone."""

    NEARER = "nearer"
    LOW = "low"
    HIGH = "high"


@dataclass(frozen=True)
class Surround:
    """A view's box, the area around it that ordinates may use, and how they are written."""

    view: Bounds
    area: Bounds
    inks: Inks
    height: float
    shared: Shared = Shared.NEARER


def ordinates(marks: Sequence[Mark], around: Surround) -> Ordinates | None:
    """Ordinates of all marks around a view; None where a side is too short for them."""
    texts: list[Text] = []
    tracks: list[Track] = []
    for side, found in _sides(marks, around):
        laid = _laid(side, found, around)
        if laid is None:
            return None
        texts.extend(laid[0])
        tracks.extend(laid[1])
    lines = Path(tuple(tracks), pen=around.inks.measure)
    shift = max((_crank(track) for track in tracks), default=0.0)
    return Ordinates((lines, *texts) if tracks else (), tuple(texts), tuple(tracks), shift)


def _crank(track: Track) -> float:
    """How far aside an ordinate's line ends from where it starts."""
    start, end = track.vertices[0], track.vertices[-1]
    return min(abs(end.x - start.x), abs(end.y - start.y))


def _sides(marks: Sequence[Mark], around: Surround) -> Iterator[tuple[Side, list[Ordinate]]]:
    x1, y1, x2, y2 = around.view
    across = _grouped(marks, lambda mark: (mark.at.x, mark.at.y, mark.x_text))
    upward = _grouped(marks, lambda mark: (mark.at.y, mark.at.x, mark.y_text))
    yield from zip((Side.BOTTOM, Side.TOP), _shared_out(across, y1, y2, around.shared), strict=True)
    yield from zip((Side.LEFT, Side.RIGHT), _shared_out(upward, x1, x2, around.shared), strict=True)


@dataclass(frozen=True)
class _Group:
    """Marks of one value: where it is along the side, the ends of their spread across it, and the words."""

    along: float
    low: float
    high: float
    text: str


def _grouped(marks: Iterable[Mark], reading: Callable[[Mark], tuple[float, float, str]]) -> list[_Group]:
    groups: list[_Group] = []
    for mark in sorted(marks, key=lambda each: (reading(each)[0], each.is_reference)):
        along, across, text = reading(mark)
        if not text:
            continue
        words = f"({text})" if mark.is_reference else text
        last = groups[-1] if groups else None
        if last is not None and along - last.along <= _SAME:
            kept = last.text if not last.text.startswith("(") else words
            groups[-1] = _Group(last.along, min(last.low, across), max(last.high, across), kept)
        else:
            groups.append(_Group(along, across, across, words))
    return groups


def _shared_out(groups: list[_Group], low: float, high: float, shared: Shared) -> tuple[list[Ordinate], list[Ordinate]]:
    """The ordinates of the low and of the high side."""
    below: list[Ordinate] = []
    above: list[Ordinate] = []
    for group in groups:
        if _GOES_LOW[shared](group, low, high):
            below.append(Ordinate(group.along, group.high, group.text))
        else:
            above.append(Ordinate(group.along, group.low, group.text))
    return below, above


_GOES_LOW: Final[dict[Shared, Callable[[_Group, float, float], bool]]] = {
    Shared.NEARER: lambda group, low, high: group.low - low <= high - group.high,
    Shared.LOW: lambda *_: True,
    Shared.HIGH: lambda *_: False,
}


def _laid(side: Side, found: list[Ordinate], around: Surround) -> tuple[list[Text], list[Track]] | None:
    area = around.area
    low, high = (area[0], area[2]) if side.is_across else (area[1], area[3])
    pitch = PITCH * around.height
    places = spread([ordinate.along for ordinate in found], pitch, low + pitch / 2, high - pitch / 2)
    if places is None:
        return None
    edge, outward = _edge(side, around.view)
    texts, tracks = [], []
    for ordinate, place in zip(found, places, strict=True):
        ends = (
            ordinate.inner,
            edge + outward * _RUN,
            edge + outward * (_RUN + _CRANK),
            edge + outward * (_RUN + _CRANK + 1),
        )
        places_along = (ordinate.along, ordinate.along, place, place)
        tracks.append(polyline(*(_at(side, along, across) for along, across in zip(places_along, ends, strict=True))))
        texts.append(_text(side, _at(side, place, ends[-1] + outward * 0.8), ordinate.text, around))
    return texts, tracks


def _edge(side: Side, view: Bounds) -> tuple[float, float]:
    """The side's coordinate across itself, and the sign of the way out."""
    x1, y1, x2, y2 = view
    return {Side.BOTTOM: (y1, -1.0), Side.TOP: (y2, 1.0), Side.LEFT: (x1, -1.0), Side.RIGHT: (x2, 1.0)}[side]


def _at(side: Side, along: float, across: float) -> Point:
    return Point(along, across) if side.is_across else Point(across, along)


def _text(side: Side, at: Point, words: str, around: Surround) -> Text:
    """Read from below or from the right, as ISO 129-1 wants."""
    rotation = 90.0 if side.is_across else 0.0
    along = Along.RIGHT if side in {Side.BOTTOM, Side.LEFT} else Along.LEFT
    inks = around.inks
    return inks.text(words, at, around.height, along, Across.MIDDLE, rotation=rotation, colour=inks.note)
