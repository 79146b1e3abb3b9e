"""Hidden shares against similar triangles: a flat solid half way throws a shadow of twice its size."""

import pytest

from panelcad.checks.pilot_hidden import hidden_parts
from panelcad.checks.pilot_sight import seen_items
from panelcad.model.layout import layout
from panelcad.model.plate import Frame
from panelcad.model.project import Project
from panelcad.model.shape import Rectangle
from panelcad.model.surroundings import KeepOut, MovingPart, Surroundings, Volume
from tests.checks.pilot_panels import EYE_DISTANCE, FACE, eye, fitted, found, panel

HALF_WAY = -EYE_DISTANCE / 2


def bar(x: float, y: float, width: float = 400.0, height: float = 20.0) -> Volume:
    return Volume(shape=Rectangle(width=width, height=height), x=x, y=y, near=HALF_WAY - 0.001, far=HALF_WAY)


def behind_a_bar(y: float, *, is_solid: bool = True, **fields: object) -> Project:
    around = Surroundings(
        eye=eye(),
        keep_outs=(KeepOut(id="shield", name="Glareshield", plate="main", volume=bar(0, y), is_solid=is_solid),),
    )
    return panel(fitted("attitude", 0, 0), around=around, **fields)


def shares(project: Project) -> list[float]:
    laid = layout(project, project.option("new"))
    return [part.share for part in hidden_parts(seen_items(laid)[0], laid)]


def test_a_bar_before_the_middle_hides_its_doubled_height() -> None:
    assert shares(behind_a_bar(0))[0] == pytest.approx(40 / FACE, abs=1e-3)


def test_a_taller_pilot_sees_the_bar_lower() -> None:
    """From 69.85 mm higher, half way, the shadow falls as much lower: a bar 34.925 mm up hides the middle again."""
    level, shorter, taller = shares(behind_a_bar(69.85 / 2))
    assert taller == pytest.approx(40 / FACE, abs=1e-3)
    assert level == pytest.approx(0, abs=1e-3)
    assert shorter == pytest.approx(0, abs=1e-3)


@pytest.mark.parametrize(("y", "hidden"), [(31.0 - 69.85 / 2, True), (-250.0, False)])
def test_more_than_a_twentieth_hidden_is_found(y: float, hidden: bool) -> None:
    assert bool(found(behind_a_bar(y), "hidden-face")) == hidden


def test_the_limit_is_a_twentieth() -> None:
    """The doubled bar reaches 4 mm (a twentieth of the face) below the face's upper edge when its foot is 18 mm up."""
    just_inside = behind_a_bar(18.05 + 10, profile={"eye_sweep": 0.0})
    just_outside = behind_a_bar(17.95 + 10, profile={"eye_sweep": 0.0})
    assert found(just_inside, "hidden-face") == []
    (finding,) = found(just_outside, "hidden-face")
    assert finding.measured == pytest.approx(4.1 / 80, abs=1e-3)


def test_a_space_kept_free_hides_nothing() -> None:
    assert found(behind_a_bar(0, is_solid=False), "hidden-face") == []


def test_a_yoke_in_neutral_hides() -> None:
    yoke = MovingPart(id="yoke", name="Yoke", plate="main", volume=bar(0, 0))
    project = panel(fitted("attitude", 0, 0), around=Surroundings(eye=eye(), moving_parts=(yoke,)))
    assert shares(project)[0] == pytest.approx(40 / FACE, abs=1e-3)


def test_the_answer_is_the_same_in_a_moved_aircraft() -> None:
    moved = behind_a_bar(0, plate={"frame": Frame(x=50, y=60, z=70)})
    around = moved.surroundings.revised(eye=eye(50, 60, 70 - EYE_DISTANCE))
    assert shares(moved.revised(surroundings=around)) == pytest.approx(shares(behind_a_bar(0)))
