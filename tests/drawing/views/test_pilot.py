"""The view from the eye: zones where the angles put them, hidden parts where similar triangles put them."""

import math

import pytest

from panelcad.checks.pilot_hidden import PILOT, EyeHeight, eye_heights
from panelcad.checks.pilot_zones import PRIMARY_ZONE
from panelcad.drawing.display import Group, Text, walk
from panelcad.drawing.extent import extent
from panelcad.drawing.layers import Layer
from panelcad.drawing.style import SCREEN_LIGHT
from panelcad.drawing.views.pilot import Scene, eye_place, pilot_view, reach_contour, seen_at, zone_contour
from panelcad.geometry.point import Point
from panelcad.model.layout import layout
from panelcad.model.plate import Frame
from panelcad.model.project import Project
from panelcad.model.shape import Rectangle
from panelcad.model.surroundings import KeepOut, Surroundings, Volume
from tests.checks.pilot_panels import EYE_DISTANCE, eye, fitted, panel

SHIELD = KeepOut(
    id="shield",
    name="Glareshield",
    plate="main",
    volume=Volume(
        shape=Rectangle(width=400, height=20), x=0, y=100, near=-EYE_DISTANCE / 2 - 0.001, far=-EYE_DISTANCE / 2
    ),
    is_solid=True,
)

SHADE = "Hidden from the eye"


def scene(project: Project) -> Scene:
    laid = layout(project, project.option("new"))
    return Scene(laid, project.surroundings.eye, PILOT, SCREEN_LIGHT)


def groups(project: Project) -> tuple[Group, ...]:
    return pilot_view(layout(project, project.option("new")), SCREEN_LIGHT)


def test_the_primary_field_reaches_8_038_in_each_side_and_from_level_to_30_degrees_down_at_30_in() -> None:
    left, bottom, right, top = zone_contour(scene(panel()), PRIMARY_ZONE).bounds
    assert right == pytest.approx(8.038 * 25.4, abs=0.02)
    assert left == pytest.approx(-right)
    assert top == pytest.approx(0, abs=1e-6)
    assert bottom == pytest.approx(-EYE_DISTANCE * math.tan(math.radians(30)) / math.cos(math.radians(15)), rel=1e-6)


def test_every_cut_and_item_is_there_under_its_own_id() -> None:
    owners = {node.owner for node in walk(groups(panel(fitted("attitude", 0, -100)))) if isinstance(node, Group)}
    assert {"attitude", "eye"} <= owners


def test_what_the_glareshield_hides_is_shaded_where_its_shadow_falls() -> None:
    project = panel(fitted("attitude", 0, 200), around=Surroundings(eye=eye(), keep_outs=(SHIELD,)))
    (shade,) = [node for node in walk(groups(project)) if isinstance(node, Group) and node.title == SHADE]
    assert shade.layer == Layer.HIDDEN
    assert extent(shade.nodes) == pytest.approx((-400, 180, 400, 220), abs=0.1)


def test_reach_on_an_upright_plate_is_a_circle_about_the_shoulder() -> None:
    """Radius √(R² - d²) about the foot of the shoulder point, 215.9 mm below the eye."""
    made = scene(panel())
    away = EYE_DISTANCE + 101.6
    contour = reach_contour(made, made.layout.plates[0], 886.46)
    radius = math.sqrt(886.46**2 - away**2)
    left, bottom, right, top = contour.bounds
    assert (left, right) == pytest.approx((-radius, radius), rel=1e-3)
    assert (bottom, top) == pytest.approx((-215.9 - radius, -215.9 + radius), rel=1e-3)
    assert reach_contour(made, made.layout.plates[0], 678.18) is None


def test_the_edges_of_a_tilted_plate_are_seen_where_its_sine_and_cosine_put_them() -> None:
    _, bottom, _, top = extent(groups(panel(plate={"frame": Frame(tilt=40.0)}))[:1])
    up, away = 600 * math.cos(math.radians(40)), 600 * math.sin(math.radians(40))
    assert top == pytest.approx(up * EYE_DISTANCE / (EYE_DISTANCE + away))
    assert bottom == pytest.approx(-up * EYE_DISTANCE / (EYE_DISTANCE - away))


def test_without_an_eye_point_the_view_says_so() -> None:
    project = panel(around=Surroundings())
    (note,) = groups(project)
    assert "not entered" in note.nodes[0].text
    assert eye_place(layout(project, project.option("new"))) is None


def shares_told(project: Project, height: EyeHeight = PILOT) -> list[str]:
    drawn = pilot_view(layout(project, project.option("new")), SCREEN_LIGHT, height)
    return [node.text for node in walk(drawn) if isinstance(node, Text) and node.text.endswith("hidden")]


def test_how_much_of_a_face_is_hidden_stands_on_it() -> None:
    """The bar's shadow, 180 to 220 mm up, takes 40 of the face's 80 mm; none of the face below it."""
    items = fitted("attitude", 0, 200), fitted("altimeter", 0, 0)
    project = panel(*items, around=Surroundings(eye=eye(), keep_outs=(SHIELD,)))
    assert shares_told(project) == ["50% hidden"]


def test_a_taller_pilots_view_tells_what_is_hidden_from_there() -> None:
    """From 69.85 mm higher the shadow falls as much lower: 110.15 to 150.15 mm up."""
    items = fitted("attitude", 0, 200), fitted("altimeter", 0, 120)
    project = panel(*items, around=Surroundings(eye=eye(), keep_outs=(SHIELD,)))
    assert shares_told(project, eye_heights(project.profile)[2]) == ["50% hidden"]
    assert seen_from_above(project) == pytest.approx((0, 120), abs=1e-6)


def seen_from_above(project: Project) -> Point:
    return seen_at(layout(project, project.option("new")), "main", Point(0, 120), eye_heights(project.profile)[2])


@pytest.mark.parametrize(("x", "told"), [(-12.5, "12.50 mm left"), (30.0, "30.00 mm right"), (0.0, "on the line")])
def test_the_offset_of_the_flight_instruments_is_told(x: float, told: str) -> None:
    texts = [node.text for node in walk(groups(panel(fitted("display", x, 0)))) if isinstance(node, Text)]
    assert f"flight instruments {told}" in texts
