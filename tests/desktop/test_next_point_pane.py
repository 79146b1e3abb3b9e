"""The pane of the next point: its fields keep their height, and the view grows with what is typed."""

from PySide6.QtCore import Qt
from PySide6.QtTest import QTest


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
