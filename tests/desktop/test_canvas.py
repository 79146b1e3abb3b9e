import pytest
from PySide6.QtCore import QPointF, Qt
from PySide6.QtTest import QTest

from panelcad.editing.move import move_by
from panelcad.geometry.point import Point
from tests.desktop.hands import MIDDLE


def test_the_whole_panel_is_seen_at_first(window) -> None:
    x1, y1, x2, y2 = window.bench.view.seen()
    assert x1 < -300
    assert x2 > 300
    assert y1 < -150
    assert y2 > 150


@pytest.mark.parametrize("notches", [1, 3, -2])
def test_the_wheel_zooms_at_the_pointer(hands, notches) -> None:
    before = hands.pixel(120, 40)
    zoom = hands.view.zoom
    hands.wheel(120, 40, notches)
    after = hands.pixel(120, 40)
    assert (after - before).manhattanLength() <= 2
    assert hands.view.zoom == pytest.approx(zoom * 1.2**notches)


def test_the_middle_button_pans(hands) -> None:
    hands.wheel(0, 0, 5)
    before = hands.view.seen()
    start = hands.pixel(0, 0)
    hands.drag((0, 0), (20, 10), button=MIDDLE)
    assert hands.view.seen()[0] < before[0]
    assert hands.pixel(0, 0) != start


def test_the_space_bar_pans_with_the_left_button(hands) -> None:
    hands.wheel(0, 0, 5)
    before = hands.view.seen()
    QTest.keyPress(hands.view, Qt.Key.Key_Space)
    hands.drag((0, 0), (20, 0))
    QTest.keyRelease(hands.view, Qt.Key.Key_Space)
    assert hands.view.seen()[0] < before[0]
    assert hands.window.bench.selection.ids == ()


def test_the_panel_is_drawn_to_scale(hands) -> None:
    left, right = hands.pixel(-300, 0), hands.pixel(300, 0)
    assert right.x() - left.x() == pytest.approx(600 * hands.view.zoom, abs=1.5)


def test_resizing_keeps_the_whole_panel_in_view(window, qtbot) -> None:
    window.resize(1000, 700)
    qtbot.wait(1)
    x1, _, x2, _ = window.bench.view.seen()
    assert x1 < -300
    assert x2 > 300


def test_what_did_not_change_is_not_drawn_anew(window) -> None:
    before = {(item.owner, item.picture.layer): item for item in window.bench.stage.scene.groups}
    pictures = {item.owner: item.picture for item in before.values()}
    window.bench.edit("Move", lambda project, option: move_by(project, option, ("one",), 3.0, 0.0))
    for item in window.bench.stage.scene.groups:
        assert before[item.owner, item.picture.layer] is item
        if item.owner in {"two", "two-cut", "three", "three-cut"}:
            assert item.picture is pictures[item.owner]


def test_the_pointer_is_read_out_in_the_unit(hands) -> None:
    hands.hover(100, -25)
    words = hands.window.statusBar().place.text().split()
    assert words[::2] == ["x", "y", "mm"]
    assert float(words[1]) == pytest.approx(100, abs=1)
    assert float(words[3]) == pytest.approx(-25, abs=1)


def test_a_place_between_items_has_no_owner(window) -> None:
    scene = window.bench.stage.scene
    assert scene.owners_at(Point(0, 50), 0.5)[0] == "two-cut"
    assert scene.owners_at(Point(100, 100), 0.5) == ("main",)
    assert scene.owners_at(Point(1000, 1000), 0.5) == ()


def test_the_view_from_behind_is_mirrored(hands) -> None:
    at_front = hands.view.mapFromScene(QPointF(-200, 50))
    hands.action("view.behind")
    assert hands.pixel(200, -50).x() == pytest.approx(at_front.x(), abs=3)


@pytest.mark.parametrize(("measured", "words"), [(0.0, "measure it once"), (4.2, "as this screen was measured")])
def test_true_size_is_that_of_the_screen_and_says_how_it_is_known(hands, measured, words) -> None:
    hands.window.settings.pixels_per_mm = measured
    hands.action("view.true")
    assert words in hands.window.statusBar().words.text()
    if measured:
        assert hands.view.zoom == pytest.approx(measured)
