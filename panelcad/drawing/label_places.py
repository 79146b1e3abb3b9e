"""Where a text may stand, from the place it likes best to those it likes least."""

import math
from collections.abc import Callable, Iterator
from typing import Final, NamedTuple

from panelcad.drawing.box import is_within, middle, size
from panelcad.drawing.display import Bounds
from panelcad.drawing.lettering import DESCENT
from panelcad.drawing.wishes import AIR, Stand, Wish
from panelcad.geometry.point import Point, direction, distance, polar

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
_SIDES: Final = ((0, -1), (0, 1), (1, 0), (-1, 0), (1, -1), (-1, -1), (1, 1), (-1, 1))
"""Where a text stands about a box, from the best: below it, above it, at its sides, at its corners."""
_REACHES: Final = (0.0, 1.5, 3.0, 5.0, 8.0, 11.0, 15.0, 20.0, 26.0, 34.0)
_NEAR: Final = 5
"""So many reaches are tried for a text that may be left out: far off it says little."""
_RADII: Final = (4.0, 6.0, 9.0, 13.0, 18.0, 25.0)
"""How far from its arc the text of a radius stands."""
_ASIDE: Final = (0.0, 20.0, -20.0, 40.0, -40.0)
"""By how many degrees its leader may turn off the radius."""
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
    if wish.stand is Stand.RADIAL:
        yield from _along_the_radius(wish)
        return
    for spot in _STANDS[wish.stand](wish):
        if is_within(wish.box_at(spot), wish.room):
            yield Place(0.2 * distance(spot, wish.spot), spot, needs_leader=False)
    outside = 0.0 if wish.stand is Stand.BESIDE else _NOT_INSIDE
    for reach in _REACHES[:_NEAR] if wish.is_optional else _REACHES:
        for i, spot in enumerate(_around(wish, reach)):
            yield Place(outside + reach + 0.05 * i + 0.5, spot, reach > _LEADER)


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


def _along_the_radius(wish: Wish) -> Iterator[Place]:
    """Outside the arc and inside it, straight along the radius or a little aside, always with a leader."""
    for reach in _RADII:
        for aside in _ASIDE:
            cosine, sine = direction(aside)
            way = Point(wish.way.x * cosine - wish.way.y * sine, wish.way.x * sine + wish.way.y * cosine)
            out = reach + abs(way.x) * wish.half_width + abs(way.y) * wish.height * 0.7
            cost = 0.3 * reach + 0.02 * abs(aside)
            for sign in (out, -out):
                yield Place(cost, wish.spot.moved(way.x * sign, way.y * sign), needs_leader=True)


def _around(wish: Wish, reach: float) -> Iterator[Point]:
    """The text's middle in each direction when its box just clears what is named by `reach`."""
    if wish.thing is not None:
        yield from (_beside_box(wish, wish.thing, reach, side) for side in _SIDES)
    else:
        yield from (_about_circle(wish, reach, angle) for angle in _ANGLES)


def _beside_box(wish: Wish, thing: Bounds, reach: float, side: tuple[int, int]) -> Point:
    width, height = size(thing)
    away = AIR + 0.1 + reach
    low = DESCENT * wish.height if side[1] > 0 else 0.0
    across = side[0] * (width / 2 + wish.half_width + away)
    up = side[1] * (height / 2 + wish.height / 2 + away + low)
    return middle(thing).moved(across, up)


def _about_circle(wish: Wish, reach: float, angle: float) -> Point:
    away = wish.radius + AIR + 0.3 + reach
    edge = polar(wish.spot, away, angle)
    unit = polar(Point(0.0, 0.0), 1.0, angle)
    return edge.moved(_side(unit.x) * wish.half_width, _side(unit.y) * (wish.height * 0.55))


def _side(cosine: float) -> float:
    return 0.0 if abs(cosine) < 0.2 else math.copysign(1.0, cosine)
