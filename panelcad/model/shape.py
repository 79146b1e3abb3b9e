"""Shapes as people measure them: a diameter, a width and a height, a length and a width, or corner by corner."""

from enum import StrEnum
from typing import Annotated, Literal, Self

from pydantic import Field, model_validator

from panelcad.geometry.contour import Contour, Vertex, circle, closed_chain, rectangle
from panelcad.geometry.convex import chamfered, chamfered_fits, trapezoid, trapezoid_fits
from panelcad.geometry.keyed import flatted, keyed, notched
from panelcad.geometry.point import Point
from panelcad.model.base import Bulge, Length, NonNegativeLength, Number, PositiveLength, Record

_HERE = Point(0.0, 0.0)


class Circle(Record):
    kind: Literal["circle"] = "circle"
    diameter: PositiveLength

    def contour(self) -> Contour:
        return circle(_HERE, self.diameter)


class Rectangle(Record):
    """Centred on its own origin; corners are rounded by `corner_radius`."""

    kind: Literal["rectangle"] = "rectangle"
    width: PositiveLength
    height: PositiveLength
    corner_radius: NonNegativeLength = 0.0

    @model_validator(mode="after")
    def _corners_fit(self) -> Self:
        if 2 * self.corner_radius > min(self.width, self.height) + 1e-9:
            raise ValueError("a corner radius of at most half the shorter side is expected")
        return self

    def contour(self) -> Contour:
        return rectangle(_HERE, self.width, self.height, self.corner_radius)


class Slot(Record):
    """A round-ended slot along its own x axis; `length` is over all."""

    kind: Literal["slot"] = "slot"
    length: PositiveLength
    width: PositiveLength

    @model_validator(mode="after")
    def _longer_than_wide(self) -> Self:
        if self.length < self.width:
            raise ValueError("a slot at least as long as it is wide is expected")
        return self

    def contour(self) -> Contour:
        return rectangle(_HERE, self.length, self.width, self.width / 2)


class KeyEnd(StrEnum):
    SQUARE = "square"
    ROUND = "round"


class KeyedCircle(Record):
    """A round hole with a key or notch on its own +x side: a toggle's anti-turn key, an instrument's knob corner."""

    kind: Literal["keyed circle"] = "keyed circle"
    diameter: PositiveLength
    key_width: PositiveLength
    key_depth: PositiveLength
    """How far the key reaches beyond the circle."""
    key_end: KeyEnd = KeyEnd.SQUARE

    @model_validator(mode="after")
    def _key_fits(self) -> Self:
        if self.key_width >= self.diameter:
            raise ValueError("a key narrower than the hole is expected")
        if self.key_end is KeyEnd.ROUND and self.key_depth < self.key_width / 2:
            raise ValueError("a round-ended notch that reaches half its width beyond the hole is expected")
        return self

    def contour(self) -> Contour:
        make = keyed if self.key_end is KeyEnd.SQUARE else notched
        return make(self.diameter / 2, self.key_depth, self.key_width)


class FlattedCircle(Record):
    """A round hole with a flat across its own +x side, `flat_depth` inside the circle."""

    kind: Literal["flatted circle"] = "flatted circle"
    diameter: PositiveLength
    flat_depth: PositiveLength

    @model_validator(mode="after")
    def _flat_is_shallow(self) -> Self:
        if self.flat_depth >= self.diameter / 2:
            raise ValueError("a flat less than half the hole deep is expected")
        return self

    def contour(self) -> Contour:
        return flatted(self.diameter / 2, self.flat_depth)


class ChamferedRectangle(Record):
    """A rectangle whose corners are cut off at 45°; `chamfer` is the leg of each corner that is missing.

    The eight corners that this leaves are rounded by `corner_radius`.
    """

    kind: Literal["chamfered rectangle"] = "chamfered rectangle"
    width: PositiveLength
    height: PositiveLength
    chamfer: PositiveLength
    corner_radius: NonNegativeLength = 0.0

    @model_validator(mode="after")
    def _sides_remain(self) -> Self:
        if not chamfered_fits(self.width, self.height, self.chamfer, self.corner_radius):
            raise ValueError("a chamfer and corner radii that leave something of each side are expected")
        return self

    def contour(self) -> Contour:
        return chamfered(self.width, self.height, self.chamfer, self.corner_radius)


class Trapezoid(Record):
    """The shape of a D-subminiature connector: `width` is its longer side, on top, before the corners are rounded.

    Both sides lean inward by `side_angle` degrees toward the shorter side below.
    """

    kind: Literal["trapezoid"] = "trapezoid"
    width: PositiveLength
    height: PositiveLength
    side_angle: Annotated[Number, Field(gt=0, le=45)]
    corner_radius: NonNegativeLength = 0.0

    @model_validator(mode="after")
    def _corners_fit(self) -> Self:
        if not trapezoid_fits(self.width, self.height, self.side_angle, self.corner_radius):
            raise ValueError("corner radii and a side angle that leave something of each side are expected")
        return self

    def contour(self) -> Contour:
        return trapezoid(self.width, self.height, self.side_angle, self.corner_radius)


class Corner(Record):
    """A corner and the bulge of the edge that leaves it: tan(included angle / 4), counter-clockwise positive."""

    x: Length
    y: Length
    bulge: Bulge = 0.0


class Outline(Record):
    """Any closed contour, corner by corner; its last corner joins its first."""

    kind: Literal["outline"] = "outline"
    corners: Annotated[tuple[Corner, ...], Field(min_length=2, max_length=10_000)]

    @model_validator(mode="after")
    def _encloses_something(self) -> Self:
        ends = zip(self.corners, self.corners[1:] + self.corners[:1], strict=True)
        if any((a.x, a.y) == (b.x, b.y) for a, b in ends):
            raise ValueError("corners that differ from the next one are expected")
        if self.contour().area <= 0.0:
            raise ValueError("a contour that encloses an area is expected")
        return self

    def contour(self) -> Contour:
        return closed_chain(tuple(Vertex(c.x, c.y, c.bulge) for c in self.corners))


Shape = Annotated[
    Circle | Rectangle | Slot | KeyedCircle | FlattedCircle | ChamferedRectangle | Trapezoid | Outline,
    Field(discriminator="kind"),
]
