"""What a cutting file holds, before any file format: closed loops, strokes, marks and labels on layers, in mm."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from panelcad.drawing.display import Bounds, union
from panelcad.geometry.contour import Contour
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point
from panelcad.geometry.track import Track
from panelcad.outputs.dxf_layers import Layer


@dataclass(frozen=True)
class Loop:
    """One closed contour; `feature` is the id of what it cuts, `is_filed` where its key or flat is filed by hand."""

    layer: Layer
    contour: Contour
    feature: str = ""
    is_filed: bool = False


@dataclass(frozen=True)
class Stroke:
    """One open line: engraving, a bend line, a cross; `feature` is the id of the line of lettering it belongs to."""

    layer: Layer
    track: Track
    feature: str = ""


@dataclass(frozen=True)
class Mark:
    """A point; `feature` is the id of the hole whose centre it marks."""

    layer: Layer
    at: Point
    feature: str = ""


@dataclass(frozen=True)
class Label:
    """One line of text, its baseline's left end at `at`, `height` the height of a capital in mm."""

    layer: Layer
    text: str
    at: Point
    height: float


@dataclass(frozen=True)
class Plan:
    loops: tuple[Loop, ...] = ()
    strokes: tuple[Stroke, ...] = ()
    marks: tuple[Mark, ...] = ()
    labels: tuple[Label, ...] = ()

    @property
    def parts(self) -> tuple[Loop | Stroke | Mark | Label, ...]:
        return (*self.loops, *self.strokes, *self.marks, *self.labels)

    @property
    def bounds(self) -> Bounds:
        """The box of everything but the labels. Raises ValueError for an empty plan."""
        return union(self._boxes())

    def _boxes(self) -> Iterator[Bounds]:
        yield from (loop.contour.bounds for loop in self.loops)
        yield from (stroke.track.bounds for stroke in self.strokes)
        yield from ((*mark.at, *mark.at) for mark in self.marks)

    def placed(self, placement: Placement) -> "Plan":
        """The same plan moved; labels move with it but are never mirrored."""
        if placement == Placement():
            return self
        return Plan(
            tuple(replace(loop, contour=placement.contour(loop.contour)) for loop in self.loops),
            tuple(replace(stroke, track=placed_track(stroke.track, placement)) for stroke in self.strokes),
            tuple(replace(mark, at=placement.point(mark.at)) for mark in self.marks),
            tuple(replace(label, at=placement.point(label.at)) for label in self.labels),
        )

    def joined(self, other: "Plan") -> "Plan":
        return Plan(
            self.loops + other.loops,
            self.strokes + other.strokes,
            self.marks + other.marks,
            self.labels + other.labels,
        )

    def on_layers(self, layers: frozenset[Layer]) -> "Plan":
        """What of the plan lies on these layers."""
        return Plan(
            tuple(loop for loop in self.loops if loop.layer in layers),
            tuple(stroke for stroke in self.strokes if stroke.layer in layers),
            tuple(mark for mark in self.marks if mark.layer in layers),
            tuple(label for label in self.labels if label.layer in layers),
        )


def placed_track(track: Track, placement: Placement) -> Track:
    """The track moved; mirroring turns its arcs the other way."""
    sign = -1.0 if placement.mirrored else 1.0
    moved = (
        v._replace(x=at.x, y=at.y, bulge=sign * v.bulge) for v in track.vertices for at in [placement.point(v.point)]
    )
    return Track(tuple(moved))
