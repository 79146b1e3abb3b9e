"""Convex boxes in space and how far apart they are, on the safe side. Lengths in mm."""

from itertools import product

import numpy as np

from panelcad.geometry.space import PlateFrame, Spot


class Box:
    """A box of a plate's axes, standing in the aircraft."""

    def __init__(self, frame: PlateFrame, low: Spot, high: Spot) -> None:
        self.corners = np.array([frame.to_aircraft(Spot(*at)) for at in product(*zip(low, high, strict=True))])
        self.axes = np.array(frame.axes)

    @property
    def bounds(self) -> tuple[Spot, Spot]:
        return Spot(*self.corners.min(axis=0)), Spot(*self.corners.max(axis=0))


def clearance(a: Box, b: Box) -> float:
    """How far two boxes are apart, never more than the truth; negative by how far they would have to be moved apart.

    By the separating axis theorem: the largest gap between their shadows on the faces' normals of both and on the
    normals of each pair of edges.
    """
    crossed = np.cross(a.axes[:, None], b.axes[None]).reshape(-1, 3)
    lengths = np.linalg.norm(crossed, axis=1)
    normals = np.vstack((a.axes, b.axes, crossed[lengths > 1e-9] / lengths[lengths > 1e-9, None]))
    on_a, on_b = normals @ a.corners.T, normals @ b.corners.T
    gaps = np.maximum(on_a.min(axis=1) - on_b.max(axis=1), on_b.min(axis=1) - on_a.max(axis=1))
    return float(gaps.max())
