"""An outline by its sharp corners and the radius that each is rounded by, so that a rounded corner stays one.

Corners are numbered from 0; an edge bears the number of the corner it leaves. The record of a plate holds the finished
lines and arcs: `sharpened` finds the rounded corners in them again, `redrawn` changes them and finishes them anew.
"""

import math
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Final, Self

from panelcad.editing.outline import add_corner, chamfer_corner, edges, move_corner, remove_corner
from panelcad.editing.refusal import edit
from panelcad.errors import EditRefused
from panelcad.geometry.corner import is_smooth, lengthened, rounded_pieces, sharp_corner, trimmed
from panelcad.geometry.curve import heading
from panelcad.geometry.point import Point
from panelcad.geometry.segment import Arc, Segment
from panelcad.model.shape import Corner, Outline
from panelcad.units import rounded

_SAME: Final = 1e-6
_STILL: Final = 5
"""Decimals of a mm to which a corner that was made sharp and rounded again is where it was."""


@dataclass(frozen=True)
class SharpOutline:
    """`sharp` are the lines and arcs as if no corner were rounded; `radii` in mm, 0 for a sharp corner."""

    sharp: Outline
    radii: tuple[float, ...]

    @classmethod
    def of(cls, sharp: Outline) -> Self:
        """With no corner rounded."""
        return cls(sharp, (0.0,) * len(sharp.corners))

    @property
    def edges(self) -> tuple[Segment, ...]:
        return edges(self.sharp)

    def at(self, corner: int) -> Point:
        """Where the corner is, or would be if it were sharp."""
        return Point(self.sharp.corners[corner].x, self.sharp.corners[corner].y)

    def reshaped(self, sharp: Outline) -> Self:
        """With as many corners, elsewhere or with other edges."""
        return replace(self, sharp=sharp)

    def moved(self, corner: int, to: Point) -> Self:
        """The corner at another place; the bows of its edges keep their proportion."""
        return self.reshaped(move_corner(self.sharp, corner, to.x, to.y))

    def with_corner(self, edge: int, at: Point) -> Self:
        """A corner more where the edge passes nearest to a point."""
        radii = (*self.radii[: edge + 1], 0.0, *self.radii[edge + 1 :])
        return replace(self, sharp=add_corner(self.sharp, edge, at), radii=radii)

    def without(self, corner: int) -> Self:
        radii = tuple(radius for i, radius in enumerate(self.radii) if i != corner)
        return replace(self, sharp=remove_corner(self.sharp, corner), radii=radii)

    def rounded_by(self, corner: int, radius: float) -> Self:
        """The corner rounded by this radius in mm, or sharp by 0."""
        _refuse_negative(radius)
        return replace(self, radii=tuple(radius if i == corner else old for i, old in enumerate(self.radii)))

    def all_rounded_by(self, radius: float) -> Self:
        """Every corner rounded by this radius in mm; where edges run on smoothly there is none."""
        _refuse_negative(radius)
        segments = self.edges
        smooth = [is_smooth(segments[i - 1], edge) for i, edge in enumerate(segments)]
        return replace(self, radii=tuple(0.0 if is_one else radius for is_one in smooth))

    def cut_off(self, corner: int, leg: float) -> Self:
        """The corner cut off by a straight line that takes `leg` mm off both edges as they are without rounding."""
        radii = (*self.radii[:corner], 0.0, 0.0, *self.radii[corner + 1 :])
        return replace(self, sharp=chamfer_corner(self.sharp, corner, leg), radii=radii)

    def rounding(self, corner: int) -> Segment | None:
        """The arc that rounds the corner; None for a sharp one. Raises `EditRefused`."""
        if not self.radii[corner]:
            return None
        segments = self.edges
        return rounded_pair(segments[corner - 1], segments[corner], self.radii[corner], f"corner {corner + 1}")[1]

    def radius_through(self, corner: int, at: Point) -> float:
        """The radius in mm whose arc passes, in the middle of the corner, as deep as a point; 0 outside.

        Exact between straight edges; between arcs it is that of their tangents.
        """
        before, after = self.edges[corner - 1], self.edges[corner]
        (ax, ay), (bx, by) = heading(before, before.end), heading(after, after.start)
        inward = math.hypot(bx - ax, by - ay)
        if inward < _SAME:
            return 0.0
        here = self.at(corner)
        depth = ((at.x - here.x) * (bx - ax) + (at.y - here.y) * (by - ay)) / inward
        half_angle = math.asin(min(1.0, math.hypot(ax + bx, ay + by) / 2))
        return max(0.0, rounded(depth / (1 / math.sin(half_angle) - 1))) if half_angle > _SAME else 0.0

    @edit
    def finished(self) -> Outline:
        """The lines and arcs with their corners rounded. Raises `EditRefused` where edges are too short for that."""
        return Outline(corners=corners_of(_rounded_loop(self.edges, self.radii)))


def sharpened(outline: Outline) -> SharpOutline:
    """The outline with its rounded corners made sharp; an arc that rounds no corner stays an edge."""
    segments = edges(outline)
    sharp = _sharp_corners(segments)
    count = len(segments)
    starts = [sharp.get((i - 1) % count, edge.start) for i, edge in enumerate(segments)]
    corners, radii = [], []
    for i, edge in enumerate(segments):
        if i in sharp:
            continue
        corners.append(_lengthened(outline.corners[i], edge, starts[i], sharp.get((i + 1) % count, edge.end)))
        before = segments[i - 1]
        radii.append(rounded(before.radius) if (i - 1) % count in sharp and isinstance(before, Arc) else 0.0)
    return SharpOutline(Outline(corners=tuple(corners)), tuple(radii))


def redrawn(outline: Outline, change: Callable[[SharpOutline], SharpOutline]) -> Outline:
    """The outline with its sharp corners or their radii changed; what does not move stays to the nanometre."""
    before = {(_place(start), _place(end)): start for start, end in _ends(outline)}
    finished = change(sharpened(outline)).finished()
    return Outline(corners=tuple(_kept(start, end, before) for start, end in _ends(finished)))


def _ends(outline: Outline) -> Iterator[tuple[Corner, Corner]]:
    """Of each edge the corner that it leaves and the one that it reaches."""
    return zip(outline.corners, (*outline.corners[1:], outline.corners[0]), strict=True)


def _lengthened(corner: Corner, edge: Segment, start: Point, end: Point) -> Corner:
    """The corner from which the edge runs between two points of its whole line or circle."""
    return corner if (start, end) == (edge.start, edge.end) else _corner(lengthened(edge, start, end))


def _sharp_corners(segments: tuple[Segment, ...]) -> dict[int, Point]:
    """By the number of the arc that rounds it, where each rounded corner would be sharp; small arcs first."""
    found: dict[int, Point] = {}
    arcs = sorted((edge.radius, i) for i, edge in enumerate(segments) if isinstance(edge, Arc))
    for _, i in arcs:
        arc, after = segments[i], (i + 1) % len(segments)
        if isinstance(arc, Arc) and (i - 1) % len(segments) not in found and after not in found:
            corner = sharp_corner(segments[i - 1], arc, segments[after])
            if corner is not None:
                found[i] = corner
    return found


def _rounded_loop(segments: Sequence[Segment], radii: Sequence[float]) -> list[Segment]:
    """The closed loop with the corner at which each segment begins rounded by its radius, 0 for a sharp one."""
    loop = list(segments)
    for corner in reversed(range(1, len(loop))):
        if radii[corner]:
            pair = rounded_pair(loop[corner - 1], loop[corner], radii[corner], f"corner {corner + 1}")
            loop[corner - 1 : corner + 1] = pair
    if radii[0]:
        before, arc, after = rounded_pair(loop[-1], loop[0], radii[0], "corner 1")
        loop = [after, *loop[1:-1], before, arc]
    return loop


def rounded_pair(before: Segment, after: Segment, radius: float, where: str) -> tuple[Segment, Segment, Segment]:
    """Both edges and the arc that rounds the corner between them. Raises `EditRefused`, which says where."""
    if min(before.length, after.length) < _SAME:
        raise EditRefused(f"At {where} the edges are too short for that radius.")
    try:
        return rounded_pieces(before, after, radius)
    except ValueError as error:
        raise EditRefused(f"At {where} {error}.") from error


def corners_of(segments: Iterable[Segment]) -> tuple[Corner, ...]:
    """Each segment as the corner that it leaves and its bulge; what rounding left nothing of is left out."""
    return tuple(_corner(segment) for segment in segments if segment.length > _SAME)


def _corner(segment: Segment) -> Corner:
    return Corner(x=segment.start.x, y=segment.start.y, bulge=trimmed(segment, segment.start, segment.end))


Place = tuple[float, float]


def _place(corner: Corner) -> Place:
    return round(corner.x, _STILL), round(corner.y, _STILL)


def _kept(start: Corner, end: Corner, before: Mapping[tuple[Place, Place], Corner]) -> Corner:
    """The corner as it was before where its edge runs as it did."""
    old = before.get((_place(start), _place(end)))
    if old is None:
        return start
    chord = math.hypot(end.x - start.x, end.y - start.y)
    return old if abs(start.bulge - old.bulge) * chord / 2 < 10**-_STILL else start


def _refuse_negative(radius: float) -> None:
    if radius < 0:
        raise EditRefused("A radius that is not negative is expected.")
