"""The guide lines shown while something moves: what caught it, and how far it is from there."""

from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise

from panelcad.desktop.canvas.label import LabelSide
from panelcad.desktop.canvas.overlay import Guide
from panelcad.drawing.display import Bounds
from panelcad.editing.extents import Axis
from panelcad.editing.snapping.snap import Caught, Rank, Snap
from panelcad.editing.snapping.standing import Standing
from panelcad.geometry.point import Point
from panelcad.units import LengthUnit, format_length


def guides(snap: Snap, moved: Standing, panel: Bounds, unit: LengthUnit) -> tuple[Guide, ...]:
    """One line for each axis that was caught by more than the grid."""
    return tuple(
        guide
        for axis, caught in ((Axis.ACROSS, snap.x), (Axis.UP, snap.y))
        if caught is not None and caught.rank is not Rank.GRID
        for guide in _guides(axis, caught, moved, panel, unit)
    )


def way_words(right: float, up: float, unit: LengthUnit) -> str:
    """How far something was moved, in mm as it is seen: '8.250 in right, 0.125 in down'; '' where it was not."""
    ways = ((right, "right", "left"), (up, "up", "down"))
    told = ((format_length(abs(by), unit), there if by > 0.0 else back) for by, there, back in ways if by)
    return ", ".join(f"{length} {way}" for length, way in told)


def _guides(axis: Axis, caught: Caught, moved: Standing, panel: Bounds, unit: LengthUnit) -> Iterator[Guide]:
    if caught.other is None:
        ends = panel[1 - axis.value], panel[3 - axis.value]
        yield _line(axis, caught.at, ends, f"{caught.label} · {_reading(axis, moved, unit)}", moved)
    elif caught.rank is Rank.GAP:
        yield from _gaps(axis, caught, moved, unit)
    else:
        yield _along(axis, caught, moved, caught.other, unit)


def _reading(axis: Axis, moved: Standing, unit: LengthUnit) -> str:
    """Where it stands along a line of the panel, from the datum."""
    name = "y" if axis is Axis.ACROSS else "x"
    return f"{name} {format_length(moved.centre[1 - axis.value], unit)}"


def _along(axis: Axis, caught: Caught, moved: Standing, other: Standing, unit: LengthUnit) -> Guide:
    """From the one to the other on the line that caught, with the distance of their centres."""
    across = Axis.UP if axis is Axis.ACROSS else Axis.ACROSS
    spans = (*moved.span(across), *other.span(across))
    distance = abs(moved.centre[across.value] - other.centre[across.value])
    label = f"{caught.label} · {format_length(distance, unit)}" if distance > 0 else caught.label
    return _line(axis, caught.at, (min(spans), max(spans)), label, moved)


def _gaps(axis: Axis, caught: Caught, moved: Standing, unit: LengthUnit) -> Iterator[Guide]:
    """Across both gaps that are alike: the one that comes out, and the one that is shared or repeated."""
    row = [thing for thing in (moved, caught.other, caught.second) if thing is not None]
    row.sort(key=lambda thing: thing.middle(axis))
    level = moved.centre[1 - axis.value]
    for before, after in pairwise(row):
        ends = before.span(axis)[1], after.span(axis)[0]
        distance = format_length(abs(ends[1] - ends[0]), unit)
        line = Guide(_point(axis, ends[0], level), _point(axis, ends[1], level), distance)
        says_why = moved in {before, after} and caught.other in {before, after}
        at, side = _beside(axis, moved)
        yield replace(line, label=f"{caught.label} · {distance}", label_at=at, label_side=side) if says_why else line


def _line(axis: Axis, at: float, ends: tuple[float, float], label: str, moved: Standing) -> Guide:
    return Guide(_point(axis, at, ends[0]), _point(axis, at, ends[1]), label, *_beside(axis, moved))


def _beside(axis: Axis, moved: Standing) -> tuple[Point, LabelSide]:
    """Words about x stand above what is moved, words about y below it, where they do not meet."""
    x1, y1, x2, y2 = moved.box
    middle = (x1 + x2) / 2
    return (Point(middle, y2), LabelSide.ABOVE) if axis is Axis.ACROSS else (Point(middle, y1), LabelSide.BELOW)


def _point(axis: Axis, along: float, across: float) -> Point:
    return Point(along, across) if axis is Axis.ACROSS else Point(across, along)
