"""Splines and ellipses as chords: for readers that want to know where a curve runs, not what it is made of."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from itertools import islice
from typing import Any, Final

from panelcad.geometry.contour import Vertex
from panelcad.units import LengthUnit

CHORD: Final = 0.001
"""mm: how far a chord may lie off its curve."""
_MOST_CHORDS: Final = 20_000
KINDS: Final = frozenset({"SPLINE", "ELLIPSE"})


@dataclass(frozen=True)
class Curve:
    """A curve of a drawing that is neither line nor arc; `flattened` gives its points for a chord's error."""

    layer: str
    kind: str
    flattened: Callable[[float], Iterable[Any]]


def chords(curve: Curve, unit: LengthUnit) -> tuple[Vertex, ...]:
    """The chords' ends in the file's own unit; none for a curve that cannot be followed."""
    try:
        points = [(float(p.x), float(p.y)) for p in islice(curve.flattened(CHORD / unit.mm), _MOST_CHORDS + 1)]
    except Exception:  # noqa: BLE001 - a damaged curve makes ezdxf fail in any way; it is told as unreadable
        return ()
    vertices = [Vertex(*point) for i, point in enumerate(points) if not i or point != points[i - 1]]
    return tuple(vertices) if 2 <= len(vertices) <= _MOST_CHORDS else ()
