"""Short texts beside what they name, moved about until none covers another or, if it can be helped, a line."""

import math
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from enum import Enum
from functools import cached_property
from typing import Final

import shapely

from panelcad.drawing.box import grown, overlap, size
from panelcad.drawing.box import middle as middle_of
from panelcad.drawing.display import Across, Along, Bounds, Colour, Face, Node, Path
from panelcad.drawing.ground import Boxes
from panelcad.drawing.inks import PLAIN, Inks, Letters
from panelcad.drawing.lettering import DESCENT, fitted, text_width
from panelcad.geometry.contour import Contour
from panelcad.geometry.point import Point, distance, polar
from panelcad.geometry.polygon import polygon
from panelcad.geometry.track import Track, line

_ANY: Final = Colour(0, 0, 0)
AIR: Final = 0.5
"""Free space in mm around each text."""
_ANGLES: Final = (
    45.0,
    135.0,
    315.0,
    225.0,
    0.0,
    180.0,
    90.0,
    270.0,
    22.5,
    157.5,
    337.5,
    202.5,
    67.5,
    112.5,
    247.5,
    292.5,
)
_REACHES: Final = (0.0, 1.5, 3.0, 5.0, 8.0, 11.0, 15.0, 20.0, 26.0)
_LEADER: Final = 2.5
"""From this reach on, a leader ties a text to what it names."""
_LINE_COST: Final = 3.0
_NOT_INSIDE: Final = 12.0
LONGEST: Final = 60.0
"""Width in mm that a name on a view may take."""
CROWDED: Final = 0.08
"""A view with more leaders than this share deserves a larger sheet."""


class Stand(Enum):
    """Where a text had best stand: beside its spot, in the middle of what it names, or beside its centre lines."""

    BESIDE = "beside"
    MIDDLE = "middle"
    QUARTER = "quarter"


@dataclass(frozen=True)
class Wish:
    """A text and the spot it names; it stands within its room where there is one, else `radius` or more away."""

    text: str
    spot: Point
    radius: float
    stand: Stand = Stand.BESIDE
    room: Bounds = (0.0, 0.0, 0.0, 0.0)
    height: float = PLAIN
    face: Face = Face.REGULAR
    colour: Colour | None = None

    @cached_property
    def half_width(self) -> float:
        return text_width(self.text, self.height, self.face) / 2


@dataclass(frozen=True)
class Label:
    wish: Wish
    middle: Point
    needs_leader: bool

    @cached_property
    def box(self) -> Bounds:
        x, y = self.middle
        half_width, half_height = self.wish.half_width, self.wish.height / 2
        return x - half_width, y - half_height - DESCENT * self.wish.height, x + half_width, y + half_height

    @property
    def leader(self) -> tuple[Point, Point]:
        """From the rim of what is named to the near side of the text's box."""
        spot, (x1, y1, x2, y2) = self.wish.spot, self.box
        near = Point(min(max(spot.x, x1), x2), min(max(spot.y, y1), y2))
        rim = spot.towards(near, min(self.wish.radius, distance(spot, near)))
        return rim, near.towards(rim, 0.4)

    def nodes(self, inks: Inks) -> tuple[Node, ...]:
        wish = self.wish
        text = inks.text(
            wish.text, self.middle, wish.height, Along.CENTRE, Across.MIDDLE, face=wish.face, colour=wish.colour
        )
        if not self.needs_leader:
            return (text,)
        return text, Path((line(*self.leader),), pen=inks.measure)


class Ground:
    """What labels keep clear of: texts and leaders at any price, lines where it can be helped."""

    def __init__(self, texts: Iterable[Bounds], lines: Iterable[shapely.LineString], area: Bounds) -> None:
        self._texts = Boxes(texts)
        self._leaders: list[tuple[Bounds, shapely.LineString]] = []
        self._area = area
        self._lines = shapely.STRtree(list(lines))

    def place(self, wish: Wish) -> Label | None:
        """The label at its cheapest free place; None where there is none."""
        best: tuple[float, Label] | None = None
        for cost, label in _candidates(wish):
            if best is not None and cost >= best[0]:
                break
            if self._is_taken(label):
                continue
            price = cost + _LINE_COST * self._crossed(label)
            if best is None or price < best[0]:
                best = (price, label)
        if best is None:
            return None
        self._take(best[1])
        return best[1]

    def _take(self, label: Label) -> None:
        self._texts.add(label.box)
        if label.needs_leader:
            line = shapely.LineString(label.leader)
            self._leaders.append((line.bounds, line))

    def _is_taken(self, label: Label) -> bool:
        if not _is_within(label.box, self._area) or self._texts.meets(grown(label.box, AIR)):
            return True
        if any(_meets(label.box, around, leader) for around, leader in self._leaders):
            return True
        return label.needs_leader and self._texts.crossed_by(*label.leader)

    def _crossed(self, label: Label) -> int:
        return len(self._lines.query(shapely.box(*grown(label.box, AIR / 2)), predicate="intersects"))


def _meets(box: Bounds, around: Bounds, leader: shapely.LineString) -> bool:
    return overlap(grown(box, AIR), grown(around, AIR)) and bool(leader.intersects(shapely.box(*box)))


def number_in(text: str, box: Bounds, letters: Letters) -> Wish:
    """A bold number in the middle of a box, large where there is room."""
    width, height = size(box)
    fits_large = width >= text_width(text, letters.large, Face.BOLD) + 2.0 and height >= letters.large + 2.0
    tall = letters.large if fits_large else letters.plain
    return Wish(text, middle_of(box), min(width, height) / 2, Stand.MIDDLE, grown(box, -AIR), tall, Face.BOLD)


def name_in(text: str, box: Bounds, height: float, colour: Colour) -> Wish:
    """A name in the middle of a box, or beside it; a very long one is shortened."""
    return Wish(
        fitted(text, LONGEST, height),
        middle_of(box),
        min(size(box)) / 2,
        Stand.MIDDLE,
        grown(box, -AIR),
        height,
        Face.REGULAR,
        colour,
    )


def crowding(labels: Sequence[Label]) -> float:
    """The share of texts that stand so far off that they need a leader."""
    return sum(label.needs_leader for label in labels) / max(1, len(labels))


def lines_of(contours: Iterable[Contour], tracks: Iterable[Track]) -> list[shapely.LineString]:
    """Edges and lines that labels had better not cross."""
    edges = [polygon(contour, error=0.1).exterior for contour in contours]
    return [*edges, *(shapely.LineString([v.point for v in track.vertices]) for track in tracks)]


def _candidates(wish: Wish) -> Iterator[tuple[float, Label]]:
    """Places from the cheapest: inside where wished, then around the spot, farther and farther."""
    for spot in _STANDS[wish.stand](wish):
        label = Label(wish, spot, needs_leader=False)
        if _is_within(label.box, wish.room):
            yield 0.2 * distance(spot, wish.spot), label
    outside = 0.0 if wish.stand is Stand.BESIDE else _NOT_INSIDE
    for reach in _REACHES:
        for i, angle in enumerate(_ANGLES):
            spot = _around(wish, reach, angle)
            yield outside + reach + 0.05 * i + 0.5, Label(wish, spot, reach > _LEADER)


def _beside(_wish: Wish) -> Iterator[Point]:
    yield from ()


def _in_the_middle(wish: Wish) -> Iterator[Point]:
    """The spot itself, then places up and down and to both sides of it."""
    width, height = size(wish.room)
    steps = (0.0, 0.12, 0.24, 0.36)
    for dx, dy in sorted(((dx, dy) for dx in steps for dy in steps), key=sum):
        yield from (wish.spot.moved(x * width, y * height) for x in sorted({dx, -dx}) for y in sorted({dy, -dy}))


def _in_a_quarter(wish: Wish) -> Iterator[Point]:
    """Between the centre lines, nearest to the middle first."""
    steps = [wish.radius * share for share in (0.0, 0.12, 0.25, 0.4)]
    for dx, dy in sorted(((dx, dy) for dx in steps for dy in steps), key=sum):
        across, up = wish.half_width + 1.2 + dx, wish.height * (0.5 + DESCENT) + 0.5 + dy
        if math.hypot(across + wish.half_width, up + wish.height / 2) < wish.radius:
            yield from (wish.spot.moved(x, y) for x in (across, -across) for y in (up, -up))


_STANDS: Final[dict[Stand, Callable[[Wish], Iterator[Point]]]] = {
    Stand.BESIDE: _beside,
    Stand.MIDDLE: _in_the_middle,
    Stand.QUARTER: _in_a_quarter,
}


def _is_within(box: Bounds, room: Bounds) -> bool:
    return room[0] <= box[0] and room[1] <= box[1] and box[2] <= room[2] and box[3] <= room[3]


def _around(wish: Wish, reach: float, angle: float) -> Point:
    """The text's middle when its box just clears the spot's circle by `reach` in this direction."""
    away = wish.radius + AIR + 0.3 + reach
    edge = polar(wish.spot, away, angle)
    unit = polar(Point(0.0, 0.0), 1.0, angle)
    return edge.moved(_side(unit.x) * wish.half_width, _side(unit.y) * (wish.height * 0.55))


def _side(cosine: float) -> float:
    return 0.0 if abs(cosine) < 0.2 else math.copysign(1.0, cosine)
