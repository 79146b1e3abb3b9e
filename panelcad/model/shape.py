"""Shapes as people measure them: a diameter, a width and a height, a length and a width, or corner by corner."""

from typing import Annotated, Literal, Self

from pydantic import Field, model_validator

from panelcad.geometry.contour import Contour, Vertex, circle, closed_chain, rectangle
from panelcad.geometry.point import Point
from panelcad.model.base import Bulge, Length, NonNegativeLength, PositiveLength, Record

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


Shape = Annotated[Circle | Rectangle | Slot | Outline, Field(discriminator="kind")]
