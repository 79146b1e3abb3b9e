"""Marks stand where regulation and arithmetic put them."""

import math

import pytest

from panelcad.drawing.display import Path, walk
from panelcad.drawing.faces.airspeed import arcs, lines, scale
from panelcad.drawing.faces.altimeter import _turned
from panelcad.drawing.faces.dial import Dial, Scale
from panelcad.drawing.faces.inks import BLUE, GREEN, RED, WHITE, YELLOW
from panelcad.drawing.faces.sockets import rating
from panelcad.geometry.point import Point
from panelcad.geometry.segment import Arc
from panelcad.model.flight import Airspeeds, Flight

SINGLE = Airspeeds(vs0=41, vs1=47, vfe=95, vno=126, vne=158)
TWIN = SINGLE.revised(vmc=64.0, vyse=88.0)


def _dial(speeds: Airspeeds) -> Dial:
    return Dial(Point(0.0, 0.0), 35.0, scale(speeds))


def _ends(path: Path) -> tuple[float, float]:
    """Clock angles at which a band starts and ends."""
    curves = [s for s in path.outlines[0].segments if isinstance(s, Arc)]
    angles = [90 - math.degrees(math.atan2(p.y, p.x)) for c in curves for p in (c.start, c.end)]
    turned = [a % 360 for a in angles]
    return min(turned), max(turned)


@pytest.mark.parametrize(
    ("colour", "low", "high"), [(WHITE, "vs0", "vfe"), (GREEN, "vs1", "vno"), (YELLOW, "vno", "vne")]
)
def test_arcs_of_14_cfr_23_1545(colour, low, high):
    """14 CFR 23.1545(b)(2) to (4): white VS0 to VFE, green VS1 to VNO, yellow VNO to VNE."""
    dial = _dial(SINGLE)
    band = next(node for node in arcs(dial, SINGLE) if isinstance(node, Path) and node.fill == colour)

    start, end = _ends(band)

    assert start == pytest.approx(dial.scale.angle(getattr(SINGLE, low)))
    assert end == pytest.approx(dial.scale.angle(getattr(SINGLE, high)))


def _angle(path: Path) -> float:
    start = path.outlines[0].segments[0].start
    return (90 - math.degrees(math.atan2(start.y, start.x))) % 360


def test_lines_of_14_cfr_23_1545():
    """14 CFR 23.1545(b)(1), (5), (6): red at VNE; on a twin blue at VYSE and red at VMC."""
    dial = _dial(TWIN)
    drawn = {(p.pen.colour, round(_angle(p), 6)) for p in lines(dial, TWIN) if isinstance(p, Path)}

    wanted = ((RED, TWIN.vne), (RED, TWIN.vmc), (BLUE, TWIN.vyse))
    assert drawn == {(colour, round(dial.scale.angle(speed), 6)) for colour, speed in wanted}
    assert len(lines(dial, SINGLE)) == 1


def test_airspeeds_must_rise():
    with pytest.raises(ValueError, match="rise"):
        Airspeeds(vs0=60, vs1=50)


def test_scale_is_straight_between_and_held_at_its_ends():
    marks = Scale(((0.0, 0.0), (100.0, 90.0), (200.0, 270.0)))

    assert [marks.angle(v) for v in (-5, 50, 150, 999)] == [0.0, 45.0, 180.0, 270.0]


def test_altimeter_pointers():
    """4,620 ft: the long pointer at 6.2 of 10 divisions, the short one at 4.62."""
    assert _turned(4620, 1000) == pytest.approx(0.62 * 360)
    assert _turned(4620, 10_000) == pytest.approx(0.462 * 360)


def test_rate_of_turn():
    """FAA-H-8083-15B: a standard rate turn, 3° a second, takes a bank of about 15 % of the airspeed: 18° at 120 kt."""
    assert Flight(bank=18.0, ground_speed=120.0).turn_rate == pytest.approx(3.0, abs=0.1)


def test_altimeter_setting():
    """ICAO standard atmosphere: 1013.25 hPa is 29.92 in Hg."""
    assert Flight(setting_hpa=1013.25).setting_in_hg == pytest.approx(29.92, abs=0.005)


@pytest.mark.parametrize(
    ("label", "text"), [("COM 1 breaker, 7.5 A", "7.5"), ("Pitot heat 15 A", "15"), ("NAV", ""), ("GPS 2,5 A", "2.5")]
)
def test_breaker_rating(label, text):
    assert rating(label) == text


def test_walk_finds_bands():
    assert any(isinstance(node, Path) for node in walk(arcs(_dial(SINGLE), SINGLE)))
