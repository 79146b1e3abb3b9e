"""Stacks: heights, joints and clearance against the opening; rails 6.25 / 6.30 in."""

import pytest

from panelcad.model.finding import Severity
from panelcad.model.shape import Rectangle
from tests.builders import opening
from tests.checks.cases import Case, Ignored, found
from tests.checks.made import fitted, own_cut, panel, rack_unit

HEIGHTS = (33.02, 41.91, 50.8)
"""1.30, 1.65 and 2.00 in."""


def three(height, width=160.02):
    """Three units: 125.73 mm, two joints of 0.5 mm and 0.5 mm of clearance: 127.23 mm."""
    hole = own_cut("hole", 0, 0, Rectangle(width=width, height=height))
    units = tuple(rack_unit(f"u{i}", h) for i, h in enumerate(HEIGHTS))
    items = [fitted(f"i{i}", 0, 40 - 40 * i, f"u{i}")[1].revised(cut="hole") for i in range(3)]
    return panel(cuts=(hole,), items=tuple(items), cutouts=units)


def too_short(height):
    return 127.23


CASES = [
    Case("stack-height", three, 127.23, 127.22, measured=too_short),
    Case("rail-width", lambda width: three(130, width), 160.02, 160.0, severity=Severity.WARNING, required=160.02),
    Case("rail-width", lambda width: three(130, width), 160.02, 158.7, required=158.75),
]


def gauge_in_a_low_hole():
    hole = own_cut("hole", 0, 0, Rectangle(width=50, height=20))
    return panel(cuts=(hole,), items=(fitted("g", 0, 0)[1].revised(cut="hole"),))


IGNORED = [
    Ignored("stack-height", "what is no rack unit", gauge_in_a_low_hole),
    Ignored("rail-width", "what is no rack unit", gauge_in_a_low_hole),
]


def test_the_finding_names_the_opening_and_its_units_and_says_what_would_do():
    (finding,) = found(three(120.0), "stack-height")
    assert finding.items == ("hole", "i0", "i1", "i2")
    assert finding.required == 120.0
    assert finding.cure.value == pytest.approx(127.23)


def test_what_is_no_rack_unit_is_ignored():
    hole = own_cut("hole", 0, 0, Rectangle(width=50, height=20))
    made = panel(cuts=(hole,), items=(fitted("g", 0, 0)[1].revised(cut="hole"),))
    assert found(made, "stack-height") == found(made, "rail-width") == []


def test_a_turned_opening_is_measured_as_its_units_see_it():
    unit = rack_unit("u", 33.02, openings=(opening(Rectangle(width=160.02, height=34.0)),))
    made = panel(fitted("a", 0, 0, "u"), cutouts=(unit,))
    option = made.option("new")
    turned = option.revised(
        plates=(option.plates[0].revised(cuts=(option.plates[0].cuts[0].revised(rotation=90.0),)),),
    )
    assert found(made, "rail-width") == []
    assert len(found(made.with_option(turned), "rail-width")) == 1
