from panelcad.drawing.display import Group, Path, Text, walk
from panelcad.drawing.layers import Layer
from panelcad.drawing.style import SCREEN_DARK, SCREEN_LIGHT, ViewStyle, paper_style
from panelcad.drawing.views.front import front_view
from panelcad.geometry.contour import Rounded
from panelcad.model.cutout import Bezel, Cutout
from panelcad.model.hole import Countersink, Face, HoleForm, HoleGroup, HoleKind, Spot
from panelcad.model.layout import layout
from panelcad.model.plate import AttachScrew, CutState, Engraving, PlateState
from panelcad.model.project import Project
from panelcad.model.shape import Circle
from tests import builders


def gauge() -> Cutout:
    screw = HoleForm(diameter=4.3, fastener=3.5)
    holes = HoleGroup(form=screw, spots=(Spot(x=31, y=31), Spot(x=-31, y=31)), source=builders.SOURCE)
    bezel = Bezel(shape=Circle(diameter=83), thickness=3.0, source=builders.SOURCE)
    return builders.round_cutout(holes=(holes,), bezel=bezel)


def panel(**plate: object) -> Project:
    sheet = builders.sheet(
        cuts=(builders.cut("c1", 0, 0), builders.cut("c2", 100, 0, state=CutState.EXISTING)),
        engravings=(Engraving(id="e1", text="PITOT HEAT", x=0, y=-60, height=3.0),),
        attach_screws=(AttachScrew(id="s1", x=-280, y=130, form=HoleForm(diameter=4.8, fastener=4.0)),),
        **plate,
    )
    return builders.project(sheet, items=(builders.item("i1", 0, 0, cut="c1"),), cutouts=(gauge(),))


def view(project: Project, style: ViewStyle = SCREEN_LIGHT) -> dict[str, Group]:
    groups = front_view(layout(project, project.options[0]), "main", style)
    return {group.owner or group.layer: group for group in groups}


def test_every_cut_item_and_engraving_has_a_group_that_bears_its_id():
    assert {"main", "c1", "c2", "i1", "e1", "attach screws"} <= set(view(panel()))


def test_holes_of_a_cut_lie_on_their_own_layer_within_its_group():
    (holes,) = (node for node in view(panel())["c1"].nodes if isinstance(node, Group))
    assert holes.layer == Layer.HOLES
    assert [path.outlines[0].centre.x for path in holes.nodes] == [31, -31]


def test_what_is_to_be_cut_is_drawn_wide_and_what_is_there_narrow():
    shown = view(panel())
    assert shown["c1"].nodes[0].pen.width == SCREEN_LIGHT.wide
    assert shown["c2"].nodes[0].pen.width == SCREEN_LIGHT.narrow


def test_pens_on_paper_have_the_widths_of_iso_128_at_any_scale():
    path = view(panel(), paper_style(0.2))["c1"].nodes[0]
    assert path.pen.width * 0.2 == 0.5


def test_parts_that_did_not_change_are_the_same_groups():
    before = panel()
    moved = (
        before.options[0]
        .plates[0]
        .revised(cuts=(before.options[0].plates[0].cuts[0], builders.cut("c2", 120, 0, state=CutState.EXISTING)))
    )
    after = before.with_option(before.options[0].revised(plates=(moved,)))
    old, new = view(before), view(after)
    assert new["c1"] is old["c1"]
    assert new["i1"] is old["i1"]
    assert new["c2"] is not old["c2"]
    assert view(before, SCREEN_DARK)["c1"] is not old["c1"]


def test_a_countersink_in_front_is_seen_and_one_behind_is_dashed():
    def cones(face: Face) -> list[Path]:
        form = HoleForm(
            diameter=4.3, fastener=3.5, kind=HoleKind.COUNTERSUNK, countersink=Countersink(diameter=8, face=face)
        )
        shown = view(panel().with_option(_with_screw(form)))
        nodes = walk((shown["attach screws"],))
        return [
            n for n in nodes if isinstance(n, Path) and isinstance(n.outlines[0], Rounded) and n.outlines[0].radius == 4
        ]

    assert [path.pen.dashes for path in cones(Face.FRONT)] == [()]
    assert [len(path.pen.dashes) for path in cones(Face.BACK)] == [2]


def test_lettering_keeps_its_engraved_height():
    (text,) = view(panel())["e1"].nodes
    assert isinstance(text, Text)
    assert text.height == 3.0


def _with_screw(form: HoleForm):
    option = panel().options[0]
    plate = option.plates[0].revised(attach_screws=(AttachScrew(id="s1", x=0, y=100, form=form),))
    return option.revised(plates=(plate,))


def test_the_edge_of_a_sheet_is_wide_where_it_is_made_and_narrow_where_it_is_there():
    widths = {}
    for state in PlateState:
        project = builders.project(builders.sheet(state=state))
        metal = front_view(layout(project, project.option("new")), "main", SCREEN_LIGHT)[0]
        widths[state] = metal.nodes[0].pen.width
    assert widths[PlateState.NEW] == SCREEN_LIGHT.wide
    assert widths[PlateState.REWORKED] == widths[PlateState.KEPT] == SCREEN_LIGHT.narrow
