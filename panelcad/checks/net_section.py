"""What is left of the sheet along the lines through its cuts. No judgement of strength.

The removed length along every line is summed in one pass over all contours: a piece of a counter-clockwise contour
adds or takes away the place where it crosses the line. Overlapping cuts are counted twice there, so the sum only ever
says too little is left; the weakest lines are then measured exactly, until no other can be weaker.
"""

import math
from collections.abc import Iterator
from itertools import pairwise
from typing import Any, Final, NamedTuple

import numpy as np

from panelcad.checks.finding import Bound, is_short, short_of
from panelcad.checks.registry import TheWhole, rule
from panelcad.checks.stacked import stacked
from panelcad.geometry.across import Across
from panelcad.geometry.chord import Interval, chords, point_on, without
from panelcad.geometry.contour import Contour
from panelcad.geometry.point import Point
from panelcad.geometry.segment import Arc, Segment
from panelcad.model.finding import Finding, Measure, Severity
from panelcad.model.kept import kept_row, kept_with
from panelcad.model.layout import Feature, Layout, PlacedCut, PlateLayout
from panelcad.model.plate import PlateState

Numbers = np.ndarray[Any, np.dtype[np.float64]]
_ALIKE: Final = 1e-9
"""Shares of the sheet that differ by less than this differ by rounding only."""
_COLUMNS: Final = 7
"""low, high, sign, kind (0 line, 1 arc), and three numbers of its form."""


class Section(NamedTuple):
    """A line across a plate and what is left of the sheet along it, in mm and as a share of the uncut sheet."""

    across: Across
    at: float
    left: float
    uncut: float
    ends: tuple[Point, Point]

    @property
    def share(self) -> float:
        return self.left / self.uncut


class _Numbers(NamedTuple):
    """A cut seen across one direction: where lines run through it, and the pieces of its contours."""

    places: Numbers
    rows: Numbers


@rule(
    "net-section",
    title="What is left of the sheet",
    measures="sheet left along the weakest line through the middle or the extremes of a cut, as a share of the uncut",
    looks_at=TheWhole(guards_moves=True),
    severities=(Severity.WARNING, Severity.ADVICE),
    limits=("net_section_least",),
)
def net_section(laid: Layout) -> Iterator[Finding]:
    least = laid.project.profile.net_section_least
    for plate in laid.plates:
        severity = Severity.ADVICE if plate.plate.state is PlateState.KEPT else Severity.WARNING
        for across in Across:
            weakest = weakest_line(plate, across, below=least)
            if weakest is not None and is_short(weakest.share, least):
                yield _finding(weakest, plate.plate.id, Bound(least, severity, "net_section_least"))


def weakest_line(plate: PlateLayout, across: Across, below: float = math.inf) -> Section | None:
    """The line on which the smallest share of the sheet is left, looked for among shares less than `below`.

    None where no share is less, or on a plate without cuts.
    """
    if not plate.cuts:
        return None
    at = np.unique(_of_cuts("places", plate, across))
    uncut = _inside(_rows((plate.outline,), across), at)
    inner = _rows(tuple(feature.contour for feature in plate.inner), across)
    removed = _inside(inner, at) + _inside(_of_cuts("rows", plate, across), at)
    shares = np.where(uncut > 0.0, 1.0 - removed / np.where(uncut > 0.0, uncut, 1.0), np.inf)
    return _weakest_of(plate, across, at, shares, below)


def _weakest_of(plate: PlateLayout, across: Across, at: Numbers, shares: Numbers, below: float) -> Section | None:
    """The least exact share; a sum is never more than the exact share, so that the rest need no measuring.

    Of lines that are alike the first stands for all: evenly spaced cuts leave the same share on many.
    """
    best: Section | None = None
    for row in np.argsort(shares, kind="stable"):
        if shares[row] >= (below if best is None else best.share - _ALIKE):
            break
        section = _measured(plate, across, float(at[row]))
        if section is not None and (best is None or section.share < best.share):
            best = section
    return best


def _finding(weakest: Section, plate_id: str, bound: Bound) -> Finding:
    return Finding(
        rule="net-section",
        problem="Little of the sheet is left along a line",
        items=(plate_id,),
        features=(f"{plate_id}/{weakest.across.value}",),
        plate=plate_id,
        measure=Measure.RATIO,
        where=weakest.ends,
        **short_of(weakest.share, bound),
    )


def _of_cuts(column: str, plate: PlateLayout, across: Across) -> Numbers:
    """The places, or the rows, of all cuts of a plate."""
    purpose = (f"section {column}", plate.plate.id, across)
    arrays = kept_row(purpose, plate.cuts, (), lambda cut: getattr(_numbers(cut)[across], column))
    return stacked(purpose, arrays)


def _numbers(cut: PlacedCut) -> dict[Across, _Numbers]:
    return kept_with(cut, "section numbers", lambda: {across: _numbers_across(cut, across) for across in Across})


def _numbers_across(cut: PlacedCut, across: Across) -> _Numbers:
    """Lines run through the middle of a cut and just past both its extremes."""
    axis = 0 if across is Across.VERTICAL else 1
    bounds = [feature.contour.bounds for feature in cut.features]
    low, high = min(b[axis] for b in bounds), max(b[axis + 2] for b in bounds)
    places = np.array((low, (low + high) / 2, high))
    return _Numbers(places, _rows(tuple(feature.contour for feature in cut.features), across))


def _measured(plate: PlateLayout, across: Across, at: float) -> Section | None:
    """The exact section along one line: overlapping cuts count once, and what lies outside the sheet not at all."""
    uncut = chords(plate.outline, across, at)
    if not uncut:
        return None
    holes = [chord for feature in _crossed(plate, across, at) for chord in chords(feature.contour, across, at)]
    left = without(uncut, holes)
    ends = (point_on(across, at, uncut[0].low), point_on(across, at, uncut[-1].high))
    return Section(across, at, _total(left), _total(uncut), ends)


def _crossed(plate: PlateLayout, across: Across, at: float) -> Iterator[Feature]:
    axis = 0 if across is Across.VERTICAL else 1
    for feature in plate.features:
        if feature.contour.bounds[axis] < at < feature.contour.bounds[axis + 2]:
            yield feature


def _total(stretches: list[Interval]) -> float:
    return sum(stretch.high - stretch.low for stretch in stretches)


def _rows(contours: tuple[Contour, ...], across: Across) -> Numbers:
    """Every piece of these contours that runs one way across the lines, as a row of numbers."""
    rows = [row for contour in contours for piece in contour.segments for row in _monotone(piece, across)]
    return np.array(rows, dtype=float).reshape(-1, _COLUMNS)


def _monotone(piece: Segment, across: Across) -> Iterator[tuple[float, ...]]:
    flip = across is Across.HORIZONTAL
    if isinstance(piece, Arc):
        yield from _arc_rows(piece, across)
        return
    (x1, y1), (x2, y2) = (piece.start, piece.end) if not flip else (_swap(piece.start), _swap(piece.end))
    if x1 != x2:
        slope = (y2 - y1) / (x2 - x1)
        sign = (-1.0 if x2 > x1 else 1.0) * (-1.0 if flip else 1.0)
        yield min(x1, x2), max(x1, x2), sign, 0.0, y1 - slope * x1, slope, 0.0


def _arc_rows(arc: Arc, across: Across) -> Iterator[tuple[float, ...]]:
    """An arc, split where it turns back: above its centre it is the upper half of its circle, below it the lower."""
    flip = across is Across.HORIZONTAL
    quarters = (0.5, 1.5) if flip else (0.0, 1.0)
    shares = [_along(arc, quarter * math.pi) for quarter in quarters]
    turns = sorted({0.0, 1.0, *(share for share in shares if share is not None)})
    cx, cy = _swap(arc.centre) if flip else arc.centre
    for start, end in pairwise(turns):
        a, m, b = (_swap(p) if flip else p for p in (arc.at(start), arc.at((start + end) / 2), arc.at(end)))
        if a.x != b.x:
            sign = (-1.0 if b.x > a.x else 1.0) * (-1.0 if flip else 1.0)
            half = 1.0 if m.y > cy else -1.0
            yield min(a.x, b.x), max(a.x, b.x), sign, half, cx, cy, arc.radius


def _along(arc: Arc, angle: float) -> float | None:
    """The share of the arc at which it runs through a direction from its centre; None where it does not."""
    turned = (angle - arc.start_angle if arc.sweep > 0 else arc.start_angle - angle) % (2 * math.pi)
    share = turned / abs(arc.sweep)
    return float(share) if 0.0 < share < 1.0 else None


def _swap(point: Point) -> Point:
    return Point(point.y, point.x)


def _inside(rows: Numbers, at: Numbers) -> Numbers:
    """Length, in mm, that lies inside the contours of each of the lines, which are in rising order."""
    first, last = np.searchsorted(at, rows[:, 0]), np.searchsorted(at, rows[:, 1])
    counts = last - first
    which = np.repeat(np.arange(len(rows)), counts)
    starts = np.repeat(first - np.cumsum(counts) + counts, counts)
    hits = np.arange(len(which)) + starts
    x, row = at[hits], rows[which]
    straight = row[:, 4] + row[:, 5] * x
    round_ = row[:, 5] + row[:, 3] * np.sqrt(np.maximum(0.0, row[:, 6] ** 2 - (x - row[:, 4]) ** 2))
    y = np.where(row[:, 3] == 0.0, straight, round_) * row[:, 2]
    lengths: Numbers = np.bincount(hits, weights=y, minlength=len(at)).astype(float)
    return lengths
