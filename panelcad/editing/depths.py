"""How deep a thing around the panel is, as people measure it: from where to where, or how deep it is at two edges."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any, Final

from panelcad.editing.parts import Standing
from panelcad.editing.places import place_of
from panelcad.geometry.boxes import Box
from panelcad.model.shape import Shape
from panelcad.model.surroundings import DepthLimit, KeepOut, MovingPart, Obstacle

Figures = tuple[float, ...]
_DIGITS: Final = 9
"""Of a slope: a nanometre on a metre."""


@dataclass(frozen=True)
class DepthMeasures:
    """What is measured of a kind of thing, in mm, and from `where`; each figure has a word for a narrow pane, and a
    whole title with its key's letter marked.

    `read` takes the figures off a thing; `changes` gives the fields of a thing that covers a box and measures so.
    """

    where: str
    words: tuple[str, ...]
    titles: tuple[str, ...]
    read: Callable[[Any], Figures]
    changes: Callable[[Figures, Box], dict[str, Any]]


def depth_measures(thing: Standing) -> DepthMeasures:
    return _MEASURES[type(thing)]


def covered(thing: Standing) -> Box:
    """The box around the thing's footprint in its plate's axes."""
    return covered_by(thing, shape_of(thing))


def covered_by(thing: Standing, shape: Shape) -> Box:
    """The box around another shape in the thing's place."""
    return place_of(thing).contour(shape.contour()).bounds


def shape_of(thing: Standing) -> Shape:
    return thing.shape if isinstance(thing, DepthLimit) else thing.volume.shape


def _range(thing: Obstacle | MovingPart) -> Figures:
    return thing.volume.near, thing.volume.far


def _in_front(thing: KeepOut) -> Figures:
    """In front of the face z is negative; people give how far toward the pilot."""
    return 0.0 - thing.volume.far, 0.0 - thing.volume.near


def _at_edges(limit: DepthLimit) -> Figures:
    """In the middle of the lower and of the upper edge of what it covers, and how much deeper right is than left."""
    x1, y1, x2, y2 = covered(limit)
    middle = (x1 + x2) / 2
    return limit.depth_at(middle, y1), limit.depth_at(middle, y2), limit.slope_x * (x2 - x1)


def _plane(figures: Figures, box: Box) -> dict[str, float]:
    """The plane through the three measures: z = at_origin + slope_x · x + slope_y · y."""
    (lower, upper, across), (x1, y1, x2, y2) = figures, box
    slope_x, slope_y = (round(rise / run, _DIGITS) for rise, run in ((across, x2 - x1), (upper - lower, y2 - y1)))
    return {
        "at_origin": lower - slope_x * (x1 + x2) / 2 - slope_y * y1,
        "slope_x": slope_x,
        "slope_y": slope_y,
    }


_BEHIND: Final = DepthMeasures(
    "behind the front face",
    ("From", "To"),
    ("F&rom, behind the front face", "&To, behind the front face"),
    _range,
    lambda figures, _: {"near": figures[0], "far": figures[1]},
)
_MEASURES: Final[dict[type, DepthMeasures]] = {
    Obstacle: _BEHIND,
    MovingPart: _BEHIND,
    KeepOut: DepthMeasures(
        "in front of the face",
        ("From", "To"),
        ("F&rom, in front of the face", "&To, in front of the face"),
        _in_front,
        lambda figures, _: {"near": 0.0 - figures[1], "far": 0.0 - figures[0]},
    ),
    DepthLimit: DepthMeasures(
        "behind the front face",
        ("Lower edge", "Upper edge", "Right deeper by"),
        ("Depth at the &lower edge", "Depth at the &upper edge", "&Right edge deeper by"),
        _at_edges,
        _plane,
    ),
}
