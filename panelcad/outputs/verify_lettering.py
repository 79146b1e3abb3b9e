"""Which line of lettering of a project stands in a file: in place, moved, with other strokes, or missing; what is new.

Strokes are compared piece by piece, so that it does not matter how a program joins or splits them: a line of lettering
is in place where all of its pieces are covered by strokes of the file.
"""

import math
from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import islice
from typing import Final

import numpy as np
import shapely

from panelcad.drawing.box import grown, middle
from panelcad.drawing.display import Bounds, union
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point, distance
from panelcad.geometry.segment import Arc, Line, Segment, segment_between
from panelcad.outputs.dxf_plan import Stroke
from panelcad.outputs.verify_lie import RIGHT, Lie, best_lie
from panelcad.outputs.verify_match import Difference

_SHARES: Final = (0.0, 0.25, 0.5, 0.75, 1.0)
_MOSTLY: Final = 0.5
"""A line of lettering with less than this share of its length in place is looked for elsewhere."""
_FARTHEST_STROKE: Final = 5.0
"""mm: a single stroke further from its place counts as missing here and new there."""
_FEW: Final = 6
_SURPLUS: Final = 1e-4
"""The share of the strokes' length that a program may add by rounding."""
_TOGETHER: Final = 5.0
"""mm: strokes that belong to nothing and lie nearer to each other than this are told as one group."""


Lines = dict[str, list[tuple[Segment, ...]]]
"""The strokes of each line of lettering, by its id."""


@dataclass(frozen=True)
class Piece:
    """A line or an arc of lettering."""

    segment: Segment

    @cached_property
    def size(self) -> tuple[float, float]:
        x1, y1, x2, y2 = self.segment.bounds
        return x2 - x1, y2 - y1

    @cached_property
    def middle(self) -> Point:
        return middle(self.segment.bounds)


@dataclass(frozen=True)
class Lettered:
    """One difference of lettering: `engraving` is its id, empty for strokes that are no line's; lengths in mm.

    `moved` is the way it moved, None where that is not known; `strokes` of its `of` strokes differ. `at` is the middle
    of what it is about.
    """

    kind: Difference
    engraving: str
    at: Point
    moved: Point | None = None
    strokes: int = 0
    of: int = 0
    length: float = 0.0


@dataclass(frozen=True)
class Lettering:
    """What of the lettering differs. `lie` is how all of it is off together while the cuts are not."""

    differences: tuple[Lettered, ...] = ()
    lie: Lie = RIGHT
    count: int = 0
    """How many lines of lettering were compared."""

    @property
    def differs(self) -> bool:
        return self.lie != RIGHT or any(each.kind is not Difference.DOUBLED for each in self.differences)


def compared_lettering(
    strokes: Sequence[Stroke],
    standing: Sequence[Stroke],
    chains: Iterable[tuple[Segment, ...]],
    tolerance: float,
) -> Lettering:
    """Hold the chains of strokes of a file, in the plate's axes, against the strokes that are expected.

    Those that are `standing` on the sheet already are not expected.
    """
    lines, found = _by_line(strokes), _pieces(chains)
    lie = _lie(_pieces_of(lines), found, tolerance)
    if lie != RIGHT:
        found = [_placed(segment, lie) for segment in found]
    differences = tuple(_Comparison(lines, found, tolerance).differences(_by_line(standing)))
    if not differences:
        differences = tuple(_doubled(_pieces_of(lines), found, tolerance))
    return Lettering(differences, lie, len(lines))


def _by_line(strokes: Sequence[Stroke]) -> Lines:
    lines: Lines = defaultdict(list)
    for stroke in strokes:
        lines[stroke.feature].append(stroke.track.segments)
    return lines


def _pieces_of(lines: Lines) -> list[Segment]:
    return [segment for chains in lines.values() for segment in _pieces(chains)]


def _pieces(chains: Iterable[tuple[Segment, ...]]) -> list[Segment]:
    return [segment for chain in chains for segment in chain]


def _doubled(expected: Sequence[Segment], found: Sequence[Segment], tolerance: float) -> Iterator[Lettered]:
    once = _length(expected)
    surplus = _length(found) - once
    if surplus > max(tolerance, _SURPLUS * once):
        at = middle(union(segment.bounds for segment in found))
        yield Lettered(Difference.DOUBLED, "", at, length=surplus)


def _lie(expected: list[Segment], found: list[Segment], tolerance: float) -> Lie:
    """How all lettering lies where most of it is not in its place."""
    if not expected or not found or sum(_covered(expected, found, tolerance)) > len(expected) * _MOSTLY:
        return RIGHT
    ours, theirs = [Piece(segment) for segment in expected], [Piece(segment) for segment in found]
    same, lie = best_lie(ours, theirs, Placement(), tolerance)
    return lie if same > len(expected) * _MOSTLY else RIGHT


def _placed(segment: Segment, lie: Lie) -> Segment:
    start, end = (lie.placement.point(Point(at.x * lie.scale, at.y * lie.scale)) for at in (segment.start, segment.end))
    turn = -1.0 if lie.placement.mirrored else 1.0
    return segment_between(start, end, turn * _bulge(segment))


def _bulge(segment: Segment) -> float:
    return math.tan(segment.sweep / 4) if isinstance(segment, Arc) else 0.0


def _moved(segment: Segment, way: Point) -> Segment:
    return segment_between(segment.start.moved(*way), segment.end.moved(*way), _bulge(segment))


class _Comparison:
    """Takes from the strokes found what is in place, then what has moved; the rest is new."""

    def __init__(self, lines: Lines, found: list[Segment], tolerance: float) -> None:
        self._lines = lines
        self._tolerance = tolerance
        expected = _pieces_of(lines)
        covered = iter(_covered(expected, found, tolerance))
        self._in_place = {
            name: [all(list(islice(covered, len(chain)))) for chain in chains] for name, chains in lines.items()
        }
        known = (name for name in lines if self._is_known(name))
        self._rest = _without(found, [piece for name in known for piece in self._here(name)], tolerance)

    def differences(self, standing: Lines) -> Iterator[Lettered]:
        opened = [name for name in self._lines if not all(self._in_place[name])]
        moved = {name: way for name in opened if (way := self._way_of_line(name)) is not None}
        for name in opened:
            if name in moved:
                yield Lettered(Difference.MOVED, name, self._at(name), moved[name])
            else:
                yield self._changed(name)
        yield from self._again(standing)
        yield from self._new()

    def _way_of_line(self, name: str) -> Point | None:
        """How far a line has moved as a whole; None for one that has not. Its strokes are taken from the rest."""
        return None if self._is_known(name) else self._taken(self._lines[name])

    def _is_known(self, name: str) -> bool:
        """Whether so much of a line is in place that it has not moved as a whole."""
        return _length(self._here(name)) >= _MOSTLY * _length(_pieces(self._lines[name]))

    def _here(self, name: str) -> list[Segment]:
        """The pieces of those strokes of a line that are in place."""
        pairs = zip(self._lines[name], self._in_place[name], strict=True)
        return _pieces(chain for chain, is_there in pairs if is_there)

    def _taken(self, chains: Sequence[tuple[Segment, ...]], farthest: float = math.inf) -> Point | None:
        """The shortest way on which all of these strokes are found in the rest, from which they are taken."""
        pieces = _pieces(chains)
        for way in _ways(max(pieces, key=lambda piece: piece.length), self._rest, self._tolerance):
            if math.hypot(*way) > farthest:
                return None
            there = [_moved(piece, way) for piece in pieces]
            if self._has_ends_at(there) and all(_covered(there, self._rest, self._tolerance)):
                self._rest = _without(self._rest, there, self._tolerance)
                return way
        return None

    def _has_ends_at(self, pieces: Sequence[Segment]) -> bool:
        """Whether the rest may hold the pieces, by a few of their ends alone."""
        ends = np.array([at for piece in self._rest for at in (piece.start, piece.end)])
        few = pieces[:: max(1, len(pieces) // _FEW)]
        return all(np.abs(ends - piece.start).max(axis=1).min() <= 2 * self._tolerance for piece in few)

    def _changed(self, name: str) -> Lettered:
        """A line of which some strokes are not in place: moved, else lost; all of them with nothing in their place."""
        chains = self._lines[name]
        self._rest = _without(self._rest, self._here(name), self._tolerance)
        off = [chain for chain, is_there in zip(chains, self._in_place[name], strict=True) if not is_there]
        way = self._taken(off, _FARTHEST_STROKE) if len(off) < len(chains) else None
        at = middle(union(segment.bounds for segment in _pieces(off if way else chains)))
        kind = Difference.RESHAPED
        if way is None:
            instead = self._taken_within(chains)
            kind = Difference.MISSING if len(off) == len(chains) and not instead else kind
        return Lettered(kind, name, at, way, len(off), len(chains), sum(map(_length, off)))

    def _taken_within(self, chains: Sequence[tuple[Segment, ...]]) -> int:
        """How many pieces of the rest stand where these should; they are taken from it."""
        box = grown(union(segment.bounds for segment in _pieces(chains)), self._tolerance)
        within = [piece for piece in self._rest if _is_within(Piece(piece).middle, box)]
        self._rest = [piece for piece in self._rest if piece not in within]
        return len(within)

    def _again(self, standing: Lines) -> Iterator[Lettered]:
        """Lines that stand on the sheet already and would be engraved again."""
        for name, chains in standing.items():
            pieces = _pieces(chains)
            if self._rest and any(_covered(pieces, self._rest, self._tolerance)):
                self._rest = _without(self._rest, pieces, self._tolerance)
                yield Lettered(Difference.NEW, name, middle(union(segment.bounds for segment in pieces)))

    def _new(self) -> Iterator[Lettered]:
        for group in _groups(self._rest):
            at = middle(union(segment.bounds for segment in group))
            yield Lettered(Difference.NEW, "", at, strokes=len(group), length=_length(group))

    def _at(self, name: str) -> Point:
        return middle(union(segment.bounds for segment in _pieces(self._lines[name])))


def _ways(piece: Segment, rest: Sequence[Segment], tolerance: float) -> list[Point]:
    """The ways from a piece to those of the rest that are like it, the shortest first."""
    ways = (way for other in rest for way in _way(piece, other, tolerance))
    return sorted(ways, key=lambda way: math.hypot(*way))


def _way(piece: Segment, other: Segment, tolerance: float) -> Iterator[Point]:
    if isinstance(piece, Line) != isinstance(other, Line):
        return
    for start, end in ((other.start, other.end), (other.end, other.start)):
        way = Point(start.x - piece.start.x, start.y - piece.start.y)
        if distance(piece.end.moved(*way), end) <= 2 * tolerance:
            yield way


def _covered(pieces: Sequence[Segment], by: Sequence[Segment], tolerance: float) -> list[bool]:
    """Which pieces lie along some of `by` everywhere, within `tolerance` mm."""
    if not pieces or not by:
        return [False] * len(pieces)
    points = [piece.at(share) for piece in pieces for share in _SHARES]
    tree = shapely.STRtree([shapely.box(*grown(segment.bounds, tolerance)) for segment in by])
    on = np.zeros(len(points), dtype=bool)
    for i, j in tree.query(shapely.points(points), predicate="intersects").T:
        on[i] = on[i] or distance(by[j].nearest(points[i]), points[i]) <= tolerance
    count = len(_SHARES)
    return [bool(on[i : i + count].all()) for i in range(0, len(points), count)]


def _without(pieces: Sequence[Segment], taken: Sequence[Segment], tolerance: float) -> list[Segment]:
    """The pieces that do not lie along those that are taken."""
    gone = _covered(pieces, taken, tolerance)
    return [piece for piece, is_gone in zip(pieces, gone, strict=True) if not is_gone]


def _groups(pieces: Sequence[Segment]) -> Iterator[list[Segment]]:
    """The pieces by what lies together."""
    if not pieces:
        return
    boxes = [shapely.box(*grown(piece.bounds, _TOGETHER / 2)) for piece in pieces]
    spots = shapely.get_parts(shapely.union_all(boxes))
    tree = shapely.STRtree(spots)
    groups: dict[int, list[Segment]] = defaultdict(list)
    for piece, box in zip(pieces, boxes, strict=True):
        groups[int(tree.query(box, predicate="intersects")[0])].append(piece)
    yield from (groups[spot] for spot in sorted(groups, key=lambda spot: tuple(spots[spot].bounds)))


def _length(pieces: Iterable[Segment]) -> float:
    return sum(piece.length for piece in pieces)


def _is_within(at: Point, box: Bounds) -> bool:
    x1, y1, x2, y2 = box
    return x1 <= at.x <= x2 and y1 <= at.y <= y2
