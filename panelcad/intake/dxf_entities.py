"""Entities of a drawing sorted into pieces, circles, points and texts, still in the file's own unit."""

import math
from collections import defaultdict
from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Any, Final

from panelcad.geometry.contour import Vertex
from panelcad.geometry.point import Point, polar
from panelcad.intake.dxf_chains import Piece
from panelcad.intake.dxf_curves import KINDS, Curve

_NO_SHAPE: Final = frozenset(
    {"DIMENSION", "HATCH", "IMAGE", "LEADER", "MULTILEADER", "VIEWPORT", "WIPEOUT", "ATTDEF", "ATTRIB", "ACAD_TABLE"}
)
MOST_ENTITIES: Final = 60_000
_DEEPEST: Final = 8
"""Blocks in blocks beyond this depth are told as unreadable: no honest drawing nests so deep."""


@dataclass
class Gathered:
    """What was found so far. `closed` holds circles, as two half turns, and what the file calls closed."""

    pieces: dict[str, list[Piece]] = field(default_factory=lambda: defaultdict(list))
    closed: list[tuple[str, tuple[Vertex, ...]]] = field(default_factory=list)
    points: list[tuple[str, Point]] = field(default_factory=list)
    texts: list[str] = field(default_factory=list)
    curves: list[Curve] = field(default_factory=list)
    unreadable: list[tuple[str, str]] = field(default_factory=list)
    count: int = 0


def gather(entity: Any, found: Gathered, depth: int = 0) -> None:
    """Sort one entity into what was found; inserted blocks are taken apart.

    Raises ValueError for more entities than any panel has: blocks of blocks may multiply without end.
    """
    kind = entity.dxftype()
    found.count += 1
    if found.count > MOST_ENTITIES:
        raise ValueError(f"it holds more than {MOST_ENTITIES:,} entities")
    if kind == "INSERT" and depth < _DEEPEST and entity.mcount == 1:
        for part in entity.virtual_entities():
            gather(part, found, depth + 1)
    elif kind in _READERS:
        _READERS[kind](_upright(entity), found)
    elif kind in KINDS:
        found.curves.append(Curve(layer_of(entity), kind, entity.flattening))
    elif kind not in _NO_SHAPE:
        found.unreadable.append((kind, layer_of(entity)))


def layer_of(entity: Any) -> str:
    """The entity's layer; '0' for a kind that ezdxf does not know, whose layer it does not read."""
    return str(entity.dxf.get("layer", "0")) if entity.dxf.is_supported("layer") else "0"


def _upright(entity: Any) -> Any:
    """The entity as seen from above; some programs mirror by turning the drawing plane over."""
    from ezdxf.upright import upright  # noqa: PLC0415 - comes with ezdxf

    if entity.dxf.hasattr("extrusion"):
        upright(entity)
    return entity


def _line(entity: Any, found: Gathered) -> None:
    start, end = _point(entity.dxf.start), _point(entity.dxf.end)
    if start != end:
        found.pieces[entity.dxf.layer].append(Piece((Vertex(*start), Vertex(*end))))


def _arc(entity: Any, found: Gathered) -> None:
    centre, radius = _point(entity.dxf.center), entity.dxf.radius
    sweep = (entity.dxf.end_angle - entity.dxf.start_angle) % 360.0
    if sweep == 0.0:
        _circle(entity, found)
        return
    turns = [entity.dxf.start_angle + sweep * share for share in (0.0, 0.5, 1.0)]
    bulge = math.tan(math.radians(sweep) / 8)
    corners = (Vertex(*polar(centre, radius, turn), bulge) for turn in turns)
    found.pieces[entity.dxf.layer].append(Piece(tuple(corners)))


def _circle(entity: Any, found: Gathered) -> None:
    centre, radius = _point(entity.dxf.center), float(entity.dxf.radius)
    if radius > 0.0:
        halves = (Vertex(centre.x + radius, centre.y, 1.0), Vertex(centre.x - radius, centre.y, 1.0))
        found.closed.append((entity.dxf.layer, halves))


def _lwpolyline(entity: Any, found: Gathered) -> None:
    vertices = tuple(Vertex(*map(float, each)) for each in entity.get_points("xyb"))
    _polyline(entity, vertices, found, is_closed=bool(entity.closed))


def _old_polyline(entity: Any, found: Gathered) -> None:
    if not entity.is_2d_polyline:
        found.unreadable.append((f"3D {entity.dxftype()}", entity.dxf.layer))
        return
    vertices = tuple(Vertex(*_point(v.dxf.location), v.dxf.get("bulge", 0.0)) for v in entity.vertices)
    _polyline(entity, vertices, found, is_closed=bool(entity.is_closed))


def _polyline(entity: Any, vertices: tuple[Vertex, ...], found: Gathered, *, is_closed: bool) -> None:
    kept = _without_repeats(vertices, is_closed=is_closed)
    if len(kept) < 2:
        return
    if is_closed:
        found.closed.append((entity.dxf.layer, kept))
    else:
        found.pieces[entity.dxf.layer].append(Piece(kept))


def _without_repeats(vertices: tuple[Vertex, ...], *, is_closed: bool) -> tuple[Vertex, ...]:
    """A corner repeated at once says nothing; the bulge that leaves the last of them counts."""
    following = (*vertices[1:], vertices[0] if is_closed else Vertex(math.nan, math.nan)) if vertices else ()
    return tuple(v for v, w in zip(vertices, following, strict=True) if v.point != w.point)


def _mark(entity: Any, found: Gathered) -> None:
    found.points.append((entity.dxf.layer, _point(entity.dxf.location)))


def _text(entity: Any, found: Gathered) -> None:
    found.texts.append(entity.dxf.text)


def _mtext(entity: Any, found: Gathered) -> None:
    found.texts.extend(entity.plain_text(split=True))


def _point(location: Any) -> Point:
    return Point(float(location.x), float(location.y))


_READERS: Final[dict[str, Callable[[Any, Gathered], None]]] = {
    "LINE": _line,
    "ARC": _arc,
    "CIRCLE": _circle,
    "LWPOLYLINE": _lwpolyline,
    "POLYLINE": _old_polyline,
    "POINT": _mark,
    "TEXT": _text,
    "MTEXT": _mtext,
}
