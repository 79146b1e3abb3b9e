"""Boxes of a sheet, in mm: left, bottom, right, top."""

from collections.abc import Iterable

from panelcad.drawing.display import Bounds
from panelcad.geometry.contour import Contour, rectangle
from panelcad.geometry.point import Point


def box_outline(box: Bounds) -> Contour:
    x1, y1, x2, y2 = box
    return rectangle(Point((x1 + x2) / 2, (y1 + y2) / 2), x2 - x1, y2 - y1)


def size(box: Bounds) -> tuple[float, float]:
    return box[2] - box[0], box[3] - box[1]


def share(box: Bounds, room: Bounds) -> float:
    """The area of a box as a share of a room's."""
    (width, height), (wide, high) = size(box), size(room)
    return width * height / (wide * high)


def middle(box: Bounds) -> Point:
    return Point((box[0] + box[2]) / 2, (box[1] + box[3]) / 2)


def shrunk(box: Bounds, by: float) -> Bounds:
    return box[0] + by, box[1] + by, box[2] - by, box[3] - by


def grown(box: Bounds, by: float) -> Bounds:
    return shrunk(box, -by)


def joined(boxes: Iterable[Bounds]) -> Bounds:
    """The box around all of them; there is at least one."""
    lefts, lows, rights, tops = zip(*boxes, strict=True)
    return min(lefts), min(lows), max(rights), max(tops)


def overlap(a: Bounds, b: Bounds) -> bool:
    """Whether two boxes share more than an edge."""
    return a[0] < b[2] and b[0] < a[2] and a[1] < b[3] and b[1] < a[3]


def is_within(box: Bounds, room: Bounds) -> bool:
    """Whether the box lies in the room, edges included."""
    return room[0] <= box[0] and room[1] <= box[1] and box[2] <= room[2] and box[3] <= room[3]


def nearest_in(box: Bounds, point: Point) -> Point:
    """The point of a box nearest to a point; itself where it is inside."""
    return Point(min(max(point.x, box[0]), box[2]), min(max(point.y, box[1]), box[3]))
