from panelcad.editing.rotate import rotate_about, rotate_by, rotate_to
from panelcad.geometry.point import Point
from tests.editing.scenes import one_instrument, stack, where


def test_an_instrument_turns_about_its_own_centre_with_its_cut() -> None:
    turned = rotate_by(one_instrument(), "new", ["gauge"], 90.0)
    assert where(turned) == where(one_instrument())
    assert {turned.option("new").item("gauge").rotation, turned.option("new").plates[0].cuts[0].rotation} == {90.0}


def test_a_stack_turns_as_one_about_its_opening() -> None:
    assert where(rotate_by(stack(), "new", ["bay"], 90.0)) == {
        "upper": (-20.0, 0.0),
        "lower": (20.0, 0.0),
        "bay": (0.0, 0.0),
    }


def test_a_turn_to_an_angle_and_back_is_exact() -> None:
    turned = rotate_to(one_instrument(), "new", "hole", 33.3)
    assert turned.option("new").item("gauge").rotation == 33.3
    assert rotate_to(turned, "new", "gauge", 0.0) == one_instrument()


def test_four_quarter_turns_about_a_point_come_back() -> None:
    turned = one_instrument()
    for _ in range(4):
        turned = rotate_about(turned, "new", ["gauge"], Point(3.0, 4.0), 90.0)
    assert turned == one_instrument()
