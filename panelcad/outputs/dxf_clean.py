"""What a machine stumbles over is not written: doubled contours and pieces of no length; too short ones are refused."""

import math
from collections import defaultdict
from collections.abc import Iterator
from dataclasses import replace
from typing import Final

from panelcad.drawing.display import Bounds
from panelcad.errors import UnusableInput
from panelcad.geometry.contour import Chain, Contour, Rounded, Vertex, closed_chain
from panelcad.geometry.point import distance
from panelcad.geometry.segment import Segment
from panelcad.geometry.track import Track
from panelcad.outputs.dxf_layers import CUT_THROUGH, Layer
from panelcad.outputs.dxf_plan import Loop, Plan
from panelcad.units import LengthUnit, format_length

_NOTHING: Final = 1e-3
"""A piece shorter than this many mm is closed up; it is below what any machine resolves."""
_SAME: Final = 3
"""Decimals of a mm in which two contours count as the same one doubled."""


def cleaned(plan: Plan, shortest: float, unit: LengthUnit) -> Plan:
    """The plan without doubled contours and without pieces of no length.

    Raises `UnusableInput` for a contour with a piece shorter than `shortest` mm, or with nothing left of it.
    """
    loops = [replace(loop, contour=_closed_up(loop)) for loop in plan.loops]
    for loop in loops:
        _refuse_short_pieces(loop, shortest, unit)
    strokes = tuple(replace(stroke, track=_with_halved_bends(stroke.track)) for stroke in plan.strokes)
    return replace(plan, loops=tuple(_each_once(loops)), strokes=strokes)


def _closed_up(loop: Loop) -> Contour:
    contour = loop.contour
    if isinstance(contour, Rounded) and contour.is_circle and contour.radius > _NOTHING:
        return contour
    vertices = contour.chain.vertices if isinstance(contour, Rounded) else contour.vertices
    following = vertices[1:] + vertices[:1]
    kept = tuple(v for v, w in zip(vertices, following, strict=True) if distance(v.point, w.point) > _NOTHING)
    if len(kept) < 2:
        raise UnusableInput("", loop.feature, "its contour is smaller than a thousandth of a mm", "a cut with a size")
    if len(kept) == len(vertices) and all(abs(vertex.bulge) <= 1.0 for vertex in kept):
        return contour
    return _with_halved_arcs(closed_chain(kept))


def _with_halved_arcs(chain: Chain) -> Chain:
    """The chain with arcs of more than a half turn in two: GDAL 3.12, for one, draws the rest of the circle instead."""
    pairs = zip(chain.vertices, chain.segments, strict=True)
    return Chain(tuple(half for vertex, segment in pairs for half in _halves(vertex, segment)))


def _with_halved_bends(track: Track) -> Track:
    if all(abs(vertex.bulge) <= 1.0 for vertex in track.vertices):
        return track
    pairs = zip(track.vertices, track.segments, strict=False)
    return Track((*(half for vertex, segment in pairs for half in _halves(vertex, segment)), track.vertices[-1]))


def _halves(vertex: Vertex, segment: Segment) -> tuple[Vertex, ...]:
    if abs(vertex.bulge) <= 1.0:
        return (vertex,)
    half = math.tan(math.atan(vertex.bulge) / 2)
    return vertex._replace(bulge=half), Vertex(*segment.at(0.5), half)


def _refuse_short_pieces(loop: Loop, shortest: float, unit: LengthUnit) -> None:
    if loop.layer not in CUT_THROUGH:
        return
    least = _shortest_piece(loop.contour)
    if least < shortest - 1e-9:
        problem = f"its contour has a piece {format_length(least, unit)} long"
        expected = f"pieces of at least {format_length(shortest, unit)}, the profile's shortest"
        raise UnusableInput("", loop.feature, problem, expected)


def _shortest_piece(contour: Contour) -> float:
    if isinstance(contour, Rounded) and contour.is_circle:
        return contour.length
    return min(segment.length for segment in contour.segments)


def _each_once(loops: list[Loop]) -> Iterator[Loop]:
    """Each contour once for each of: cut, there already, for reference. Only those in one box are looked at closely."""
    kept: dict[tuple[str, Bounds], list[Contour]] = defaultdict(list)
    for loop in loops:
        x1, y1, x2, y2 = loop.contour.bounds
        others = kept[_sort_of(loop.layer), (round(x1, _SAME), round(y1, _SAME), round(x2, _SAME), round(y2, _SAME))]
        if not any(_shape(other) == _shape(loop.contour) for other in others):
            others.append(loop.contour)
            yield loop


def _sort_of(layer: Layer) -> str:
    return "cut" if layer in CUT_THROUGH else layer.value


def _shape(contour: Contour) -> tuple[tuple[float, ...], ...]:
    """The contour's middle, size and corners, whichever of them comes first."""
    if isinstance(contour, Rounded) and contour.is_circle:
        return (_rounded(*contour.core[0], contour.radius),)
    chain: Chain = contour.chain if isinstance(contour, Rounded) else contour
    return tuple(sorted(_corner(vertex) for vertex in chain.vertices))


def _corner(vertex: Vertex) -> tuple[float, ...]:
    return _rounded(vertex.x, vertex.y, vertex.bulge)


def _rounded(*values: float) -> tuple[float, ...]:
    return tuple(round(value, _SAME) + 0.0 for value in values)
