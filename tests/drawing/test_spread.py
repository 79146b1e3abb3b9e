from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from panelcad.drawing.spread import spread


def test_what_has_room_stays_where_it_is():
    assert spread([0.0, 10.0, 20.0], 5.0, -100.0, 100.0) == [0.0, 10.0, 20.0]


def test_two_that_want_one_place_part_evenly():
    assert spread([10.0, 10.0], 4.0, 0.0, 100.0) == [8.0, 12.0]


def test_nobody_leaves_the_range():
    assert spread([0.0, 0.0, 1.0], 4.0, 0.0, 8.0) == [0.0, 4.0, 8.0]


def test_a_range_too_short_for_all_is_refused():
    assert spread([1.0, 2.0, 3.0], 4.0, 0.0, 7.9) is None


@given(st.lists(st.floats(0, 300), min_size=1, max_size=40).map(sorted))
def test_each_keeps_its_distance_and_its_order(wanted):
    placed = spread(wanted, 3.5, 0.0, 300.0)
    assert placed is not None
    assert all(b - a >= 3.5 - 1e-9 for a, b in pairwise(placed))
    assert placed[0] >= -1e-9
    assert placed[-1] <= 300 + 1e-9


@given(st.lists(st.floats(50, 250), min_size=1, max_size=12, unique=True).map(sorted))
def test_the_mean_stays_where_it_was_away_from_the_ends(wanted):
    placed = spread(wanted, 3.5, -1000.0, 1000.0)
    assert sum(placed) == pytest.approx(sum(wanted))
