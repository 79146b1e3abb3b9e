"""Display lists in true perspective: what lies on a plate as one eye sees it.

The picture plane stands upright across the aircraft at a stated distance ahead of the eye. At the distance of an
upright plate the picture is that plate to scale, in aircraft axes. Curves become chords that miss by less than `_CHORD`
on the plate.
"""

from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import Any, Final

from panelcad.drawing.display import Fill, Group, LinearGradient, Node, Path, Pen, Picture, RadialGradient, Text
from panelcad.geometry.contour import Chain, Contour, Vertex
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point, distance
from panelcad.geometry.polygon import Side, corners
from panelcad.geometry.space import PlateFrame, Spot
from panelcad.geometry.track import Track

_CHORD: Final = 0.05
_NEAREST: Final = 50.0
"""What is less than this many mm ahead of the eye is drawn as if it were there."""
_STEP: Final = 1.0


@dataclass(frozen=True)
class Perspective:
    """From a plate's face to the picture; all in mm."""

    eye: Spot
    frame: PlateFrame
    distance: float

    def picture(self, spot: Spot) -> Point:
        """Where a point of the aircraft is seen."""
        way = self.eye.to(spot)
        share = self.distance / max(way.z, _NEAREST)
        return Point(self.eye.x + way.x * share, self.eye.y + way.y * share)

    def point(self, local: Point, z: float = 0.0) -> Point:
        """Where a point of the plate is seen, `z` mm behind its face."""
        return self.picture(self.frame.to_aircraft(Spot(local.x, local.y, z)))

    def scale_at(self, local: Point) -> float:
        """How large a short length there is seen, along the plate's y axis."""
        return distance(self.point(local), self.point(local.moved(0.0, _STEP))) / _STEP

    def contour(self, contour: Contour) -> Chain:
        return Chain(
            tuple(Vertex(*self.point(p)) for s in contour.segments for p in corners(s, Side.INSCRIBED, _CHORD))
        )

    def track(self, track: Track) -> Track:
        points = [p for s in track.segments for p in corners(s, Side.INSCRIBED, _CHORD)]
        return Track(tuple(Vertex(*self.point(p)) for p in (*points, track.segments[-1].end)))


def projected(group: Group, seen: Perspective) -> Group:
    """The group in perspective, owners and layers kept. Pictures are left out."""
    return _group(group, seen, Placement())


def _group(group: Group, seen: Perspective, outer: Placement) -> Group:
    at = outer.after(group.placement) if group.placement else outer
    nodes = tuple(_NODES[type(node)](node, seen, at) for node in group.nodes if not isinstance(node, Picture))
    clip = seen.contour(at.contour(group.clip)) if group.clip else None
    return replace(group, nodes=nodes, clip=clip, placement=None)


def _path(path: Path, seen: Perspective, at: Placement) -> Path:
    outlines = tuple(_outline(outline, seen, at) for outline in path.outlines)
    x1, y1, x2, y2 = path.bounds
    scale = seen.scale_at(at.point(Point((x1 + x2) / 2, (y1 + y2) / 2)))
    return Path(outlines, _fill(path.fill, seen, at, scale), _pen(path.pen, scale))


def _outline(outline: Contour | Track, seen: Perspective, at: Placement) -> Chain | Track:
    if isinstance(outline, Track):
        moved = tuple(Vertex(*at.point(v.point), -v.bulge if at.mirrored else v.bulge) for v in outline.vertices)
        return seen.track(Track(moved))
    return seen.contour(at.contour(outline))


def _pen(pen: Pen | None, scale: float) -> Pen | None:
    return replace(pen, width=pen.width * scale) if pen and pen.measured == "mm" else pen


def _fill(fill: Fill | None, seen: Perspective, at: Placement, scale: float) -> Fill | None:
    if isinstance(fill, LinearGradient):
        return replace(fill, start=seen.point(at.point(fill.start)), end=seen.point(at.point(fill.end)))
    if isinstance(fill, RadialGradient):
        return replace(fill, centre=seen.point(at.point(fill.centre)), radius=fill.radius * scale)
    return fill


def _text(text: Text, seen: Perspective, at: Placement) -> Text:
    anchor = at.point(text.at)
    scale = seen.scale_at(anchor) if text.measured == "mm" else 1.0
    return replace(text, at=seen.point(anchor), height=text.height * scale, rotation=text.rotation + at.rotation)


_NODES: Final[dict[type, Callable[[Any, Perspective, Placement], Node]]] = {Path: _path, Text: _text, Group: _group}
