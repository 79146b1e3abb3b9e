"""Stacked arrays: an edit replaces rows, and what was given before stays as it was."""

import numpy as np
from hypothesis import given
from hypothesis import strategies as st

from panelcad.checks.stacked import stacked

HEIGHTS = st.lists(st.integers(0, 3), min_size=1, max_size=6)


@given(st.lists(HEIGHTS, max_size=8))
def test_a_stack_is_all_arrays_in_order(stacks: list[list[int]]) -> None:
    for heights in stacks:
        arrays = tuple(np.full((height, 2), float(i)) for i, height in enumerate(heights))
        assert np.array_equal(stacked(("any stack",), arrays), np.concatenate(arrays))


def test_only_rows_of_what_changed_are_replaced_and_the_former_stack_stays() -> None:
    low, high = np.zeros((2, 1)), np.ones((3, 1))
    before = stacked(("change",), (low, high, low))
    after = stacked(("change",), (low, high + 6.0, low))
    assert before.ravel().tolist() == [0, 0, 1, 1, 1, 0, 0]
    assert after.ravel().tolist() == [0, 0, 7, 7, 7, 0, 0]


def test_an_array_of_another_height_moves_what_follows() -> None:
    one, two = np.zeros((1, 1)), np.ones((2, 1))
    stacked(("height",), (one, two))
    assert stacked(("height",), (two, two)).ravel().tolist() == [1, 1, 1, 1]
