import pytest
from PySide6.QtCore import QRectF, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QGraphicsLineItem

from panelcad.geometry.across import Across


@pytest.fixture
def section(hands):
    hands.window.docks.dock("section").show()
    return hands.window.docks.dock("section").widget()


def test_the_tool_brings_the_pane_and_drags_the_line(hands) -> None:
    QTest.keyClick(hands.window, Qt.Key.Key_S)
    pane = hands.window.docks.dock("section").widget()
    assert pane.isVisible()
    hands.drag((100, 0), (150, 0), held=Qt.KeyboardModifier.AltModifier)
    assert hands.window.bench.section.line.at == pytest.approx(150, abs=1)
    assert float(pane.at.text()) == pytest.approx(150, abs=1)


def test_the_pane_asks_for_height_and_its_words_are_whole(section) -> None:
    assert section.sizeHint().height() >= 240
    assert section.way.shown_text == section.way.currentText()


def test_the_line_is_caught_by_a_centre(hands, section) -> None:
    QTest.keyClick(hands.window, Qt.Key.Key_S)
    hands.drag((100, 0), (1, 0))
    assert hands.window.bench.section.line.at == 0.0
    assert "centre of two" in hands.window.statusBar().words.text()


def test_the_section_shows_the_metal_that_the_line_runs_through(hands, section) -> None:
    hands.window.bench.section.run_at(-100.0)
    whole = section.scene.box(("main",))
    assert whole == pytest.approx((0.0, -150.0, 2.0, 150.0))
    assert [item.owner for item in section.scene.groups] == ["main"]


def test_an_edit_shows_in_the_section_too(hands, section) -> None:
    hands.window.bench.section.run_at(0.0)
    before = len(section.scene.groups[0].picture.nodes)
    hands.click(0, 50)
    hands.key(Qt.Key.Key_Delete)
    assert before == 2
    assert len(section.scene.groups[0].picture.nodes) == 1


def test_turning_the_section(hands, section) -> None:
    QTest.keyClick(hands.window, Qt.Key.Key_S)
    hands.view.setFocus()
    hands.key(Qt.Key.Key_T)
    assert hands.window.bench.section.line.across is Across.HORIZONTAL
    section.way.setCurrentIndex(0)
    section.way.activated.emit(0)
    assert hands.window.bench.section.line.across is Across.VERTICAL


def test_the_line_comes_and_goes_with_the_pane(hands, section) -> None:
    scene = hands.window.bench.stage.scene

    def lines() -> int:
        reach = QRectF(-0.5, -165.0, 1.0, 10.0)
        return sum(isinstance(item, QGraphicsLineItem) for item in scene.items(reach))

    assert lines() == 1
    hands.window.docks.dock("section").hide()
    assert lines() == 0


def test_rulers_tell_depth_and_place_in_the_users_unit(hands, section, qtbot) -> None:
    """The front face is at 0 of the upper ruler, and the mark follows the pointer."""
    assert all(ruler.isVisible() for ruler in section.rulers)
    hands.window.bench.section.run_at(0.0)
    top, left = section.rulers
    at = section.view.mapFromScene(0.0, 50.0)
    QTest.mouseMove(section.view.viewport(), at)
    qtbot.waitUntil(lambda: top._at is not None)
    assert top._pixel(0.0) == pytest.approx(at.x(), abs=1)
    assert left._pixel(50.0) == pytest.approx(at.y(), abs=1)
