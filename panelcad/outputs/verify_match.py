"""Which contour of a file is which of the project: the same, moved, larger, smaller, reshaped, missing or new."""

import math
from collections import defaultdict
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from enum import StrEnum
from functools import cached_property
from itertools import product
from typing import Final, Protocol, TypeVar

from panelcad.geometry.contour import Contour
from panelcad.geometry.point import Point, distance

FARTHEST_MOVE: Final = 50.0
"""A contour of the same size further away than this many mm counts as missing here and new there."""
FARTHEST_LOOK: Final = 1000.0
"""Contours further apart than this many mm, or two cells of it, are never compared."""
_SHARES: Final = (0.0, 0.25, 0.5, 0.75)


class Difference(StrEnum):
    MOVED = "moved"
    GREW = "grew"
    SHRANK = "shrank"
    RESHAPED = "reshaped"
    MISSING = "missing"
    NEW = "new"
    DOUBLED = "doubled"


class Boxed(Protocol):
    """Something with a box: its size, and the middle of it."""

    @property
    def size(self) -> tuple[float, float]: ...

    @property
    def middle(self) -> Point: ...


@dataclass(frozen=True)
class Seen:
    """A contour with its layer and its name: the feature it cuts; empty for one that was found in a file.

    `finish` is how many mm each side will lose to the finish: negative for the sheet's edge, which gains.
    `is_joined` and `is_curved` say how it came, as for `FoundContour`.
    """

    name: str
    contour: Contour
    finish: float = 0.0
    layer: str = ""
    is_joined: bool = False
    is_curved: bool = False

    @cached_property
    def size(self) -> tuple[float, float]:
        x1, y1, x2, y2 = self.contour.bounds
        return x2 - x1, y2 - y1

    @cached_property
    def middle(self) -> Point:
        x1, y1, x2, y2 = self.contour.bounds
        return Point((x1 + x2) / 2, (y1 + y2) / 2)


@dataclass(frozen=True)
class Differing:
    """One difference. `by` is its size in mm: the way moved, how much a side grew, how far the shape strays."""

    kind: Difference
    expected: Seen | None
    found: Seen | None
    by: float = 0.0

    @property
    def subject(self) -> Seen:
        """What the difference is about: what was expected, else what was found."""
        subject = self.expected or self.found
        if subject is None:
            raise ValueError("a difference is about something")
        return subject

    @property
    def now(self) -> Seen:
        """What is there instead: what was found, else what was expected."""
        return self.found or self.subject

    @property
    def moved(self) -> tuple[float, float]:
        """The way the middle moved, in mm."""
        return self.now.middle.x - self.subject.middle.x, self.now.middle.y - self.subject.middle.y


Box = TypeVar("Box", bound=Boxed)


def differences(expected: tuple[Seen, ...], found: tuple[Seen, ...], tolerance: float) -> tuple[Differing, ...]:
    """Every difference beyond `tolerance` mm; expected contours first, in their order."""
    rest_of_expected, rest_of_found = list(expected), list(found)
    told: list[Differing] = []
    for nearness, tell in _STAGES:
        pairs = _paired(rest_of_expected, rest_of_found, nearness, tolerance)
        told.extend(each for one, other in pairs for each in tell(one, other, tolerance))
        rest_of_expected = _without(rest_of_expected, [one for one, _ in pairs])
        rest_of_found = _without(rest_of_found, [other for _, other in pairs])
    told.extend(Differing(Difference.MISSING, one, None) for one in rest_of_expected)
    order = {id(one): place for place, one in enumerate(expected)}
    told.sort(key=lambda each: order[id(each.expected)])
    return (*told, *_surplus(rest_of_found, expected, tolerance))


def count_same(expected: Sequence[Boxed], found: Sequence[Boxed], tolerance: float) -> int:
    """How many expected contours have one of the same place and size."""
    return len(in_place(expected, found, tolerance))


def in_place(expected: Sequence[Box], found: Sequence[Box], tolerance: float) -> list[tuple[Box, Box]]:
    """Each expected contour with the one found of the same place and size."""
    return _paired(expected, found, same_place, tolerance)


def _without(seen: list[Seen], used: list[Seen]) -> list[Seen]:
    gone = {id(each) for each in used}
    return [each for each in seen if id(each) not in gone]


Nearness = Callable[[Boxed, Boxed, float], float | None]


def _paired(
    expected: Sequence[Box], found: Sequence[Box], nearness: Nearness, tolerance: float
) -> list[tuple[Box, Box]]:
    """The nearest pairs first, each contour once."""
    near = [
        (how_near, i, j)
        for i, j in _worth_a_look(expected, found, tolerance if nearness is same_place else FARTHEST_LOOK)
        if (how_near := nearness(expected[i], found[j], tolerance)) is not None
    ]
    used_expected, used_found, pairs = set[int](), set[int](), []
    for _, i, j in sorted(near):
        if i not in used_expected and j not in used_found:
            used_expected.add(i)
            used_found.add(j)
            pairs.append((expected[i], found[j]))
    return pairs


def _worth_a_look(expected: Sequence[Boxed], found: Sequence[Boxed], reach: float) -> Iterator[tuple[int, int]]:
    """Pairs whose middles may be `reach` mm apart, found by a grid of that pitch."""
    cells: dict[tuple[int, int], list[int]] = defaultdict(list)
    for j, other in enumerate(found):
        cells[_cell(other.middle, reach)].append(j)
    for i, one in enumerate(expected):
        column, row = _cell(one.middle, reach)
        for dx, dy in product((-1, 0, 1), repeat=2):
            yield from ((i, j) for j in cells.get((column + dx, row + dy), ()))


def _cell(at: Point, pitch: float) -> tuple[int, int]:
    return math.floor(at.x / pitch), math.floor(at.y / pitch)


def _size_difference(one: Boxed, other: Boxed) -> float:
    return max(abs(one.size[0] - other.size[0]), abs(one.size[1] - other.size[1]))


def same_place(one: Boxed, other: Boxed, tolerance: float) -> float | None:
    """How far apart two boxes are that count as one and the same; None where they do not."""
    apart = distance(one.middle, other.middle)
    same = apart <= tolerance and _size_difference(one, other) <= 2 * tolerance
    return apart if same else None


def _same_size(one: Boxed, other: Boxed, tolerance: float) -> float | None:
    apart = distance(one.middle, other.middle)
    same = apart <= FARTHEST_MOVE and _size_difference(one, other) <= 2 * tolerance
    return apart if same else None


def _overlapping(one: Boxed, other: Boxed, _tolerance: float) -> float | None:
    apart = distance(one.middle, other.middle)
    return apart + _size_difference(one, other) if apart <= max(*one.size, *other.size) / 2 else None


def _toldsame_place(one: Seen, other: Seen, tolerance: float) -> Iterator[Differing]:
    strays = deviation(one.contour, other.contour)
    if strays > tolerance:
        yield Differing(Difference.RESHAPED, one, other, strays)


def _told_moved(one: Seen, other: Seen, _tolerance: float) -> Iterator[Differing]:
    yield Differing(Difference.MOVED, one, other, distance(one.middle, other.middle))


def _told_resized(one: Seen, other: Seen, _tolerance: float) -> Iterator[Differing]:
    growths = [now - was for was, now in zip(one.size, other.size, strict=True)]
    growth = max(growths, key=abs)
    yield Differing(Difference.GREW if growth > 0 else Difference.SHRANK, one, other, abs(growth))


_STAGES: Final = (
    (same_place, _toldsame_place),
    (_same_size, _told_moved),
    (_overlapping, _told_resized),
)


def _surplus(found: list[Seen], expected: tuple[Seen, ...], tolerance: float) -> Iterator[Differing]:
    for other in found:
        twin = next((one for one in expected if same_place(one, other, tolerance) is not None), None)
        yield Differing(Difference.DOUBLED if twin else Difference.NEW, twin, other)


def deviation(one: Contour, other: Contour) -> float:
    """The farthest that a corner, or a quarter point of a piece, of either contour lies off the other, in mm."""
    return max(_strays(one, other), _strays(other, one))


def farthest_stray(one: Contour, other: Contour) -> Point:
    """That corner or point."""
    points = ((_off(at, there), at) for here, there in ((one, other), (other, one)) for at in _points(here))
    return max(points)[1]


def _points(contour: Contour) -> Iterator[Point]:
    return (segment.at(share) for segment in contour.segments for share in _SHARES)


def _strays(one: Contour, other: Contour) -> float:
    return max(_off(point, other) for point in _points(one))


def _off(point: Point, contour: Contour) -> float:
    return min((distance(segment.nearest(point), point) for segment in contour.segments), default=math.inf)
