"""Masses of sheets against a supplier's chart and closed forms."""

import pytest

from panelcad.checks.facts import metal_area, sheet_facts, sheet_mass
from panelcad.model.layout import layout
from panelcad.model.plate import CutState
from panelcad.model.shape import Circle, Rectangle
from tests.builders import project, sheet
from tests.checks.made import own_cut

INCH, POUND = 25.4, 0.45359237


def test_a_suppliers_worked_examples():
    """0.101 lb/in³ x 0.063 x 48 x 144 in = 43.98 lb; 2.80 g/cm³ x 0.80 mm x 1.25 x 2.5 m = 7.00 kg (sheet chart)."""
    heavy = sheet_mass(48 * 144 * INCH**2, 0.063 * INCH, 0.101 * POUND / INCH**3)
    assert heavy / POUND == pytest.approx(43.98, abs=0.01)
    assert sheet_mass(1250 * 2500, 0.8, 2.8e-6) == pytest.approx(7.0)


def test_before_and_after():
    """2024 has 0.100 lb/in³ (MIL-HDBK-5H, from memory)."""
    made = project(sheet(600, 300, cuts=(own_cut("a", 0, 0, Rectangle(width=100, height=50)),)))
    (facts,) = sheet_facts(layout(made, made.option("new")))
    per_mm2 = 2.0 * 0.1 * POUND / INCH**3
    assert facts.uncut == pytest.approx(600 * 300 * per_mm2)
    assert facts.as_found == pytest.approx(600 * 300 * per_mm2)
    assert facts.cut == pytest.approx((600 * 300 - 5000) * per_mm2)
    assert [section.share for section in facts.weakest] == [pytest.approx(250 / 300), pytest.approx(500 / 600)]


def test_an_unknown_alloy_has_no_mass():
    made = project(sheet(alloy="plywood"))
    assert sheet_facts(layout(made, made.option("new")))[0].cut is None


def test_an_old_cut_in_a_new_one_counts_once():
    old = own_cut("old", 0, 0, Circle(diameter=40), state=CutState.EXISTING)
    new = own_cut("new", 0, 0, Rectangle(width=80, height=100))
    made = project(sheet(600, 300, cuts=(old, new)))
    assert metal_area(layout(made, made.option("new")).plates[0]) == pytest.approx(600 * 300 - 8000)
