"""The sheet itself."""

import pytest

from panelcad.model.finding import Severity
from panelcad.model.profile import Profile
from tests.checks.cases import found
from tests.checks.made import panel


def sheet_of(thickness, state):
    return panel(thickness=thickness, state=state)


@pytest.mark.parametrize(
    ("thickness", "state", "count"),
    [(1.016, "reworked", 0), (1.01, "reworked", 1), (1.5748, "new", 0), (1.57, "new", 1), (0.5, "kept", 0)],
)
def test_thin_sheet(thickness, state, count):
    """0.040 in for a panel that carries displays, 0.062 in for a replacement (installation manuals)."""
    findings = found(sheet_of(thickness, state), "thin-sheet")
    assert [(f.measured, f.severity) for f in findings] == [(thickness, Severity.WARNING)] * count


def on(width, height, state="new", **limits):
    made = panel(size=(width, height), state=state)
    return made.revised(profile=Profile(**limits))


BED = {"bed_width": 1000.0, "bed_height": 500.0}


@pytest.mark.parametrize(
    ("width", "height", "over"),
    [(1000, 500, None), (500, 1000, None), (1000.5, 400, 1000.5), (600, 501, 501), (501, 700, 501)],
)
def test_the_machines_bed_either_way_round(width, height, over):
    findings = found(on(width, height, **BED), "machine-bed")
    assert [f.measured for f in findings] == ([] if over is None else [over])


def test_stock_needs_its_margin():
    stock = {"stock_width": 612.7, "stock_height": 312.7, "stock_margin": 6.35}
    assert found(on(600, 300, **stock), "stock") == []
    (finding,) = found(on(600, 300.1, **stock), "stock")
    assert (finding.measured, finding.required) == (pytest.approx(300.1), pytest.approx(300.0))


def test_what_is_not_stated_or_not_cut_is_not_judged():
    assert found(on(5000, 5000), "machine-bed") == found(on(5000, 5000), "stock") == []
    assert found(on(5000, 5000, state="kept", **BED), "machine-bed") == []
