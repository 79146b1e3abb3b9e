"""Outlines to start a panel from, by their measures; the datum is the middle of the lower edge."""

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Final

from panelcad.editing.sharp_outline import SharpOutline, sharpened
from panelcad.errors import EditRefused
from panelcad.model.shape import Corner, Outline
from panelcad.units import LengthUnit

_SAME: Final = 1e-4
"""mm; finer than anybody measures a sheet."""


@dataclass(frozen=True)
class Measure:
    """One measure of a template: its key, what people call it, and where it starts in each unit (common practice)."""

    key: str
    title: str
    inches: float
    millimetres: float

    def start(self, unit: LengthUnit) -> float:
        """The value to begin with, in mm."""
        return self.inches * unit.mm if unit is LengthUnit.INCH else self.millimetres


@dataclass(frozen=True)
class Template:
    """A kind of outline; `make` takes each measure by its key, in mm, and raises `EditRefused`.

    `read` gives the measures, but for the radius, that an outline with sharp corners has if it is of this kind.
    """

    key: str
    title: str
    measures: tuple[Measure, ...]
    draw: Callable[[Mapping[str, float]], Outline]
    read: Callable[[Outline], dict[str, float]]

    def make(self, values: Mapping[str, float]) -> Outline:
        """The outline of these measures in mm, its corners rounded. Raises `EditRefused`."""
        for measure in self.measures:
            if values[measure.key] < 0 and measure.key != "step_at":
                raise EditRefused(f"{measure.title}: a length that is not negative is expected.")
        outline = self.draw(values)
        return SharpOutline.of(outline).all_rounded_by(values["radius"]).finished()


def measured(outline: Outline) -> tuple[Template, dict[str, float]] | None:
    """The template that an outline was made from and its measures in mm; None where it is no template's any more."""
    whole = sharpened(outline)
    for template in TEMPLATES:
        read = template.read(whole.sharp) | {"radius": max(whole.radii)}
        values = {measure.key: read[measure.key] for measure in template.measures}
        try:
            again = template.make(values)
        except EditRefused:
            continue
        if _is_same(again, outline):
            return template, values
    return None


def rectangular(width: float, height: float) -> Outline:
    """A rectangle that stands on the datum."""
    _refuse_nothing(width, height)
    return _polygon((-width / 2, 0.0), (width / 2, 0.0), (width / 2, height), (-width / 2, height))


def curved_top(width: float, side_height: float, middle_height: float) -> Outline:
    """Straight sides under one arc that is highest in the middle, as a glareshield has it."""
    _refuse_nothing(width, side_height)
    rise = middle_height - side_height
    if not 0 < rise <= width / 2:
        raise EditRefused("A middle higher than the sides, by at most half the width, is expected.")
    flat = rectangular(width, side_height)
    top = flat.corners[2].revised(bulge=2 * rise / width)
    return flat.revised(corners=(*flat.corners[:2], top, flat.corners[3]))


def stepped(width: float, height: float, step_width: float, step_depth: float, step_at: float) -> Outline:
    """A rectangle whose lower edge steps down over a width, as for a stack above a pedestal.

    `step_at` is how far the step's middle is right of the panel's. The datum stays in the middle of the upper step.
    """
    _refuse_nothing(width, height)
    _refuse_nothing(step_width, step_depth)
    left, right = step_at - step_width / 2, step_at + step_width / 2
    if left <= -width / 2 or right >= width / 2:
        raise EditRefused("A step that lies between the panel's sides is expected.")
    return _polygon(
        (-width / 2, 0.0),
        (left, 0.0),
        (left, -step_depth),
        (right, -step_depth),
        (right, 0.0),
        (width / 2, 0.0),
        (width / 2, height),
        (-width / 2, height),
    )


def _box(outline: Outline) -> dict[str, float]:
    x1, y1, x2, y2 = outline.contour().bounds
    return {"width": x2 - x1, "height": y2 - y1}


def _top_corner(outline: Outline) -> float:
    """How high the highest corner is above the datum."""
    return max(corner.y for corner in outline.corners)


def _step(outline: Outline) -> dict[str, float]:
    """The lowest corners are those of the step."""
    low = min(corner.y for corner in outline.corners)
    xs = [corner.x for corner in outline.corners if corner.y - low < _SAME]
    return {"step_width": max(xs) - min(xs), "step_depth": -low, "step_at": (max(xs) + min(xs)) / 2}


_WIDTH: Final = Measure("width", "Width", 36.0, 900.0)
_RADIUS: Final = Measure("radius", "Corner radius", 0.5, 12.0)
TEMPLATES: Final = (
    Template(
        "rectangular",
        "Rectangular",
        (_WIDTH, Measure("height", "Height", 10.0, 250.0), _RADIUS),
        lambda m: rectangular(m["width"], m["height"]),
        _box,
    ),
    Template(
        "curved-top",
        "Curved top",
        (
            _WIDTH,
            Measure("side_height", "Height at the sides", 7.0, 180.0),
            Measure("middle_height", "Height in the middle", 11.0, 280.0),
            _RADIUS,
        ),
        lambda m: curved_top(m["width"], m["side_height"], m["middle_height"]),
        lambda sharp: _box(sharp) | {"side_height": _top_corner(sharp), "middle_height": _box(sharp)["height"]},
    ),
    Template(
        "stepped",
        "Stepped",
        (
            _WIDTH,
            Measure("height", "Height", 9.0, 230.0),
            Measure("step_width", "Width of the step", 8.0, 200.0),
            Measure("step_depth", "Depth of the step", 3.0, 75.0),
            Measure("step_at", "Step right of the middle", 0.0, 0.0),
            _RADIUS,
        ),
        lambda m: stepped(m["width"], m["height"], m["step_width"], m["step_depth"], m["step_at"]),
        lambda sharp: _box(sharp) | {"height": _top_corner(sharp)} | _step(sharp),
    ),
)


def _is_same(one: Outline, other: Outline) -> bool:
    """Corner by corner, wherever they begin."""
    return len(one.corners) == len(other.corners) and all(
        any(math.hypot(a.x - b.x, a.y - b.y) < _SAME and abs(a.bulge - b.bulge) < _SAME for b in other.corners)
        for a in one.corners
    )


def _polygon(*corners: tuple[float, float]) -> Outline:
    return Outline(corners=tuple(Corner(x=x, y=y) for x, y in corners))


def _refuse_nothing(width: float, height: float) -> None:
    if width <= 0 or height <= 0:
        raise EditRefused("A width and a height larger than 0 are expected.")
