"""The pane of the next point: it is seen whole, Enter leads on in it, and the view grows with what is typed."""

import pytest
from PySide6.QtCore import QEvent, QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QPushButton

from panelcad.desktop.drawing_desk import EdgeKind
from panelcad.desktop.main_window import MainWindow
from panelcad.desktop.settings import Settings
from panelcad.geometry.point import Point
from tests.desktop.hands import Hands
from tests.desktop.next_dialog import in_dialog
from tests.desktop.test_course_tool import choose
from tests.desktop.test_panel_dialogs import box, press


def typed(hands, *points: tuple[str, str]):
    hands.window.bench.take_tool("course-outline")
    pane = hands.window.docks.dock("drawing").widget()
    pane = getattr(pane, "widget", lambda: pane)()
    for x, y in points:
        for entry, text in zip(pane.figures, (x, y), strict=True):
            entry.setFocus()
            QTest.keyClicks(entry, text)
        QTest.keyClick(pane.figures[1], Qt.Key.Key_Return)
    return pane


def test_the_fields_keep_their_height_while_an_error_is_shown(hands, qtbot) -> None:
    pane = typed(hands, ("0", "0"))
    QTest.keyClicks(pane.figures[0], "x")
    QTest.keyClick(pane.figures[0], Qt.Key.Key_Return)
    assert "cannot be read" in pane.problem.text()
    qtbot.wait(50)
    first, second = pane.figures
    assert first.height() >= first.sizeHint().height()
    assert second.geometry().top() > first.geometry().bottom()


def test_the_view_grows_with_an_outline_that_is_typed_beyond_its_edge(hands) -> None:
    typed(hands, ("0", "0"), ("2000 mm", "0"))
    assert hands.view.seen()[2] > 2000.0


def tabs(count: int) -> None:
    for _ in range(count):
        QTest.keyClick(QApplication.focusWidget(), Qt.Key.Key_Tab)


def enter() -> None:
    QTest.keyClick(QApplication.focusWidget(), Qt.Key.Key_Return)


def at_radius(hands):
    """Two points are set, the x of a third is typed, and the radius of the second has the keyboard."""
    pane = typed(hands, ("0", "0"), ("120", "0"), ("120", "50"))
    QTest.keyClicks(pane.figures[0], "-40")
    tabs(3)
    assert QApplication.focusWidget() is pane.radius
    return pane


def test_enter_in_the_radius_rounds_the_corner_and_sets_the_point_that_is_typed(hands) -> None:
    pane = at_radius(hands)
    QTest.keyClicks(pane.radius, "6")
    enter()
    stations = hands.window.bench.drawing.course.stations
    assert [station.at for station in stations[2:]] == [Point(120.0, 50.0), Point(-40.0, 50.0)]
    assert stations[2].radius == 6.0
    assert pane.figures[0].hasFocus()


def test_enter_in_the_radius_goes_to_x_where_no_point_is_typed(hands) -> None:
    pane = typed(hands, ("0", "0"), ("120", "0"))
    for text, radius in (("6", 6.0), ("", 6.0)):
        pane.radius.setFocus()
        QTest.keyClicks(pane.radius, text)
        enter()
        assert pane.figures[0].hasFocus()
        assert hands.window.bench.drawing.course.last.radius == radius


def test_enter_presses_the_button_that_has_the_keyboard(hands) -> None:
    pane = at_radius(hands)
    tabs(1)
    assert QApplication.focusWidget().text() == "Set the point"
    enter()
    assert hands.window.bench.drawing.course.last.at == Point(-40.0, 50.0)
    assert pane.figures[0].hasFocus()


@pytest.fixture
def first_window(qtbot, own_settings):
    """As it is started without a file, in the size that it has at first on a screen of 1600 × 1000."""
    made = MainWindow(Settings())
    made.resize(1440, 920)
    made.show()
    qtbot.waitExposed(made)
    yield made
    made.bench.document.mark_saved(None, made.bench.document.project)
    made.close()
    made.deleteLater()
    QApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)


def is_whole(pane) -> bool:
    """Every button of the pane is seen as it is."""
    return all(
        button.visibleRegion().boundingRect().height() == button.height() for button in pane.findChildren(QPushButton)
    )


def test_the_pane_is_seen_whole_from_the_first_panel_on_and_with_all_that_an_arc_asks(first_window, qtbot) -> None:
    def begin(dialog) -> None:
        choose(box(dialog, "Outline"), "drawn point by point")
        press(dialog, "Begin")

    in_dialog(begin)
    hands = Hands(first_window)
    hands.action("file.new")
    pane = first_window.docks.dock("drawing").widget()
    qtbot.waitUntil(lambda: is_whole(pane))
    first_window.bench.drawing.take_edge(EdgeKind.RADIUS)
    qtbot.waitUntil(lambda: pane.bow.isVisible() and is_whole(pane))
    hands.action("tool.select")


def test_nothing_of_the_pane_moves_when_a_refusal_is_told(hands, qtbot) -> None:
    pane = typed(hands, ("0", "0"), ("120", "0"))
    qtbot.waitUntil(lambda: is_whole(pane))
    button = pane.findChild(QPushButton)
    before = button.mapTo(hands.window, QPoint(0, 0))
    QTest.keyClicks(pane.figures[0], "60")
    QApplication.processEvents()
    assert "would cross" in pane.problem.text()
    assert button.mapTo(hands.window, QPoint(0, 0)) == before
