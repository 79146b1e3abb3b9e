"""Bends of bundles: ten outside diameters (TM 1-1500-204-23-4); hoses by the shop's setting."""

import pytest

from panelcad.checks.run import check
from panelcad.model.cutout import BodyKind
from panelcad.model.finding import Severity
from panelcad.model.shape import Circle
from tests.checks.cases import Case, holds
from tests.checks.made import body, fitted, instrument, panel


def bending(kind, diameter):
    def make(room):
        bend = body(kind, Circle(diameter=30), near=100.0, far=100.0 + room, bundle_diameter=diameter)
        return panel(fitted("a", 0, 0), cutouts=(instrument(bodies=(body(), bend)),))

    return make


CASES = [
    Case("bundle-bend", bending(BodyKind.HARNESS, 6.35), 63.5, 63.4, required=63.5, severity=Severity.WARNING),
    Case("hose-bend", bending(BodyKind.HOSE, 6.35), 38.1, 38.0, required=38.1, severity=Severity.WARNING),
]


@pytest.mark.parametrize("case", CASES, ids=str)
def test_inside_outside_and_copies(case):
    holds(case)


def test_an_unknown_diameter_is_unknown():
    for kind, rule in ((BodyKind.HARNESS, "bundle-bend"), (BodyKind.HOSE, "hose-bend")):
        made = bending(kind, None)(50.0)
        report = check(made, made.option("new"))
        assert [(u.rule, u.items) for u in report.unknown] == [(rule, ("a",))]
        assert report.findings == ()
