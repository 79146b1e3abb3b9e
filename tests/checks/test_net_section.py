"""Net section. Closed forms: chords of circles and widths of rectangles across a rectangular sheet."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from panelcad.checks.net_section import weakest_line
from panelcad.geometry.across import Across
from panelcad.model.finding import Severity
from panelcad.model.layout import layout
from panelcad.model.plate import CutState
from panelcad.model.profile import Profile
from panelcad.model.shape import Circle, Rectangle
from tests.builders import item, opening, project, round_cutout, sheet
from tests.checks.cases import Case, Ignored, found
from tests.checks.made import bezel, own_cut, panel

UPRIGHT = "lines are upright and level on the sheet as it stands"


def plate_of(made):
    return layout(made, made.option("new")).plates[0]


def window(height, **plate):
    """A window that leaves (300 - height) of 300 along its middle."""
    return project(sheet(600, 300, cuts=(own_cut("a", 40, 0, Rectangle(width=80, height=height)),), **plate))


def test_the_weakest_line_of_one_window():
    weakest = weakest_line(plate_of(window(120)), Across.VERTICAL)
    assert (weakest.left, weakest.uncut) == (pytest.approx(180), pytest.approx(300))
    weakest = weakest_line(plate_of(window(120)), Across.HORIZONTAL)
    assert (weakest.left, weakest.uncut) == (pytest.approx(520), pytest.approx(600))


def test_a_row_of_round_instruments():
    """Six of 3.125 in across 24 in leave 5.25 in: 21.9 %."""
    inch = 25.4
    cuts = tuple(own_cut(f"c{i}", (i - 2.5) * 3.6 * inch, 10, Circle(diameter=3.125 * inch)) for i in range(6))
    made = project(sheet(24 * inch, 12 * inch, cuts=cuts))
    weakest = weakest_line(plate_of(made), Across.HORIZONTAL)
    assert weakest.share == pytest.approx(5.25 / 24)
    assert weakest.at == pytest.approx(10)


@pytest.mark.parametrize(("height", "count"), [(240, 0), (240.3, 1)])
def test_a_share_below_the_limit(height, count):
    findings = found(window(height), "net-section")
    assert [f.measured for f in findings] == [pytest.approx(1 - height / 300)] * count
    assert [f.severity for f in found(window(height, state="kept"), "net-section")] == [Severity.ADVICE] * count


def test_the_limit_is_the_profiles():
    made = window(120).revised(profile=Profile(net_section_least=0.61))
    (finding,) = found(made, "net-section")
    assert finding.where[0].x == pytest.approx(finding.where[1].x)


def test_overlapping_cuts_count_once():
    both = (own_cut("a", 0, 0, Rectangle(width=80, height=100)), own_cut("b", 0, 40, Rectangle(width=80, height=100)))
    weakest = weakest_line(plate_of(project(sheet(600, 300, cuts=both))), Across.VERTICAL)
    assert weakest.left == pytest.approx(160)


def test_an_old_cut_in_a_new_one_and_inner_openings():
    old = own_cut("old", 0, 0, Circle(diameter=40), state=CutState.EXISTING)
    new = own_cut("new", 0, 0, Rectangle(width=80, height=100))
    inner = (opening(Rectangle(width=20, height=50), 0, 100),)
    made = project(sheet(600, 300, cuts=(old, new), inner_openings=inner))
    assert weakest_line(plate_of(made), Across.VERTICAL).left == pytest.approx(150)


def test_a_plate_without_cuts_has_no_weakest_line():
    assert weakest_line(plate_of(panel()), Across.VERTICAL) is None


@settings(max_examples=25, deadline=None)
@given(
    st.lists(
        st.tuples(st.floats(-200, 200), st.floats(-100, 100), st.floats(5, 60), st.floats(0, 90)),
        min_size=1,
        max_size=6,
    )
)
def test_the_quick_sums_find_what_measuring_every_line_finds(places):
    """Against the exact chords of every line, overlapping or not."""
    from panelcad.checks.net_section import _measured

    cuts = tuple(
        own_cut(f"c{i}", x, y, Rectangle(width=size, height=size / 2, corner_radius=size / 8), rotation=turn)
        for i, (x, y, size, turn) in enumerate(places)
    )
    plate = plate_of(project(sheet(600, 300, cuts=cuts)))
    for across in Across:
        axis = 0 if across is Across.VERTICAL else 1
        bounds = [placed.features[0].contour.bounds for placed in plate.cuts]
        lines = [at for b in bounds for at in (b[axis], (b[axis] + b[axis + 2]) / 2, b[axis + 2])]
        shares = [section.share for at in lines if (section := _measured(plate, across, at))]
        assert weakest_line(plate, across).share == pytest.approx(min(shares), abs=1e-9)


CASES = [
    Case("net-section", window, 240, 240.3, lambda height: 1 - height / 300, 0.2, Severity.WARNING, not_turned=UPRIGHT),
]
IGNORED = [
    Ignored(
        "net-section",
        "a wide bezel over a whole sheet",
        lambda: panel(
            items=(item("a", 0, 0, "blank"),), cutouts=(round_cutout(name="blank", openings=(), bezel=bezel(890, 590)),)
        ),
    ),
]
