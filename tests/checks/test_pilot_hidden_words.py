"""Words in the shadow of a bar half way to the eye, by similar triangles; 14 CFR 23.1541(b)."""

import pytest

from panelcad.model.finding import Severity
from panelcad.model.plate import Frame
from panelcad.model.project import Project
from panelcad.model.shape import Rectangle
from panelcad.model.surroundings import KeepOut, MovingPart, Surroundings, Volume
from tests.builders import sheet
from tests.checks.pilot_panels import EYE_DISTANCE, eye, fitted, found, panel, words

HALF_WAY = -EYE_DISTANCE / 2
INK = 7.0 * (1 + 1 / 7)
"""The box of letters 7 mm high, with strokes of a seventh, is 8 mm high."""


def behind_a_bar(y: float, *, is_solid: bool = True) -> Project:
    """A bar 400 by 20 mm, half way to the eye: its shadow is 40 mm high about twice its own height."""
    volume = Volume(shape=Rectangle(width=400, height=20), x=0, y=y, near=HALF_WAY - 0.001, far=HALF_WAY)
    shield = KeepOut(id="shield", name="Glareshield", plate="main", volume=volume, is_solid=is_solid)
    around = Surroundings(eye=eye(), keep_outs=(shield,))
    lines = (words("FLAPS", 0, 0, 7.0), words("FUEL", 0, 300, 7.0))
    return panel(around=around, plate={"engravings": lines})


@pytest.mark.parametrize(("share", "hidden"), [(0.04, False), (0.06, True)])
@pytest.mark.parametrize("side", [-1, 1])
def test_a_twentieth_of_a_line_may_be_hidden(share: float, hidden: bool, side: int) -> None:
    """The shadow's near edge stands so far over the line of words that this share of its height is dark."""
    edge = INK / 2 - share * INK
    findings = found(behind_a_bar(side * (edge + 20) / 2), "hidden-words")
    assert bool(findings) == hidden
    if hidden:
        assert findings[0].measured == pytest.approx(share, abs=1e-3)
        assert findings[0].severity is Severity.ADVICE
        assert len(findings[0].items) == 1


def test_a_space_kept_free_hides_nothing_and_a_yoke_does() -> None:
    assert found(behind_a_bar(0, is_solid=False), "hidden-words") == []
    yoke = MovingPart(
        id="yoke",
        name="Yoke",
        plate="main",
        volume=Volume(shape=Rectangle(width=400, height=20), x=0, y=0, near=HALF_WAY, far=10.0),
    )
    around = Surroundings(eye=eye(), moving_parts=(yoke,))
    (finding,) = found(panel(around=around, plate={"engravings": (words("FLAPS", 0, 0, 7.0),)}), "hidden-words")
    assert finding.measured == pytest.approx(1.0)


def test_a_placard_and_the_words_of_another_plate_are_judged_too() -> None:
    sub = sheet(id="sub", name="Sub-panel", frame=Frame(z=80.0, tilt=10.0), engravings=(words("TRIM", 0, 0),))
    around = behind_a_bar(0).surroundings
    main = {"engravings": (words("FLAPS", 0, 0, 7.0),)}
    findings = found(panel(fitted("p", 0, 10, "plate"), more=(sub,), around=around, plate=main), "hidden-words")
    assert {(finding.plate, len(finding.items)) for finding in findings} == {("main", 2), ("sub", 1)}


def test_the_answer_is_the_same_in_a_moved_aircraft_and_unknown_without_an_eye() -> None:
    here = behind_a_bar(7.0)
    plate = {"frame": Frame(x=50, y=60, z=70), "engravings": here.option("new").plates[0].engravings}
    there = panel(plate=plate, around=here.surroundings.revised(eye=eye(50, 60, 70 - EYE_DISTANCE)))
    (one,), (other,) = found(here, "hidden-words"), found(there, "hidden-words")
    assert (one.measured, one.identity) == (pytest.approx(other.measured), other.identity)
    assert found(here.revised(surroundings=here.surroundings.revised(eye=None)), "hidden-words") == []
