"""What stands around the panel, by hand: picked by its area, stretched by its handles, its depth in its properties."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from panelcad.desktop.panes.one_thing import OneThing
from panelcad.editing.around import add_standing
from panelcad.editing.stretch import Pull, pulled_place
from panelcad.model.shape import Rectangle
from panelcad.model.surroundings import DepthLimit, KeepOut, Obstacle, ObstacleKind, Volume
from tests.desktop.test_panel_dialogs import field, fill, in_dialog, press

ALT, SHIFT = Qt.KeyboardModifier.AltModifier, Qt.KeyboardModifier.ShiftModifier
TUBE = Obstacle(
    id="tube",
    name="Cross tube",
    kind=ObstacleKind.TUBE,
    plate="main",
    volume=Volume(shape=Rectangle(width=200.0, height=60.0), x=-60.0, y=-90.0, near=40.0, far=90.0),
)
FIREWALL = DepthLimit(
    id="firewall",
    name="Firewall",
    plate="main",
    shape=Rectangle(width=640.0, height=320.0),
    x=0.0,
    y=0.0,
    at_origin=350.0,
)
YOKE = KeepOut(
    id="yoke",
    name="Yoke",
    plate="main",
    volume=Volume(shape=Rectangle(width=160.0, height=110.0), x=-200.0, y=-90.0, near=-200.0, far=-60.0),
)
SEEN_FROM = {"tube": "behind", "firewall": "behind", "yoke": "front"}


@pytest.fixture
def around(hands):
    """The tube, the firewall and the yoke stand around the panel, which is seen from behind."""
    document = hands.window.bench.document
    project = document.project
    for thing in (TUBE, FIREWALL, YOKE):
        project = add_standing(project, thing).project
    document.apply("Stand things around", project)
    hands.window.bench.stage.look_from("behind")
    hands.view.show_all()
    return hands


def chosen(hands) -> set[str]:
    return set(hands.window.bench.selection.ids)


def thing(hands, thing_id):
    return next(one for one in hands.window.bench.document.project.surroundings.things if one.id == thing_id)


def box(hands, thing_id):
    return hands.window.bench.stage.scene.box((thing_id,))


def titles(hands) -> list[str]:
    return [step.title for step in hands.window.bench.document.done][1:]


def sheet(hands) -> OneThing:
    shown = hands.window.docks.dock("properties").widget().sheet
    assert isinstance(shown, OneThing)
    return shown


def enter(field_, text: str) -> None:
    field_.setFocus()
    field_.selectAll()
    QTest.keyClicks(field_, text)
    QTest.keyClick(field_, Qt.Key.Key_Return)


def test_a_click_inside_picks_the_smallest_thing_there(around) -> None:
    around.click(-60, -90)
    assert chosen(around) == {"tube"}
    around.click(120, -100)
    assert chosen(around) == {"firewall"}
    around.click(0, 50)
    assert chosen(around) == {"two-cut"} or chosen(around) == {"two"}
    around.window.bench.stage.look_from("front")
    around.click(-200, -90)
    assert chosen(around) == {"yoke"}


def test_shift_adds_what_is_clicked_inside(around) -> None:
    around.click(-60, -90)
    around.click(120, -100, held=SHIFT)
    assert chosen(around) == {"tube", "firewall"}


def test_a_drag_that_begins_within_a_bare_outline_draws_a_box(around) -> None:
    before = around.window.bench.document.project
    around.drag((120, -140), (-180, -50))
    assert chosen(around) == {"tube"}
    assert around.window.bench.document.project is before


def test_a_bare_outline_is_dragged_by_its_line_or_once_it_is_selected(around) -> None:
    around.drag((320, -100), (340, -100), held=ALT)
    assert thing(around, "firewall").x == pytest.approx(20.0, abs=1.0)
    around.drag((120, -140), (100, -140), held=ALT)
    assert thing(around, "firewall").x == pytest.approx(0.0, abs=1.5)
    assert titles(around) == ["Move Firewall", "Move Firewall"]


@pytest.mark.parametrize("thing_id", ["tube", "firewall", "yoke"])
@pytest.mark.parametrize("pull", [Pull(1, 0), Pull(0, -1), Pull(-1, 1)])
def test_each_is_stretched_by_a_side_or_a_corner_in_one_step(around, thing_id, pull) -> None:
    hands = around
    hands.window.bench.stage.look_from(SEEN_FROM[thing_id])
    hands.window.bench.selection.set((thing_id,))
    before = thing(hands, thing_id)
    start, stays = pulled_place(before, pull), pulled_place(before, Pull(-pull.across, -pull.up))
    end = (start.x + 15 * pull.across, start.y + 15 * pull.up)
    hands.drag((start.x, start.y), end, held=ALT)
    made = thing(hands, thing_id)
    assert pulled_place(made, pull) == pytest.approx(end, abs=1.5)
    assert pulled_place(made, Pull(-pull.across, -pull.up)) == pytest.approx(stays, abs=1e-5)
    assert titles(hands) == [f"Stretch {before.name}"]
    hands.action("edit.undo")
    assert thing(hands, thing_id) == before
    handles = hands.window.toolbox.tool.stretch_handles.shown
    assert len(handles) == 8


def test_a_stretch_says_the_size_and_escape_puts_it_back(around) -> None:
    around.click(-60, -90)
    before = around.window.bench.document.project
    around.press(40, -90)
    around.move(50, -90, held=ALT)
    around.move(60, -90, held=ALT)
    (words,) = [item.words for item in around.window.bench.stage.scene.labels.shown if "×" in item.words]
    assert words.startswith("2")
    assert sheet(around).around.sizes[0].value == pytest.approx(220.0, abs=1.5)
    around.key(Qt.Key.Key_Escape)
    around.release(60, -90)
    assert around.window.bench.document.project is before
    assert around.window.bench.stage.scene.labels.shown == ()


def test_a_thin_thing_keeps_room_to_be_taken_hold_of(around) -> None:
    around.click(-60, -90)
    around.view.set_zoom(0.5)
    grips = {handle.grip.value for handle in around.window.toolbox.tool.stretch_handles.shown}
    assert grips == {"middle"}
    assert len(around.window.toolbox.tool.stretch_handles.shown) == 2


def test_depth_and_size_of_an_obstacle_are_read_and_changed_in_its_properties(around) -> None:
    around.click(-60, -90)
    rows = sheet(around).around
    assert [f.value for f in rows.depths] == [40.0, 90.0]
    enter(rows.depths[1], "90 + 1/2 in")
    assert thing(around, "tube").volume.far == pytest.approx(102.7)
    enter(rows.sizes[1], "25")
    assert thing(around, "tube").volume.shape.height == 25.0
    rows.kind.setCurrentIndex(rows.kind.findText("duct"))
    rows.kind.activated.emit(rows.kind.currentIndex())
    assert thing(around, "tube").kind is ObstacleKind.DUCT
    assert titles(around) == ["Change Cross tube"] * 3
    around.action("edit.undo")
    around.action("edit.undo")
    around.action("edit.undo")
    assert thing(around, "tube") == TUBE
    assert [f.value for f in rows.depths] == [40.0, 90.0]


def test_a_depth_that_cannot_be_is_told_and_the_field_says_again_what_stands_there(around) -> None:
    around.click(-60, -90)
    told = []
    around.window.bench.refused.connect(told.append)
    rows = sheet(around).around
    enter(rows.depths[1], "10")
    assert thing(around, "tube") == TUBE
    assert any("far end" in words for words in told)
    assert rows.depths[1].value == 90.0


def test_a_firewall_that_leans_is_given_in_its_properties_by_its_two_edges(around) -> None:
    around.click(120, -100)
    rows = sheet(around).around
    assert [f.value for f in rows.depths] == [350.0, 350.0, 0.0]
    enter(rows.depths[1], "270")
    leaning = thing(around, "firewall")
    assert leaning.depth_at(0.0, -160.0) == pytest.approx(350.0)
    assert leaning.depth_at(0.0, 160.0) == pytest.approx(270.0)


def test_a_keep_out_is_given_toward_the_pilot_and_may_hide_what_is_behind(around) -> None:
    around.window.bench.stage.look_from("front")
    around.click(-200, -90)
    rows = sheet(around).around
    assert [f.value for f in rows.depths] == [60.0, 200.0]
    enter(rows.depths[0], "40")
    assert thing(around, "yoke").volume.far == -40.0
    rows.sight.setCurrentIndex(1)
    rows.sight.activated.emit(1)
    assert thing(around, "yoke").is_solid


def test_another_shape_has_figures_of_its_own(around) -> None:
    around.click(-60, -90)
    assert len(sheet(around).around.sizes) == 3

    def act(dialog) -> None:
        chooser = dialog.findChildren(type(sheet(around).around.kind))
        shape = next(box for box in chooser if box.accessibleName() == "Shape")
        shape.setCurrentIndex(shape.findText("Circle"))
        shape.activated.emit(shape.currentIndex())
        fill(dialog, Diameter="30")
        press(dialog, "Take")

    in_dialog(act)
    around.action("panel.standing")
    assert [f.value for f in sheet(around).around.sizes] == [30.0]


def test_a_leaning_depth_limit_is_drawn_said_in_its_dialog_and_taken_away(around, qtbot) -> None:
    def act(dialog) -> None:
        assert field(dialog, "Depth at the lower edge").text() != ""
        fill(
            dialog,
            Name="Sloping floor",
            Depth_at_the_lower_edge="80",
            Depth_at_the_upper_edge="260",
            Right_edge_deeper_by="10",
        )
        press(dialog, "Add")

    around.action("tool.draw-depth")
    in_dialog(act)
    around.drag((-100, -150), (100, -50), held=ALT)
    document = around.window.bench.document
    qtbot.waitUntil(lambda: len(document.project.surroundings.depth_limits) == 2)
    floor = document.project.surroundings.depth_limits[1]
    low, high = floor.y - floor.shape.height / 2, floor.y + floor.shape.height / 2
    assert floor.depth_at(floor.x, low) == pytest.approx(80.0, abs=1e-4)
    assert floor.depth_at(floor.x, high) == pytest.approx(260.0, abs=1e-4)
    assert floor.slope_x * floor.shape.width == pytest.approx(10.0, abs=1e-4)
    assert chosen(around) == {floor.id}
    around.action("edit.delete")
    assert len(document.project.surroundings.depth_limits) == 1
    around.action("edit.undo")
    assert document.project.surroundings.depth_limits[1] == floor
