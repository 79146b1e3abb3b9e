"""Upright boxes around contours: left, bottom, right, top in mm. They tell quickly what cannot be near."""

import math
from collections.abc import Iterable

Box = tuple[float, float, float, float]


def box_gap(a: Box, b: Box) -> float:
    """The distance between two boxes in mm, 0 where they meet; what is inside them is at least as far apart."""
    across = max(a[0] - b[2], b[0] - a[2], 0.0)
    up = max(a[1] - b[3], b[1] - a[3], 0.0)
    return math.hypot(across, up)


def box_around(boxes: Iterable[Box]) -> Box:
    """The box around all boxes. Raises ValueError where there are none."""
    columns = list(zip(*boxes, strict=True))
    if not columns:
        raise ValueError("a box around nothing is asked for")
    return min(columns[0]), min(columns[1]), max(columns[2]), max(columns[3])
