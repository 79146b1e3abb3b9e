import pytest

from panelcad.geometry.boxes import box_around, box_gap


@pytest.mark.parametrize(
    ("other", "gap"),
    [
        ((5.0, 5.0, 15.0, 15.0), 0.0),
        ((10.0, 0.0, 20.0, 10.0), 0.0),
        ((13.0, 0.0, 20.0, 10.0), 3.0),
        ((0.0, -9.0, 5.0, -4.0), 4.0),
        ((13.0, 14.0, 20.0, 20.0), 5.0),
    ],
)
def test_boxes_are_as_far_apart_as_pythagoras_says(other, gap) -> None:
    box = (0.0, 0.0, 10.0, 10.0)
    assert box_gap(box, other) == gap
    assert box_gap(other, box) == gap


def test_the_box_around_boxes_reaches_each_of_their_edges() -> None:
    assert box_around([(0.0, 5.0, 2.0, 6.0), (-1.0, 7.0, 1.0, 9.0)]) == (-1.0, 5.0, 2.0, 9.0)


def test_there_is_no_box_around_nothing() -> None:
    with pytest.raises(ValueError, match="nothing"):
        box_around([])
