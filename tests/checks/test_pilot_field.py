"""AC 23.1311-1C paragraphs 15.2 and 15.3: 15 and 35 degrees sideways, about a line of sight 15 degrees down.

At 30 in from a flat, square panel 15 degrees are 8.038 in and 35 degrees 21.006 in (30·tan 15°, 30·tan 35°).
"""

import math

import pytest

from panelcad.checks.pilot_primary import FLIGHT
from panelcad.checks.pilot_sight import sight_of
from panelcad.geometry.point import Point
from panelcad.model.finding import Severity
from panelcad.model.function import Function
from panelcad.model.plate import Frame
from panelcad.model.project import Item
from panelcad.model.surroundings import Surroundings
from panelcad.model.view_zones import FunctionZone, ViewZone, functions_in, zone_source
from tests.checks.pilot_cases import BESIDE, beside, second_attitude
from tests.checks.pilot_panels import EYE_DISTANCE, INCH, blamed, eye, fitted, found, panel


@pytest.mark.parametrize(("inches", "outside"), [(8.0, False), (8.1, True), (-8.0, False), (-8.1, True)])
def test_primary_limit_sideways_at_thirty_inches(inches: float, outside: bool) -> None:
    findings = found(
        panel(fitted("attitude", inches * INCH, -EYE_DISTANCE * math.tan(math.radians(15)))), "view-primary"
    )
    assert bool(findings) == outside


@pytest.mark.parametrize(("inches", "outside"), [(20.9, False), (21.1, True), (-20.9, False), (-21.1, True)])
def test_important_limit_sideways_at_thirty_inches(inches: float, outside: bool) -> None:
    findings = found(panel(fitted("tachometer", inches * INCH, 0)), "view-important")
    assert bool(findings) == outside
    if outside:
        assert findings[0].measured == pytest.approx(math.degrees(math.atan(21.1 / 30)))
        assert findings[0].required == 35


@pytest.mark.parametrize(("degrees", "outside"), [(-29.9, False), (-30.1, True), (-0.1, False), (0.1, True)])
def test_primary_runs_from_level_to_thirty_degrees_down(degrees: float, outside: bool) -> None:
    item = fitted("attitude", 0, EYE_DISTANCE * math.tan(math.radians(degrees)))
    assert bool(found(panel(item), "view-primary")) == outside


@pytest.mark.parametrize(("degrees", "outside"), [(24.9, False), (25.1, True), (-34.9, False), (-35.1, True)])
def test_important_runs_from_25_up_to_35_down(degrees: float, outside: bool) -> None:
    item = fitted("tachometer", 0, EYE_DISTANCE * math.tan(math.radians(degrees)))
    assert bool(found(panel(item), "view-important")) == outside


@pytest.mark.parametrize(("inches", "aside"), [(8.0, False), (8.1, True), (-8.1, True)])
def test_the_pilots_course_deviation_belongs_in_the_primary_field(inches: float, aside: bool) -> None:
    """AC 23.1311-1C table 3, from memory: 15 degrees; the second indicator may stand farther off."""
    near, far = fitted("near", inches * INCH, -200, "course"), fitted("far", 16 * INCH, -200, "course")
    findings = found(panel(fitted("attitude", 0, -200), near, far), "view-primary")
    assert blamed(findings) == ({("near",)} if aside else set())
    assert all(finding.severity is Severity.ADVICE for finding in findings)


def test_course_deviation_on_a_primary_display_is_where_the_display_is() -> None:
    spare = fitted("spare", 16 * INCH, -200, "course")
    whole = fitted("whole", 0, -200, "whole-display")
    assert found(panel(whole, spare), "view-primary") == []


def test_standby_instruments_are_judged_by_the_wider_view() -> None:
    spare = fitted("spare", 12 * INCH, -200, "attitude")
    project = panel(fitted("attitude", 0, -200), spare)
    assert found(project, "view-primary") == []
    assert found(project, "view-important") == []


@pytest.mark.parametrize("rule", ["view-important", "face-turned"])
def test_a_second_pilots_instrument_is_seen_by_the_second_pilot(rule: str) -> None:
    """The pilot would look 800 mm aside at 762 mm, 46.4 degrees; the second pilot has it straight before him."""
    assert math.degrees(math.atan(2 * BESIDE / EYE_DISTANCE)) > 45
    assert found(beside(fitted("second", BESIDE, -200, "attitude")), rule) == []


def test_what_the_second_pilot_cannot_see_is_said_of_him() -> None:
    (finding,) = found(second_attitude(36.0), "view-important")
    assert finding.measured == pytest.approx(36.0)
    assert finding.problem == "Too far sideways for the second pilot's important field of view"


def test_what_the_pilot_has_not_himself_must_be_in_his_own_view() -> None:
    """An airspeed indicator over there is no duplicate; neither is one whose twin the pilot has out of his view."""
    there = fitted("there", BESIDE, -200, "airspeed")
    assert blamed(found(beside(there), "view-important")) == set()
    assert blamed(found(beside(there, fitted("both", BESIDE, 0, "display")), "view-important")) == {("there",)}
    aside = fitted("aside", -BESIDE - 21.1 * INCH, -200, "airspeed")
    assert ("there",) in blamed(found(beside(there, aside), "face-turned"))
    near = fitted("near", -BESIDE - 8.0 * INCH, -200, "airspeed")
    assert found(beside(there, near), "face-turned") == []


def test_engine_instruments_and_the_pilots_own_side_stay_the_pilots() -> None:
    own, there = fitted("own", -BESIDE, 0, "tachometer"), fitted("there", BESIDE, 0, "tachometer")
    assert blamed(found(beside(own, there), "view-important")) == {("there",)}
    standby = fitted("standby", -BESIDE - 21.1 * INCH, 0, "attitude")
    assert blamed(found(beside(standby), "view-important")) == {("standby",)}


def test_a_pilot_in_the_middle_has_nobody_beside_him() -> None:
    far = fitted("far", 21.1 * INCH, 0, "attitude")
    assert blamed(found(panel(fitted("attitude", 0, -200), far), "view-important")) == {("far",)}


def test_what_shows_nothing_is_not_judged() -> None:
    assert found(panel(fitted("nothing", 900, 0)), "view-important") == []


def test_a_symmetric_panel_gives_symmetric_findings() -> None:
    items = [
        fitted(f"t-{i}", x, y, "tachometer") for i, (x, y) in enumerate(((-600, 30), (600, 30), (-100, 0), (100, 0)))
    ]
    assert blamed(found(panel(*items), "view-important")) == {("t-0",), ("t-1",)}


@pytest.mark.parametrize("off", [(0.0, 0.0, 0.0), (431.0, -77.0, 912.0)])
def test_moving_aircraft_axes_changes_nothing(off: tuple[float, float, float]) -> None:
    frame = Frame(x=off[0], y=off[1], z=off[2])
    around = Surroundings(eye=eye(off[0], off[1], off[2] - EYE_DISTANCE))
    (finding,) = found(
        panel(fitted("tachometer", 21.1 * INCH, 0), plate={"frame": frame}, around=around), "view-important"
    )
    assert finding.measured == pytest.approx(math.degrees(math.atan(21.1 / 30)))


@pytest.mark.parametrize("tilt", [-30.0, 0.0, 12.0, 40.0])
def test_a_tilted_plate_lifts_and_draws_back_its_points_by_cosine_and_sine(tilt: float) -> None:
    plate = panel(plate={"frame": Frame(tilt=tilt)}).option("new").plates[0]
    sight = sight_of(plate, eye(), 15.0)
    up, away = 200 * math.cos(math.radians(tilt)), 200 * math.sin(math.radians(tilt))
    assert sight.above(Point(0, 200)) == pytest.approx(math.degrees(math.atan2(up, EYE_DISTANCE + away)) + 15)
    assert sight.turned(Point(0, 0)) == pytest.approx(abs(tilt))


@pytest.mark.parametrize(("cant", "outside"), [(44.9, False), (45.1, True), (-45.1, True)])
def test_a_face_may_turn_45_degrees(cant: float, outside: bool) -> None:
    project = panel(fitted("tachometer", 0, 0), plate={"frame": Frame(cant=cant)})
    assert bool(found(project, "face-turned")) == outside


def test_an_outlet_has_no_face_to_read() -> None:
    assert found(panel(fitted("outlet", 0, 0), plate={"frame": Frame(cant=60.0)}), "face-turned") == []


def test_without_an_eye_point_the_view_is_unknown_and_said_so() -> None:
    project = panel(fitted("tachometer", 900, 0), around=Surroundings())
    assert found(project, "view-important") == []
    assert len(found(project, "eye-point")) == 1
    assert found(panel(fitted("tachometer", 900, 0)), "eye-point") == []
    assert found(panel(fitted("nothing", 0, 0), around=Surroundings()), "eye-point") == []


def judged_by(zones: dict[Function, ViewZone], *items: Item) -> dict[str, set[tuple[str, ...]]]:
    """What the two rules blame with a shop's own zones."""
    own = tuple(FunctionZone(function=function, zone=zone) for function, zone in zones.items())
    project = panel(*items)
    project = project.revised(profile=project.profile.revised(zones=own))
    return {rule: blamed(found(project, rule)) for rule in ("view-primary", "view-important")}


def test_a_shop_may_want_the_tachometer_in_the_primary_field() -> None:
    """15 degrees at 30 in are 8.04 in and 35 degrees 21.0 in; the nearest serves, the other is held to the wider."""
    near, far = fitted("near", 8.1 * INCH, -200, "tachometer"), fitted("far", 20 * INCH, -200, "tachometer")
    nothing = {"view-primary": set(), "view-important": set()}
    assert judged_by({}, near, far) == nothing
    own = {Function.TACHOMETER: ViewZone.PRIMARY}
    assert judged_by(own, near, far) == nothing | {"view-primary": {("near",)}}
    inside = fitted("near", 8.0 * INCH, -200, "tachometer")
    assert judged_by(own, inside, far) == nothing
    assert judged_by(own, inside, fitted("far", 21.1 * INCH, -200, "tachometer"))["view-important"] == {("far",)}


def test_a_flight_instrument_may_be_held_to_the_wider_field_or_to_none() -> None:
    attitude = fitted("attitude", 0, -200)
    aside, beyond = (fitted("airspeed", inches * INCH, -200) for inches in (12, 22))
    assert judged_by({}, attitude, aside)["view-primary"] == {("airspeed",)}
    wider = {Function.AIRSPEED: ViewZone.IMPORTANT}
    assert judged_by(wider, attitude, aside) == {"view-primary": set(), "view-important": set()}
    assert judged_by(wider, attitude, beyond) == {"view-primary": set(), "view-important": {("airspeed",)}}
    none = {Function.AIRSPEED: ViewZone.ANYWHERE}
    assert judged_by(none, attitude, beyond) == {"view-primary": set(), "view-important": set()}


def test_what_is_advised_only_is_advice() -> None:
    project = panel(fitted("tachometer", 9 * INCH, -200))
    zones = (FunctionZone(function=Function.TACHOMETER, zone=ViewZone.PRIMARY_ADVISED),)
    (finding,) = found(project.revised(profile=project.profile.revised(zones=zones)), "view-primary")
    assert finding.severity is Severity.ADVICE


def test_every_zone_has_a_source() -> None:
    assert all(zone_source(function).text for function in Function)
    assert functions_in(ViewZone.PRIMARY) == frozenset(FLIGHT)
