from typing import Any

import pytest
from pydantic import TypeAdapter, ValidationError

from panelcad.model.shape import Shape

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
        ({"kind": "chamfered rectangle", "width": 4.0, "height": 2.0, "chamfer": 1.0}, "less than half"),
        ({"kind": "trapezoid", "width": 4.0, "height": 4.0, "side_angle": 30.0, "corner_radius": 1.0}, "side angle"),
    ],
)
def test_a_shape_that_cannot_be_is_refused(plain: dict[str, Any], told: str) -> None:
    with pytest.raises(ValidationError, match=told):
        SHAPES.validate_python(plain)
