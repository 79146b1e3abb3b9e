"""Dialogs and tools on the sheet and on what stands around it, filled in by keys and drawn with the mouse."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QCheckBox, QComboBox, QLineEdit, QPushButton

from panelcad.desktop.canvas.gesture import Pointer
from panelcad.desktop.commands import panel, tools
from panelcad.editing.plates import add_inner_opening
from panelcad.geometry.point import Point
from panelcad.geometry.segment import Arc
from panelcad.model.cutout import Opening
from panelcad.model.plate import PlateState
from panelcad.model.shape import Circle
from panelcad.model.source import Source, Standing
from tests.desktop.next_dialog import in_dialog

ALT = Qt.KeyboardModifier.AltModifier


def field(dialog, name: str) -> QLineEdit:
    """The visible field of this accessible name."""
    return next(f for f in dialog.findChildren(QLineEdit) if f.accessibleName() == name and f.isVisible())


def box(dialog, name: str) -> QComboBox:
    return next(b for b in dialog.findChildren(QComboBox) if b.accessibleName() == name)


def choose(dialog, name: str, text: str) -> None:
    chooser = box(dialog, name)
    index = next(i for i in range(chooser.count()) if text in chooser.itemText(i))
    chooser.setCurrentIndex(index)
    chooser.activated.emit(index)


def fill(dialog, **texts: str) -> None:
    for name, text in texts.items():
        entry = field(dialog, name.replace("_", " "))
        entry.setText(text)
        entry.textEdited.emit(text)


def press(dialog, words: str) -> None:
    next(b for b in dialog.findChildren(QPushButton) if b.text().replace("&", "") == words).click()


@pytest.fixture
def plate(hands):
    return lambda number=0: hands.window.bench.document.option.plates[number]


def titles(hands) -> list[str]:
    return [step.title for step in hands.window.bench.document.done]


def test_no_two_entries_of_the_panel_menu_share_a_letter() -> None:
    entries = [action for action in (*panel.ACTIONS, *tools.actions()) if action.menu == "Pane&l"]
    letters = [action.title.split("&")[1][0].lower() for action in entries]
    assert len(set(letters)) == len(letters) > 15


def test_an_outline_is_taken_by_its_measures(hands, plate) -> None:
    def act(dialog) -> None:
        choose(dialog, "Template", "Curved top")
        fill(dialog, Width="800", Height_at_the_sides="200", Height_in_the_middle="260", Corner_radius="15")
        press(dialog, "Take")

    in_dialog(act)
    hands.action("panel.measures")
    contour = plate().outline.contour()
    assert contour.bounds == pytest.approx((-400, 0, 400, 260), abs=1e-3)
    assert sum(isinstance(segment, Arc) for segment in contour.segments) == 5
    assert titles(hands) == ["Outline by its measures"]


def test_an_outline_that_grows_beyond_the_view_stays_in_sight_while_it_is_filled_in(hands) -> None:
    view = hands.window.bench.view

    def act(dialog) -> None:
        choose(dialog, "Template", "Curved top")
        fill(dialog, Width="3000")
        left, _, right, _ = view.seen()
        assert left < -1500
        assert right > 1500
        dialog.reject()

    view.set_zoom(3.0)
    in_dialog(act)
    hands.action("panel.measures")
    assert titles(hands) == []


def test_the_measures_of_a_template_are_changed_afterwards(hands, plate) -> None:
    def make(dialog) -> None:
        choose(dialog, "Template", "Stepped")
        fill(dialog, Width="800", Depth_of_the_step="60", Corner_radius="15")
        press(dialog, "Take")

    def change(dialog) -> None:
        assert box(dialog, "Template").currentText() == "Stepped"
        assert (field(dialog, "Width").text(), field(dialog, "Depth of the step").text()) == ("800", "60")
        fill(dialog, Width="820")
        press(dialog, "Take")

    in_dialog(make)
    hands.action("panel.measures")
    in_dialog(change)
    hands.action("panel.measures")
    left, bottom, right, _ = plate().outline.contour().bounds
    assert (left, bottom, right) == pytest.approx((-410.0, -60.0, 410.0), abs=1e-6)


def test_measures_that_make_no_panel_are_told_and_cannot_be_taken(hands, plate) -> None:
    before = plate()
    seen = []

    def act(dialog) -> None:
        fill(dialog, Height="0")
        seen.append((dialog.problem.text(), dialog.verb.isEnabled()))
        press(dialog, "Cancel")

    in_dialog(act)
    hands.action("panel.measures")
    assert seen == [("A width and a height larger than 0 are expected.", False)]
    assert plate() is before


def test_screws_are_drilled_along_every_edge(hands, plate) -> None:
    def act(dialog) -> None:
        choose(dialog, "Edge", "every edge")
        fill(dialog, Inset_from_the_edge="12", First_from_the_corner="12")
        fill(dialog, **{"Pitch,_at_most": "150"})
        press(dialog, "Drill")

    in_dialog(act)
    hands.action("panel.screws")
    screws = plate().attach_screws
    assert len({(screw.x, screw.y) for screw in screws}) == len(screws) == 12


def test_screws_are_spread_anew_after_the_outline_changed(hands, plate) -> None:
    def drill(dialog) -> None:
        fill(dialog, Hole="4.5")
        press(dialog, "Drill")

    def wider(dialog) -> None:
        fill(dialog, Width="700")
        press(dialog, "Take")

    def drill_anew(dialog) -> None:
        assert field(dialog, "Hole").text() == "4.5"
        dialog.findChild(QCheckBox).setChecked(True)
        press(dialog, "Drill")

    for act, action in ((drill, "panel.screws"), (wider, "panel.measures"), (drill_anew, "panel.screws")):
        in_dialog(act)
        hands.action(action)
    screws = plate().attach_screws
    assert max(screw.x for screw in screws) == 350.0 - 12.0
    assert not [screw for screw in screws if abs(screw.x) == 288.0]
    assert {screw.form.diameter for screw in screws} == {4.5}


def test_a_screw_is_named_and_its_hole_comes_with_it(hands, plate) -> None:
    def act(dialog) -> None:
        fill(dialog, Fastener="#8")
        assert box(dialog, "Screw").currentText() == "#8, hole 4.50 mm: free fit of drill charts"
        press(dialog, "Drill")

    in_dialog(act)
    hands.action("panel.screws")
    form = plate().attach_screws[0].form
    assert (form.fastener, form.diameter) == pytest.approx((0.164 * 25.4, 0.177 * 25.4), abs=1e-6)


def test_a_hole_that_was_typed_stays_when_the_screw_is_named(hands, plate) -> None:
    in_dialog(lambda dialog: (fill(dialog, Hole="4.6"), fill(dialog, Fastener="M4"), press(dialog, "Drill")))
    hands.action("panel.screw")
    form = plate().attach_screws[0].form
    assert (form.fastener, form.diameter) == (4.0, 4.6)


def test_a_screw_is_chosen_by_name_and_figures_say_which_it_is(hands, plate) -> None:
    def act(dialog) -> None:
        choose(dialog, "Screw", "M4, hole 4.50 mm: ISO 273 medium")
        assert [field(dialog, name).text() for name in ("Hole", "Fastener")] == ["4.5", "4"]
        fill(dialog, Hole="4.4")
        assert box(dialog, "Screw").currentText() == "by its figures"
        fill(dialog, Hole="4.3")
        assert box(dialog, "Screw").currentText() == "M4, hole 4.30 mm: ISO 273 fine"
        press(dialog, "Drill")

    in_dialog(act)
    hands.action("panel.screw")
    assert plate().attach_screws[0].form.diameter == 4.3


def test_a_screw_that_is_not_known_by_name_is_told(hands, plate) -> None:
    def act(dialog) -> None:
        fill(dialog, Fastener="#7")
        assert "#4, #6, #8, #10" in dialog.problem.text()
        assert not dialog.verb.isEnabled()
        press(dialog, "Cancel")

    in_dialog(act)
    hands.action("panel.screw")
    assert not plate().attach_screws


def test_attach_screws_stand_last_in_the_list_of_what_is_on_the_panel(hands, plate) -> None:
    in_dialog(lambda dialog: press(dialog, "Drill"))
    hands.action("panel.screws")
    tree = hands.window.docks.dock("items").widget().tree
    names = [tree.topLevelItem(row).text(0) for row in range(tree.topLevelItemCount())]
    count = len(plate().attach_screws)
    assert names[-count:] == [f"S{number} attach screw" for number in range(1, count + 1)]
    row = tree.topLevelItem(len(names) - count)
    tree.setCurrentItem(row)
    screw = next(one for one in plate().attach_screws if one.id == hands.window.bench.selection.current)
    assert (screw.x, screw.y) == (float(row.text(1)), float(row.text(2))) == (-288.0, 125.0)


def test_one_screw_is_drilled_where_it_was_measured(hands, plate) -> None:
    def act(dialog) -> None:
        fill(dialog, x="-288", y="5in")
        press(dialog, "Drill")

    in_dialog(act)
    hands.action("panel.screw")
    assert [(screw.x, screw.y) for screw in plate().attach_screws] == [(-288.0, 127.0)]
    assert hands.window.bench.selection.ids == ("attach-1",)


def test_screws_begin_with_every_edge_until_one_is_picked(hands, plate) -> None:
    seen = []
    in_dialog(lambda dialog: (seen.append(box(dialog, "Edge").currentText()), press(dialog, "Cancel")))
    hands.action("panel.screws")
    hands.window.bench.outline.pick(2)
    in_dialog(lambda dialog: (seen.append(box(dialog, "Edge").currentText()), press(dialog, "Drill")))
    hands.action("panel.screws")
    assert seen[0] == "every edge"
    assert seen[1].startswith("3: ")
    assert "edge, " in seen[1]
    assert plate().attach_screws


def test_the_grid_covers_the_sheet_that_is_proposed(hands) -> None:
    heights = []

    def act(dialog) -> None:
        fill(dialog, Width="600", Height="450")
        heights.append(hands.window.workspace._grid.boundingRect().height())
        press(dialog, "Cancel")

    in_dialog(act)
    hands.action("panel.measures")
    assert heights == [pytest.approx(450.0, abs=1.0)]


def split(hands) -> None:
    """Upright, at x = -100."""

    def act(dialog) -> None:
        fill(dialog, From_x="-100", To_x="-100")
        press(dialog, "Split")

    in_dialog(act)
    hands.action("panel.split")


def test_a_plate_is_split_and_joined_again(hands, plate) -> None:
    split(hands)
    assert [one.id for one in hands.window.bench.document.option.plates] == ["main", "main-2"]
    assert not hands.window.bench.selection.ids
    in_dialog(lambda dialog: press(dialog, "Join"))
    hands.action("panel.join")
    assert plate().outline.contour().area == pytest.approx(600 * 300)
    assert len(plate().cuts) == 3


def test_plates_are_joined_whichever_of_them_is_shown(hands, plate) -> None:
    split(hands)
    stage = hands.window.bench.stage
    stage.look_at_plate("main-2")
    in_dialog(lambda dialog: press(dialog, "Join"))
    hands.action("panel.join")
    assert [one.id for one in hands.window.bench.document.option.plates] == ["main"]
    assert stage.plate_id == "main"
    assert len(stage.layout().plate("main").items) == 3


def test_a_plate_is_split_along_two_clicked_points(hands, qtbot) -> None:
    """The line slants between the first gauge and the second."""
    told, seen = [], []
    hands.window.bench.told.connect(told.append)
    hands.action("tool.split")
    hands.click(-140, -150, held=ALT)
    hands.hover(20, 120)
    assert "runs through 'two-cut'" in told[-1]

    def split(dialog) -> None:
        seen.extend(float(field(dialog, name).text()) for name in ("From x", "To x"))
        press(dialog, "Split")

    in_dialog(split)
    hands.click(-80, 150, held=ALT)
    document = hands.window.bench.document
    qtbot.waitUntil(lambda: len(document.option.plates) == 2)
    assert seen == pytest.approx([-140, -80], abs=1.0)
    assert [len(plate.cuts) for plate in document.option.plates] == [1, 2]
    assert titles(hands) == ["Split the plate"]


def test_escape_leaves_the_splitting_line_and_then_the_tool(hands) -> None:
    hands.action("tool.split")
    hands.click(-140, -150, held=ALT)
    hands.key(Qt.Key.Key_Escape)
    assert hands.window.toolbox.tool_id == "split"
    hands.key(Qt.Key.Key_Escape)
    assert hands.window.toolbox.tool_id == "select"


def test_the_sheets_data(hands, plate) -> None:
    told = []

    def act(dialog) -> None:
        fill(dialog, Name="Left sheet", Thickness="0.125 in", Alloy="6061-T6")
        choose(dialog, "State", "kept")
        told.append(dialog.problem.text())
        choose(dialog, "State", "reworked")
        press(dialog, "Take")

    in_dialog(act)
    hands.action("panel.sheet")
    assert "is kept as it is" in told[0]
    assert (plate().name, plate().alloy, plate().thickness) == ("Left sheet", "6061-T6", 3.175)
    assert plate().state is PlateState.REWORKED


def test_another_plate_is_added_shown_and_taken_away(hands) -> None:
    def act(dialog) -> None:
        fill(dialog, Name="Radio panel")
        press(dialog, "Add")

    in_dialog(act)
    hands.action("panel.plate")
    bench = hands.window.bench
    assert bench.stage.plate_id == bench.document.option.plates[1].id
    hands.action("panel.take-away")
    assert len(bench.document.option.plates) == 1


def test_an_obstacle_is_drawn_and_changed_in_figures(hands, qtbot) -> None:
    def add(dialog) -> None:
        choose(dialog, "Kind", "tube")
        fill(dialog, Name="Cross tube", **{"To,_behind_the_front_face": "90"})
        press(dialog, "Add")

    around = lambda: hands.window.bench.document.project.surroundings  # noqa: E731
    hands.action("tool.draw-obstacle")
    in_dialog(add)
    hands.drag((50, -100), (150, -80), held=ALT)
    qtbot.waitUntil(lambda: len(around().obstacles) == 1)
    (tube,) = around().obstacles
    assert (tube.name, tube.kind.value, tube.volume.far) == ("Cross tube", "tube", 90.0)
    assert (tube.volume.x, tube.volume.y) == pytest.approx((100, -90), abs=1.0)
    assert tube.volume.shape.width == pytest.approx(100, abs=1.5)
    assert hands.window.toolbox.tool_id == "select"
    hands.window.bench.selection.set([tube.id])
    in_dialog(lambda dialog: (fill(dialog, x="60"), press(dialog, "Take")))
    hands.action("panel.standing")
    assert around().obstacles[0].volume.x == 60.0


@pytest.mark.parametrize(
    ("tool", "collection"),
    [("draw-keep-out", "keep_outs"), ("draw-depth", "depth_limits"), ("draw-moving", "moving_parts")],
)
def test_a_click_asks_for_everything_in_figures(hands, qtbot, tool, collection) -> None:
    hands.action(f"tool.{tool}")
    in_dialog(lambda dialog: press(dialog, "Add"))
    hands.click(0, -100)
    around = hands.window.bench.document
    qtbot.waitUntil(lambda: len(getattr(around.project.surroundings, collection)) == 1)


def test_what_is_clicked_begins_where_the_click_was(hands, qtbot) -> None:
    hands.window.settings.snaps = False
    hands.action("tool.draw-obstacle")
    in_dialog(lambda dialog: press(dialog, "Add"))
    hands.click(60, -100)
    document = hands.window.bench.document
    qtbot.waitUntil(lambda: bool(document.project.surroundings.obstacles))
    volume = document.project.surroundings.obstacles[0].volume
    assert (volume.x, volume.y) == pytest.approx((60, -100), abs=1.0)


def test_a_depth_limit_that_was_only_clicked_covers_the_sheet(hands, qtbot) -> None:
    hands.action("tool.draw-depth")
    in_dialog(lambda dialog: press(dialog, "Add"))
    hands.click(60, -100)
    document = hands.window.bench.document
    qtbot.waitUntil(lambda: bool(document.project.surroundings.depth_limits))
    limit = document.project.surroundings.depth_limits[0]
    assert (limit.shape.width, limit.x, limit.y) == (600.0, 0.0, 0.0)


def test_a_keep_out_is_given_as_people_measure_it_toward_the_pilot(hands, qtbot) -> None:
    def act(dialog) -> None:
        fill(dialog, **{"From,_in_front_of_the_face": "20", "To,_in_front_of_the_face": "150"})
        press(dialog, "Add")

    hands.action("tool.draw-keep-out")
    in_dialog(act)
    hands.click(0, -100)
    document = hands.window.bench.document
    qtbot.waitUntil(lambda: bool(document.project.surroundings.keep_outs))
    volume = document.project.surroundings.keep_outs[0].volume
    assert (volume.near, volume.far) == (-150.0, -20.0)


def test_a_glareshield_is_said_to_hide_what_is_behind_it(hands, qtbot) -> None:
    def act(dialog) -> None:
        choose(dialog, "From the eye", "hides what is behind it")
        press(dialog, "Add")

    hands.action("tool.draw-keep-out")
    in_dialog(act)
    hands.click(0, -100)
    document = hands.window.bench.document
    qtbot.waitUntil(lambda: bool(document.project.surroundings.keep_outs))
    assert document.project.surroundings.keep_outs[0].is_solid


def test_an_opening_is_drawn_changed_and_filled_in_again(hands, plate, qtbot) -> None:
    def cut(dialog) -> None:
        choose(dialog, "Shape", "Circle")
        fill(dialog, Diameter="60", Purpose="control column")
        press(dialog, "Cut")

    def fill_in(dialog) -> None:
        dialog.findChild(QCheckBox).setChecked(True)
        press(dialog, "Take")

    hands.action("tool.draw-opening")
    in_dialog(cut)
    hands.drag((-20, -120), (40, -60), held=ALT)
    qtbot.waitUntil(lambda: len(plate().inner_openings) == 1)
    assert plate().inner_openings[0].shape.diameter == 60.0
    in_dialog(fill_in)
    hands.action("panel.opening")
    assert plate().inner_openings == ()


@pytest.fixture
def two_openings(hands):
    """Round ones of 40 mm at 0, -100 and 100, -100."""
    document = hands.window.bench.document
    project = document.project
    for x in (0.0, 100.0):
        source = Source(standing=Standing.USER, text="measured")
        opening = Opening(shape=Circle(diameter=40.0), x=x, y=-100.0, purpose="lamp", source=source)
        project = add_inner_opening(project, document.option_id, "main", opening)
    document.apply("two openings", project)
    return hands


def test_a_double_click_in_an_opening_of_the_sheet_changes_it(two_openings, plate, qtbot) -> None:
    def act(dialog) -> None:
        assert field(dialog, "x").text() == "100"
        fill(dialog, Diameter="50")
        press(dialog, "Take")

    in_dialog(act)
    two_openings.double_click(100, -100)
    qtbot.waitUntil(lambda: [one.shape.diameter for one in plate().inner_openings] == [40.0, 50.0])


def test_the_menu_at_an_opening_of_the_sheet_offers_to_change_it(two_openings, plate) -> None:
    def act(dialog) -> None:
        dialog.findChild(QCheckBox).setChecked(True)
        press(dialog, "Take")

    window = two_openings.window
    at = window.bench.stage.to_picture(Point(100.0, -100.0))
    menu = window.context_menu.made(Pointer(at, 1.0), "")
    in_dialog(act)
    next(entry for entry in menu.actions() if "opening" in entry.text()).trigger()
    assert [one.x for one in plate().inner_openings] == [0.0]
    menu = window.context_menu.made(Pointer(at, 1.0), "")
    assert not [entry for entry in menu.actions() if "opening" in entry.text()]


def test_escape_puts_the_drawing_away(hands) -> None:
    hands.action("tool.draw-obstacle")
    hands.press(0, -100)
    hands.move(50, -80)
    hands.key(Qt.Key.Key_Escape)
    hands.release(50, -80)
    assert hands.window.toolbox.tool_id == "draw-obstacle"
    hands.key(Qt.Key.Key_Escape)
    assert hands.window.toolbox.tool_id == "select"
    assert titles(hands) == []


def test_a_flange_is_added_to_an_edge_and_laid_out_flat(hands, plate) -> None:
    actions = hands.window.menus.actions
    assert not actions["panel.flat"].isEnabled()

    def answer(dialog):
        choose(dialog, "Edge", "upper")
        fill(dialog, Height_of_the_flange="25", Inside_radius="8", Angle="90")
        press(dialog, "Add")

    in_dialog(answer)
    actions["panel.flange"].trigger()
    (bend,) = plate().bends
    assert (bend.flange, bend.inside_radius, bend.angle, bend.direction) == (25.0, 8.0, 90.0, "away from the pilot")
    assert (bend.y1, bend.y2) == (150.0, 150.0)

    actions["panel.flat"].trigger()
    assert plate().is_flat_pattern
    assert plate().outline.contour().bounds[3] > 160.0
    assert titles(hands)[-2:] == ["Flange on an edge", "Lay out flat"]
    assert not actions["panel.flat"].isEnabled()


def test_a_flange_bent_too_far_is_refused_in_the_dialog(hands, plate) -> None:
    told = []

    def answer(dialog):
        fill(dialog, Angle="180")
        told.append(dialog.problem.text())
        dialog.reject()

    in_dialog(answer)
    hands.window.menus.actions["panel.flange"].trigger()
    assert "at most 165°" in told[0]
    assert not plate().bends
