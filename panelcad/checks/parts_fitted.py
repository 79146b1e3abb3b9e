"""Parts that are fitted: items with their bezels and bodies, and what stands around the panel."""

import math
from collections import Counter
from collections.abc import Callable, Iterator
from typing import Final

from panelcad.checks.parts import Kind, Layer, Part, Piece, Pieces
from panelcad.checks.setting import Setting
from panelcad.geometry.contour import Contour, circle
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point, distance
from panelcad.geometry.sweep import swayed, swept
from panelcad.model.cutout import Body, BodyKind, Mounting
from panelcad.model.layout import PlacedItem, Prism
from panelcad.model.plate import Sway
from panelcad.model.surroundings import DepthLimit, KeepOut, MovingPart, Obstacle, Volume
from panelcad.model.travel import Turn

Around = Obstacle | MovingPart | KeepOut | DepthLimit


def item_part(placed: PlacedItem, is_existing: bool, _: Setting) -> Part:  # noqa: FBT001 - bound in `sources`
    def pieces(part: Part) -> Pieces:
        yield from _bezel(part, placed)
        yield from _bodies(part, placed)
        if placed.cutout.rack is not None or placed.mounting is Mounting.TRAY:
            yield from _slide_out(part, placed)

    return Part(Kind.ITEM, placed.item.id, placed, pieces, placed.item.cut, is_existing)


def surrounding_part(thing: Around, setting: Setting) -> Part:
    kind, make = _SURROUNDING[type(thing)]

    def pieces(part: Part) -> Pieces:
        return (_with_sway(layer, piece, setting.plate.sway) for layer, piece in make(part))

    return Part(kind, thing.id, thing, pieces, is_existing=True)


def body_names(kinds: tuple[BodyKind, ...]) -> list[str]:
    """What bodies are called in findings: 'connector', and 'connector 2' for a second one."""
    counted: Counter[BodyKind] = Counter()
    names = []
    for kind in kinds:
        counted[kind] += 1
        names.append(kind.value if counted[kind] == 1 else f"{kind.value} {counted[kind]}")
    return names


def _bezel(part: Part, placed: PlacedItem) -> Iterator[tuple[Layer, Piece]]:
    if placed.bezel is not None and placed.shows_bezel and placed.cutout.bezel is not None:
        yield Layer.BEZELS, Piece(part, part.id, "bezel", placed.bezel, -placed.cutout.bezel.thickness, 0.0)


def _bodies(part: Part, placed: PlacedItem) -> Iterator[tuple[Layer, Piece]]:
    names = body_names(tuple(body.kind for body in placed.bodies))
    for name, body, prism in zip(names, placed.cutout.bodies, placed.bodies, strict=True):
        layer = Layer.BEFORE if body.in_front else Layer.BEHIND
        for footprint, near, far in _over_travel(body, prism, placed.placement.rotation):
            piece = Piece(part, part.id, name, footprint, near, far, body=body.kind)
            yield layer, piece
            if body.kind is BodyKind.CONNECTOR:
                yield Layer.CONNECTORS, piece


def _over_travel(body: Body, prism: Prism, rotation: float) -> Iterator[tuple[Contour, float, float]]:
    """Where a body is: at rest, or all it covers on each of its ways."""
    if not body.travels:
        yield prism.footprint, prism.near, prism.far
    for way in body.travels:
        moved = Placement(rotation=rotation).point(Point(way.dx, way.dy))
        near, far = prism.near + min(0.0, way.dz), prism.far + max(0.0, way.dz)
        yield swept(prism.footprint, *moved), near, far


def _slide_out(part: Part, placed: PlacedItem) -> Iterator[tuple[Layer, Piece]]:
    """The unit's case or tray and its bezel, pulled toward the pilot until the tray is free."""
    trays = [body for body in placed.bodies if body.kind in {BodyKind.CASE, BodyKind.TRAY}]
    stated = placed.cutout.rack.slide_out if placed.cutout.rack else None
    length = stated or max((body.far for body in trays), default=0.0)
    if length <= 0.0:
        return
    bezel = [placed.bezel] if placed.bezel is not None and placed.shows_bezel else []
    for footprint in [*bezel, *(body.footprint for body in trays)]:
        yield Layer.SLIDE_OUT, Piece(part, part.id, "way out", footprint, -length, 0.0)


def _with_sway(layer: Layer, piece: Piece, sway: Sway | None) -> tuple[Layer, Piece]:
    """What is fixed, grown by how far a shock-mounted plate moves toward it."""
    if sway is None:
        return layer, piece
    contour = swayed(piece.contour, sway.x, sway.y)
    turning = (swayed(piece.turning[0], sway.x, sway.y), piece.turning[1]) if piece.turning else None
    grown = Piece(
        piece.part,
        piece.owner,
        piece.name,
        contour,
        piece.near - sway.z,
        piece.far + sway.z,
        obstacle=piece.obstacle,
        turning=turning,
    )
    return layer, grown


def _footprint(volume: Volume) -> Contour:
    return Placement(volume.x, volume.y, volume.rotation).contour(volume.shape.contour())


def _obstacle_pieces(part: Part) -> Pieces:
    volume, kind = part.source.volume, part.source.kind
    yield Layer.OBSTACLES, Piece(part, part.id, "", _footprint(volume), volume.near, volume.far, obstacle=kind)


def _keep_out_pieces(part: Part) -> Pieces:
    volume = part.source.volume
    yield Layer.KEEP_OUTS, Piece(part, part.id, "", _footprint(volume), volume.near, volume.far)


def _moving_pieces(part: Part) -> Pieces:
    moving: MovingPart = part.source
    footprint, near, far = _footprint(moving.volume), moving.volume.near, moving.volume.far
    ways = [(way.dx, way.dy, way.dz) for way in moving.travels] or [(0.0, 0.0, 0.0)]
    for dx, dy, dz in ways:
        over = swept(footprint, dx, dy)
        envelope = over if moving.turn is None else _envelope(over, moving.turn)
        turning = None if moving.turn is None else (over, moving.turn)
        low, high = near + min(0.0, dz), far + max(0.0, dz)
        yield Layer.MOVING, Piece(part, part.id, "", envelope, low, high, turning=turning)


def _envelope(contour: Contour, turn: Turn) -> Contour:
    """The disc about the pivot that holds the contour at every angle."""
    x1, y1, x2, y2 = contour.bounds
    pivot = Point(turn.x, turn.y)
    reach = max(distance(pivot, Point(x, y)) for x in (x1, x2) for y in (y1, y2))
    return circle(pivot, 2 * reach)


def _depth_pieces(part: Part) -> Pieces:
    limit: DepthLimit = part.source
    at = Placement(limit.x, limit.y, limit.rotation)
    yield Layer.DEPTH_LIMITS, Piece(part, part.id, "", at.contour(limit.shape.contour()), -math.inf, math.inf)


_SURROUNDING: Final[dict[type, tuple[Kind, Callable[[Part], Pieces]]]] = {
    Obstacle: (Kind.OBSTACLE, _obstacle_pieces),
    MovingPart: (Kind.MOVING, _moving_pieces),
    KeepOut: (Kind.KEEP_OUT, _keep_out_pieces),
    DepthLimit: (Kind.DEPTH_LIMIT, _depth_pieces),
}
