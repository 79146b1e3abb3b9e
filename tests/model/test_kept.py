"""Rows of made things: an edit makes again what it touched, and nothing else."""

from hypothesis import given
from hypothesis import strategies as st

from panelcad.model.kept import kept_choice, kept_groups, kept_lately, kept_row, seating

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


@given(ROWS)
def test_a_choice_is_what_asking_each_thing_gives(rows: list[list[int]]) -> None:
    for row in rows:
        assert kept_choice(("any choice",), tuple(row), lambda n: n % 2 == 0) == tuple(n for n in row if n % 2 == 0)


FAMILIES = st.lists(
    st.tuples(st.permutations("abcd"), st.lists(st.sampled_from(["a1", "a2", "b1", "c1", "z1", "-"]), max_size=7)),
    max_size=6,
)


@given(FAMILIES)
def test_a_group_is_its_owner_with_its_members_in_order(families: list[tuple[list[str], list[str]]]) -> None:
    for owners, members in families:
        of = tuple(None if member == "-" else member[0] for member in members)
        made = kept_groups(("any",), tuple(owners), tuple(members), seating(tuple(owners), of), _together)
        assert made == tuple((o, tuple(m for m in members if m[0] == o)) for o in owners)


def test_only_groups_that_changed_are_made_again() -> None:
    seats = seating(("a", "b"), ("a", "b", "b"))
    before = kept_groups(("groups",), ("a", "b"), ("a1", "b1", "b2"), seats, _together)
    after = kept_groups(("groups",), ("a", "b"), ("a1", "b3", "b2"), seats, _together)
    assert after == (("a", ("a1",)), ("b", ("b3", "b2")))
    assert after[0] is before[0]


def _together(owner: str, members: tuple[str, ...]) -> tuple[str, tuple[str, ...]]:
    return owner, members


def test_what_is_kept_lately_is_forgotten_after_a_few_others() -> None:
    make, things = Maker(), [object() for _ in range(9)]
    for thing in (things[0], things[0], *things):
        kept_lately("lately", (thing,), lambda: make(0))
    assert len(make.asked) == len(things)
    kept_lately("lately", (things[0],), lambda: make(0))
    assert len(make.asked) == len(things) + 1
