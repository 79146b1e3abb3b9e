"""Findings put into words."""

import pytest

from panelcad.checks.run import check
from panelcad.checks.wording import quantity, sentence, unknown_sentences, words
from panelcad.model.finding import Cure, Finding, Measure, Severity
from panelcad.model.profile import Profile
from panelcad.units import LengthUnit
from tests.builders import cut, project, sheet
from tests.checks.cases import found
from tests.checks.made import fitted, panel
from tests.checks.test_bundles import bending
from tests.checks.test_corner import corner_radius
from tests.checks.test_stack import three

INCH = 25.4


def two(unit, web):
    """Two 3-1/8 in instruments `web` inches apart."""
    first = cut("a", 0, 0, name="Altimeter")
    other = cut("b", (3.125 + web) * INCH, 0, name="Compass")
    return project(sheet(cuts=(first, other)), unit=unit)


def said(made, rule):
    (finding,) = found(made, rule)
    return sentence(finding, made, made.option("new"))


def test_names_numbers_and_cure_in_the_projects_unit():
    assert said(two(LengthUnit.INCH, 0.19), "web") == (
        "Web between cuts is narrow: Altimeter (opening) and Compass (opening): 0.190 in, at least 0.250 in required. "
        "Move Compass 0.06 in right."
    )
    assert said(two(LengthUnit.MM, 0.19), "web") == (
        "Web between cuts is narrow: Altimeter (opening) and Compass (opening): 4.83 mm, at least 6.35 mm required. "
        "Move Compass 1.6 mm right."
    )


def test_a_move_is_rounded_up_so_that_it_suffices():
    """0.0501 in short: 0.05 in would not do."""
    assert said(two(LengthUnit.INCH, 0.1999), "web").endswith("Move Compass 0.06 in right.")


def test_the_parts_of_a_finding():
    made = two(LengthUnit.INCH, 0.19)
    (finding,) = found(made, "web")
    parts = words(finding, made, made.option("new"))
    assert parts.where == "at x 1.563, y 0.000 in"
    assert parts.why.startswith("installation practice for panel displays")
    assert (parts.measured, parts.required) == ("0.190 in", "at least 0.250 in")


def test_a_cure_that_is_no_move():
    assert said(corner_radius(0.2), "inside-corner").endswith("Give the corner a radius of 0.50 mm.")
    assert said(three(120.0), "stack-height").endswith("Make the opening 127.23 mm high.")


def test_more_than_allowed_reads_at_most():
    assert ": 127.23 mm, at most 120.00 mm required." in said(three(120.0), "stack-height")


@pytest.mark.parametrize(
    ("value", "measure", "text"),
    [
        (0.247, Measure.RATIO, "24.7%"),
        (0.25, Measure.RATIO, "25%"),
        (22.5, Measure.ANGLE, "22.5°"),
        (6.35, Measure.LENGTH, "0.250 in"),
        (3.0, Measure.COUNT, "3"),
    ],
)
def test_quantities(value, measure, text):
    assert quantity(value, measure, LengthUnit.INCH) == text


def test_an_id_stands_where_no_name_is_known():
    plain = Finding(
        rule="x",
        severity=Severity.ADVICE,
        items=("gone",),
        plate="main",
        problem="Odd",
        source="a test",
        cure=Cure(item="gone", dx=-2.0, dy=3.0),
    )
    made = panel()
    assert sentence(plain, made, made.option("new")) == "Odd: gone. Move gone 2.0 mm left and 3.0 mm up."


WITH_BED = Profile(bed_width=1000.0, bed_height=1000.0)


def test_what_is_unknown_is_said_once_for_all_it_is_unknown_of():
    made = bending("hose", None)(50.0).revised(profile=WITH_BED)
    report = check(made, made.option("new"))
    assert unknown_sentences(report) == ("Not known of a: the outside diameter at its hose.",)
    nothing = panel(fitted("a", 0, 0)).revised(profile=WITH_BED)
    assert unknown_sentences(check(nothing, nothing.option("new"))) == ()
