import pytest

from panelcad.editing.flatten import flat_pattern, flatten
from panelcad.errors import EditRefused
from panelcad.model.bending import allowance, deduction, setback
from panelcad.model.plate import Bend, Plate
from tests.builders import project, sheet

NEUTRAL = 0.4475


def bend(y: float = -150.0, flange: float = 20.0, **fields) -> Bend:
    plain = {"x1": -300.0, "y1": y, "x2": 300.0, "y2": y, "angle": 90.0, "inside_radius": 6.0}
    return Bend.model_validate(plain | {"direction": "away from the pilot", "flange": flange} | fields)


def bent(*bends: Bend) -> Plate:
    return sheet(bends=bends, state="new")


def test_a_flange_is_laid_out_below_its_edge():
    """The edge moves out by the flange less the bend deduction, and stays as wide."""
    corner = bend()
    flat = flat_pattern(bent(corner), NEUTRAL)
    low = -150.0 - (20.0 - deduction(corner, 2.0, NEUTRAL))

    assert flat.is_flat_pattern
    assert flat.outline.contour().bounds == pytest.approx((-300.0, low, 300.0, 150.0), abs=1e-6)


def test_the_bend_line_is_the_middle_of_the_bend():
    """Flat sheet above the bend ends a setback above the edge; half the allowance further down is the bend's middle."""
    corner = bend()
    (line,) = flat_pattern(bent(corner), NEUTRAL).bends
    middle = -150.0 + setback(corner, 2.0) - allowance(corner, 2.0, NEUTRAL) / 2

    assert (line.y1, line.y2, line.flange) == (pytest.approx(middle, abs=1e-6), pytest.approx(middle, abs=1e-6), 0.0)


def test_two_flanges_are_laid_out_either_side():
    flat = flat_pattern(bent(bend(), bend(150.0, x1=300.0, x2=-300.0)), NEUTRAL)
    grown = 2 * (20.0 - deduction(bend(), 2.0, NEUTRAL))

    assert flat.outline.contour().area == pytest.approx(600.0 * (300.0 + grown), abs=1e-3)


def test_flattening_is_an_edit_of_the_project():
    made = flatten(project(bent(bend())), "new", "main")

    assert made.option("new").plate("main").is_flat_pattern
    with pytest.raises(EditRefused, match="flat pattern already"):
        flatten(made, "new", "main")


@pytest.mark.parametrize(
    ("wrong", "words"),
    [
        (bend(flange=0.0), "a flange is not entered"),
        (bend(flange=5.0), "lower than its bend"),
        (bend(-140.0), "does not run along a whole straight edge"),
        (bend(angle=180.0), "is no straight flange"),
    ],
)
def test_what_is_no_straight_flange_is_refused(wrong, words):
    with pytest.raises(EditRefused, match=words):
        flat_pattern(bent(wrong), NEUTRAL)


def test_a_plate_without_bends_has_nothing_to_lay_out():
    with pytest.raises(EditRefused, match="no bends"):
        flat_pattern(sheet(), NEUTRAL)


def test_a_kept_plate_is_not_laid_out():
    with pytest.raises(EditRefused, match="is kept as it is"):
        flatten(project(sheet(bends=(bend(),), state="kept")), "new", "main")
