"""What a face fills: the bezel or opening that shows, its screws and knobs, in the item's own axes in mm."""

from dataclasses import dataclass

from panelcad.geometry.contour import Contour, Rounded
from panelcad.geometry.point import Point
from panelcad.model.pilot import LightColour


@dataclass(frozen=True)
class ScrewSpot:
    """A hole's centre and the diameter of the screw head or washer that covers it."""

    at: Point
    head: float


@dataclass(frozen=True)
class Frame:
    """The visible outline of an item, its screws and knobs; `label` is the item's name, `light` what it shines."""

    outline: Contour
    screws: tuple[ScrewSpot, ...] = ()
    knobs: tuple[Contour, ...] = ()
    levers: tuple[Contour, ...] = ()
    label: str = ""
    light: LightColour | None = None

    @property
    def centre(self) -> Point:
        x1, y1, x2, y2 = self.outline.bounds
        return Point((x1 + x2) / 2, (y1 + y2) / 2)

    @property
    def width(self) -> float:
        x1, _, x2, _ = self.outline.bounds
        return x2 - x1

    @property
    def height(self) -> float:
        _, y1, _, y2 = self.outline.bounds
        return y2 - y1

    @property
    def spots(self) -> tuple[tuple[Point, float], ...]:
        """Centre and radius of each knob of the cutout."""
        return tuple(_spot(contour) for contour in self.knobs)

    def between_knobs(self, margin: float) -> tuple[float, float]:
        """The free width between knobs and screws on the left and on the right, `margin` mm off them and the edges."""
        x1, _, x2, _ = self.outline.bounds
        aside = 0.3 * self.width
        taken = (*self.spots, *((screw.at, screw.head / 2) for screw in self.screws))
        left = [at.x + r for at, r in taken if at.x < self.centre.x - aside]
        right = [at.x - r for at, r in taken if at.x > self.centre.x + aside]
        return max([x1, *left]) + margin, min([x2, *right]) - margin

    @property
    def is_round(self) -> bool:
        return isinstance(self.outline, Rounded) and self.outline.is_circle

    @property
    def window_radius(self) -> float:
        """The radius of the round window of a gauge: the bezel's rim is wider where screws stand in its corners."""
        return min(self.width, self.height) * (0.455 if self.is_round else 0.432)


def _spot(contour: Contour) -> tuple[Point, float]:
    x1, y1, x2, y2 = contour.bounds
    return Point((x1 + x2) / 2, (y1 + y2) / 2), min(x2 - x1, y2 - y1) / 2
