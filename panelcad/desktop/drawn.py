"""What was drawn on the canvas before a dialog asks for the rest."""

from typing import NamedTuple

from panelcad.geometry.point import Point
from panelcad.model.shape import Shape


class Drawn(NamedTuple):
    """A shape about the place `at`, in mm of the plate; after a plain click there is only the place."""

    shape: Shape | None = None
    at: Point = Point(0.0, 0.0)
