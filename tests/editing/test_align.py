import itertools

import pytest
from hypothesis import given
from hypothesis import strategies as st

from panelcad.editing.align import (
    Line,
    align,
    align_to,
    centre_between,
    distribute,
    equal_gaps,
    set_gaps,
)
from panelcad.editing.extents import Axis, boxes
from panelcad.editing.groups import group
from panelcad.editing.move import move_by
from panelcad.errors import EditRefused
from panelcad.model.cutout import Bezel
from panelcad.model.project import Project
from panelcad.model.shape import Rectangle
from tests import builders
from tests.editing.scenes import row, where


def two_sizes() -> Project:
    """A small and a large bezel; the large one's sits 5 mm right of its own origin, as with a knob at one corner."""
    small = Bezel(shape=Rectangle(width=40.0, height=30.0), source=builders.SOURCE)
    large = Bezel(shape=Rectangle(width=100.0, height=80.0), x=5.0, source=builders.SOURCE)
    cutouts = tuple(
        builders.round_cutout(name=name, openings=(), bezel=bezel) for name, bezel in (("s", small), ("l", large))
    )
    items = (builders.item("small", 0.0, 0.0, cutout="s"), builders.item("large", 150.0, 70.0, cutout="l"))
    return builders.project(items=items, cutouts=cutouts)


@pytest.mark.parametrize(
    ("line", "place"),
    [
        (Line.LEFT, (-20.0 + 50.0 - 5.0, 70.0)),
        (Line.RIGHT, (20.0 - 50.0 - 5.0, 70.0)),
        (Line.TOP, (150.0, 15.0 - 40.0)),
        (Line.BOTTOM, (150.0, -15.0 + 40.0)),
        (Line.UPRIGHT, (0.0, 70.0)),
        (Line.LEVEL, (150.0, 0.0)),
    ],
)
def test_the_rest_comes_onto_the_line_of_the_first(line: Line, place: tuple[float, float]) -> None:
    aligned = where(align(two_sizes(), "new", ["small", "large"], line))
    assert aligned == {"small": (0.0, 0.0), "large": place}


def test_a_line_of_the_panel_takes_one_thing_too() -> None:
    assert where(align_to(two_sizes(), "new", ["large"], Line.UPRIGHT, -12.7))["large"] == (-12.7, 70.0)


def test_like_things_of_one_row_are_not_heaped_on_one_place() -> None:
    with pytest.raises(EditRefused, match="3 of these things would lie exactly on one another"):
        align_to(row(0, 100, 200), "new", "abc", Line.UPRIGHT, 50.0)
    assert where(align_to(row(0, 100, 200), "new", "abc", Line.LEVEL, 50.0))["c"] == (200.0, 50.0)


def test_centres_are_spread_evenly_and_the_outer_ones_stay() -> None:
    assert [x for x, _ in where(distribute(row(0, 10, 100, 33), "new", "adcb", Axis.ACROSS)).values()] == [
        0.0,
        pytest.approx(100 / 3, abs=1e-6),
        100.0,
        pytest.approx(200 / 3, abs=1e-6),
    ]


def gaps(project: Project) -> list[float]:
    spans = sorted((box.left, box.right) for box in boxes(project, project.option("new")).values())
    return [right[0] - left[1] for left, right in itertools.pairwise(spans)]


@given(st.lists(st.floats(-300, 300).map(lambda x: round(x, 3)), min_size=3, max_size=8, unique=True))
def test_gaps_become_equal_and_the_outer_things_stay(across: list[float]) -> None:
    project = row(*across)
    names = "abcdefgh"[: len(across)]
    evened = equal_gaps(project, "new", names, Axis.ACROSS)
    assert max(gaps(evened)) - min(gaps(evened)) <= 5e-6
    assert {x for x, _ in where(evened).values()} >= {min(across), max(across)}


def test_a_gap_is_set_from_the_first_on() -> None:
    assert gaps(set_gaps(row(0, 90, 50), "new", "abc", Axis.ACROSS, 6.35)) == pytest.approx([6.35, 6.35], abs=1e-9)


def test_one_thing_goes_midway_between_two_others() -> None:
    assert where(centre_between(row(0, 300, 77), "new", ["c"], ("b", "a"), Axis.ACROSS))["c"] == (150.0, 0.0)


def test_a_group_counts_as_one() -> None:
    grouped, _ = group(row(0, 100, 150, 400), "new", ["b", "c"])
    evened = where(equal_gaps(grouped, "new", "abcd", Axis.ACROSS))
    assert evened["c"][0] - evened["b"][0] == 50.0
    assert evened["b"][0] - 20.0 - (evened["a"][0] + 20.0) == evened["d"][0] - 20.0 - (evened["c"][0] + 20.0)


def test_too_few_things_are_refused_and_lined_up_things_are_left_alone() -> None:
    with pytest.raises(EditRefused, match="At least two things"):
        align(row(0), "new", ["a"], Line.LEFT)
    with pytest.raises(EditRefused, match="At least three things"):
        distribute(row(0, 1), "new", "ab", Axis.UP)
    project = row(0, 50)
    assert align(project, "new", "ab", Line.TOP) is project


def test_what_goes_beyond_any_aircraft_is_refused_in_one_sentence() -> None:
    with pytest.raises(EditRefused, match=r"^x: it is not usable; expected a length of at most 100 m\.$"):
        move_by(row(0), "new", "a", 2e5, 0.0)
