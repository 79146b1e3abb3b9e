"""Round holes with a key, a notch or a flat on their +x side, about the origin, in mm."""

import math

from panelcad.geometry.contour import Chain, Contour, Vertex, closed_chain


def flatted(radius: float, depth: float) -> Contour:
    """A round hole with a flat `depth` inside the circle."""
    across = radius - depth
    half = math.sqrt(radius**2 - across**2)
    return closed_chain((Vertex(across, half, _bulge_around(half, across)), Vertex(across, -half)))


def keyed(radius: float, depth: float, width: float) -> Chain:
    """A round hole with a square key that reaches `depth` outside the circle."""
    half, root, tip = width / 2, _root(radius, width), radius + depth
    around = Vertex(root, half, _bulge_around(half, root))
    return closed_chain((around, Vertex(root, -half), Vertex(tip, -half), Vertex(tip, half)))


def notched(radius: float, depth: float, width: float) -> Chain:
    """A round hole with a round-ended notch that reaches `depth` outside the circle, at least half its width."""
    half, root = width / 2, _root(radius, width)
    around = Vertex(root, half, _bulge_around(half, root))
    straight_end = radius + depth - half
    return closed_chain(
        (around, Vertex(root, -half), Vertex(straight_end, -half, 1.0), Vertex(straight_end, half)),
    )


def _root(radius: float, width: float) -> float:
    """Where the sides of a key meet the circle."""
    return math.sqrt(radius**2 - (width / 2) ** 2)


def _bulge_around(half: float, across: float) -> float:
    """The bulge of the circle's long way round, from `half` above the x axis to `half` below."""
    return math.tan((2 * math.pi - 2 * math.atan2(half, across)) / 4)
