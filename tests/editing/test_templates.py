import math

import pytest

from panelcad.editing.outline import move_corner
from panelcad.editing.sharp_outline import redrawn
from panelcad.editing.templates import TEMPLATES, Template, curved_top, measured, rectangular, stepped
from panelcad.errors import EditRefused
from panelcad.model.shape import Outline
from panelcad.units import LengthUnit


def started(template: Template, unit: LengthUnit) -> dict[str, float]:
    return {measure.key: measure.start(unit) for measure in template.measures}


@pytest.mark.parametrize("unit", LengthUnit)
@pytest.mark.parametrize("template", TEMPLATES, ids=lambda template: template.key)
def test_every_template_starts_as_a_sound_outline_about_its_datum(template: Template, unit: LengthUnit) -> None:
    values = started(template, unit)
    left, bottom, right, top = template.make(values).contour().bounds
    assert (left, right) == pytest.approx((-values["width"] / 2, values["width"] / 2), abs=1e-6)
    assert bottom <= 1e-6 < top


def test_the_curved_top_is_highest_in_the_middle_by_the_area_of_a_circular_segment() -> None:
    """Area of a segment: r² (θ - sin θ) / 2, with r = (c² / 4 + h²) / (2 h)."""
    outline = curved_top(800.0, 180.0, 260.0)
    radius = (400.0**2 + 80.0**2) / 160.0
    angle = 2 * math.asin(400.0 / radius)
    assert outline.contour().bounds[3] == pytest.approx(260.0, abs=1e-9)
    assert outline.contour().area == pytest.approx(800.0 * 180.0 + radius**2 * (angle - math.sin(angle)) / 2, rel=1e-9)


def test_the_step_hangs_below_the_lower_edge() -> None:
    outline = stepped(900.0, 230.0, 200.0, 75.0, 100.0)
    assert outline.contour().area == 900.0 * 230.0 + 200.0 * 75.0
    assert outline.contour().bounds[1] == -75.0


def test_measures_that_make_no_panel_are_refused() -> None:
    with pytest.raises(EditRefused, match="larger than 0"):
        rectangular(0.0, 10.0)
    with pytest.raises(EditRefused, match="middle higher than the sides"):
        curved_top(800.0, 200.0, 150.0)
    with pytest.raises(EditRefused, match="between the panel's sides"):
        stepped(900.0, 230.0, 200.0, 75.0, 400.0)
    rectangle = TEMPLATES[0]
    with pytest.raises(EditRefused, match="Corner radius: a length that is not negative"):
        rectangle.make({"width": 1.0, "height": 1.0, "radius": -1.0})
    with pytest.raises(EditRefused, match="too short for that radius"):
        rectangle.make({"width": 100.0, "height": 10.0, "radius": 6.0})


@pytest.mark.parametrize("radius", [0.0, 9.5])
@pytest.mark.parametrize("unit", LengthUnit)
@pytest.mark.parametrize("template", TEMPLATES, ids=lambda template: template.key)
def test_a_template_is_known_again_by_its_measures(template: Template, unit: LengthUnit, radius: float) -> None:
    values = started(template, unit) | {"radius": radius}
    found = measured(template.make(values))
    assert found is not None
    assert found[0] is template
    assert found[1] == pytest.approx(values, abs=1e-5)


def test_a_step_aside_is_known_again() -> None:
    found = measured(stepped(900.0, 230.0, 200.0, 75.0, -100.0))
    assert found is not None
    assert found[1]["step_at"] == -100.0


def test_an_outline_that_was_drawn_on_is_no_template() -> None:
    assert measured(move_corner(rectangular(400.0, 200.0), 2, 210.0, 190.0)) is None
    assert measured(move_corner(stepped(900.0, 230.0, 200.0, 75.0, 0.0), 2, -100.0, -60.0)) is None
    assert measured(round_one(rectangular(400.0, 200.0))) is None


def round_one(outline: Outline) -> Outline:
    return redrawn(outline, lambda whole: whole.rounded_by(1, 10.0))
