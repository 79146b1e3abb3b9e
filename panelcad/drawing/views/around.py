"""What stands around a plate, resolved to contours and depths: obstacles, moving parts, depth limits, keep-outs."""

from dataclasses import dataclass

from panelcad.geometry.contour import Contour
from panelcad.geometry.placement import Placement
from panelcad.model.layout import Layout
from panelcad.model.shape import Shape
from panelcad.model.surroundings import DepthLimit, MovingPart, Volume


@dataclass(frozen=True)
class Space:
    """A footprint and the range it fills along z, in mm; `owner` is the id of the record."""

    owner: str
    name: str
    footprint: Contour
    near: float
    far: float


@dataclass(frozen=True)
class Limit:
    """The footprint of a depth limit and the limit itself."""

    limit: DepthLimit
    footprint: Contour


def obstacles(layout: Layout, plate_id: str) -> tuple[Space, ...]:
    around = layout.project.surroundings.obstacles
    return tuple(_space(each.id, each.name, each.volume) for each in around if each.plate == plate_id)


def keep_outs(layout: Layout, plate_id: str) -> tuple[Space, ...]:
    around = layout.project.surroundings.keep_outs
    return tuple(_space(each.id, each.name, each.volume) for each in around if each.plate == plate_id)


def moving_parts(layout: Layout, plate_id: str) -> tuple[tuple[Space, ...], ...]:
    """For each moving part its place, then its place at the end of each way it goes."""
    around = layout.project.surroundings.moving_parts
    return tuple(_places(part) for part in around if part.plate == plate_id)


def depth_limits(layout: Layout, plate_id: str) -> tuple[Limit, ...]:
    around = layout.project.surroundings.depth_limits
    return tuple(
        Limit(each, _placed(each.shape, Placement(each.x, each.y, each.rotation)))
        for each in around
        if each.plate == plate_id
    )


def _places(part: MovingPart) -> tuple[Space, ...]:
    rest = _space(part.id, part.name, part.volume)
    ends = tuple(
        Space(
            part.id,
            part.name,
            Placement(travel.dx, travel.dy).contour(rest.footprint),
            rest.near + travel.dz,
            rest.far + travel.dz,
        )
        for travel in part.travels
    )
    return (rest, *ends)


def _space(owner: str, name: str, volume: Volume) -> Space:
    footprint = _placed(volume.shape, Placement(volume.x, volume.y, volume.rotation))
    return Space(owner, name, footprint, volume.near, volume.far)


def _placed(shape: Shape, at: Placement) -> Contour:
    return at.contour(shape.contour())
