"""A plate's view set on a sheet at a standard scale: from the plate's axes to the paper."""

from dataclasses import dataclass

from panelcad.drawing.box import middle, size
from panelcad.drawing.display import Bounds, Colour, Node
from panelcad.drawing.layers import Layer
from panelcad.drawing.paper import Scale, fitting_scale
from panelcad.drawing.scaling import scaled, scaled_contour
from panelcad.drawing.style import Palette
from panelcad.geometry.contour import Contour
from panelcad.geometry.point import Point


@dataclass(frozen=True)
class Seat:
    """Where a view stands on the paper: its scale, and the paper's place of the plate's datum."""

    scale: Scale
    origin: Point

    def point(self, real: Point) -> Point:
        factor = self.scale.factor
        return Point(self.origin.x + real.x * factor, self.origin.y + real.y * factor)

    def box(self, real: Bounds) -> Bounds:
        return (*self.point(Point(real[0], real[1])), *self.point(Point(real[2], real[3])))

    def contour(self, real: Contour) -> Contour:
        return scaled_contour(real, self.scale.factor, self.origin)

    def nodes(self, real: tuple[Node, ...]) -> tuple[Node, ...]:
        return scaled(real, self.scale.factor, self.origin)


def seated(real: Bounds, room: Bounds, scale: Scale | None = None) -> Seat | None:
    """The box of a view in the middle of a room at the largest standard scale, or the one given; None if too big."""
    chosen = scale or fitting_scale(size(real), size(room))
    if chosen is None:
        return None
    here, there = middle(real), middle(room)
    return Seat(chosen, Point(there.x - here.x * chosen.factor, there.y - here.y * chosen.factor))


def fill_of(layer: str, palette: Palette) -> Colour:
    """The colour on which the name of what stands around is written when it is written within it."""
    fills = {Layer.OBSTACLES: palette.obstacle, Layer.MOVING: palette.moving, Layer.KEEP_OUTS: palette.moving}
    return next((fill for each, fill in fills.items() if each == layer), palette.background)
