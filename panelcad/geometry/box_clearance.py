"""Convex solids in space and how far apart they are, on the safe side. Lengths in mm."""

from itertools import product
from typing import Any

import numpy as np

from panelcad.geometry.space import PlateFrame, Spot

Numbers = np.ndarray[Any, np.dtype[np.float64]]


class Solid:
    """A convex solid in the aircraft: its corners, and the directions of its faces' normals and of its edges."""

    def __init__(self, corners: Numbers, normals: Numbers, edges: Numbers) -> None:
        self.corners = corners
        self.normals = normals
        self.edges = edges

    @property
    def bounds(self) -> tuple[Spot, Spot]:
        return Spot(*self.corners.min(axis=0)), Spot(*self.corners.max(axis=0))


class Box(Solid):
    """A box of a plate's axes, standing in the aircraft."""

    def __init__(self, frame: PlateFrame, low: Spot, high: Spot) -> None:
        corners = _in_aircraft(frame, list(product((low.x, high.x), (low.y, high.y), (low.z, high.z))))
        axes = np.array(frame.axes)
        super().__init__(corners, axes, axes)


class Beyond(Solid):
    """All that lies behind the plane z = a + b·x + c·y over an upright rectangle of a plate, down to a far depth."""

    def __init__(
        self,
        frame: PlateFrame,
        bounds: tuple[float, float, float, float],
        plane: tuple[float, float, float],
        far: float,
    ) -> None:
        at_origin, b, c = plane
        x1, y1, x2, y2 = bounds
        feet = [(x, y, at_origin + b * x + c * y) for x in (x1, x2) for y in (y1, y2)]
        deepest = max(z for _, _, z in feet) + far
        axes = np.array(frame.axes)
        slanted = np.array(((-b, -c, 1.0),)) @ axes
        normals = np.vstack((axes, slanted / np.linalg.norm(slanted)))
        edges = np.vstack((axes, np.array(((1.0, 0.0, b), (0.0, 1.0, c))) @ axes))
        super().__init__(_in_aircraft(frame, [*feet, *((x, y, deepest) for x, y, _ in feet)]), normals, edges)


def clearance(a: Solid, b: Solid) -> float:
    """How far two solids are apart, never more than the truth; negative by how far they would have to be moved apart.

    By the separating axis theorem: the largest gap between their shadows on the faces' normals of both and on the
    normals of each pair of edges.
    """
    crossed = np.cross(a.edges[:, None], b.edges[None]).reshape(-1, 3)
    lengths = np.linalg.norm(crossed, axis=1)
    normals = np.vstack((a.normals, b.normals, crossed[lengths > 1e-9] / lengths[lengths > 1e-9, None]))
    on_a, on_b = normals @ a.corners.T, normals @ b.corners.T
    gaps = np.maximum(on_a.min(axis=1) - on_b.max(axis=1), on_b.min(axis=1) - on_a.max(axis=1))
    return float(gaps.max())


def _in_aircraft(frame: PlateFrame, spots: list[tuple[float, float, float]]) -> Numbers:
    return np.array([frame.to_aircraft(Spot(*spot)) for spot in spots])
