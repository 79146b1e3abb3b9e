"""What could still be added: where the face of a usual cutout finds a free place, searched on a grid.

A first look, in plan and in depth; only the checks say whether it fits.
"""

from dataclasses import dataclass
from typing import Final

import numpy as np
import shapely

from panelcad.geometry.placement import Placement
from panelcad.geometry.polygon import Side, polygon
from panelcad.library.catalogue import packaged_catalogue
from panelcad.model.cutout import Cutout
from panelcad.model.layout import Layout, PlateLayout
from panelcad.model.shape import Shape
from panelcad.model.surroundings import DepthLimit, MovingPart, Obstacle, Surroundings, Volume

USUAL: Final = {
    "airspeed-3-1-8": "round instruments of 3 1/8 in",
    "airspeed-2-1-4": "round instruments of 2 1/4 in",
    "flight-display-7": "displays of 7 in",
    "outlet-usb": "charging outlets",
    "toggle": "toggle switches",
}
"""One cutout of each size that panels are asked for, and what many of that size are called."""
STEP: Final = 6.0
"""Distance between the places tried, in mm."""
COARSE: Final = 0.25
"""Error in mm of the polygons searched; they lie on the safe side."""
MOST: Final = 4
"""More of one kind are not looked for."""


@dataclass(frozen=True)
class Room:
    """How many more of a usual cutout find a free place, at most `MOST`."""

    cutout: str
    title: str
    count: int


def rooms(laid: Layout) -> tuple[Room, ...]:
    """For each usual cutout by itself how many more could be added on all plates."""
    usual = [packaged_catalogue().cutout(name) for name in USUAL]
    return tuple(Room(c.name, c.title, min(MOST, sum(_count(c, plate, laid) for plate in laid.plates))) for c in usual)


def _count(cutout: Cutout, plate: PlateLayout, laid: Layout) -> int:
    free = _free(plate, laid, deepest(cutout))
    width, height = _size(cutout)
    found = 0
    while found < MOST and (spot := _spot(free, width, height)) is not None:
        x, y = spot
        taken = shapely.box(x - width / 2, y - height / 2, x + width / 2, y + height / 2)
        free = shapely.difference(free, taken.buffer(laid.project.profile.bezel_gap))
        found += 1
    return found


def deepest(cutout: Cutout) -> float:
    """How far a cutout's bodies reach behind the sheet, in mm."""
    return max((body.far for body in cutout.bodies if not body.in_front), default=0.0)


def _size(cutout: Cutout) -> tuple[float, float]:
    """Width and height in mm of all that a cutout covers."""
    contours = [opening.shape.contour() for opening in cutout.openings]
    if cutout.bezel is not None:
        contours.append(cutout.bezel.shape.contour())
    boxes = [contour.bounds for contour in contours]
    return 2 * max(max(-b[0], b[2]) for b in boxes), 2 * max(max(-b[1], b[3]) for b in boxes)


def _free(plate: PlateLayout, laid: Layout, depth: float) -> shapely.geometry.base.BaseGeometry:
    """The part of the sheet where something this deep could stand."""
    profile = laid.project.profile
    sheet = polygon(plate.outline, error=COARSE).buffer(-profile.outline_advised)
    taken = [
        polygon(feature.contour, Side.CIRCUMSCRIBED, COARSE).buffer(profile.web_advised / 2)
        for feature in plate.features
    ]
    taken += [polygon(placed.face, Side.CIRCUMSCRIBED, COARSE).buffer(profile.bezel_gap) for placed in plate.items]
    taken += [
        polygon(body.footprint, Side.CIRCUMSCRIBED, COARSE).buffer(profile.body_clearance)
        for placed in plate.items
        for body in placed.behind
        if body.near < depth
    ]
    taken += _blocked(plate, laid.project.surroundings, depth)
    return shapely.difference(sheet, shapely.union_all(taken))


def _blocked(plate: PlateLayout, around: Surroundings, depth: float) -> list[shapely.geometry.base.BaseGeometry]:
    """Footprints of what stands behind this plate nearer than `depth`, and of depth limits that are too shallow."""
    stands: list[Obstacle | MovingPart] = [*around.obstacles, *around.moving_parts]
    things: list[tuple[Shape, Volume | DepthLimit]] = [
        (thing.volume.shape, thing.volume)
        for thing in stands
        if thing.plate == plate.plate.id and thing.volume.near < depth
    ]
    things += [(d.shape, d) for d in around.depth_limits if d.plate == plate.plate.id and d.at_origin < depth]
    return [
        polygon(Placement(at.x, at.y, at.rotation).contour(shape.contour()), Side.CIRCUMSCRIBED, COARSE)
        for shape, at in things
    ]


def _spot(free: shapely.geometry.base.BaseGeometry, width: float, height: float) -> tuple[float, float] | None:
    """The centre of a free box of this size, the first from the top left on the grid; None where there is none."""
    if free.is_empty:
        return None
    left, low, right, high = free.bounds
    xs = np.arange(left + width / 2, right - width / 2 + 1e-9, STEP)
    ys = np.arange(high - height / 2, low + height / 2 - 1e-9, -STEP)
    if not len(xs) or not len(ys):
        return None
    x, y = (grid.ravel() for grid in np.meshgrid(xs, ys))
    shapely.prepare(free)
    likely = np.flatnonzero(shapely.contains_xy(free, x, y))
    x, y = x[likely], y[likely]
    boxes = shapely.box(x - width / 2, y - height / 2, x + width / 2, y + height / 2)
    hits = np.flatnonzero(shapely.contains(free, boxes))
    return (float(x[hits[0]]), float(y[hits[0]])) if len(hits) else None
