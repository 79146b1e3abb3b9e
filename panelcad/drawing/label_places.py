"""Where a text may stand, from the place it likes best to those it likes least."""

import math
from collections.abc import Callable, Iterator
from typing import Final, NamedTuple

from panelcad.drawing.box import is_within, size
from panelcad.drawing.lettering import DESCENT
from panelcad.drawing.wishes import AIR, Stand, Wish
from panelcad.geometry.point import Point, distance, polar

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
_NOT_INSIDE: Final = 12.0


class Place(NamedTuple):
    """What a place costs, and the text's middle there."""

    cost: float
    middle: Point
    needs_leader: bool


def places(wish: Wish) -> Iterator[Place]:
    """Places from the cheapest: inside where wished, then around the spot, farther and farther."""
    for spot in _STANDS[wish.stand](wish):
        if is_within(wish.box_at(spot), wish.room):
            yield Place(0.2 * distance(spot, wish.spot), spot, needs_leader=False)
    outside = 0.0 if wish.stand is Stand.BESIDE else _NOT_INSIDE
    for reach in _REACHES:
        for i, angle in enumerate(_ANGLES):
            yield Place(outside + reach + 0.05 * i + 0.5, _around(wish, reach, angle), reach > _LEADER)


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


def _around(wish: Wish, reach: float, angle: float) -> Point:
    """The text's middle when its box just clears the spot's circle by `reach` in this direction."""
    away = wish.radius + AIR + 0.3 + reach
    edge = polar(wish.spot, away, angle)
    unit = polar(Point(0.0, 0.0), 1.0, angle)
    return edge.moved(_side(unit.x) * wish.half_width, _side(unit.y) * (wish.height * 0.55))


def _side(cosine: float) -> float:
    return 0.0 if abs(cosine) < 0.2 else math.copysign(1.0, cosine)
