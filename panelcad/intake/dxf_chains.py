"""Loose lines and arcs joined end to end into closed chains; what does not close stays open and is told."""

from collections import defaultdict
from dataclasses import dataclass
from typing import Final

from panelcad.geometry.contour import Vertex
from panelcad.geometry.point import Point, distance

JOIN: Final = 0.01
"""Ends at most this many mm apart count as joined: common for drawings that went through several programs."""
_WAYS: Final = ((0, 0), (0, 1), (1, 0), (1, 1), (-1, 0), (0, -1), (-1, -1), (1, -1), (-1, 1))


@dataclass(frozen=True)
class Piece:
    """A line, an arc or an open polyline: vertices with bulges, the last one's not used."""

    vertices: tuple[Vertex, ...]

    @property
    def start(self) -> Point:
        return self.vertices[0].point

    @property
    def end(self) -> Point:
        return self.vertices[-1].point

    def reversed(self) -> "Piece":
        bulges = [0.0, *(-vertex.bulge for vertex in self.vertices[:-1])]
        return Piece(tuple(v._replace(bulge=b) for v, b in zip(self.vertices, bulges, strict=True))[::-1])


@dataclass(frozen=True)
class Chained:
    """Closed rings (vertices, the last joins the first) and open chains (as pieces)."""

    closed: tuple[tuple[Vertex, ...], ...]
    open: tuple[Piece, ...]


def chained(pieces: list[Piece], join: float = JOIN) -> Chained:
    """Join pieces whose ends are at most `join` apart; each piece is used once."""
    pool = _Pool(pieces, join)
    closed, left_open = [], []
    while (seed := pool.take_any()) is not None:
        chain = _grown(seed, pool, join)
        if _is_closed(chain, join):
            closed.append(chain.vertices[:-1])
        else:
            left_open.append(chain)
    return Chained(tuple(closed), tuple(left_open))


def _is_closed(chain: Piece, join: float) -> bool:
    return len(chain.vertices) > 2 and distance(chain.start, chain.end) <= join


def _grown(seed: Piece, pool: "_Pool", join: float) -> Piece:
    """The seed lengthened at its end, then at its start, until it closes or nothing fits."""
    chain = seed
    for _ in range(2):
        while not _is_closed(chain, join) and (following := pool.take_at(chain.end)) is not None:
            chain = _joined(chain, following)
        chain = chain if _is_closed(chain, join) else chain.reversed()
    return chain


def _joined(chain: Piece, following: Piece) -> Piece:
    last, first = chain.vertices[-1], following.vertices[0]
    return Piece((*chain.vertices[:-1], last._replace(bulge=first.bulge), *following.vertices[1:]))


class _Pool:
    """Pieces not yet used, found by where their ends are."""

    def __init__(self, pieces: list[Piece], join: float) -> None:
        self._pieces: list[Piece | None] = list(pieces)
        self._cell = max(join, 1e-9) * 2
        self._join = join
        self._ends: dict[tuple[int, int], list[int]] = defaultdict(list)
        self._next = 0
        for number, piece in enumerate(pieces):
            for end in (piece.start, piece.end):
                self._ends[self._key(end)].append(number)

    def take_any(self) -> Piece | None:
        while self._next < len(self._pieces):
            piece, self._pieces[self._next] = self._pieces[self._next], None
            self._next += 1
            if piece is not None:
                return piece
        return None

    def take_at(self, point: Point) -> Piece | None:
        """The unused piece with the nearest end, turned to start there."""
        near = [(distance(end, point), number, turned) for number, end, turned in self._near(point)]
        if not near or min(near)[0] > self._join:
            return None
        _, number, turned = min(near)
        piece, self._pieces[number] = self._pieces[number], None
        if piece is None:
            return None
        return piece.reversed() if turned else piece

    def _near(self, point: Point) -> list[tuple[int, Point, bool]]:
        column, row = self._key(point)
        numbers = {n for dx, dy in _WAYS for n in self._ends.get((column + dx, row + dy), ())}
        found = []
        for number in sorted(numbers):
            piece = self._pieces[number]
            if piece is not None:
                found += [(number, piece.start, False), (number, piece.end, True)]
        return found

    def _key(self, point: Point) -> tuple[int, int]:
        return round(point.x / self._cell), round(point.y / self._cell)
