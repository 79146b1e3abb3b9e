"""The view from the pilot's eye: every plate in true perspective, the fields of view over it, hidden parts shaded, and
how far a small and a large pilot reach. In mm of a picture plane at the panel's distance, aircraft axes.
"""

import math
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

import shapely
from shapely.geometry.base import BaseGeometry

from panelcad.checks.pilot_hidden import PILOT, EyeHeight, hidden_from, hidden_parts, obstruction_shadow, obstructions
from panelcad.checks.pilot_reach import shoulder
from panelcad.checks.pilot_sight import Facing, eye_spot, plate_frame, seen_items
from panelcad.checks.pilot_t import group_offset
from panelcad.checks.pilot_zones import IMPORTANT_ZONE, PRIMARY_ZONE, Zone
from panelcad.checks.wording import quantity
from panelcad.drawing.display import Across, Along, Bounds, Colour, Face, Group, Measured, Path, Text
from panelcad.drawing.layers import Layer
from panelcad.drawing.perspective import Perspective, projected
from panelcad.drawing.style import SCREEN_LIGHT, Line, ViewStyle
from panelcad.drawing.views.front import front_view
from panelcad.geometry.contour import Chain, Vertex, closed_chain
from panelcad.geometry.gap import contains
from panelcad.geometry.point import Point
from panelcad.geometry.polygon import polygon
from panelcad.geometry.space import Spot
from panelcad.geometry.track import Track, line
from panelcad.model.finding import Measure
from panelcad.model.layout import Layout, PlateLayout
from panelcad.model.plate import Plate
from panelcad.model.profile import Profile
from panelcad.model.surroundings import Eye
from panelcad.units import format_length

DEFAULT_DISTANCE: Final = 762.0
"""Eye to panel where the eye point is not known: 30 in (AC 23.1311-1C paragraph 15.4, from memory)."""
_LETTER_PX: Final = 9.0
_ARC_STEPS: Final = 96
_SHADE: Final = Colour(0, 0, 0, 130)
"""Dark in a light and in a dark window: shade."""
_CLEAR: Final = 4.0
"""Between a line and the words above it, in mm."""
_ON_LINE: Final = 0.005
"""Nearer than this, in mm, is on the centre line."""
_NEAR_EDGE: Final = 0.1
"""Of a plate's height: a contour that comes so near its lower edge leaves it there."""
_TOLD: Final = 0.005
"""The least share of a face that is hidden and said to be."""


@dataclass(frozen=True)
class Scene:
    """What the pilot looks at, from which eye, and the distance of the picture plane."""

    layout: Layout
    eye: Eye
    height: EyeHeight
    style: ViewStyle

    @property
    def spot(self) -> Spot:
        eye = eye_spot(self.eye)
        return eye._replace(y=eye.y + self.height.above)

    @property
    def profile(self) -> Profile:
        return self.layout.project.profile

    @property
    def distance(self) -> float:
        """To the first plate's origin, straight ahead."""
        return max(plate_frame(self.layout.plates[0].plate).origin.z - self.spot.z, 1.0)

    def of(self, plate: Plate | Facing) -> Perspective:
        return Perspective(self.spot, plate_frame(plate), self.distance)


def pilot_view(layout: Layout, style: ViewStyle, height: EyeHeight = PILOT) -> tuple[Group, ...]:
    """The groups of the view from an eye at this height; a note alone where no eye point is known."""
    eye = layout.project.surroundings.eye
    if eye is None:
        return (_note(layout, style),)
    scene = Scene(layout, eye, height, style)
    plates = [group for plate in layout.plates for group in _plate(scene, plate)]
    over = (*_solids(scene), *_reach(scene), *_zones(scene), _eye_mark(scene), *_shares(scene), *_offset(scene))
    return (*plates, *over)


def eye_place(layout: Layout) -> Point | None:
    """Where the eye's own mark is: straight ahead, on the horizon."""
    eye = layout.project.surroundings.eye
    return None if eye is None else Point(eye.x, eye.y)


def seen_at(layout: Layout, plate_id: str, at: Point, height: EyeHeight = PILOT) -> Point:
    """Where an eye at this height sees a place of a plate, on the picture of `pilot_view`."""
    eye = layout.project.surroundings.eye
    if eye is None:
        return at
    return Scene(layout, eye, height, SCREEN_LIGHT).of(layout.plate(plate_id).plate).point(at)


def _plate(scene: Scene, plate: PlateLayout) -> Iterator[Group]:
    seen = scene.of(plate.plate)
    for group in front_view(scene.layout, plate.plate.id, scene.style):
        yield projected(group, seen)
    yield _hidden(scene, plate, seen)


def _hidden(scene: Scene, plate: PlateLayout, seen: Perspective) -> Group:
    """What of the plate the eye cannot see, shaded."""
    dark = hidden_from(plate.plate, scene.layout, scene.height)
    part = polygon(plate.outline, error=0.1).intersection(dark)
    paths = tuple(
        Path(tuple(_ring(ring, seen) for ring in (piece.exterior, *piece.interiors)), _SHADE) for piece in _pieces(part)
    )
    return Group(paths, layer=Layer.HIDDEN, title="Hidden from the eye")


def _shares(scene: Scene) -> Iterator[Group]:
    """How much of each face the eye cannot see, in words on the face."""
    for face in seen_items(scene.layout):
        told = [part.share for part in hidden_parts(face, scene.layout) if part.whose == scene.height.whose]
        if face.item.shows and max(told, default=0.0) >= _TOLD:
            text = Text(
                f"{quantity(told[0], Measure.RATIO, scene.layout.project.unit)} hidden",
                scene.of(face.plate).point(_lower_half(face.item.face.bounds)),
                _LETTER_PX,
                scene.style.palette.ink,
                Along.CENTRE,
                Across.MIDDLE,
                face=Face.BOLD,
                measured=Measured.PIXELS,
            )
            yield Group((text,), layer=Layer.HIDDEN, title=f"Hidden share of {face.item.item.name}")


def _lower_half(bounds: Bounds) -> Point:
    """The middle of a box's lower half, clear of the marks of findings."""
    left, bottom, right, top = bounds
    return Point((left + right) / 2, bottom + (top - bottom) / 4)


def _pieces(part: BaseGeometry) -> list[shapely.Polygon]:
    return [piece for piece in getattr(part, "geoms", [part]) if isinstance(piece, shapely.Polygon) and piece.area > 0]


def _ring(ring: shapely.LinearRing, seen: Perspective) -> Chain:
    return Chain(tuple(Vertex(*seen.point(Point(x, y))) for x, y in ring.coords[:-1]))


def _solids(scene: Scene) -> Iterator[Group]:
    """Glareshield and yoke in outline, as the eye sees them before the plate."""
    colours = scene.style.palette
    pen = scene.style.narrow_pen(colours.moving_edge)
    for thing in obstructions(scene.layout):
        seen = Perspective(scene.spot, plate_frame(thing.plate), scene.distance)
        paths = tuple(
            Path(tuple(_ring(ring, seen) for ring in (piece.exterior, *piece.interiors)), colours.moving, pen)
            for piece in _pieces(obstruction_shadow(thing, thing.plate, scene.spot))
        )
        yield Group(paths, thing.id, Layer.MOVING)


def _zones(scene: Scene) -> Iterator[Group]:
    yield _zone(scene, IMPORTANT_ZONE, "important field of view", Along.LEFT)
    yield _zone(scene, PRIMARY_ZONE, "primary field of view", Along.RIGHT)


def _zone(scene: Scene, zone: Zone, title: str, along: Along) -> Group:
    """A zone with its name at its upper left corner, on the inside or the outside."""
    colours = scene.style.palette
    contour = zone_contour(scene, zone)
    left, _, _, top = contour.bounds
    at = Point(left, top + _CLEAR) if along is Along.LEFT else Point(left - _CLEAR, top)
    label = Text(title, at, _LETTER_PX, colours.limit_edge, along, measured=Measured.PIXELS)
    path = Path((contour,), pen=scene.style.wide_pen(colours.limit_edge, Line.CHAIN))
    return Group((path, label), layer=Layer.VIEW, title=title)


def zone_contour(scene: Scene, zone: Zone) -> Chain:
    """A zone's edge on the picture: upright lines at its sides, curves of equal elevation above and below."""
    side = float(getattr(scene.profile, zone.sideways))
    up = float(getattr(scene.profile, zone.up)) - scene.profile.line_of_sight_down
    down = -float(getattr(scene.profile, zone.down)) - scene.profile.line_of_sight_down
    across = [-side + 2 * side * i / _ARC_STEPS for i in range(_ARC_STEPS + 1)]
    below = [_direction(scene, angle, down) for angle in across]
    above = [_direction(scene, angle, up) for angle in reversed(across)]
    return closed_chain(tuple(Vertex(*point) for point in (*below, *above)))


def _direction(scene: Scene, azimuth: float, elevation: float) -> Point:
    """Where the way at this azimuth and elevation meets the picture plane."""
    x = math.tan(math.radians(azimuth))
    y = math.tan(math.radians(elevation)) * math.hypot(1.0, x)
    return Point(scene.spot.x + scene.distance * x, scene.spot.y + scene.distance * y)


def _reach(scene: Scene) -> Iterator[Group]:
    for name, title in (("reach_small", "reach of a small pilot"), ("reach_large", "reach of a large pilot")):
        for plate in scene.layout.plates:
            contour = reach_contour(scene, plate, float(getattr(scene.profile, name)))
            if contour is not None:
                yield _reach_group(scene, plate, contour, title)


def _reach_group(scene: Scene, plate: PlateLayout, contour: Chain, title: str) -> Group:
    colours = scene.style.palette
    edge = scene.of(plate.plate).contour(plate.outline)
    path = Path((contour,), pen=scene.style.wide_pen(colours.body_edge, Line.DASHED))
    labels = tuple(
        Text(title, at, _LETTER_PX, colours.body_edge, across=across, measured=Measured.PIXELS)
        for at, across in _beside(contour, edge)
    )
    return Group((Group((path,), clip=edge), *labels), layer=Layer.REACH, title=f"{title}, {plate.plate.name}")


def _beside(contour: Chain, edge: Chain) -> list[tuple[Point, Across]]:
    """Where the words for a contour stand: under the plate where it leaves there, else over its highest place on it."""
    inside = sorted((v.point for v in contour.vertices if contains(edge, v.point)), key=lambda point: point.y)
    if not inside:
        return []
    _, bottom, _, top = edge.bounds
    lowest, highest = inside[0], inside[-1]
    if lowest.y - bottom < _NEAR_EDGE * (top - bottom):
        return [(Point(lowest.x, bottom - _CLEAR), Across.TOP)]
    return [(highest.moved(0.0, _CLEAR), Across.BASELINE)]


def reach_contour(scene: Scene, plate: PlateLayout, reach: float) -> Chain | None:
    """Where a sphere about the shoulder meets the plate's plane, as seen; None where the arm does not reach it."""
    seen = scene.of(plate.plate)
    foot = seen.frame.to_plate(shoulder(scene.eye, scene.profile))
    if reach <= abs(foot.z):
        return None
    radius = math.sqrt(reach**2 - foot.z**2)
    turns = [2 * math.pi * i / _ARC_STEPS for i in range(_ARC_STEPS)]
    points = [Point(foot.x + radius * math.cos(t), foot.y + radius * math.sin(t)) for t in turns]
    return closed_chain(tuple(Vertex(*seen.point(point)) for point in points))


def _eye_mark(scene: Scene) -> Group:
    """The horizon straight ahead, and the centre line of the pilot's forward vision."""
    colours, spot = scene.style.palette, scene.spot
    arm = scene.distance / 20
    pen = scene.style.wide_pen(colours.limit_edge)
    tracks: list[Track] = [
        line(Point(spot.x - arm, spot.y), Point(spot.x + arm, spot.y)),
        line(Point(spot.x, spot.y - arm), Point(spot.x, spot.y + arm)),
    ]
    _, bottom, _, top = zone_contour(scene, IMPORTANT_ZONE).bounds
    centre = line(Point(scene.eye.centre_line, bottom), Point(scene.eye.centre_line, top))
    lines = Path((centre,), pen=scene.style.narrow_pen(colours.limit_edge, Line.CHAIN))
    label = Text(
        f"eye of {scene.height.whose}",
        Point(spot.x + _CLEAR, spot.y + arm),
        _LETTER_PX,
        colours.limit_edge,
        measured=Measured.PIXELS,
    )
    return Group((lines, Path(tuple(tracks), pen=pen), label), "eye", Layer.VIEW, title="Eye point")


def _offset(scene: Scene) -> Iterator[Group]:
    """How far the flight instruments' middle stands aside of the centre line, at the line's head."""
    offset = group_offset(scene.layout)
    if offset is None:
        return
    aside = format_length(abs(offset), scene.layout.project.unit)
    told = "on the line" if abs(offset) < _ON_LINE else f"{aside} {'right' if offset > 0 else 'left'}"
    head = Point(scene.eye.centre_line + _CLEAR, zone_contour(scene, IMPORTANT_ZONE).bounds[3])
    text = Text(
        f"flight instruments {told}", head, _LETTER_PX, scene.style.palette.limit_edge, measured=Measured.PIXELS
    )
    yield Group((text,), layer=Layer.VIEW, title="Offset of the flight instruments")


def _note(layout: Layout, style: ViewStyle) -> Group:
    left, bottom, right, top = layout.plates[0].outline.bounds
    middle = Point((left + right) / 2, (bottom + top) / 2)
    words = "The pilot's eye point is not entered, so there is no view from it."
    text = Text(words, middle, 12.0, style.palette.ink, Along.CENTRE, Across.MIDDLE, measured=Measured.PIXELS)
    return Group((text,), layer=Layer.VIEW)
