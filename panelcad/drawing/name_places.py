"""Where names stand on a view at one zoom: inside what they name or beside it, each in full before any is shortened.

A name that finds no free place is left out. Lengths in mm of the view.
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from enum import Enum
from functools import lru_cache
from itertools import combinations, pairwise
from typing import Final

import shapely
from shapely.geometry.base import BaseGeometry

from panelcad.drawing.box import middle, shrunk, size
from panelcad.drawing.display import Bounds
from panelcad.drawing.ground import Boxes
from panelcad.drawing.lettering import DESCENT, fitted, text_width, wrapped
from panelcad.geometry.contour import Contour
from panelcad.geometry.point import Point
from panelcad.geometry.polygon import polygon

_AIR: Final = 0.45
_PITCH: Final = 1.75
_ASIDE: Final = 1.8
"""Of a capital's height: the free space around a line, from line to line, and from the middle to clear a number."""
_MOST_LINES: Final = 3
_LEAST_LETTERS: Final = 4
"""A name shortened to less says nothing."""
_SHARES: Final = (0.95, 0.8, 0.65, 0.5)
_ERROR: Final = 0.1


class Ground(Enum):
    """What a name inside its thing stands on."""

    OWN = "its own, in the middle"
    SHARED = "what shows through its outline, along the edges"


@dataclass(frozen=True)
class Named:
    """A thing and its name: the contour inside which it may stand, and the box beside which it may."""

    owner: str
    name: str
    room: Contour
    beside: Bounds
    ground: Ground = Ground.OWN

    @property
    def area(self) -> BaseGeometry:
        return _area(self.room)


@lru_cache(maxsize=4096)
def _area(room: Contour) -> BaseGeometry:
    made = polygon(room, error=_ERROR)
    shapely.prepare(made)
    return made


@dataclass(frozen=True)
class Block:
    """A name in one line or several about a middle, in letters whose capitals are so high."""

    owner: str
    lines: tuple[str, ...]
    middle: Point
    height: float

    def places(self) -> Iterator[tuple[str, Point]]:
        """Each line and its middle, from above."""
        top = self.middle.y + (len(self.lines) - 1) / 2 * _PITCH * self.height
        for number, line in enumerate(self.lines):
            yield line, Point(self.middle.x, top - number * _PITCH * self.height)

    def boxes(self) -> tuple[Bounds, ...]:
        """What each line covers with the space around it."""
        return tuple(self._box(line, at) for line, at in self.places())

    def _box(self, line: str, at: Point) -> Bounds:
        half, air = _wide(line) * self.height / 2, _AIR * self.height
        low, high = at.y - self.height * (0.5 + DESCENT), at.y + self.height / 2
        return at.x - half - air, low - air / 2, at.x + half + air, high + air / 2


class Names:
    """Names in letters of one height; `texts` are kept clear of, and so are `things` and `lines` beside a thing."""

    def __init__(
        self, height: float, texts: Iterable[Bounds], things: Iterable[Bounds], lines: Sequence[BaseGeometry]
    ) -> None:
        self._height = height
        self._texts, self._things = Boxes(texts), Boxes(things)
        self._lines = shapely.STRtree(list(lines))

    def placed(self, wanted: Sequence[Named]) -> list[Block]:
        """First all that stand in full inside what they name, then beside it, then shortened."""
        found: dict[str, Block] = {}
        for offers in (self._inside, self._beside, self._shortened):
            for named in wanted:
                if named.owner not in found and (block := next(offers(named), None)) is not None:
                    found[named.owner] = block
                    for box in block.boxes():
                        self._texts.add(box)
        return list(found.values())

    def _inside(self, named: Named) -> Iterator[Block]:
        for lines in _broken(named.name):
            yield from self._in_room(named, lines)

    def _in_room(self, named: Named, lines: tuple[str, ...]) -> Iterator[Block]:
        if not self._has_room(named, lines):
            return
        spots = self._in_the_middle if named.ground is Ground.OWN else self._along_the_edges
        for spot in spots(named, lines):
            block = Block(named.owner, lines, spot, self._height)
            if all(self._is_in(named, box) for box in block.boxes()):
                yield block

    def _has_room(self, named: Named, lines: tuple[str, ...]) -> bool:
        """Whether the room's box is as large as the lines."""
        width, height = size(named.room.bounds)
        high = self._height * (1 + (len(lines) - 1) * _PITCH)
        return high <= height and max(map(_wide, lines)) * self._height <= width

    def _is_in(self, named: Named, box: Bounds) -> bool:
        if self._texts.meets(box) or (named.ground is Ground.SHARED and self._is_on_a_thing(box)):
            return False
        return bool(named.area.contains(shapely.box(*box)))

    def _is_on_a_thing(self, box: Bounds) -> bool:
        return self._things.meets(box) or bool(len(self._lines.query(shapely.box(*box), predicate="intersects")))

    def _in_the_middle(self, named: Named, lines: tuple[str, ...]) -> Iterator[Point]:
        """The middle; else below and above a number that stands there."""
        aside = self._height * (_ASIDE + (len(lines) - 1) / 2 * _PITCH)
        at = middle(named.room.bounds)
        yield from (at, at.moved(0.0, -aside), at.moved(0.0, aside))

    def _along_the_edges(self, named: Named, lines: tuple[str, ...]) -> Iterator[Point]:
        """Under the upper edge and over the lower one: at the left, in the middle, at the right."""
        wide, high = self._spread(lines)
        x1, y1, x2, y2 = shrunk(named.room.bounds, 0.5 * self._height)
        for y in (y2 - high / 2, y1 + high / 2):
            yield from (Point(x, y) for x in (x1 + wide / 2, (x1 + x2) / 2, x2 - wide / 2))

    def _spread(self, lines: tuple[str, ...]) -> tuple[float, float]:
        boxes = Block("", lines, Point(0.0, 0.0), self._height).boxes()
        return max(box[2] - box[0] for box in boxes), boxes[0][3] - boxes[-1][1]

    def _beside(self, named: Named) -> Iterator[Block]:
        """Below the thing, above it, at its right, at its left."""
        x1, y1, x2, y2 = named.beside
        at = middle(named.beside)
        for lines in _broken(named.name)[:2]:
            wide, high = self._spread(lines)
            down = high / 2 + 0.3 * self._height
            for spot in (
                Point(at.x, y1 - down),
                Point(at.x, y2 + down),
                Point(x2 + wide / 2, at.y),
                Point(x1 - wide / 2, at.y),
            ):
                block = Block(named.owner, lines, spot, self._height)
                if not any(self._texts.meets(box) or self._is_on_a_thing(box) for box in block.boxes()):
                    yield block

    def _shortened(self, named: Named) -> Iterator[Block]:
        """As much of the name as there is room for, in as many lines as leave most of it."""
        width = size(named.room.bounds)[0] / self._height
        if width < _LEAST_LETTERS / 2:
            return
        wanted = {_cut_short(named.name, share * width, most) for share in _SHARES for most in (1, 2, 3)}
        for lines in sorted(wanted - {()}, key=lambda lines: (-len("".join(lines)), len(lines), lines)):
            yield from self._in_room(named, lines)


@lru_cache(maxsize=4096)
def _wide(text: str) -> float:
    """Its width in heights of a capital."""
    return text_width(text, 1.0)


@lru_cache(maxsize=4096)
def _broken(name: str) -> tuple[tuple[str, ...], ...]:
    """The name in one line, and broken between words into two and three of about the same length."""
    words = name.split()
    found: list[tuple[str, ...]] = []
    for count in range(1, min(_MOST_LINES, len(words)) + 1):
        cuts = ((0, *breaks, len(words)) for breaks in combinations(range(1, len(words)), count - 1))
        ways = (tuple(" ".join(words[a:b]) for a, b in pairwise(cut)) for cut in cuts)
        found.append(min(ways, key=lambda lines: max(map(_wide, lines))))
    return tuple(found)


def _cut_short(name: str, width: float, most: int) -> tuple[str, ...]:
    """The first words of the name in at most so many lines, so many heights wide; '…' where more follow.

    Only the last word may be shortened; nothing where too little of it is left.
    """
    lines = wrapped(name, width, 1.0)
    *whole, last = lines[:most]
    if any(_wide(line) > width for line in whole):
        return ()
    ending = _ended(" ".join((last, *lines[most:])), width)
    return (*whole, ending) if ending else ()


def _ended(words: str, width: float) -> str:
    """The words in this width; a last one of which too few letters are left goes with them."""
    line = fitted(words, width, 1.0)
    if line == words:
        return line
    before, _, begun = line.removesuffix("…").rpartition(" ")
    if len(begun) >= _LEAST_LETTERS or (begun and words.startswith(f"{before} {begun} ".lstrip())):
        return line
    return f"{before.rstrip(',')}…" if before else ""
