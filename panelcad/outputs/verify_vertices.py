"""Where a contour of another shape differs: which of its vertices moved and how far, else where it strays most."""

from collections.abc import Iterator
from dataclasses import dataclass

from panelcad.drawing.outline_edges import edges
from panelcad.geometry.point import Point, distance
from panelcad.outputs.verify_match import Differing, farthest_stray


@dataclass(frozen=True)
class MovedVertex:
    """A vertex by its number on the papers, V1 or further, and the way it moved in mm."""

    number: int
    at: Point
    way: Point


def moved_vertices(each: Differing, tolerance: float) -> tuple[MovedVertex, ...]:
    """The vertices that lie elsewhere; none where the two contours do not have the same number of them."""
    if each.expected is None or each.found is None:
        return ()
    ours = [(edge.number, edge.start) for edge in edges(each.expected.contour)]
    theirs = [edge.start for edge in edges(each.found.contour)]
    if len(ours) != len(theirs):
        return ()
    return tuple(_moved(ours, theirs, tolerance))


def _moved(ours: list[tuple[int, Point]], theirs: list[Point], tolerance: float) -> Iterator[MovedVertex]:
    """Those without a partner in their place, each with the nearest that has none either."""
    astray = [at for at in theirs if all(distance(at, one) > tolerance for _, one in ours)]
    for number, at in ours:
        if astray and all(distance(at, other) > tolerance for other in theirs):
            now = min(astray, key=lambda other: distance(other, at))
            astray.remove(now)
            yield MovedVertex(number, at, Point(now.x - at.x, now.y - at.y))


def strays_at(each: Differing) -> Point | None:
    """Where a contour strays most from what was expected."""
    if each.expected is None or each.found is None:
        return None
    return farthest_stray(each.expected.contour, each.found.contour)
