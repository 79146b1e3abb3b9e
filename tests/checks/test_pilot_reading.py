"""Letters by angle (NUREG-0700 11.4.1.5-1), strokes (DOD-HDBK-791), placards (23.1541, 23.1547), colours (23.1322)."""

import pytest

from panelcad.checks.pilot_lights import colour_fits
from panelcad.checks.pilot_reading import height_for, height_preferred
from panelcad.geometry.point import Point
from panelcad.model.finding import Severity
from panelcad.model.function import Function
from panelcad.model.pilot import Light, LightColour, LightMeaning
from panelcad.model.planning import FlightKind, Planning
from tests.checks.pilot_panels import INCH, blamed, fitted, found, panel, unknown, words

RULE = "covered-words"


def test_heights_at_thirty_inches() -> None:
    """15 minutes of arc at 30 in are 0.131 in (3.32 mm), 20 minutes 0.175 in (4.43 mm)."""
    assert height_for(15, 30 * INCH) == pytest.approx(3.325, abs=0.001)
    assert height_for(15, 30) == pytest.approx(0.131, abs=0.0005)
    assert height_for(20, 30) == pytest.approx(0.175, abs=0.0005)


@pytest.mark.parametrize(
    ("height", "severity"), [(3.32, Severity.WARNING), (3.33, Severity.ADVICE), (4.43, Severity.ADVICE), (4.44, None)]
)
def test_letters_straight_ahead(height: float, severity: Severity | None) -> None:
    findings = found(panel(plate={"engravings": (words("FLAPS", 0, 0, height),)}), "letter-height")
    assert [finding.severity for finding in findings] == ([severity] if severity else [])


def test_letters_farther_off_must_be_higher() -> None:
    (finding,) = found(panel(plate={"engravings": (words("FLAPS", 762, 0, 4.44),)}), "letter-height")
    assert finding.required == pytest.approx(height_for(15, 762 * 2**0.5))


def test_the_height_asked_for_at_a_place_is_the_preferred_angle_there() -> None:
    project = panel()
    plate = project.options[0].plates[0]
    asked = height_preferred(plate, project, Point(762.0, 0.0))
    assert asked == pytest.approx(height_for(20, 762 * 2**0.5))
    eyeless = project.revised(surroundings=project.surroundings.revised(eye=None))
    assert height_preferred(plate, eyeless, Point(762.0, 0.0)) is None


def test_low_letters_are_one_finding_measured_at_the_worst() -> None:
    lines = (words("FLAPS", 0, 0, 2.0), words("TRIM", 0, 50, 1.0), words("FUEL", 0, 90, 5.0))
    (finding,) = found(panel(plate={"engravings": lines}), "letter-height")
    assert set(finding.items) == {lines[0].id, lines[1].id}
    assert finding.measured == 1.0


@pytest.mark.parametrize(("tool", "wrong"), [(0.62, True), (0.63, False), (0.83, False), (0.84, True)])
def test_strokes_are_a_sixth_to_an_eighth_of_the_height(tool: float, wrong: bool) -> None:
    project = panel(plate={"engravings": (words("FLAPS", 0, 0, 5.0),)}, profile={"engraving_tool": tool})
    assert bool(found(project, "letter-stroke")) == wrong


def test_a_tool_nobody_entered_is_unknown() -> None:
    lettered = {"engravings": (words("FLAPS", 0, 0, 5.0),)}
    assert unknown(panel(plate=lettered), "letter-stroke") == {("main",)}
    assert unknown(panel(plate=lettered, profile={"engraving_tool": 0.7}), "letter-stroke") == set()
    assert unknown(panel(), "letter-stroke") == set()


def test_the_limit_shown_is_the_shops_own() -> None:
    project = panel(
        plate={"engravings": (words("FLAPS", 0, 0, 5.0),)}, profile={"engraving_tool": 0.8, "stroke_boldest": 1 / 7}
    )
    (finding,) = found(project, "letter-stroke")
    assert (finding.measured, finding.required) == pytest.approx((0.16, 1 / 7))


@pytest.mark.parametrize(
    ("text", "across"), [("HH", 18.0 + 10 / 7 - 2.0), ("II", 3.0 + 10 / 7), ("油油", 23.0 + 10 / 7)]
)
def test_words_are_covered_as_wide_as_they_are_cut(text: str, across: float) -> None:
    """H is 6.5 wide and letters stand 3 apart, in tenths of the height; a letter nobody draws is as wide as high."""
    beside = 40 + across / 2
    assert found(panel(fitted("attitude", 0, 0), plate={"engravings": (words(text, beside + 0.1, 0, 10),)}), RULE) == []
    assert found(panel(fitted("attitude", 0, 0), plate={"engravings": (words(text, beside - 0.1, 0, 10),)}), RULE) != []


@pytest.mark.parametrize(("below", "covered"), [(42.9, False), (42.8, True)])
def test_words_under_a_bezel_are_covered(below: float, covered: bool) -> None:
    """A face 80 mm high and letters 5 mm high, with strokes of a seventh, meet 42.857 mm apart."""
    project = panel(fitted("attitude", 0, 0), plate={"engravings": (words("X", 0, -below),)})
    assert bool(found(project, "covered-words")) == covered


def test_words_under_a_placard_belong_on_it() -> None:
    lines = {"engravings": (words("COMPASS CARD", 0, 0),)}
    (finding,) = found(panel(fitted("p", 0, 0, "plate"), plate=lines), RULE)
    assert finding.cure is not None
    assert (finding.cure.item, finding.cure.advice) == ("p", "give the placard itself these words")
    (finding,) = found(panel(fitted("attitude", 0, 0), plate=lines), RULE)
    assert finding.cure is None


@pytest.mark.parametrize(("off", "missing"), [(40 + 2.5 * 8 / 7 + 50.7, False), (40 + 2.5 * 8 / 7 + 50.9, True)])
def test_the_deviation_placard_is_on_or_near_the_compass(off: float, missing: bool) -> None:
    project = panel(fitted("compass", 0, 0), plate={"engravings": (words("COMPASS", 0, -off),)})
    assert bool(found(project, "compass-placard")) == missing


def test_other_words_are_no_deviation_placard_and_other_instruments_need_none() -> None:
    project = panel(fitted("compass", 0, 0), plate={"engravings": (words("NO SMOKING", 0, -50),)})
    assert blamed(found(project, "compass-placard")) == {("compass",)}
    assert found(panel(fitted("attitude", 0, 0)), "compass-placard") == []


@pytest.mark.parametrize("colour", list(LightColour))
@pytest.mark.parametrize("meaning", list(LightMeaning))
def test_red_warns_amber_cautions_green_is_safe(colour: LightColour, meaning: LightMeaning) -> None:
    allowed = {
        LightMeaning.WARNING: {LightColour.RED},
        LightMeaning.CAUTION: {LightColour.AMBER},
        LightMeaning.SAFE_OPERATION: {LightColour.GREEN},
        LightMeaning.OTHER: {LightColour.WHITE, LightColour.BLUE},
    }
    assert colour_fits(Light(colour=colour, meaning=meaning)) == (colour in allowed[meaning])


def test_a_light_of_the_wrong_colour_and_one_nobody_described() -> None:
    red = fitted("l", 0, 0, "lamp", light=Light(colour=LightColour.RED, meaning=LightMeaning.SAFE_OPERATION))
    (finding,) = found(panel(red), "light-colour")
    assert finding.severity is Severity.WARNING
    assert "red" in finding.problem
    (finding,) = found(panel(fitted("l", 0, 0, "lamp")), "light-colour")
    assert finding.severity is Severity.ADVICE
    assert found(panel(fitted("attitude", 0, 0)), "light-colour") == []


def test_night_needs_instrument_lights() -> None:
    by_night, by_day = Planning(flight=FlightKind.NIGHT_VFR), Planning(flight=FlightKind.DAY_VFR)
    lit = by_night.revised(fitted=(Function.INSTRUMENT_LIGHTING,))
    assert len(found(panel(planning=by_night), "instrument-lights")) == 1
    assert found(panel(planning=by_day), "instrument-lights") == []
    assert found(panel(planning=lit), "instrument-lights") == []
