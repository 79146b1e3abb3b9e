import pytest

from panelcad.drawing.display import Path, walk
from panelcad.drawing.layers import Layer
from panelcad.drawing.style import SCREEN_LIGHT
from panelcad.drawing.views.behind import behind_view
from panelcad.drawing.views.section import SectionLine, section_view
from panelcad.geometry.across import Across
from panelcad.model.cutout import Bezel, Body, BodyKind
from panelcad.model.hole import HoleForm, HoleGroup, HoleKind, Nutplate, Spot
from panelcad.model.layout import layout
from panelcad.model.shape import Circle, Rectangle
from panelcad.model.surroundings import DepthLimit, MovingPart, Obstacle, ObstacleKind, Surroundings, Travel, Volume
from tests import builders

CASE = Body(kind=BodyKind.CASE, shape=Circle(diameter=78), far=150.0, source=builders.SOURCE)
KNOB = Body(kind=BodyKind.KNOB, shape=Circle(diameter=10), x=30.0, y=-30.0, far=15.0, source=builders.SOURCE)
NUTPLATE = HoleForm(
    diameter=4.3,
    fastener=3.5,
    kind=HoleKind.NUTPLATE,
    nutplate=Nutplate(rivet_diameter=2.5, rivet_spacing=17.5, flange_length=25.0, flange_width=8.0),
)


def laid_out():
    gauge = builders.round_cutout(
        bezel=Bezel(shape=Circle(diameter=83), thickness=5.0, source=builders.SOURCE),
        bodies=(CASE, KNOB),
        holes=(HoleGroup(form=NUTPLATE, spots=(Spot(x=31, y=31),), source=builders.SOURCE),),
    )
    tube = Volume(shape=Rectangle(width=20, height=250), x=60, y=0, near=40, far=60)
    shaft = Volume(shape=Circle(diameter=30), x=-150, y=0, near=-200, far=250)
    around = Surroundings(
        obstacles=(Obstacle(id="tube", name="Tube", kind=ObstacleKind.TUBE, plate="main", volume=tube),),
        moving_parts=(
            MovingPart(id="shaft", name="Yoke shaft", plate="main", volume=shaft, travels=(Travel(dz=-120.0),)),
        ),
        depth_limits=(
            DepthLimit(
                id="wall", name="Firewall", plate="main", shape=Rectangle(width=600, height=300), x=0, y=0,
                at_origin=300.0, slope_y=0.5,
            ),
        ),
    )  # fmt: skip
    sheet = builders.sheet(cuts=(builders.cut("c1", 100, 20, rotation=90.0),))
    project = builders.project(
        sheet, items=(builders.item("i1", 100, 20, cut="c1"),), cutouts=(gauge,), surroundings=around
    )
    return layout(project, project.options[0])


def behind():
    return {group.owner: group for group in behind_view(laid_out(), "main", SCREEN_LIGHT)}


def test_from_behind_what_is_right_of_the_datum_is_drawn_left_of_it():
    seen = behind()
    assert seen["c1"].nodes[0].outlines[0].centre == (-100, 20)
    assert [path.outlines[0].centre for path in seen["i1"].nodes] == [(-100, 20)]
    assert seen["tube"].nodes[0].outlines[0].centre.x == -60


def test_from_behind_a_nutplate_turns_with_its_cut_and_is_seen_whole():
    flange = next(
        node for node in walk(behind()["c1"].nodes) if isinstance(node, Path) and len(node.outlines[0].core) == 2
    )
    assert flange.pen.dashes == ()
    assert flange.bounds == pytest.approx((100 * -1 + 31 - 4, 51 - 12.5, 100 * -1 + 31 + 4, 51 + 12.5))


def test_from_behind_the_deepest_covers_the_others():
    order = [group.owner for group in behind_view(laid_out(), "main", SCREEN_LIGHT)]
    assert order.index("tube") < order.index("i1")


def section(across: Across, at: float):
    return {group.owner: group for group in section_view(laid_out(), "main", SectionLine(across, at), SCREEN_LIGHT)}


def test_a_vertical_section_shows_metal_with_the_opening_taken_out():
    metal = [path.outlines[0].bounds for path in section(Across.VERTICAL, 100.0)["main"].nodes]
    assert metal == [
        pytest.approx((0.0, -150.0, 2.0, 20 - 79.375 / 2)),
        pytest.approx((0.0, 20 + 79.375 / 2, 2.0, 150.0)),
    ]


def test_a_section_shows_case_and_bezel_in_depth():
    paths = [node for node in walk((section(Across.VERTICAL, 100.0)["i1"],)) if isinstance(node, Path)]
    assert [path.outlines[0].bounds for path in paths] == [
        pytest.approx((0.0, 20 - 39, 150.0, 20 + 39)),
        pytest.approx((-5.0, 20 - 41.5, 0.0, 20 + 41.5)),
    ]


def test_what_the_line_misses_is_not_there():
    assert "tube" not in section(Across.VERTICAL, 100.0)
    assert "tube" in section(Across.HORIZONTAL, 0.0)


def test_a_slanting_limit_is_drawn_at_its_depth():
    (path,) = section(Across.VERTICAL, 0.0)["wall"].nodes
    assert path.outlines[0].bounds == pytest.approx((300 - 75, -150, 300 + 75, 150))


def test_a_moving_part_is_drawn_at_rest_and_over_its_travel():
    swept, rest = section(Across.HORIZONTAL, 0.0)["shaft"].nodes
    assert rest.outlines[0].bounds == pytest.approx((-165, -200, -135, 250))
    assert swept.outlines[0].bounds == pytest.approx((-165, -320, -135, 250))
    assert section(Across.HORIZONTAL, 0.0)["shaft"].layer == Layer.MOVING
