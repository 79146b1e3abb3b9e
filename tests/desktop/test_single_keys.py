"""Whom a single key is for: the drawings take up tools with it, lists search by it, fields write it."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QKeySequence
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QListView, QTableView, QTreeWidget

from panelcad.desktop.choice_box import ChoiceBox
from panelcad.desktop.panes.table import PANES
from panelcad.desktop.views import VIEWS
from panelcad.geometry.across import Across

CTRL, SHIFT, ALT = (
    Qt.KeyboardModifier.ControlModifier,
    Qt.KeyboardModifier.ShiftModifier,
    Qt.KeyboardModifier.AltModifier,
)


def pane(hands, pane_id: str):
    dock = hands.window.docks.dock(pane_id)
    dock.show()
    dock.raise_()
    return dock.widget()


def press(key: Qt.Key, held=Qt.KeyboardModifier.NoModifier) -> None:
    """In the widget that has the keyboard."""
    QTest.keyClick(QApplication.focusWidget(), key, held)


def findings(hands, qtbot) -> QListView:
    """The list, of two things that overlap and one that is too near the edge."""
    hands.drag((0, 50), (-170, 50), held=ALT)
    shown = pane(hands, "findings")
    qtbot.waitUntil(lambda: shown.model.rowCount() > 1)
    return shown.list


def on_the_panel(hands, qtbot) -> QTreeWidget:
    return pane(hands, "items").tree


def cutouts(hands, qtbot) -> QListView:
    return pane(hands, "library").list


def history(hands, qtbot) -> QListView:
    hands.click(0, 50)
    hands.key(Qt.Key.Key_Right)
    return pane(hands, "history").list


def units(hands, qtbot) -> QListView:
    shown = pane(hands, "equipment")
    shown.tabs.setCurrentIndex(1)
    return shown.offered


def options(hands, qtbot) -> QTableView:
    shown = pane(hands, "options")
    qtbot.waitUntil(lambda: shown.model.rowCount() > 0, timeout=20_000)
    return shown.table


LISTS = [findings, on_the_panel, cutouts, history, units, options]


@pytest.mark.parametrize("listed", LISTS)
def test_a_letter_in_a_list_goes_to_the_row_that_begins_with_it(hands, qtbot, listed) -> None:
    rows = listed(hands, qtbot)
    model = rows.model()
    words = [str(model.index(row, 0).data() or "") for row in range(model.rowCount())]
    letter = next(word[0] for word in reversed(words) if word[:1].isalpha() and word[:1].lower() != words[0][0].lower())
    rows.setFocus()
    rows.setCurrentIndex(model.index(0, 0))
    before = hands.window.bench.document.project
    QTest.keyClicks(rows, letter.lower())
    assert str(rows.currentIndex().data())[0].lower() == letter.lower()
    assert hands.window.toolbox.tool_id == "select"
    assert hands.window.bench.document.project is before
    assert QApplication.focusWidget() is rows


@pytest.mark.parametrize("listed", LISTS)
def test_no_single_key_of_an_action_does_anything_from_a_list(hands, qtbot, listed, monkeypatch) -> None:
    rows = listed(hands, qtbot)
    run = []
    monkeypatch.setattr(hands.window.menus, "run", run.append)
    rows.setFocus()
    for action in hands.window.menus.actions.values():
        for keys in action.shortcuts():
            pressed = keys[0]
            if pressed.key() < Qt.Key.Key_Escape and pressed.keyboardModifiers() in {
                Qt.KeyboardModifier.NoModifier,
                SHIFT,
            }:
                QTest.keyClick(rows, pressed.key(), pressed.keyboardModifiers())
    assert run == []


@pytest.mark.parametrize("listed", LISTS)
def test_keys_with_ctrl_and_function_keys_go_on_from_a_list(hands, qtbot, listed) -> None:
    rows = listed(hands, qtbot)
    rows.setFocus()
    QTest.keyClick(rows, Qt.Key.Key_F7)
    assert hands.window.bench.stage.view.id == "behind"
    shown = hands.window.settings.shows_grid
    QTest.keyClick(rows, Qt.Key.Key_G, CTRL)
    assert hands.window.settings.shows_grid is not shown


@pytest.mark.parametrize("listed", LISTS)
def test_esc_in_a_list_goes_back_to_the_panel(hands, qtbot, listed) -> None:
    listed(hands, qtbot).setFocus()
    press(Qt.Key.Key_Escape)
    assert QApplication.focusWidget() is hands.view
    press(Qt.Key.Key_M)
    assert hands.window.toolbox.tool_id == "measure"


def test_delete_takes_away_the_rows_of_the_list_of_what_is_on_the_panel(hands, qtbot) -> None:
    tree = on_the_panel(hands, qtbot)
    tree.setFocus()
    QTest.keyClicks(tree, "tw")
    assert hands.window.bench.selection.ids == ("two",)
    press(Qt.Key.Key_Delete)
    assert "two" not in {item.id for item in hands.window.bench.document.option.items}


@pytest.mark.parametrize("listed", [findings, cutouts, history, units])
def test_delete_in_another_list_takes_nothing_away(hands, qtbot, listed) -> None:
    rows = listed(hands, qtbot)
    hands.window.bench.selection.set(("three",))
    before = hands.window.bench.document.project
    rows.setFocus()
    press(Qt.Key.Key_Delete)
    assert hands.window.bench.document.project is before


def test_arrows_in_a_list_go_from_row_to_row_and_nudge_nothing(hands, qtbot) -> None:
    tree = on_the_panel(hands, qtbot)
    tree.setFocus()
    tree.setCurrentItem(tree.topLevelItem(0))
    before = hands.window.bench.document.project
    press(Qt.Key.Key_Down)
    assert tree.currentIndex().row() == 1
    assert hands.window.bench.document.project is before


def test_a_letter_where_nothing_makes_use_of_it_says_where_it_works(hands) -> None:
    pane(hands, "layers").everything.setFocus()
    press(Qt.Key.Key_M)
    assert hands.window.toolbox.tool_id == "select"
    assert "Esc goes there" in hands.window.statusBar().words.text()


def test_a_field_that_was_typed_in_has_its_value_back_before_the_keyboard_goes(hands) -> None:
    hands.click(0, 50)
    across = pane(hands, "properties").sheet.across
    across.setFocus()
    across.selectAll()
    QTest.keyClicks(across, "77")
    press(Qt.Key.Key_Escape)
    assert QApplication.focusWidget() is across
    press(Qt.Key.Key_Escape)
    assert QApplication.focusWidget() is hands.view
    assert hands.item("two").x == 0.0


def seen_from(hands) -> ChoiceBox:
    boxes = hands.window.menus.bar.findChildren(ChoiceBox)
    return next(box for box in boxes if box.accessibleName() == "Seen from")


def test_after_choosing_in_the_list_of_a_chooser_the_keyboard_is_on_the_panel(hands, qtbot) -> None:
    chooser = seen_from(hands)
    chooser.setFocus()
    chooser.showPopup()
    qtbot.waitUntil(chooser.view().isVisible)
    QTest.keyClick(chooser.view(), Qt.Key.Key_Down)
    QTest.keyClick(chooser.view(), Qt.Key.Key_Return)
    assert hands.window.bench.stage.view.id == "behind"
    assert QApplication.focusWidget() is hands.view


def test_arrows_in_a_chooser_go_on_choosing(hands) -> None:
    chooser = seen_from(hands)
    chooser.setFocus()
    press(Qt.Key.Key_Down)
    press(Qt.Key.Key_Down)
    assert hands.window.bench.stage.view.id == VIEWS[2].id
    assert QApplication.focusWidget() is chooser


# The section


@pytest.fixture
def section(hands):
    """The pane, with the keyboard in its drawing."""
    shown = pane(hands, "section")
    shown.view.setFocus()
    return shown


def test_t_turns_the_section_from_its_own_drawing_and_from_the_panel(hands, section) -> None:
    line = hands.window.bench.section
    press(Qt.Key.Key_T)
    assert line.across is Across.HORIZONTAL
    assert hands.window.statusBar().words.text() == "Level section at y 0.00 mm"
    hands.view.setFocus()
    press(Qt.Key.Key_T)
    assert line.across is Across.VERTICAL


def test_t_is_off_while_no_section_is_open(hands) -> None:
    turn = hands.window.menus.actions["tool.turn-section"]
    assert not turn.isEnabled()
    pane(hands, "section")
    assert turn.isEnabled()
    hands.window.docks.dock("section").hide()
    assert not turn.isEnabled()


def test_arrows_on_the_section_nudge_along_the_panel_and_never_into_depth(hands, section) -> None:
    hands.window.bench.selection.set(("two",))
    step = hands.window.settings.step("fine", hands.window.bench.unit)
    press(Qt.Key.Key_Up)
    assert (hands.item("two").x, hands.item("two").y) == (0.0, 50.0 + step)
    press(Qt.Key.Key_Right)
    assert (hands.item("two").x, hands.item("two").y) == (0.0, 50.0 + step)
    assert "depth" in hands.window.statusBar().words.text()
    press(Qt.Key.Key_T)
    press(Qt.Key.Key_Right)
    assert (hands.item("two").x, hands.item("two").y) == (step, 50.0 + step)


def test_a_tool_s_letter_on_the_section_takes_it_up_on_the_panel(hands, section) -> None:
    press(Qt.Key.Key_M)
    assert hands.window.toolbox.tool_id == "measure"
    assert QApplication.focusWidget() is hands.view


def test_zooming_is_that_of_the_drawing_the_keyboard_is_on(hands, section) -> None:
    panel, own = hands.view.zoom, section.view.zoom
    QTest.keyClick(section.view, Qt.Key.Key_Plus, CTRL)
    assert section.view.zoom > own
    assert hands.view.zoom == panel


def test_esc_on_the_section_lets_go_what_is_selected_and_then_the_section(hands, section) -> None:
    hands.window.bench.selection.set(("two",))
    press(Qt.Key.Key_Escape)
    assert not hands.window.bench.selection.ids
    assert QApplication.focusWidget() is section.view
    press(Qt.Key.Key_Escape)
    assert QApplication.focusWidget() is hands.view


# Views


@pytest.mark.parametrize("view", VIEWS, ids=lambda view: view.id)
def test_every_tool_s_key_leads_to_a_view_in_which_it_works(hands, view) -> None:
    menus, stage = hands.window.menus, hands.window.bench.stage
    named = ((name, made) for name, made in menus.actions.items() if name.startswith("tool.") and made.isCheckable())
    tools = [(name, made) for name, made in named if made.shortcuts()]
    assert len(tools) > 10
    for name, made in tools:
        hands.window.bench.take_tool("select")
        stage.look_from(view.id)
        keys = made.shortcut()[0]
        hands.view.setFocus()
        press(keys.key(), keys.keyboardModifiers())
        assert f"tool.{hands.window.toolbox.tool_id}" == name
        assert hands.window.toolbox.tool.works_in(stage.view)


def test_measuring_is_not_done_on_a_picture_in_perspective(hands) -> None:
    hands.key(Qt.Key.Key_F9)
    hands.key(Qt.Key.Key_M)
    assert hands.window.bench.stage.view.id == "front"
    hands.key(Qt.Key.Key_F9)
    assert hands.window.toolbox.tool_id == "select"


def test_an_outline_that_is_begun_waits_while_one_looks_from_the_pilots_eye(hands) -> None:
    hands.key(Qt.Key.Key_P, SHIFT)
    hands.click(-100, -100)
    hands.click(100, -100)
    course = hands.window.bench.drawing.course
    hands.key(Qt.Key.Key_F9)
    hands.click(0, 0)
    assert hands.window.bench.drawing.course == course
    assert "goes on in the view 'Front' (F5)" in hands.window.statusBar().words.text()
    hands.key(Qt.Key.Key_F5)
    hands.click(100, 100)
    assert len(hands.window.bench.drawing.course.stations) == 3


# Panes


@pytest.mark.parametrize("kind", PANES, ids=lambda kind: kind.id)
def test_the_key_of_a_pane_goes_there_and_closes_it_once_one_is_there(hands, kind) -> None:
    hands.click(0, 50)
    dock = hands.window.docks.dock(kind.id)
    pressed = QKeySequence(kind.shortcut)[0]
    press(pressed.key(), pressed.keyboardModifiers())
    assert dock.isVisible()
    assert dock.way.isChecked()
    if kind.id == "drawing":
        return  # nothing can be set there until something is drawn
    assert dock.isAncestorOf(QApplication.focusWidget())
    press(pressed.key(), pressed.keyboardModifiers())
    assert not dock.isVisible()
    assert not dock.way.isChecked()
    assert QApplication.focusWidget() is hands.view


def test_a_pane_that_is_open_is_gone_to_first(hands) -> None:
    press(Qt.Key.Key_4, ALT)
    assert QApplication.focusWidget() is pane(hands, "findings").list
    press(Qt.Key.Key_2, ALT)
    assert QApplication.focusWidget() is pane(hands, "items").tree
    assert hands.window.docks.dock("findings").isVisible()


def test_a_list_in_a_window_of_its_own_keeps_letters_too_and_esc_leads_back(hands, qtbot) -> None:
    tree = on_the_panel(hands, qtbot)
    hands.window.docks.dock("items").setFloating(True)
    tree.activateWindow()
    tree.setFocus()
    tree.setCurrentItem(tree.topLevelItem(0))
    qtbot.waitUntil(tree.hasFocus)
    QTest.keyClick(tree, Qt.Key.Key_M)
    assert hands.window.toolbox.tool_id == "select"
    press(Qt.Key.Key_Escape)
    qtbot.waitUntil(hands.view.hasFocus)
    hands.window.docks.dock("items").setFloating(False)
