import math
from typing import Any

import pytest
from pydantic import TypeAdapter, ValidationError

from panelcad.model.shape import Corner, Outline, Rectangle, Shape, Slot

SHAPES: TypeAdapter[Any] = TypeAdapter(Shape)


@pytest.mark.parametrize(
    ("plain", "box"),
    [
        ({"kind": "circle", "diameter": 4.0}, (-2, -2, 2, 2)),
        ({"kind": "slot", "length": 6.0, "width": 4.0}, (-3, -2, 3, 2)),
        ({"kind": "keyed circle", "diameter": 4.0, "key_width": 1.0, "key_depth": 0.5}, (-2, -2, 2.5, 2)),
        (
            {"kind": "keyed circle", "diameter": 4.0, "key_width": 1.0, "key_depth": 0.5, "key_end": "round"},
            (-2, -2, 2.5, 2),
        ),
        ({"kind": "flatted circle", "diameter": 4.0, "flat_depth": 0.5}, (-2, -2, 1.5, 2)),
        ({"kind": "chamfered rectangle", "width": 4.0, "height": 4.0, "chamfer": 1.0}, (-2, -2, 2, 2)),
        ({"kind": "trapezoid", "width": 4.0, "height": 2.0, "side_angle": 10.0}, (-2, -1, 2, 1)),
    ],
)
def test_a_shape_is_as_large_as_it_says(plain: dict[str, Any], box: tuple[float, ...]) -> None:
    shape = SHAPES.validate_python(plain)
    assert shape.contour().bounds == pytest.approx(box)
    assert shape.contour().area > 0
    assert SHAPES.validate_python(SHAPES.dump_python(shape, mode="json")) == shape


@pytest.mark.parametrize(
    ("plain", "told"),
    [
        ({"kind": "keyed circle", "diameter": 4.0, "key_width": 4.0, "key_depth": 0.5}, "narrower"),
        (
            {"kind": "keyed circle", "diameter": 4.0, "key_width": 2.0, "key_depth": 0.5, "key_end": "round"},
            "half its width",
        ),
        ({"kind": "flatted circle", "diameter": 4.0, "flat_depth": 2.0}, "less than half"),
        ({"kind": "chamfered rectangle", "width": 4.0, "height": 2.0, "chamfer": 1.0}, "leave something"),
        ({"kind": "trapezoid", "width": 4.0, "height": 4.0, "side_angle": 30.0, "corner_radius": 1.0}, "side angle"),
    ],
)
def test_a_shape_that_cannot_be_is_refused(plain: dict[str, Any], told: str) -> None:
    with pytest.raises(ValidationError, match=told):
        SHAPES.validate_python(plain)


def test_a_slot_is_a_stadium() -> None:
    assert Slot(length=30, width=10).contour().area == pytest.approx(20 * 10 + math.pi * 25)


def test_an_outline_is_turned_counter_clockwise() -> None:
    clockwise = tuple(Corner(x=x, y=y) for x, y in ((0, 0), (0, 10), (20, 10), (20, 0)))
    assert Outline(corners=clockwise).contour().area == pytest.approx(200)


def test_two_half_circles_are_an_outline() -> None:
    outline = Outline(corners=(Corner(x=5, y=0, bulge=1), Corner(x=-5, y=0, bulge=1)))
    assert outline.contour().area == pytest.approx(math.pi * 25)


@pytest.mark.parametrize(
    "corners",
    [
        [(0, 0), (1, 0)],
        [(0, 0), (5, 5), (10, 10)],
        [(0, 0), (0, 0), (10, 10)],
    ],
)
def test_what_encloses_nothing_is_no_outline(corners: list[tuple[float, float]]) -> None:
    with pytest.raises(ValidationError):
        Outline(corners=tuple(Corner(x=x, y=y) for x, y in corners))


def test_a_corner_radius_beyond_half_the_side_is_refused() -> None:
    Rectangle(width=20, height=10, corner_radius=5)
    with pytest.raises(ValidationError, match="corner radius"):
        Rectangle(width=20, height=10, corner_radius=5.001)
