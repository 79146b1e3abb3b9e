"""Hidden shares against similar triangles: a flat solid half way throws a shadow of twice its size.

Solids given for one plate hide the faces of another: held against a brute-force count of rays in aircraft axes.
"""

import math

import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st

from panelcad.checks.pilot_hidden import hidden_parts
from panelcad.checks.pilot_sight import plate_frame, seen_items
from panelcad.geometry.point import Point
from panelcad.geometry.polygon import polygon
from panelcad.geometry.space import Spot
from panelcad.model.layout import layout
from panelcad.model.plate import Frame
from panelcad.model.project import Project
from panelcad.model.shape import Circle, Corner, Outline, Rectangle, Shape
from panelcad.model.surroundings import KeepOut, MovingPart, Surroundings, Volume
from tests.builders import sheet
from tests.checks.pilot_panels import EYE_DISTANCE, FACE, eye, fitted, found, panel

HALF_WAY = -EYE_DISTANCE / 2
ELL = tuple(Corner(x=x, y=y) for x, y in ((-40, -40), (40, -40), (40, -10), (-10, -10), (-10, 40), (-40, 40)))


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


def behind_another_plates_bar(far: float, **frame: float) -> Project:
    """A bar half way to the main plate, and a face on a sub-panel `far` mm farther ahead."""
    sub = sheet(id="sub", name="Sub-panel", frame=Frame(z=far, **frame))
    around = Surroundings(eye=eye(), keep_outs=(shield(bar(0, 0)),))
    return panel(fitted("attitude", 0, 0, plate="sub"), more=(sub,), around=around)


def shield(volume: Volume) -> KeepOut:
    return KeepOut(id="shield", name="Glareshield", plate="main", volume=volume, is_solid=True)


@pytest.mark.parametrize("far", [0.0, 100.0, 250.0])
def test_a_bar_given_for_one_plate_hides_the_faces_of_another(far: float) -> None:
    """20 mm at half of 762 mm are 20·(762 + far)/381 on an upright plate `far` mm behind the first."""
    hidden = 20 * (EYE_DISTANCE + far) / (EYE_DISTANCE / 2)
    assert shares(behind_another_plates_bar(far))[0] == pytest.approx(hidden / FACE, abs=1e-3)
    assert len(found(behind_another_plates_bar(far), "hidden-face")) == 1


@pytest.mark.parametrize("tilt", [-30.0, 20.0, 45.0])
def test_on_a_tilted_plate_the_edges_of_the_shadow_are_where_level_rays_meet_it(tilt: float) -> None:
    """A ray that rises by s a mm forward meets a plate tilted by t s·762 / (cos t - s·sin t) up the plate."""
    slope = 10 / (EYE_DISTANCE / 2)
    turn = math.radians(tilt)
    top, bottom = (s * EYE_DISTANCE / (math.cos(turn) - s * math.sin(turn)) for s in (slope, -slope))
    assert shares(behind_another_plates_bar(0.0, tilt=tilt))[0] == pytest.approx((top - bottom) / FACE, abs=1e-3)


def test_a_solid_behind_the_other_plate_or_behind_the_eye_hides_nothing_of_it() -> None:
    near_sub = sheet(id="sub", name="Sub-panel", frame=Frame(z=HALF_WAY - 50))
    around = Surroundings(eye=eye(), keep_outs=(shield(bar(0, 0)),))
    assert shares(panel(fitted("attitude", 0, 0, plate="sub"), more=(near_sub,), around=around)) == [0, 0, 0]
    behind_eye = around.revised(eye=eye(z=HALF_WAY + 10))
    assert shares(panel(fitted("attitude", 0, 0), around=behind_eye)) == [0, 0, 0]


def rays_hidden(project: Project, volume: Volume) -> float:
    """Share of a grid over the face whose way to the eye enters the volume, followed in aircraft axes at 120 places."""
    plates = project.option("new").plates
    main, sub = plate_frame(plates[0]), plate_frame(plates[1])
    spot = project.surroundings.eye
    drawn = polygon(volume.shape.contour(), error=0.01)
    shapely.prepare(drawn)
    grid = [FACE * ((i + 0.5) / 20 - 0.5) for i in range(20)]
    hidden = 0
    for point in (Point(x, y) for x in grid for y in grid):
        face = sub.on_face(point)
        places = [main.to_plate(between(face, Spot(spot.x, spot.y, spot.z), k / 120)) for k in range(1, 120)]
        inside = [(p.x - volume.x, p.y - volume.y) for p in places if volume.near <= p.z <= min(volume.far, 0.0)]
        hidden += bool(inside) and bool(shapely.intersects_xy(drawn, *zip(*inside, strict=True)).any())
    return hidden / len(grid) ** 2


def between(a: Spot, b: Spot, share: float) -> Spot:
    return Spot(*(p + share * (q - p) for p, q in zip(a, b, strict=True)))


SHAPES: list[Shape] = [Rectangle(width=120, height=60), Circle(diameter=90), Outline(corners=ELL)]


@settings(max_examples=10, deadline=None)
@given(
    tilts=st.tuples(st.floats(-25, 25), st.floats(-40, 40)),
    cants=st.tuples(st.floats(-20, 20), st.floats(-30, 30)),
    x=st.floats(-60, 60),
    z=st.floats(-120, 200),
    shape=st.sampled_from(SHAPES),
)
def test_hidden_share_across_tilted_plates_agrees_with_a_brute_force_ray_count(
    tilts: tuple[float, float], cants: tuple[float, float], x: float, z: float, shape: Shape
) -> None:
    volume = Volume(shape=shape, x=0, y=0, near=-300, far=-180)
    sub = sheet(id="sub", name="Sub-panel", frame=Frame(x=x, y=-30, z=z, tilt=tilts[1], cant=cants[1]))
    project = panel(
        fitted("attitude", 0, 0, plate="sub"),
        plate={"frame": Frame(tilt=tilts[0], cant=cants[0])},
        more=(sub,),
        around=Surroundings(eye=eye(), keep_outs=(shield(volume),)),
    )
    assert shares(project)[0] == pytest.approx(rays_hidden(project, volume), abs=0.06)


def test_a_symmetric_panel_is_hidden_symmetrically() -> None:
    for left, right in ((bar(-90, 0, 60), bar(90, 0, 60)), (bar(-110, 30, 40, 90), bar(110, 30, 40, 90))):
        pair = (shield(left), shield(right).revised(id="shield-2"))
        items = (fitted("attitude", -200, 0), fitted("altimeter", 200, 0))
        project = panel(*items, around=Surroundings(eye=eye(), keep_outs=pair))
        laid = layout(project, project.option("new"))
        one, other = (hidden_parts(seen, laid) for seen in seen_items(laid))
        assert [part.share for part in one] == pytest.approx([part.share for part in other])
        assert one[0].share > 0.05
