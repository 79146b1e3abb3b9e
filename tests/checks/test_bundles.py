"""Bends of bundles: ten outside diameters (TM 1-1500-204-23-4); hoses by the shop's setting."""

from panelcad.checks.run import check
from panelcad.model.cutout import BodyKind
from panelcad.model.finding import Severity
from panelcad.model.shape import Circle
from tests.checks.cases import Case, Ignored, unknown
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


def shallow(kind):
    thick = body(kind, Circle(diameter=30), near=100.0, far=105.0, bundle_diameter=20.0)
    return panel(fitted("a", 0, 0), cutouts=(instrument(bodies=(body(), thick)),))


IGNORED = [
    Ignored("bundle-bend", "a hose", lambda: shallow(BodyKind.HOSE)),
    Ignored("hose-bend", "a wire bundle", lambda: shallow(BodyKind.HARNESS)),
]


def test_an_unknown_diameter_is_unknown():
    for kind, rule in ((BodyKind.HARNESS, "bundle-bend"), (BodyKind.HOSE, "hose-bend")):
        made = bending(kind, None)(50.0)
        assert [items for items, _ in unknown(made, rule)] == [("a",)]
        assert check(made, made.option("new")).findings == ()
