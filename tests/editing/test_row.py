import pytest

from panelcad.editing.row import Row, place_row
from panelcad.errors import EditRefused
from panelcad.geometry.point import Point
from tests import builders
from tests.editing.scenes import where


def test_switches_stand_at_their_pitch() -> None:
    hole = builders.round_cutout(name="switch", diameter=12.3)
    made = place_row(builders.project(), "new", "main", hole, Row(Point(-50.0, -100.0), 5, 25.4))
    assert list(where(made.project).values()) == [(round(-50.0 + 25.4 * i, 6), -100.0) for i in range(5)]
    assert made.ids == ("switch", "switch-2", "switch-3", "switch-4", "switch-5")


def test_a_row_may_go_down() -> None:
    made = place_row(builders.project(), "new", "main", builders.round_cutout(), Row(Point(0.0, 0.0), 2, 20.0, 270.0))
    assert where(made.project) == {"round": (0.0, 0.0), "round-2": (0.0, -20.0)}


@pytest.mark.parametrize(("count", "pitch"), [(0, 1.0), (201, 1.0), (2, 0.0)])
def test_a_row_that_is_none_is_refused(count: int, pitch: float) -> None:
    with pytest.raises(EditRefused):
        place_row(builders.project(), "new", "main", builders.round_cutout(), Row(Point(0.0, 0.0), count, pitch))
