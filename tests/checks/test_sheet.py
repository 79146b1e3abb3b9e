"""The sheet itself."""

import pytest

from panelcad.checks.run import check
from panelcad.checks.wording import unknown_sentences
from panelcad.model.finding import Severity
from panelcad.model.profile import Profile
from tests.checks.cases import Case, Ignored, found
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


def test_a_bed_or_a_stock_that_the_profile_does_not_state_is_unknown_and_said_so_once():
    made = on(5000, 5000)
    assert found(made, "machine-bed") == found(made, "stock") == []
    assert unknown_sentences(check(made, made.option("new"))) == (
        "Not known of Main panel: the machine's bed, whose size the profile does not state.",
        "Not known of Main panel: its stock, whose size the profile does not state.",
    )


@pytest.mark.parametrize(("state", "asked"), [("kept", set()), ("reworked", {"machine-bed"})])
def test_only_what_is_cut_needs_a_bed_and_only_a_new_plate_a_stock(state, asked):
    made = on(5000, 5000, state)
    assert {unknown.rule for unknown in check(made, made.option("new")).unknown} == asked
    on_small_bed = on(5000, 5000, "kept", **BED)
    assert found(on_small_bed, "machine-bed") == []


def bed_of(short):
    """A plate of 1000 x 500 mm turned on the bed of the machine: what it is too long by is `short`."""
    return on(500, 1000 + short, **BED)


def stock_of(short):
    return on(600, 300 + short, stock_width=612.7, stock_height=312.7, stock_margin=6.35)


LEVEL = "a plate is laid along the bed by its own axes, either way"
WARNS = {"severity": Severity.WARNING}
CASES = [
    Case("thin-sheet", lambda t: sheet_of(t, "reworked"), 1.016, 1.01, required=1.016, **WARNS),
    Case("thin-sheet", lambda t: sheet_of(t, "new"), 1.5748, 1.57, required=1.5748, **WARNS),
    Case("machine-bed", bed_of, 0.0, 0.5, lambda short: 1000 + short, 1000.0, not_turned=LEVEL),
    Case("stock", stock_of, 0.0, 0.1, lambda short: 300 + short, 300.0, not_turned=LEVEL),
]
IGNORED = [
    Ignored("thin-sheet", "a sheet that is kept", lambda: sheet_of(0.5, "kept")),
    Ignored("machine-bed", "a plate that is not cut", lambda: on(5000, 5000, state="kept", **BED)),
    Ignored("stock", "a plate that is reworked", lambda: on(5000, 5000, "reworked", stock_width=9.0, stock_height=9.0)),
]
