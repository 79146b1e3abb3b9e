"""A file whose layers were renamed or thrown together: what is not cut is told from what is by where it runs."""

from collections.abc import Iterator
from typing import Final

from panelcad.geometry.contour import Contour
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point, distance
from panelcad.geometry.segment import Segment
from panelcad.intake.dxf_file import DxfFile
from panelcad.outputs.dxf_layers import Layer
from panelcad.outputs.dxf_plan import Plan, placed_track
from panelcad.outputs.verify_match import Seen, deviation, same_place

_ON_IT: Final = 0.02
"""mm: a line runs along another where it strays from it by at most this much."""
_SHARES: Final = (0.0, 0.25, 0.5, 0.75, 1.0)
_OURS: Final = frozenset(layer.value for layer in Layer)


def is_ours(layer: str) -> bool:
    """Whether a layer bears one of the names we give."""
    return layer.upper() in _OURS


class Uncut:
    """What a plan draws without cutting it: hardware, lettering, bends, the datum's cross."""

    def __init__(self, plan: Plan, tolerance: float, *, is_nested: bool) -> None:
        self._tolerance = tolerance
        self._is_nested = is_nested
        self._loops = [Seen("", loop.contour) for loop in plan.loops if loop.layer in {Layer.HARDWARE, Layer.REFERENCE}]
        self._letters = [s for stroke in plan.strokes if stroke.layer is Layer.ENGRAVE for s in stroke.track.segments]
        self._lines = [s for stroke in plan.strokes if stroke.layer is not Layer.ENGRAVE for s in stroke.track.segments]

    def holds(self, contour: Contour) -> bool:
        """Whether a contour is one of these."""
        other = Seen("", contour)
        for loop in self._loops:
            if same_place(loop, other, self._tolerance) is not None:
                return deviation(loop.contour, contour) <= self._tolerance
        if self._is_nested and _is_stock(contour, self._tolerance):
            return True
        return self.is_letter(contour.segments) or _runs_along(contour.segments, self._lines)

    def is_line(self, segments: tuple[Segment, ...]) -> bool:
        """Whether an open chain is a bend or the datum's cross, or lettering."""
        return _runs_along(segments, [*self._lines, *self._letters])

    def is_letter(self, segments: tuple[Segment, ...]) -> bool:
        return _runs_along(segments, self._letters)


def lettering_on_foreign_layers(drawing: DxfFile, back: Placement, uncut: Uncut) -> Iterator[tuple[Segment, ...]]:
    """The strokes of lettering that lie on layers we do not name."""
    return (segments for segments in _foreign(drawing, back) if uncut.is_letter(segments))


def _is_stock(contour: Contour, tolerance: float) -> bool:
    """Whether a contour is a rectangle with its lower left corner at the origin, as a stock sheet's edge is."""
    x1, y1, x2, y2 = contour.bounds
    is_rectangle = len(contour.segments) == 4 and abs(contour.area - (x2 - x1) * (y2 - y1)) < 1e-6 * contour.area
    return is_rectangle and max(abs(x1), abs(y1)) <= tolerance


def _foreign(drawing: DxfFile, back: Placement) -> Iterator[tuple[Segment, ...]]:
    yield from (back.contour(each.contour).segments for each in drawing.contours if not is_ours(each.layer))
    yield from (placed_track(each.track, back).segments for each in drawing.tracks if not is_ours(each.layer))


def _runs_along(segments: tuple[Segment, ...], lines: list[Segment]) -> bool:
    return bool(lines) and all(_is_on(segment.at(share), lines) for segment in segments for share in _SHARES)


def _is_on(point: Point, lines: list[Segment]) -> bool:
    return any(_is_near(point, line) and distance(line.nearest(point), point) <= _ON_IT for line in lines)


def _is_near(point: Point, line: Segment) -> bool:
    x1, y1, x2, y2 = line.bounds
    return x1 - _ON_IT <= point.x <= x2 + _ON_IT and y1 - _ON_IT <= point.y <= y2 + _ON_IT
