"""Turning with the handle beside the selection, and by an angle in figures."""

import math

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from panelcad.desktop.dialogs.entries import AngleEntry
from panelcad.desktop.tools.turn import turn_to_step
from panelcad.editing.groups import group, lock
from panelcad.editing.move import move_to
from panelcad.editing.stack import place_stack
from panelcad.geometry.point import Point
from panelcad.library.catalogue import packaged_catalogue
from tests.desktop.next_dialog import in_dialog

ALT, SHIFT, CTRL = (
    Qt.KeyboardModifier.AltModifier,
    Qt.KeyboardModifier.ShiftModifier,
    Qt.KeyboardModifier.ControlModifier,
)


def handle(hands) -> Point | None:
    """Where the handle stands on the plate."""
    at = hands.window.toolbox.tool.turn_handle.at
    return None if at is None else hands.window.bench.stage.to_plate(at)


def about(centre: tuple[float, float], start: Point, degrees: float) -> tuple[float, float]:
    """A place turned about a centre, by trigonometry alone."""
    dx, dy, turn = start.x - centre[0], start.y - centre[1], math.radians(degrees)
    return (
        centre[0] + dx * math.cos(turn) - dy * math.sin(turn),
        centre[1] + dx * math.sin(turn) + dy * math.cos(turn),
    )


def turn(hands, centre: tuple[float, float], degrees: float, held=Qt.KeyboardModifier.NoModifier) -> None:
    start = handle(hands)
    assert start is not None
    hands.drag(start, about(centre, start, degrees), held=held, steps=6)


def titles(hands) -> list[str]:
    return [step.title for step in hands.window.bench.document.done]


def test_the_handle_stands_outside_the_box_of_the_selection(hands) -> None:
    assert handle(hands) is None
    hands.click(0, 50)
    # The bezel of 84 mm about (0, 50) ends at y = 92.
    at = handle(hands)
    assert at is not None
    assert at.x == pytest.approx(0.0, abs=0.5)
    assert at.y > 92.0
    hands.key(Qt.Key.Key_Escape)
    assert handle(hands) is None


def test_a_drag_turns_item_and_cut_in_steps_as_one_entry(hands) -> None:
    hands.click(0, 50)
    turn(hands, (0, 50), 43.0)
    assert hands.item("two").rotation == 45.0
    assert (hands.item("two").x, hands.item("two").y) == (0.0, 50.0)
    (cut,) = (cut for cut in hands.window.bench.document.option.plates[0].cuts if cut.id == "two-cut")
    assert cut.rotation == 45.0
    assert titles(hands) == ["Turn two"]
    hands.action("edit.undo")
    assert hands.item("two").rotation == 0.0
    assert hands.window.bench.document.is_saved


def test_steps_are_those_of_the_angle_it_ends_at(hands) -> None:
    hands.click(0, 50)
    turn(hands, (0, 50), 20.3, held=ALT)
    assert hands.item("two").rotation == pytest.approx(20.3, abs=0.6)
    assert hands.item("two").rotation % 15.0 != 0.0
    turn(hands, (0, 50), -30.0)
    assert hands.item("two").rotation == 345.0


def test_the_angle_is_shown_while_turning(hands) -> None:
    hands.click(0, 50)
    start = handle(hands)
    hands.press(*start)
    hands.move(*about((0, 50), start, -29.0))
    assert "by -30°" in hands.window.statusBar().words.text()
    assert hands.window.docks.dock("properties").widget().sheet.turn.text() == "330"
    hands.release(*about((0, 50), start, -29.0))


def test_a_click_on_the_handle_picks_what_it_stands_over(hands) -> None:
    hands.click(0, 50)
    at = handle(hands)
    assert at is not None
    hands.window.bench.edit("Under it", lambda project, option: move_to(project, option, "one", at.x, at.y))
    hands.click(at.x, at.y)
    assert hands.window.bench.selection.ids == ("one",)
    assert titles(hands) == ["Under it"]


def test_the_handle_is_there_again_after_a_box_that_changes_nothing(hands) -> None:
    hands.click(0, 50)
    before = handle(hands)
    hands.drag((-60, 120), (60, -10))
    assert hands.window.bench.selection.ids == ("two",)
    assert handle(hands) == before


def test_escape_puts_it_back(hands) -> None:
    document = hands.window.bench.document
    before = document.project
    hands.click(0, 50)
    start = handle(hands)
    hands.press(*start)
    hands.move(*about((0, 50), start, 40.0))
    hands.key(Qt.Key.Key_Escape)
    hands.release(*about((0, 50), start, 40.0))
    assert document.project is before
    assert not document.done
    assert handle(hands) == start


def test_several_turn_about_their_common_centre(hands) -> None:
    hands.click(-200, 50)
    hands.click(0, 50, held=SHIFT)
    turn(hands, (-100, 50), 90.0)
    assert (hands.item("one").x, hands.item("one").y) == pytest.approx((-100, -50))
    assert (hands.item("two").x, hands.item("two").y) == pytest.approx((-100, 150))
    assert titles(hands) == ["Turn 2 things"]


def test_a_group_turns_as_one_by_the_menu_too(hands) -> None:
    hands.window.bench.edit("Group", lambda project, option: group(project, option, ["one", "two"])[0])
    hands.click(0, 50)
    hands.action("arrange.turn-left")
    assert (hands.item("one").x, hands.item("one").y) == pytest.approx((-100, -50))
    assert (hands.item("two").x, hands.item("two").y) == pytest.approx((-100, 150))


def test_a_unit_turns_and_moves_with_its_whole_stack(hands) -> None:
    units = [packaged_catalogue().cutouts[name] for name in ("rack-1-30", "rack-1-65")]
    bench = hands.window.bench
    bench.make("Stack", lambda project, option: place_stack(project, option, "main", units, 0.0, -20.0))
    bench.selection.set(["rack-1-30"])
    cut = next(cut for cut in bench.document.option.plates[0].cuts if cut.id == "stack")
    turn(hands, (cut.x, cut.y), 90.0)
    assert hands.item("rack-1-30").rotation == hands.item("rack-1-65").rotation == 90.0
    assert hands.item("rack-1-30").y == pytest.approx(cut.y)
    hands.action("edit.undo")
    upper = hands.item("rack-1-30")
    hands.drag((upper.x + 60, upper.y), (upper.x + 70, upper.y + 9), held=ALT)
    moved = next(cut for cut in bench.document.option.plates[0].cuts if cut.id == "stack")
    assert hands.item("rack-1-65").x - moved.x == pytest.approx(0.0)
    assert moved.x == pytest.approx(10.0, abs=1.0)


def test_what_is_locked_is_refused_in_a_sentence(hands) -> None:
    hands.window.bench.edit("Lock", lambda project, option: lock(project, option, ["two"]))
    hands.click(0, 50)
    hands.hover(*handle(hands))
    turn(hands, (0, 50), 45.0)
    hands.hover(150, 120)
    assert hands.item("two").rotation == 0.0
    assert "locked; unlock it first" in hands.window.statusBar().words.text()
    assert titles(hands) == ["Lock"]


def test_from_behind_it_turns_the_way_the_hand_goes(hands) -> None:
    hands.action("view.behind")
    hands.click(0, 50)
    turn(hands, (0, 50), 45.0)
    assert hands.item("two").rotation == 45.0


def test_the_handle_stands_below_where_above_is_out_of_view(hands) -> None:
    hands.click(0, 50)
    bench = hands.window.bench
    bench.view.set_zoom(5.0)
    bench.view.centerOn(0, 40)
    bench.view.scrolled.emit()
    while bench.view.seen()[3] > 92.0:
        bench.view.scroll_mm(0.0, -5.0)
    assert handle(hands).y < 8.0


def test_an_angle_in_figures(hands) -> None:
    def act(dialog) -> None:
        dialog.findChild(AngleEntry).setText("12,5")
        dialog.findChild(AngleEntry).edited.emit()
        dialog.accept()

    hands.click(0, 50)
    in_dialog(act)
    QTest.keyClick(hands.window, Qt.Key.Key_U, CTRL)
    assert hands.item("two").rotation == 12.5
    assert titles(hands) == ["Turn by an angle"]


@pytest.mark.parametrize(
    ("stood", "wanted", "turned"),
    [
        (0.0, 7.4, 0.0),
        (0.0, 7.6, 15.0),
        (20.0, 1.0, -5.0),
        (350.0, 20.0, 25.0),
        (0.0, -172.0, -165.0),
        (0.0, 179.0, 180),
    ],
)
def test_a_turn_ends_at_a_step(stood, wanted, turned) -> None:
    assert turn_to_step(stood, wanted, 15.0) == pytest.approx(turned)


def typed(hands, figures: str) -> None:
    for figure in figures:
        QTest.keyClicks(hands.view, figure)


def begin_turn(hands) -> Point:
    """'two' is selected and being turned by 45°; where the handle was taken hold of."""
    hands.click(0, 50)
    start = handle(hands)
    assert start is not None
    hands.press(*start)
    hands.move(*about((0, 50), start, 44.0))
    return start


def word(hands) -> str:
    return hands.window.statusBar().words.text()


def test_figures_typed_while_turning_are_the_angle_and_enter_finishes(hands) -> None:
    start = begin_turn(hands)
    typed(hands, "90 - 7 1/2")
    assert "by 90 - 7 1/2 = 82.5°" in word(hands)
    hands.move(*about((0, 50), start, 10.0))
    assert "by 90 - 7 1/2 = 82.5°" in word(hands)
    hands.key(Qt.Key.Key_Return)
    assert hands.item("two").rotation == 82.5
    hands.move(*about((0, 50), start, 120.0))
    hands.release(*about((0, 50), start, 120.0))
    assert hands.item("two").rotation == 82.5
    assert titles(hands) == ["Turn two"]


def test_backspace_takes_figures_back_and_then_the_pointer_turns_again(hands) -> None:
    start = begin_turn(hands)
    typed(hands, "-33")
    hands.key(Qt.Key.Key_Backspace)
    assert "by -3°" in word(hands)
    for _ in range(2):
        hands.key(Qt.Key.Key_Backspace)
    assert "by 45°" in word(hands)
    hands.move(*about((0, 50), start, 31.0))
    hands.release(*about((0, 50), start, 31.0))
    assert hands.item("two").rotation == 30.0


def test_what_is_no_angle_yet_does_not_finish_and_escape_puts_it_back(hands) -> None:
    start = begin_turn(hands)
    typed(hands, "20+")
    hands.key(Qt.Key.Key_Return)
    assert "'20+' is no angle" in word(hands)
    assert titles(hands) == []
    hands.key(Qt.Key.Key_Escape)
    hands.release(*start)
    assert hands.item("two").rotation == 0.0
    assert titles(hands) == []


def test_the_button_let_go_takes_the_typed_angle(hands) -> None:
    start = begin_turn(hands)
    typed(hands, "12,5")
    hands.release(*about((0, 50), start, 44.0))
    assert hands.item("two").rotation == 12.5


def test_the_handle_stands_on_no_neighbour_while_there_is_room_elsewhere(hands) -> None:
    bench = hands.window.bench
    around = {"one": (0.0, 135.0), "three": (85.0, 50.0)}
    for name, (x, y) in around.items():
        bench.edit("Move", lambda project, option, name=name, x=x, y=y: move_to(project, option, name, x, y))
    hands.click(0, 50)
    at = handle(hands)
    radius = 9.0 / bench.view.zoom
    for x, y in around.values():
        assert math.hypot(at.x - x, at.y - y) > 42.0 + radius
    assert abs(at.x) > 42.0 or abs(at.y - 50.0) > 42.0
