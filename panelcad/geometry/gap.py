"""How far apart two contours are: the width of metal between two cuts, of air between two bodies.

A gap is positive between contours that are apart, 0 where they touch, and negative by the penetration where they
overlap: the shortest move that would part them. Exact for `Rounded` pairs; otherwise the distance is exact and the
penetration is that of the convex hulls, right to 0.01 mm.
"""

import math
from typing import Final, NamedTuple

import numpy as np
import shapely

from panelcad.geometry.boxes import box_gap
from panelcad.geometry.contour import Chain, Contour, Rounded
from panelcad.geometry.crossing import Nearest, nearest
from panelcad.geometry.point import Point, distance
from panelcad.geometry.polygon import Side, core_geometry, corners, polygon
from panelcad.geometry.segment import Arc, Line, Segment

TIE = 1e-6
"""A value within this many mm of its limit is a tie, and a tie passes."""
_OVERHANG_CHORD: Final = 0.0005
_FARTHEST_FEW: Final = 4


class Gap(NamedTuple):
    """Signed distance in mm, and the two points it was measured between."""

    distance: float
    a: Point
    b: Point


def gap(a: Contour, b: Contour) -> Gap:
    """The signed distance of two filled contours."""
    if isinstance(a, Rounded) and isinstance(b, Rounded):
        return _rounded_gap(a, b)
    apart = _boundary_nearest(a.segments, b.segments)
    if apart.distance > 0.0 and not (contains(a, apart.b) or contains(b, apart.a)):
        return Gap(*apart)
    return Gap(-_hull_penetration(a, b), apart.a, apart.b)


def edge_gap(inner: Contour, outline: Contour) -> Gap:
    """Metal left between a cut and the sheet's edge around it; negative by how far the cut reaches over that edge."""
    apart = _boundary_nearest(inner.segments, outline.segments)
    if apart.distance > 0.0 and contains(outline, apart.a):
        return Gap(*apart)
    return _overhang(inner, outline)


def point_edge_gap(point: Point, outline: Contour) -> Gap:
    """Distance from a point to the sheet's edge; negative outside the sheet."""
    foot = min((segment.nearest(point) for segment in outline.segments), key=lambda found: distance(found, point))
    apart = distance(point, foot)
    return Gap(apart if contains(outline, point) else -apart, point, foot)


def contains(contour: Contour, point: Point) -> bool:
    """Whether the point is inside; points on the contour may count as either."""
    if isinstance(contour, Rounded):
        return core_geometry(contour).distance(shapely.Point(point)) < contour.radius or (
            contour.radius == 0.0 and _winds_around(contour.chain, point)
        )
    return _winds_around(contour, point)


def rounded_distances(a: list[Rounded], b: list[Rounded]) -> "np.ndarray[tuple[int], np.dtype[np.float64]]":
    """Signed distances of many pairs at once, negative where the grown shapes overlap but their cores do not.

    Overlapping cores give minus the sum of the radii: enough to sort out the pairs that need `gap`.
    """
    cores_a = np.array([core_geometry(c) for c in a], dtype=object)
    cores_b = np.array([core_geometry(c) for c in b], dtype=object)
    radii = np.array([c.radius for c in a]) + np.array([c.radius for c in b])
    result: np.ndarray[tuple[int], np.dtype[np.float64]] = shapely.distance(cores_a, cores_b) - radii
    return result


def _rounded_gap(a: Rounded, b: Rounded) -> Gap:
    apart, on_a, on_b = _cores_nearest(a, b)
    reach = a.radius + b.radius
    if apart > 0.0:
        return Gap(apart - reach, on_a.towards(on_b, a.radius), on_b.towards(on_a, b.radius))
    shared = shapely.intersection(core_geometry(a), core_geometry(b))
    at = on_a if shared.is_empty else Point(*shared.centroid.coords[0])
    return Gap(-(_core_penetration(a.core, b.core) + reach), at, at)


def _cores_nearest(a: Rounded, b: Rounded) -> Nearest:
    if a.is_circle and b.is_circle:
        return Nearest(distance(a.core[0], b.core[0]), a.core[0], b.core[0])
    core_a, core_b = core_geometry(a), core_geometry(b)
    (x1, y1), (x2, y2) = shapely.shortest_line(core_a, core_b).coords
    return Nearest(float(core_a.distance(core_b)), Point(x1, y1), Point(x2, y2))


def _core_penetration(a: tuple[Point, ...], b: tuple[Point, ...]) -> float:
    """The shortest move that parts two overlapping convex cores: along a normal of one of their edges."""
    return min((_overlap_along(normal, a, b) for normal in _edge_normals(a) + _edge_normals(b)), default=0.0)


def _edge_normals(core: tuple[Point, ...]) -> list[tuple[float, float]]:
    if len(core) == 1:
        return []
    following = core[1:] + core[:1]
    pairs = [(p, q, distance(p, q)) for p, q in zip(core, following, strict=True)]
    return [((q.y - p.y) / span, -(q.x - p.x) / span) for p, q, span in pairs if span > 0.0]


def _overlap_along(axis: tuple[float, float], a: tuple[Point, ...], b: tuple[Point, ...]) -> float:
    along_a = [p.x * axis[0] + p.y * axis[1] for p in a]
    along_b = [p.x * axis[0] + p.y * axis[1] for p in b]
    return max(0.0, min(max(along_a) - min(along_b), max(along_b) - min(along_a)))


def _hull_penetration(a: Contour, b: Contour) -> float:
    """Penetration of the convex hulls, in mm; circumscribed, so never less than the true one."""
    return _core_penetration(_hull(a), _hull(b))


def _hull(contour: Contour) -> tuple[Point, ...]:
    """The corners of the circumscribed hull; a contour of no width, such as a screw's centre, is its own core."""
    if isinstance(contour, Rounded) and contour.radius == 0.0:
        return contour.core
    around = polygon(contour, Side.CIRCUMSCRIBED).convex_hull.exterior.coords[:-1]
    return tuple(Point(*corner) for corner in around)


def _boundary_nearest(a: tuple[Segment, ...], b: tuple[Segment, ...]) -> Nearest:
    best = Nearest(math.inf, Point(0.0, 0.0), Point(0.0, 0.0))
    for bound, one, other in sorted(
        ((box_gap(one.bounds, other.bounds), one, other) for one in a for other in b),
        key=lambda row: row[0],
    ):
        if bound > best.distance:
            break
        best = min(best, nearest(one, other), key=lambda found: found.distance)
    return best


def _overhang(inner: Contour, outline: Contour) -> Gap:
    """How far a contour reaches over the sheet's edge, as a negative gap at its farthest point.

    Fine polygons choose the few farthest corners; only those are measured against the true outline.
    """
    reached = np.array([p for s in inner.segments for p in corners(s, Side.INSCRIBED, error=_OVERHANG_CHORD)])
    sheet = polygon(outline, Side.INSCRIBED, error=_OVERHANG_CHORD)
    beyond = shapely.distance(sheet, shapely.points(reached))
    farthest = reached[np.argsort(-beyond, kind="stable")[:_FARTHEST_FEW]]
    worst = min((point_edge_gap(Point(*corner), outline) for corner in farthest), key=lambda each: each.distance)
    if worst.distance < 0.0:
        return worst
    touching = _boundary_nearest(inner.segments, outline.segments)
    return Gap(0.0, touching.a, touching.b)


def _winds_around(chain: Chain, point: Point) -> bool:
    """Even-odd rule with a ray to the right, over lines and arcs alike."""
    return sum(_ray_hits(segment, point) for segment in chain.segments) % 2 == 1


def _ray_hits(segment: Segment, point: Point) -> int:
    if isinstance(segment, Line):
        return _line_hits(segment.start, segment.end, point)
    return _line_hits(segment.start, segment.end, point) ^ _in_bow(segment, point)


def _line_hits(start: Point, end: Point, point: Point) -> int:
    if (start.y > point.y) == (end.y > point.y):
        return 0
    at = start.x + (point.y - start.y) * (end.x - start.x) / (end.y - start.y)
    return int(at > point.x)


def _in_bow(arc: Arc, point: Point) -> int:
    """1 where the point lies between the arc and its chord, which the chord alone would misjudge."""
    if distance(arc.centre, point) >= arc.radius:
        return 0
    chord_x, chord_y = arc.end.x - arc.start.x, arc.end.y - arc.start.y
    cross = chord_x * (point.y - arc.start.y) - chord_y * (point.x - arc.start.x)
    return int(cross < 0 if arc.sweep > 0 else cross > 0)
