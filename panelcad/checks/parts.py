"""A plate taken apart for judgement: its parts, and each part's pieces (one contour and the depth range it fills).

A part is kept by the identity of the record it was made from, so that a live check sees which parts an edit touched.
"""

import math
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from enum import StrEnum
from functools import cached_property
from typing import Any, Final

from panelcad.geometry.contour import Contour, circle
from panelcad.geometry.placement import Placement
from panelcad.model.cutout import BodyKind
from panelcad.model.layout import Feature, FeatureKind, PlacedCut, PlacedItem
from panelcad.model.plate import AttachScrew, CutState
from panelcad.model.surroundings import DepthLimit, KeepOut, MovingPart, Obstacle, Volume


class Kind(StrEnum):
    """What a part is; a rule that looks at one part says of which kind."""

    CUT = "cut"
    ITEM = "item"
    FITTING = "cut with the items that use it"
    ATTACH = "attach screw"
    INNER = "inner opening"
    SHEET = "sheet"
    OBSTACLE = "obstacle"
    MOVING = "moving part"
    KEEP_OUT = "keep-out"
    DEPTH_LIMIT = "depth limit"


class Layer(StrEnum):
    """Pieces that are alike; a rule that looks at pairs says between which two layers."""

    CUTS = "every contour cut in the sheet"
    BEYOND = "everything outside the sheet's edge"
    BEZELS = "bezels that show in front"
    HEADS = "screw heads in front"
    BACKS = "nutplates and washers behind"
    BEHIND = "bodies behind"
    BEFORE = "knobs, levers and plugs in front"
    OBSTACLES = "ribs, tubes and ducts"
    MOVING = "moving parts at each end of and along their travel"
    KEEP_OUTS = "spaces to be kept free in front"
    DEPTH_LIMITS = "footprints of depth limits"


@dataclass(frozen=True, eq=False)
class Piece:
    """One contour of a part and the range it fills along z, in mm."""

    part: "Part"
    owner: str
    name: str
    contour: Contour
    near: float = -math.inf
    far: float = math.inf
    feature: Feature | None = None
    body: BodyKind | None = None

    @property
    def id(self) -> str:
        return f"{self.owner}/{self.name}" if self.name else self.owner


@dataclass(frozen=True, eq=False)
class Fitting:
    """A cut and the items that use it, in the option's order."""

    cut: PlacedCut
    items: tuple[PlacedItem, ...]


@dataclass(frozen=True, eq=False)
class Part:
    """One part of a plate or one thing around it. `source` is the placed record that rules are given."""

    kind: Kind
    id: str
    source: Any
    cut: str | None = None
    """The cut that a cut is, or that an item uses."""
    is_existing: bool = False
    make: Callable[["Part"], Iterator[tuple[Layer, Piece]]] = field(default=lambda _: iter(()), repr=False)

    @cached_property
    def pieces(self) -> dict[Layer, tuple[Piece, ...]]:
        found: dict[Layer, list[Piece]] = {}
        for layer, piece in self.make(self):
            found.setdefault(layer, []).append(piece)
        return {layer: tuple(pieces) for layer, pieces in found.items()}


def cut_part(placed: PlacedCut) -> Part:
    is_existing = placed.cut.state is CutState.EXISTING
    return Part(Kind.CUT, placed.cut.id, placed, placed.cut.id, is_existing, _cut_pieces)


def item_part(placed: PlacedItem) -> Part:
    return Part(Kind.ITEM, placed.item.id, placed, placed.item.cut, make=_item_pieces)


def fitting_part(fitting: Fitting) -> Part:
    return Part(Kind.FITTING, fitting.cut.cut.id, fitting, fitting.cut.cut.id)


def attach_part(screw: AttachScrew, features: tuple[Feature, ...], *, is_existing: bool) -> Part:
    return Part(Kind.ATTACH, screw.id, features, screw.id, is_existing, _attach_pieces)


def inner_part(feature: Feature, *, is_existing: bool) -> Part:
    return Part(Kind.INNER, feature.id, feature, feature.id, is_existing, _inner_pieces)


def sheet_part(plate_id: str, outline: Contour) -> Part:
    return Part(Kind.SHEET, plate_id, outline, make=_sheet_pieces)


def surrounding_part(thing: Obstacle | MovingPart | KeepOut | DepthLimit) -> Part:
    kind, make = _SURROUNDING[type(thing)]
    return Part(kind, thing.id, thing, make=make)


def _cut_pieces(part: Part) -> Iterator[tuple[Layer, Piece]]:
    yield from _feature_pieces(part, part.source.features)


def _attach_pieces(part: Part) -> Iterator[tuple[Layer, Piece]]:
    yield from _feature_pieces(part, part.source)


def _inner_pieces(part: Part) -> Iterator[tuple[Layer, Piece]]:
    yield from _feature_pieces(part, (part.source,))


def _feature_pieces(part: Part, features: tuple[Feature, ...]) -> Iterator[tuple[Layer, Piece]]:
    for feature in features:
        yield Layer.CUTS, Piece(part, feature.owner, feature.name, feature.contour, feature=feature)
        yield from _hardware(part, feature)


def _hardware(part: Part, feature: Feature) -> Iterator[tuple[Layer, Piece]]:
    form = feature.form
    if form is None or feature.kind is FeatureKind.RIVET:
        return
    across = max(form.head, form.countersink.diameter if form.countersink else 0.0, form.diameter)
    yield Layer.HEADS, Piece(part, feature.owner, feature.name, circle(feature.centre, across), feature=feature)


def _item_pieces(part: Part) -> Iterator[tuple[Layer, Piece]]:
    placed: PlacedItem = part.source
    if placed.bezel is not None and placed.shows_bezel:
        yield Layer.BEZELS, Piece(part, part.id, "bezel", placed.bezel)
    counted: dict[BodyKind, int] = {}
    for body in placed.bodies:
        counted[body.kind] = counted.get(body.kind, 0) + 1
        name = body.kind.value if counted[body.kind] == 1 else f"{body.kind.value} {counted[body.kind]}"
        layer = Layer.BEFORE if body.near < 0.0 else Layer.BEHIND
        yield layer, Piece(part, part.id, name, body.footprint, body.near, body.far, body=body.kind)


def _sheet_pieces(part: Part) -> Iterator[tuple[Layer, Piece]]:
    yield Layer.BEYOND, Piece(part, part.id, "edge", part.source)


def _volume_piece(part: Part, volume: Volume) -> Piece:
    at = Placement(volume.x, volume.y, volume.rotation)
    return Piece(part, part.id, "", at.contour(volume.shape.contour()), volume.near, volume.far)


def _obstacle_pieces(part: Part) -> Iterator[tuple[Layer, Piece]]:
    yield Layer.OBSTACLES, _volume_piece(part, part.source.volume)


def _keep_out_pieces(part: Part) -> Iterator[tuple[Layer, Piece]]:
    yield Layer.KEEP_OUTS, _volume_piece(part, part.source.volume)


def _moving_pieces(part: Part) -> Iterator[tuple[Layer, Piece]]:
    yield Layer.MOVING, _volume_piece(part, part.source.volume)


def _depth_pieces(part: Part) -> Iterator[tuple[Layer, Piece]]:
    limit: DepthLimit = part.source
    at = Placement(limit.x, limit.y, limit.rotation)
    yield Layer.DEPTH_LIMITS, Piece(part, part.id, "", at.contour(limit.shape.contour()))


_SURROUNDING: Final[dict[type, tuple[Kind, Callable[[Part], Iterator[tuple[Layer, Piece]]]]]] = {
    Obstacle: (Kind.OBSTACLE, _obstacle_pieces),
    MovingPart: (Kind.MOVING, _moving_pieces),
    KeepOut: (Kind.KEEP_OUT, _keep_out_pieces),
    DepthLimit: (Kind.DEPTH_LIMIT, _depth_pieces),
}
