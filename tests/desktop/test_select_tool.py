import pytest
from PySide6.QtCore import Qt

from panelcad.geometry.point import Point
from tests.desktop.hands import NONE

SHIFT, CTRL, ALT = (
    Qt.KeyboardModifier.ShiftModifier,
    Qt.KeyboardModifier.ControlModifier,
    Qt.KeyboardModifier.AltModifier,
)


def chosen(hands) -> set[str]:
    return set(hands.window.bench.selection.ids)


def test_a_click_picks_and_a_click_beside_leaves(hands) -> None:
    hands.click(0, 50)
    assert chosen(hands) == {"two"}
    hands.click(100, 120)
    assert chosen(hands) == set()


def test_shift_adds_and_ctrl_takes_out(hands) -> None:
    hands.click(0, 50)
    hands.click(-200, 50, held=SHIFT)
    assert chosen(hands) == {"one", "two"}
    hands.click(0, 50, held=CTRL)
    assert chosen(hands) == {"one"}


def test_a_box_to_the_right_takes_what_is_inside(hands) -> None:
    hands.drag((-260, 120), (20, 0))
    assert chosen(hands) == {"one"}


def test_a_box_to_the_left_takes_what_it_touches(hands) -> None:
    hands.drag((20, 120), (-260, 0))
    assert chosen(hands) == {"one", "two"}


def test_a_drag_moves_item_and_cut_as_one_step(hands) -> None:
    document = hands.window.bench.document
    before = document.project
    hands.drag((0, 50), (30, 73), held=ALT, steps=8)
    assert (hands.item("two").x, hands.item("two").y) == pytest.approx((30, 73), abs=1.0)
    cut = next(cut for cut in document.option.plates[0].cuts if cut.id == "two-cut")
    assert (cut.x, cut.y) == (hands.item("two").x, hands.item("two").y)
    assert [step.title for step in document.done] == ["Move two"]
    hands.action("edit.undo")
    assert document.project is before
    assert document.is_saved
    hands.action("edit.redo")
    assert hands.item("two").x == pytest.approx(30, abs=1.0)


def test_a_drag_right_after_a_click_moves_too(hands) -> None:
    hands.click(0, 50)
    hands.press_again(0, 50)
    hands.move(20, 60, held=Qt.KeyboardModifier.AltModifier)
    hands.release(20, 60, held=Qt.KeyboardModifier.AltModifier)
    assert hands.item("two").x == pytest.approx(20, abs=1)
    assert hands.window.bench.selection.ids == ("two",)


def test_a_drag_snaps_to_the_centre_line_of_another(hands) -> None:
    hands.drag((200, -50), (2, -60), steps=6)
    assert hands.item("three").x == 0.0


def test_a_drag_snaps_to_the_grid(hands) -> None:
    settings = hands.window.settings
    settings.shows_grid = True
    settings.set_step("grid", hands.window.bench.unit, "7")
    hands.drag((200, -50), (117, -83), steps=6)
    assert hands.item("three").x % 7 == pytest.approx(0, abs=1e-6)


def test_the_status_bar_says_what_it_snapped_to(hands) -> None:
    hands.press(200, -50)
    hands.move(100, -50)
    hands.move(-199, -90)
    assert "centre of one" in hands.window.statusBar().words.text()
    hands.release(-199, -90)


def test_the_status_bar_says_how_far_a_drag_has_gone(hands) -> None:
    hands.press(200, -50)
    hands.move(190, -50, held=Qt.KeyboardModifier.AltModifier)
    hands.move(150, -30, held=Qt.KeyboardModifier.AltModifier)
    said = hands.window.statusBar().words.text()
    hands.release(150, -30, held=Qt.KeyboardModifier.AltModifier)
    moved = hands.item("three")
    assert said == f"Moved {200 - moved.x:.2f} mm left, {moved.y + 50:.2f} mm up"


def test_alt_suspends_snapping(hands) -> None:
    hands.drag((200, -50), (2, -60), held=ALT, steps=6)
    assert hands.item("three").x == pytest.approx(2, abs=1.0)
    assert hands.item("three").x != 0.0


def test_shift_keeps_a_drag_straight(hands) -> None:
    hands.click(200, -50)
    hands.drag((200, -50), (150, -61), held=SHIFT)
    assert hands.item("three").y == -50.0
    assert hands.item("three").x != 200.0


def test_escape_puts_a_drag_back(hands) -> None:
    document = hands.window.bench.document
    before = document.project
    hands.press(0, 50)
    hands.move(40, 80)
    hands.move(60, 90)
    hands.key(Qt.Key.Key_Escape)
    hands.release(60, 90)
    assert document.project is before
    assert not document.done
    assert hands.window.bench.stage.scene.owners_at(Point(0, 50), 0.5)[0] == "two-cut"


@pytest.mark.parametrize(
    ("key", "held", "dx", "dy"),
    [
        (Qt.Key.Key_Right, NONE, 0.2, 0.0),
        (Qt.Key.Key_Up, NONE, 0.0, 0.2),
        (Qt.Key.Key_Left, SHIFT, -5.0, 0.0),
        (Qt.Key.Key_Down, SHIFT, 0.0, -5.0),
    ],
)
def test_arrow_keys_nudge(hands, key, held, dx, dy) -> None:
    hands.click(0, 50)
    hands.key(key, held)
    assert (hands.item("two").x, hands.item("two").y) == pytest.approx((dx, 50 + dy))


def test_arrow_keys_do_nothing_in_a_field(hands, qtbot) -> None:
    hands.click(0, 50)
    field = hands.window.docks.dock("properties").widget().sheet.across
    field.setFocus()
    qtbot.keyClick(field, Qt.Key.Key_Right)
    assert hands.item("two").x == 0.0


def test_delete_takes_item_and_cut_away(hands) -> None:
    hands.click(0, 50)
    hands.key(Qt.Key.Key_Delete)
    option = hands.window.bench.document.option
    assert "two" not in {item.id for item in option.items}
    assert "two-cut" not in option.cut_ids()
    assert chosen(hands) == set()


def test_a_drag_from_behind_goes_the_way_the_hand_goes(hands) -> None:
    hands.action("view.behind")
    hands.drag((200, -50), (150, -70), held=ALT)
    assert (hands.item("three").x, hands.item("three").y) == pytest.approx((150, -70), abs=1.0)


def test_undo_selects_again_what_it_brings_back_and_redo_what_was_left(hands) -> None:
    selection = hands.window.bench.selection
    hands.click(0, 50)
    hands.key(Qt.Key.Key_Delete)
    assert selection.ids == ()
    hands.click(-200, 50)
    hands.action("edit.undo")
    assert selection.ids == ("two",)
    hands.action("edit.redo")
    assert selection.ids == ("one",)


def test_undo_of_what_was_made_leaves_what_it_was_made_of_selected(hands) -> None:
    selection = hands.window.bench.selection
    hands.click(0, 50)
    hands.action("edit.duplicate")
    copy = selection.ids
    assert copy != ("two",)
    hands.action("edit.undo")
    assert selection.ids == ("two",)
    hands.action("edit.redo")
    assert selection.ids == copy


def test_undo_of_an_earlier_step_selects_what_that_step_was_done_to(hands) -> None:
    selection = hands.window.bench.selection
    hands.click(0, 50)
    hands.key(Qt.Key.Key_Right)
    hands.click(-200, 50)
    hands.key(Qt.Key.Key_Right)
    hands.action("edit.undo")
    assert selection.ids == ("one",)
    hands.action("edit.undo")
    assert selection.ids == ("two",)
    hands.key(Qt.Key.Key_Up)
    hands.action("edit.undo")
    assert selection.ids == ("two",)
