"""A plate taken apart for judgement: its parts, and each part's pieces (one contour and the depth range it fills)."""

import math
from collections.abc import Callable, Iterable
from dataclasses import dataclass, field
from enum import StrEnum
from functools import cached_property
from typing import Any

from panelcad.geometry.contour import Contour
from panelcad.model.cutout import BodyKind
from panelcad.model.layout import Feature, PlacedCut, PlacedItem
from panelcad.model.surroundings import ObstacleKind
from panelcad.model.travel import Turn


class Kind(StrEnum):
    """What a part is; a rule that looks at one part says of which kind. Beside it: what the rule is given."""

    CUT = "cut"  # PlacedCut
    ITEM = "item"  # PlacedItem
    FITTING = "cut with the items that use it"  # Fitting
    ATTACH = "attach screw"  # Attach
    INNER = "inner opening"  # Feature
    SHEET = "sheet"  # Contour, the outline
    BEND = "bend"  # Bend
    OBSTACLE = "obstacle"  # Obstacle
    MOVING = "moving part"  # MovingPart
    KEEP_OUT = "keep-out"  # KeepOut
    DEPTH_LIMIT = "depth limit"  # DepthLimit


class Layer(StrEnum):
    """Pieces that are alike; a rule that looks at pairs says between which two layers."""

    CUTS = "every contour cut in the sheet"
    OLD_CUTS = "contours of old cuts that nothing uses"
    BEYOND = "everything outside the sheet's edge"
    BENDS = "bend lines"
    SCREWS = "edge distance around each screw and rivet in use"
    HEADS = "screw heads in front"
    TOOLS = "room for a screwdriver over each front screw"
    BACKS = "nutplates, shock mounts and brackets behind"
    BEZELS = "bezels that show in front"
    BEFORE = "knobs, levers and plugs in front"
    BEHIND = "bodies behind"
    CONNECTORS = "connectors behind"
    SLIDE_OUT = "way of a unit that is pulled out of its tray"
    OBSTACLES = "ribs, tubes, ducts, lines and cables"
    MOVING = "moving parts over their whole travel"
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
    obstacle: ObstacleKind | None = None
    turning: tuple[Contour, Turn] | None = None
    """What turns inside `contour`, and how."""
    is_edge: bool = False
    """Whether the contour is the sheet's edge, which holds what it is measured against."""

    @property
    def id(self) -> str:
        return f"{self.owner}/{self.name}" if self.name else self.owner


Pieces = Iterable[tuple[Layer, Piece]]


@dataclass(frozen=True, eq=False)
class Fitting:
    """A cut and the items that use it, in the option's order."""

    cut: PlacedCut
    items: tuple[PlacedItem, ...]


@dataclass(frozen=True, eq=False)
class Part:
    """One part of a plate or one thing around it. `source` is what rules about one part are given."""

    kind: Kind
    id: str
    source: Any
    make: Callable[["Part"], Pieces] = field(default=lambda _: (), repr=False)
    cut: str | None = None
    """The cut that a cut is, or that an item uses."""
    is_existing: bool = False
    """Whether it is metal cut already, or an item in such a cut."""

    @cached_property
    def pieces(self) -> dict[Layer, tuple[Piece, ...]]:
        found: dict[Layer, list[Piece]] = {}
        for layer, piece in self.make(self):
            found.setdefault(layer, []).append(piece)
        return {layer: tuple(pieces) for layer, pieces in found.items()}

    @property
    def can_move(self) -> bool:
        """Whether somebody may still put it elsewhere."""
        return self.kind in {Kind.CUT, Kind.ITEM, Kind.FITTING} and not self.is_existing
