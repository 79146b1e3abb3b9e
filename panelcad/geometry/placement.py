"""Where a thing stands: mirrored about its own y axis, then turned, then moved. Quarter turns are exact swaps."""

from dataclasses import dataclass
from functools import cached_property

from panelcad.geometry.contour import Contour, Rounded, Vertex, closed_chain
from panelcad.geometry.point import Point, direction


@dataclass(frozen=True)
class Placement:
    """Offset in mm and rotation in degrees counter-clockwise."""

    x: float = 0.0
    y: float = 0.0
    rotation: float = 0.0
    mirrored: bool = False

    @cached_property
    def _turn(self) -> tuple[float, float]:
        return direction(self.rotation)

    def point(self, local: Point) -> Point:
        if self.rotation == 0.0 and not self.mirrored:
            return Point(self.x + local.x, self.y + local.y)
        cosine, sine = self._turn
        x = -local.x if self.mirrored else local.x
        return Point(self.x + x * cosine - local.y * sine, self.y + x * sine + local.y * cosine)

    def contour(self, local: Contour) -> Contour:
        """The contour moved to this placement, still counter-clockwise."""
        if isinstance(local, Rounded):
            return self._rounded(local)
        sign = -1.0 if self.mirrored else 1.0
        return closed_chain(tuple(Vertex(*self.point(vertex.point), sign * vertex.bulge) for vertex in local.vertices))

    def _rounded(self, local: Rounded) -> Rounded:
        core = tuple(self.point(p) for p in local.core)
        return Rounded(tuple(reversed(core)) if self.mirrored else core, local.radius)

    def after(self, inner: "Placement") -> "Placement":
        """One placement that does `inner` first and then this one."""
        moved = self.point(Point(inner.x, inner.y))
        turned = -inner.rotation if self.mirrored else inner.rotation
        return Placement(moved.x, moved.y, (self.rotation + turned) % 360.0, self.mirrored != inner.mirrored)
