"""Straight lines broken where texts stand: no line runs through a text (ISO 129-1 lets lines be interrupted)."""

from collections.abc import Iterable, Sequence
from typing import Final

import shapely

from panelcad.drawing.box import grown
from panelcad.drawing.display import Bounds
from panelcad.geometry.point import Point
from panelcad.geometry.track import Track, polyline

_CLEAR: Final = 0.3
"""How far in mm a line ends before a text's box."""
_SHORTEST: Final = 0.2


def broken(tracks: Iterable[Track], texts: Sequence[Bounds]) -> tuple[Track, ...]:
    """The tracks, straight from vertex to vertex, without what of them runs through the boxes."""
    boxes = [shapely.box(*grown(box, _CLEAR)) for box in texts]
    tree = shapely.STRtree(boxes)
    return tuple(piece for track in tracks for piece in _pieces(track, tree, boxes))


def _pieces(track: Track, tree: shapely.STRtree, boxes: list[shapely.Polygon]) -> Iterable[Track]:
    line = shapely.LineString([vertex.point for vertex in track.vertices])
    near = sorted(int(i) for i in tree.query(line, predicate="intersects"))
    if not near:
        return (track,)
    left = line.difference(shapely.union_all([boxes[i] for i in near]))
    parts = [part for part in getattr(left, "geoms", [left]) if part.length > _SHORTEST]
    return tuple(polyline(*(Point(x, y) for x, y in part.coords)) for part in parts)
