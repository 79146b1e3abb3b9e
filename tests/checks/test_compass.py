"""Compass-safe distances; closed form in space between a point and a round case."""

import pytest

from panelcad.model.cutout import CompassSafe
from panelcad.model.finding import Severity
from panelcad.model.plate import Frame
from panelcad.model.surroundings import Compass, Surroundings
from tests.builders import SOURCE
from tests.checks.cases import Case, Ignored, found, unknown
from tests.checks.made import fitted, instrument, panel

SAFE = CompassSafe(distance=300.0, source=SOURCE)


def near_compass(x, y, z, safe=SAFE, **plate):
    around = Surroundings(compass=Compass(x=x, y=y, z=z, source=SOURCE))
    return panel(fitted("a", 0, 0), cutouts=(instrument(compass_safe=safe),), around=around, **plate)


@pytest.mark.parametrize(("away", "count"), [(300.0, 0), (299.99, 1)])
def test_beside_in_front_and_at_an_angle(away, count):
    """The case reaches 35 mm from its axis and 100 mm back; 3-4-5 from its rim."""
    for made in (
        near_compass(35 + away, 0, 50),
        near_compass(0, 0, -away),
        near_compass(0, 35 + 0.6 * away, 100 + 0.8 * away),
    ):
        assert [f.measured for f in found(made, "compass")] == [pytest.approx(away)] * count


def test_a_tilted_plate_is_compared_in_the_aircraft():
    """Tilted 90° forward, the panel's z axis points down: 50 mm behind it is 50 mm below its axis."""
    frame = Frame(x=100, y=200, z=300, tilt=90)
    (finding,) = found(near_compass(100 + 35 + 250, 200 - 50, 300, frame=frame), "compass")
    assert finding.measured == pytest.approx(250.0)
    assert finding.severity is Severity.WARNING


def test_unknown_is_reported_as_unknown():
    made = near_compass(0, 500, 0, safe=None)
    assert unknown(made, "compass") == [(("a",), "its compass-safe distance")]
    nowhere = panel(fitted("a", 0, 0), cutouts=(instrument(compass_safe=SAFE),))
    assert unknown(nowhere, "compass") == [(("a",), "where the compass is")]
    assert unknown(panel(fitted("a", 0, 0)), "compass") == []


CASES = [
    Case(
        "compass",
        lambda away: near_compass(0, 35 + 0.6 * away, 100 + 0.8 * away),
        300.0,
        299.99,
        required=300.0,
        severity=Severity.WARNING,
    ),
]
IGNORED = [
    Ignored(
        "compass",
        "a blank, which has nothing behind it",
        lambda: panel(
            fitted("a", 0, 0),
            cutouts=(instrument(bodies=()),),
            around=Surroundings(compass=Compass(x=0, y=50, z=0, source=SOURCE)),
        ),
    ),
]
