"""Bodies of different plates, compared in the aircraft as convex boxes, on the safe side."""

from collections.abc import Iterator
from itertools import combinations
from typing import NamedTuple

import numpy as np

from panelcad.checks.finding import Bound, is_short, short_of
from panelcad.checks.registry import TheWhole, rule
from panelcad.geometry.box_clearance import Box, clearance
from panelcad.geometry.gap import TIE
from panelcad.geometry.point import Point
from panelcad.geometry.space import PlateFrame, Spot
from panelcad.model.finding import Finding, Severity
from panelcad.model.kept import kept
from panelcad.model.layout import Layout, PlacedItem, PlateLayout
from panelcad.model.plate import Frame


class _Standing(NamedTuple):
    """A body's box in the aircraft."""

    item: PlacedItem
    plate: str
    box: Box


@rule(
    "plates-apart",
    title="Cases of different plates",
    measures="gap between the boxes of bodies behind two plates, in the aircraft; never more than the truth",
    looks_at=TheWhole(),
    severities=(Severity.ERROR,),
    limits=("body_clearance",),
)
def plates_apart(laid: Layout) -> Iterator[Finding]:
    bound = Bound(laid.project.profile.body_clearance, Severity.ERROR, "body_clearance")
    if len(laid.plates) < 2:
        return
    standing = [_of_plate(plate) for plate in laid.plates]
    for one, other in combinations(standing, 2):
        worst: dict[tuple[str, str], tuple[float, _Standing]] = {}
        for a, b in _near(one, other, bound.required):
            ids = (a.item.item.id, b.item.item.id)
            left = clearance(a.box, b.box)
            if is_short(left, bound.required) and left < worst.get(ids, (left + 1.0, a))[0]:
                worst[ids] = (left, a)
        for ids, (left, a) in worst.items():
            yield Finding(
                rule="plates-apart",
                problem="Bodies of two plates interfere",
                items=tuple(sorted(ids)),
                plate=a.plate,
                where=(Point(a.item.placement.x, a.item.placement.y),),
                acceptable=left >= -TIE,
                **short_of(left, bound),
            )


def _near(one: list[_Standing], other: list[_Standing], reach: float) -> Iterator[tuple[_Standing, _Standing]]:
    """Pairs whose upright boxes are within reach."""
    if not one or not other:
        return
    a, b = np.array([s.box.bounds for s in one])[:, None], np.array([s.box.bounds for s in other])[None]
    close = ((a[..., 0, :] - reach <= b[..., 1, :]) & (b[..., 0, :] - reach <= a[..., 1, :])).all(-1)
    for i, j in zip(*np.nonzero(close), strict=True):
        yield one[int(i)], other[int(j)]


def _of_plate(plate: PlateLayout) -> list[_Standing]:
    frame = plate.plate.frame
    return [_Standing(item, plate.plate.id, box) for item in plate.items for box in _boxes(item, frame)]


def _boxes(item: PlacedItem, frame: Frame) -> tuple[Box, ...]:
    return kept("boxes in the aircraft", (item, frame), lambda: tuple(_make_boxes(item, frame)))


def _make_boxes(item: PlacedItem, frame: Frame) -> Iterator[Box]:
    axes = PlateFrame(Spot(frame.x, frame.y, frame.z), frame.tilt, frame.cant)
    for body in item.behind:
        x1, y1, x2, y2 = body.footprint.bounds
        yield Box(axes, Spot(x1, y1, body.near), Spot(x2, y2, body.far))
