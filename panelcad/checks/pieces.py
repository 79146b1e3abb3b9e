"""Pieces of one layer as arrays, and which of them are close: one query for all, before anything is judged exactly.

A piece is a shapely core and a radius: exact for circles, slots and rounded rectangles, else a circumscribed polygon.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cached_property
from typing import Any, Final

import numpy as np
import shapely
from shapely.geometry.base import BaseGeometry

from panelcad.checks.parts import Layer, Part, Piece
from panelcad.geometry.contour import Contour, Rounded
from panelcad.geometry.polygon import CHORD_ERROR, Side, core_geometry, polygon

NEAR_LIMIT: Final = 0.05
"""Pairs within this many mm of a limit are judged on their true lines and arcs."""
_FEW: Final = 64
"""Below so many pieces comparing boxes with all others is faster than building a tree."""
_FAR_AWAY: Final = 1e6

Numbers = np.ndarray[Any, np.dtype[np.float64]]
Indices = np.ndarray[Any, np.dtype[np.intp]]
Objects = np.ndarray[Any, np.dtype[Any]]


@dataclass
class Rows:
    """Rows of one layer; row i of every array belongs to piece i."""

    pieces: Objects
    cores: Objects
    radii: Numbers
    boxes: Numbers
    near: Numbers
    far: Numbers
    parts: Indices
    """The identity of each piece's part, so that a part's own pieces are no pair."""

    def __len__(self) -> int:
        return len(self.pieces)

    def taking(self, rows: Any) -> "Rows":
        return Rows(*(column[rows] for column in self.columns()))

    def joined(self, other: "Rows") -> "Rows":
        both = zip(self.columns(), other.columns(), strict=True)
        return Rows(*(np.concatenate(pair) for pair in both))

    def without(self, parts: Iterable[Part]) -> "Rows":
        gone = np.fromiter((id(part) for part in parts), dtype=np.intp)
        return self.taking(~np.isin(self.parts, gone))

    @cached_property
    def tree(self) -> shapely.STRtree:
        """The rows' boxes, sorted for searching; built once for all rules that ask."""
        return shapely.STRtree(shapely.box(*self.boxes.T))

    def columns(self) -> tuple[Any, ...]:
        return (self.pieces, self.cores, self.radii, self.boxes, self.near, self.far, self.parts)


def pieces_of(layer: Layer, parts: Iterable[Part]) -> Rows:
    """The rows of these parts on a layer."""
    pieces = [piece for part in parts for piece in part.pieces.get(layer, ())]
    grown = [_grown(layer, piece.contour) for piece in pieces]
    bounds = [_bounds(layer, piece.contour) for piece in pieces]
    return Rows(
        pieces=_objects(pieces),
        cores=_objects([core for core, _ in grown]),
        radii=np.array([radius for _, radius in grown], dtype=float),
        boxes=np.array(bounds, dtype=float).reshape(-1, 4),
        near=np.array([piece.near for piece in pieces], dtype=float),
        far=np.array([piece.far for piece in pieces], dtype=float),
        parts=np.array([id(piece.part) for piece in pieces], dtype=np.intp),
    )


def close_pairs(a: Rows, b: Rows, reach: float, depth_reach: float | None = None) -> list[tuple[Piece, Piece]]:
    """Pieces, one of each, of different parts, that may be nearer than `reach` mm in plan and `depth_reach` along z."""
    if not len(a) or not len(b):
        return []
    left, right = _touching_boxes(a, b, reach + NEAR_LIMIT)
    apart = a.parts[left] != b.parts[right]
    if depth_reach is not None:
        gaps = np.maximum(a.near[left] - b.far[right], b.near[right] - a.far[left])
        apart &= gaps < depth_reach
    if a is b:
        apart &= left < right
    left, right = left[apart], right[apart]
    gaps = shapely.distance(a.cores[left], b.cores[right]) - a.radii[left] - b.radii[right]
    near = gaps < reach + NEAR_LIMIT
    return list(zip(a.pieces[left[near]], b.pieces[right[near]], strict=True))


def _touching_boxes(a: Rows, b: Rows, reach: float) -> tuple[Indices, Indices]:
    if len(a) > _FEW and len(b) > _FEW:
        left, right = b.tree.query(shapely.box(*(a.boxes + np.array([-reach, -reach, reach, reach])).T))
        return left, right
    one, other = a.boxes[:, None], b.boxes[None]
    touching = (one[..., :2] - reach <= other[..., 2:]) & (other[..., :2] - reach <= one[..., 2:])
    rows, columns = np.nonzero(touching.all(-1))
    return rows, columns


def _grown(layer: Layer, contour: Contour) -> tuple[Any, float]:
    if layer is Layer.BEYOND:
        return _outside(contour), 0.0
    if isinstance(contour, Rounded):
        return core_geometry(contour), contour.radius
    return shapely.make_valid(polygon(contour, Side.CIRCUMSCRIBED)), 0.0


def _outside(outline: Contour) -> BaseGeometry:
    """Everything but the sheet, so that a cut's distance from it is the metal left at the edge."""
    world = shapely.box(-_FAR_AWAY, -_FAR_AWAY, _FAR_AWAY, _FAR_AWAY)
    return world.difference(shapely.make_valid(polygon(outline, Side.INSCRIBED, CHORD_ERROR)))


def _bounds(layer: Layer, contour: Contour) -> tuple[float, float, float, float]:
    return (-_FAR_AWAY, -_FAR_AWAY, _FAR_AWAY, _FAR_AWAY) if layer is Layer.BEYOND else contour.bounds


def _objects(values: list[Any]) -> Objects:
    column = np.empty(len(values), dtype=object)
    column[:] = values
    return column
