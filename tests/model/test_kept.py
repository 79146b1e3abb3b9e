"""Rows of made things: an edit makes again what it touched, and nothing else."""

from hypothesis import given
from hypothesis import strategies as st

from panelcad.model.kept import kept_row, kept_while

ROWS = st.lists(st.lists(st.integers(0, 9), max_size=6), max_size=8)


class Maker:
    """Makes a text of a number and notes what it was asked for."""

    def __init__(self) -> None:
        self.asked: list[int] = []

    def __call__(self, thing: int) -> str:
        self.asked.append(thing)
        return f"made of {thing}"


@given(ROWS)
def test_a_row_is_what_making_each_thing_gives(rows: list[list[int]]) -> None:
    for row in rows:
        assert kept_row(("any row",), tuple(row), (), str) == tuple(map(str, row))


def test_only_what_changed_is_made_again() -> None:
    make = Maker()
    before = kept_row(("change",), (1, 2, 3), (), make)
    after = kept_row(("change",), (1, 7, 3), (), make)
    assert make.asked == [1, 2, 3, 7]
    assert after == ("made of 1", "made of 7", "made of 3")
    assert after[0] is before[0]


def test_a_row_that_stayed_the_same_is_the_very_same_tuple() -> None:
    first = kept_row(("same",), (1, 2), (), Maker())
    assert kept_row(("same",), (1, 2), (), Maker()) is first


def test_other_sources_make_everything_anew() -> None:
    make, sources = Maker(), (object(),)
    kept_row(("sources",), (1, 2), sources, make)
    kept_row(("sources",), (1, 2), (sources[0],), make)
    assert make.asked == [1, 2]
    kept_row(("sources",), (1, 2), (object(),), make)
    assert make.asked == [1, 2, 1, 2]


def test_what_is_kept_with_a_thing_is_made_again_from_other_sources() -> None:
    thing, sources = Maker(), (object(), object())
    first = kept_while(thing, "a text", sources, lambda: "first")
    assert kept_while(thing, "a text", tuple(sources), lambda: "second") == first
    assert kept_while(thing, "a text", sources[:1], lambda: "third") == "third"
