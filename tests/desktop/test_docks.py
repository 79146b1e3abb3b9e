"""Panes are moved, given windows of their own, closed, put away together, remembered, and laid out as at first."""

import pytest
from PySide6.QtCore import QEvent, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from panelcad.desktop.main_window import MainWindow
from panelcad.desktop.panes.table import PANES
from panelcad.desktop.settings import Settings
from panelcad.library.samples import sample_file

LEFT = Qt.MouseButton.LeftButton
AT_FIRST = {"library", "items", "properties", "findings"}


def shown(window) -> set[str]:
    return {kind.id for kind in PANES if window.docks.dock(kind.id).isVisible()}


def settle() -> None:
    for _ in range(10):
        QApplication.processEvents()


def press(button) -> None:
    QTest.mouseClick(button, LEFT)
    settle()


def test_a_pane_is_closed_by_its_cross_and_comes_back_by_its_key(window) -> None:
    press(window.docks.dock("library").titleBarWidget().close_button)
    assert shown(window) == AT_FIRST - {"library"}
    QTest.keyClick(window, Qt.Key.Key_1, Qt.KeyboardModifier.AltModifier)
    assert shown(window) == AT_FIRST


def test_a_pane_gets_a_window_of_its_own_and_comes_back(window) -> None:
    dock = window.docks.dock("findings")
    title = dock.titleBarWidget()
    press(title.own_window)
    assert dock.isFloating()
    assert title.own_window.toolTip() == "Back into the window"
    press(title.own_window)
    assert not dock.isFloating()
    assert title.own_window.toolTip() == "In a window of its own"


def test_one_key_leaves_the_canvas_alone_and_brings_back_what_was_there(window) -> None:
    window.docks.dock("items").close()
    window.docks.dock("layers").show()
    before = shown(window)
    canvas = window.bench.view.width()
    QTest.keyClick(window, Qt.Key.Key_F12)
    settle()
    assert not shown(window)
    assert window.bench.view.width() > canvas + 400
    QTest.keyClick(window, Qt.Key.Key_F12)
    assert shown(window) == before == {"library", "properties", "findings", "layers"}


def test_panes_lie_as_at_first_again(window) -> None:
    settle()
    places = {name: window.docks.dock(name).geometry() for name in AT_FIRST}
    window.addDockWidget(Qt.DockWidgetArea.RightDockWidgetArea, window.docks.dock("library"))
    window.docks.dock("properties").setFloating(True)
    window.docks.dock("findings").close()
    window.docks.dock("history").show()
    settle()
    window.menus.actions["view.panes-first"].trigger()
    settle()
    assert shown(window) == AT_FIRST
    assert {name: window.docks.dock(name).geometry() for name in AT_FIRST} == places


@pytest.fixture
def again(window, qtbot, panel_file):
    """What makes the next day's window out of this one."""
    made = []

    def start() -> MainWindow:
        window.close()
        made.append(MainWindow(Settings()))
        made[0].show()
        qtbot.waitExposed(made[0])
        made[0].open(panel_file)
        settle()
        return made[0]

    yield start
    for each in made:
        each.close()
        each.deleteLater()
    QApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)


def test_the_next_day_the_panes_are_where_they_were(window, again) -> None:
    window.docks.dock("library").setFloating(True)
    window.docks.dock("findings").close()
    window.docks.dock("history").show()
    window.addDockWidget(Qt.DockWidgetArea.RightDockWidgetArea, window.docks.dock("items"))
    settle()
    next_day = again()
    assert shown(next_day) == {"library", "items", "properties", "history"}
    assert next_day.docks.dock("library").isFloating()
    assert next_day.dockWidgetArea(next_day.docks.dock("items")) == Qt.DockWidgetArea.RightDockWidgetArea


def test_a_tools_pane_is_not_there_the_next_day_without_the_tool(window, again) -> None:
    window.menus.actions["tool.outline"].trigger()
    settle()
    assert "outline" in shown(window)
    assert "outline" not in shown(again())


def test_a_long_name_is_shown_whole_where_the_bar_has_room(window, qtbot) -> None:
    window.resize(1500, 800)
    window.open(sample_file("tourer"))
    settle()
    boxes = [chooser.box for chooser in window.menus.bar._choosers if chooser.isVisible()]
    assert [box.shown_text for box in boxes] == [box.currentText() for box in boxes]
    assert boxes[0].currentText() == "Round displays and a compact navigator"


def test_in_a_narrow_window_the_cautions_leave_room_for_the_panel(window) -> None:
    cautions = window.workspace.cautions
    settle()
    whole = cautions.words.text()
    window.resize(800, 600)
    settle()
    assert cautions.words.text() == "A planning aid: it approves nothing."
    assert cautions.height() < 80
    assert cautions.toolTip() == whole
    window.resize(1280, 800)
    settle()
    assert cautions.words.text() == whole
    assert not cautions.toolTip()


def test_the_options_may_be_as_high_as_one_likes_beside_the_equipment(window) -> None:
    window.resize(1600, 1000)
    equipment, options = window.docks.dock("equipment"), window.docks.dock("options")
    for dock in (equipment, options):
        dock.go()
    QApplication.processEvents()
    window.resizeDocks([options], [560], Qt.Orientation.Vertical)
    QApplication.processEvents()
    assert options.height() >= 440
    assert equipment.widget().height() >= equipment.widget().minimumSizeHint().height()
