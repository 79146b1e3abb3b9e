"""What a contour covers while it is moved straight, and how wide it is across."""

import shapely

from panelcad.geometry.contour import Contour, Rounded
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point, distance
from panelcad.geometry.polygon import Side, polygon


def swept(contour: Contour, dx: float, dy: float) -> Contour:
    """The contour and all it passes over on the way by (dx, dy) mm.

    Exact for `Rounded`: the hull of both cores, grown by the same radius. For a chain it is the convex hull of its
    circumscribed polygon on that way, which is never smaller than the truth.
    """
    if dx == 0.0 and dy == 0.0:
        return contour
    points, radius = _core(contour)
    return grown_hull([*points, *(point.moved(dx, dy) for point in points)], radius)


def swayed(contour: Contour, x: float, y: float) -> Contour:
    """The contour and all it covers when it is moved up to `x` and `y` mm each way."""
    back = Placement(-x, -y).contour(contour) if x or y else contour
    return swept(swept(back, 2 * x, 0.0), 0.0, 2 * y)


def grown_hull(points: list[Point], radius: float) -> Rounded:
    """The convex hull of these points, grown by `radius` mm."""
    hull = shapely.MultiPoint(points).convex_hull
    if isinstance(hull, shapely.Polygon):
        corners = shapely.geometry.polygon.orient(hull).exterior.coords[:-1]
    else:
        corners = hull.coords
    return Rounded(tuple(Point(*corner) for corner in corners), radius)


def least_width(contour: Contour) -> float:
    """The width in mm of the narrowest straight slit that the contour goes through; exact for `Rounded`."""
    points, radius = _core(contour)
    hull = grown_hull(list(points), 0.0).core
    edges = zip(hull, hull[1:] + hull[:1], strict=True)
    return min((_reach(a, b, hull) for a, b in edges), default=0.0) + 2 * radius if len(hull) > 2 else 2 * radius


def _reach(a: Point, b: Point, points: tuple[Point, ...]) -> float:
    """How far the points reach away from the line through two of them."""
    span = distance(a, b)
    return max(abs((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)) for p in points) / span


def _core(contour: Contour) -> tuple[tuple[Point, ...], float]:
    if isinstance(contour, Rounded):
        return contour.core, contour.radius
    ring = polygon(contour, Side.CIRCUMSCRIBED).convex_hull.exterior.coords[:-1]
    return tuple(Point(*corner) for corner in ring), 0.0
