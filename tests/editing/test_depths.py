import pytest
from hypothesis import given
from hypothesis import strategies as st

from panelcad.editing.around import revise_standing
from panelcad.editing.depths import covered, depth_measures
from tests.editing.test_around import FIREWALL, RIB, YOKE, around

depths = st.floats(20.0, 900.0)


def test_what_reaches_from_somewhere_to_somewhere_is_measured_away_from_the_face() -> None:
    assert depth_measures(RIB).read(RIB) == (10.0, 80.0)
    assert depth_measures(YOKE).read(YOKE) == (60.0, 200.0)
    assert depth_measures(YOKE).changes((30.0, 90.0), covered(YOKE)) == {"near": -90.0, "far": -30.0}


def test_a_firewall_that_leans_is_given_by_its_depth_at_two_edges() -> None:
    """By hand: 400 mm at the lower edge, y = -150, and 250 at the upper one, y = 150, is half a mm less each mm up."""
    measures = depth_measures(FIREWALL)
    assert measures.changes((400.0, 250.0, 0.0), covered(FIREWALL)) == {
        "at_origin": 325.0,
        "slope_x": 0.0,
        "slope_y": -0.5,
    }


@given(lower=depths, upper=depths, across=st.floats(-300.0, 300.0))
def test_the_plane_runs_through_what_was_measured(lower, upper, across) -> None:
    changes = depth_measures(FIREWALL).changes((lower, upper, across), covered(FIREWALL))
    made = revise_standing(around(), "firewall", **changes).surroundings.depth_limits[0]
    assert made.depth_at(0.0, -150.0) == pytest.approx(lower, abs=1e-5)
    assert made.depth_at(0.0, 150.0) == pytest.approx(upper, abs=1e-5)
    assert made.depth_at(300.0, 0.0) - made.depth_at(-300.0, 0.0) == pytest.approx(across, abs=1e-5)
    assert depth_measures(made).read(made) == pytest.approx((lower, upper, across), abs=1e-5)
