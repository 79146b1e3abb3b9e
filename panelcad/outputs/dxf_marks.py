"""Points in a cutting file: centres of holes too small to cut, and where the cutter may plunge."""

from collections.abc import Iterator
from dataclasses import replace
from typing import Final

from panelcad.geometry.contour import Contour, Rounded
from panelcad.geometry.gap import contains, point_edge_gap
from panelcad.geometry.point import Point
from panelcad.geometry.segment import Arc, Segment
from panelcad.outputs.dxf_layers import CUT_THROUGH, Layer
from panelcad.outputs.dxf_plan import Loop, Mark, Plan

_SHARES: Final = (1.0, 0.5, 0.25, 0.1)


def with_centre_marks(plan: Plan, smallest: float) -> Plan:
    """The plan with a mark in place of each round hole below `smallest` mm across."""
    small = [loop for loop in plan.loops if _is_small(loop, smallest)]
    marks = tuple(Mark(Layer.CENTRE_MARK, _centre(loop.contour), loop.feature) for loop in small)
    return replace(plan, loops=tuple(loop for loop in plan.loops if loop not in small), marks=plan.marks + marks)


def with_lead_ins(plan: Plan, cutter_diameter: float) -> Plan:
    """The plan with a point in the scrap of each cut: inside an opening, outside the sheet's edge."""
    marks = tuple(Mark(Layer.LEAD_IN, at) for loop in plan.loops for at in _lead_in(loop, cutter_diameter))
    return replace(plan, marks=plan.marks + marks)


def _is_small(loop: Loop, smallest: float) -> bool:
    contour = loop.contour
    is_hole = loop.layer in CUT_THROUGH and loop.layer is not Layer.OUTLINE
    return is_hole and isinstance(contour, Rounded) and contour.is_circle and 2 * contour.radius < smallest - 1e-9


def _centre(contour: Contour) -> Point:
    x1, y1, x2, y2 = contour.bounds
    return Point((x1 + x2) / 2, (y1 + y2) / 2)


def _lead_in(loop: Loop, away: float) -> Iterator[Point]:
    if loop.layer not in CUT_THROUGH:
        return
    if isinstance(loop.contour, Rounded) and loop.layer is not Layer.OUTLINE:
        yield loop.contour.centre
        return
    outside = loop.layer is Layer.OUTLINE
    middle = _centre(loop.contour)
    if not outside and contains(loop.contour, middle) and _is_clear(loop.contour, middle, away / 2):
        yield middle
        return
    longest = max(loop.contour.segments, key=lambda segment: segment.length)
    for share in _SHARES:
        at = _beside(longest, away * share if outside else -away * share)
        if contains(loop.contour, at) != outside and _is_clear(loop.contour, at, away * share):
            yield at
            return


def _is_clear(contour: Contour, at: Point, away: float) -> bool:
    return abs(point_edge_gap(at, contour).distance) >= away * 0.9


def _beside(segment: Segment, outward: float) -> Point:
    """A point `outward` mm to the right of a segment's middle."""
    at = segment.at(0.5)
    if isinstance(segment, Arc):
        reach = segment.radius + (outward if segment.sweep > 0 else -outward)
        return segment.centre.towards(at, reach)
    dx, dy = segment.end.x - segment.start.x, segment.end.y - segment.start.y
    return at.moved(dy / segment.length * outward, -dx / segment.length * outward)
