"""Corner relief: where an inside corner is too tight for the cutter, it may run on until the corner itself is free.

The relief is a round lobe of the cutter's radius through the corner's tip, its centre on the corner's bisector, so that
what goes into the opening meets no metal that the drawing does not show.
"""

import math
from dataclasses import dataclass, replace
from typing import Final

from panelcad.geometry.contour import Chain, Contour, Rounded, Vertex
from panelcad.geometry.segment import Arc, Line, Segment
from panelcad.outputs.dxf_layers import Layer
from panelcad.outputs.dxf_plan import Loop, Plan

_TANGENT: Final = 1e-3
"""Radians by which a fillet may miss its edges' directions and still count as tangent."""
_SHARPEST: Final = math.radians(10.0)
"""Half the angle of the sharpest corner that gets a relief."""
_CUT: Final = frozenset({Layer.OUTLINE, Layer.CUTOUT})


def with_relief(plan: Plan, cutter_diameter: float) -> Plan:
    """The plan with every relievable tight inside corner of its cuts relieved."""
    radius = cutter_diameter / 2
    return replace(plan, loops=tuple(_relieved_loop(loop, radius) for loop in plan.loops))


def sharp_corners(loop: Loop) -> int:
    """How many inside corners of a cut have no radius at all."""
    return len(_sharp(loop))


def filed_corners(loop: Loop) -> int:
    """How many inside corners of a key or a flat have no radius at all and are filed by hand."""
    return len(_sharp(replace(loop, is_filed=False))) if loop.is_filed else 0


def tight_corners(loop: Loop, radius: float) -> int:
    """How many inside corners of a cut are too tight for a cutter of this radius: sharp ones and arcs below it."""
    return len(_tight(loop, radius))


def unrelieved_corners(loop: Loop, radius: float) -> tuple[str, ...]:
    """Why each inside corner that is too tight for a cutter of this radius cannot be relieved; none for the others."""
    segments, inward = loop.contour.segments, _metal_side(loop)
    reasons = (_why_not(segments, i, radius, inward) for i in _tight(loop, radius))
    return tuple(reason for reason in reasons if reason)


def _tight(loop: Loop, radius: float) -> tuple[int, ...]:
    """The numbers of the segments that begin at a sharp inside corner, then of those that are too small an arc."""
    if not _has_corners(loop):
        return ()
    inward = _metal_side(loop)
    arcs = (
        i
        for i, segment in enumerate(loop.contour.segments)
        if isinstance(segment, Arc) and segment.sweep * inward > 0 and segment.radius < radius - 1e-9
    )
    return (*_sharp(loop), *arcs)


def _sharp(loop: Loop) -> tuple[int, ...]:
    if not _has_corners(loop):
        return ()
    segments, inward = loop.contour.segments, _metal_side(loop)
    return tuple(i for i in range(len(segments)) if _turn(segments[i - 1], segments[i]) * inward > _TANGENT)


def _has_corners(loop: Loop) -> bool:
    """A cutter's corners; those of a key or a flat are filed by hand."""
    return loop.layer in _CUT and not loop.is_filed and not _is_circle(loop.contour)


def _relieved_loop(loop: Loop, radius: float) -> Loop:
    if not tight_corners(loop, radius):
        return loop
    chain = loop.contour.chain if isinstance(loop.contour, Rounded) else loop.contour
    return replace(loop, contour=_relieved(chain, radius, _metal_side(loop)))


def _why_not(segments: tuple[Segment, ...], i: int, radius: float, inward: int) -> str:
    corner = _corner_at(segments, i, inward)
    if corner is None:
        return "not between two straight edges that run on into it"
    if _lobe(corner, radius, inward):
        return ""
    return "sharper than 20 degrees" if _half_angle(corner) < _SHARPEST else "an edge beside it is too short"


def _metal_side(loop: Loop) -> int:
    """+1 where metal lies outside the contour, so that its left turns are inside corners; -1 for the sheet's edge."""
    return -1 if loop.layer is Layer.OUTLINE else 1


def _is_circle(contour: Contour) -> bool:
    return isinstance(contour, Rounded) and contour.is_circle


@dataclass(frozen=True)
class _Corner:
    """Two straight edges and what lies between them: nothing, or a tangent fillet."""

    before: Line
    after: Line
    fillet: float


def _relieved(chain: Chain, radius: float, inward: int) -> Chain:
    """The chain with lobes for its tight corners between straight edges; others stay as they are."""
    segments, count = chain.segments, len(chain.vertices)
    instead: dict[int, tuple[Vertex, ...]] = {}
    for i in range(count):
        corner = _corner_at(segments, i, inward)
        lobe = _lobe(corner, radius, inward) if corner else ()
        if corner and lobe:
            instead[i] = lobe
            if corner.fillet:
                instead[(i + 1) % count] = ()
    return Chain(tuple(v for i, vertex in enumerate(chain.vertices) for v in instead.get(i, (vertex,))))


def _corner_at(segments: tuple[Segment, ...], i: int, inward: int) -> _Corner | None:
    """The inside corner where segment `i` begins: a sharp one between two lines, or the fillet that `i` is."""
    before, here, after = segments[i - 1], segments[i], segments[(i + 1) % len(segments)]
    if not isinstance(before, Line):
        return None
    if isinstance(here, Line):
        return _Corner(before, here, 0.0) if _turn(before, here) * inward > _TANGENT else None
    if not isinstance(after, Line) or here.sweep * inward < 0.0:
        return None
    is_tangent = abs(_turn(before, here)) < _TANGENT and abs(_turn(here, after)) < _TANGENT
    return _Corner(before, after, here.radius) if is_tangent else None


def _lobe(corner: _Corner, radius: float, inward: int) -> tuple[Vertex, ...]:
    """The two vertices that stand for the corner; none where it needs no relief or an edge is too short for it."""
    half = _half_angle(corner)
    if corner.fillet >= radius - 1e-9 or half < _SHARPEST:
        return ()
    tip_to_fillet = corner.fillet / math.sin(half) - corner.fillet
    to_fillet_end = corner.fillet / math.tan(half)
    tip = corner.before.end.towards(corner.before.start, -to_fillet_end)
    centre = tip_to_fillet + radius
    reach = centre * math.cos(half) + math.sqrt(radius**2 - (centre * math.sin(half)) ** 2)
    if 2 * (reach - to_fillet_end) > min(corner.before.length, corner.after.length):
        return ()
    start, end = tip.towards(corner.before.start, reach), tip.towards(corner.after.end, reach)
    sweep = 2 * math.acos((centre - reach * math.cos(half)) / radius)
    return (Vertex(*start, inward * math.tan(sweep / 4)), Vertex(*end))


def _half_angle(corner: _Corner) -> float:
    return (math.pi - abs(_turn(corner.before, corner.after))) / 2


def _turn(before: Segment, after: Segment) -> float:
    """Radians the way turns to the left where one segment ends and the next begins."""
    return math.remainder(_heading(after, 0.0) - _heading(before, 1.0), 2 * math.pi)


def _heading(segment: Segment, share: float) -> float:
    """The direction a segment runs in at its start (0) or its end (1), in radians."""
    if isinstance(segment, Line):
        return math.atan2(segment.end.y - segment.start.y, segment.end.x - segment.start.x)
    return segment.start_angle + share * segment.sweep + math.copysign(math.pi / 2, segment.sweep)
