"""Words laid over the picture are never cut off at the view's edge, and none covers another."""

from itertools import combinations

import pytest
from PySide6.QtCore import QPointF, QRectF, Qt

from panelcad.desktop.canvas.label import LabelSide, standing
from panelcad.desktop.canvas.ruler import Ruler

ALT, CTRL = Qt.KeyboardModifier.AltModifier, Qt.KeyboardModifier.ControlModifier
ROOM = QRectF(0, 0, 400, 300)
SIZE = QRectF(0, 0, 100, 20)


def boxes(hands) -> dict[str, QRectF]:
    """Where each label is on the viewport."""
    transform = hands.view.viewportTransform()
    shown = hands.window.bench.stage.scene.labels.shown
    return {item.words: item.deviceTransform(transform).mapRect(item.boundingRect()) for item in shown}


def cut_off(hands) -> list[str]:
    view = QRectF(hands.view.viewport().rect())
    return [words for words, box in boxes(hands).items() if not view.contains(box)]


def covered(hands) -> list[tuple[str, str]]:
    found = boxes(hands)
    return [(a, b) for a, b in combinations(found, 2) if found[a].adjusted(1, 1, -1, -1).intersects(found[b])]


def look_at(hands, x: float, y: float, zoom: float) -> None:
    """Bring a place of the plate to the middle of the view."""
    hands.view.set_zoom(zoom)
    hands.view.centerOn(QPointF(x, y))
    hands.view.scrolled.emit()


@pytest.mark.parametrize("at", [(-10, 150), (410, 150), (200, -10), (200, 310), (0, 0), (400, 300), (900, 900)])
@pytest.mark.parametrize("side", LabelSide)
def test_a_label_stands_in_the_room_wherever_its_place_is(at, side) -> None:
    assert ROOM.contains(standing(SIZE, QPointF(*at), side, ROOM, ()))


def test_a_label_stands_on_its_side_where_there_is_room_and_else_on_the_other() -> None:
    assert standing(SIZE, QPointF(200, 100), LabelSide.ABOVE, ROOM, ()).bottom() == 95
    assert standing(SIZE, QPointF(200, 100), LabelSide.BELOW, ROOM, ()).top() == 105
    assert standing(SIZE, QPointF(200, 10), LabelSide.ABOVE, ROOM, ()).top() == 15
    assert standing(SIZE, QPointF(200, 290), LabelSide.BELOW, ROOM, ()).bottom() == 285


def test_labels_of_one_place_stand_beside_one_another() -> None:
    taken: list[QRectF] = []
    for _ in range(5):
        box = standing(SIZE, QPointF(0, 0), LabelSide.ABOVE, ROOM, taken)
        assert ROOM.contains(box)
        assert not any(box.intersects(other) for other in taken)
        taken.append(box)


def test_lengths_stay_in_sight_while_an_outline_is_drawn_at_any_zoom(hands) -> None:
    hands.action("tool.course-outline")
    for x, y in ((-280, -140), (280, -140), (280, 140)):
        hands.click(x, y, held=ALT)
    hands.hover(-280, 140)
    for zoom in (0.7, 1.5, 4.0, 12.0):
        for x, y in ((-280, -140), (280, -140), (0, -140), (280, 0), (280, 140)):
            look_at(hands, x, y, zoom)
            assert cut_off(hands) == []
            assert covered(hands) == []


def test_a_length_moves_along_its_edge_into_the_view_and_goes_where_none_of_it_is_seen(hands) -> None:
    hands.action("tool.course-outline")
    for x, y in ((-280, -140), (280, -140)):
        hands.click(x, y, held=ALT)
    hands.hover(280, -139)
    (length,) = [words for words in boxes(hands) if "°" not in words and "point" not in words]
    look_at(hands, -250, -140, 12.0)
    assert length in boxes(hands)
    assert cut_off(hands) == []
    look_at(hands, -250, 100, 12.0)
    assert length not in boxes(hands)


def test_one_can_look_closely_while_an_outline_is_drawn(hands) -> None:
    hands.action("tool.course-outline")
    for x, y in ((-280, -140), (280, -140)):
        hands.click(x, y, held=ALT)
    before = hands.view.zoom
    hands.wheel(270, -140, 8)
    assert hands.view.zoom > 4 * before


@pytest.mark.parametrize("corner", [(-300, 150), (300, 150), (-300, -150), (300, -150)])
def test_distances_stay_in_sight_while_something_is_dragged_at_a_corner(hands, corner) -> None:
    x, y = corner
    hands.click(0, 50)
    for zoom in (0.8, 2.0):
        look_at(hands, 0, 50, zoom)
        half_wide, half_high = (side / 2 / zoom for side in (hands.view.viewport().width(), hands.view.height()))
        start = (0.0, 50.0)
        hands.press(*start)
        for share in (0.5, 0.9, 1.0):
            hands.move(start[0] + (half_wide - 3) * share * x / 300, start[1] + (half_high - 3) * share * y / 150)
            assert cut_off(hands) == []
            assert covered(hands) == []
        hands.move(0, -50)
        assert boxes(hands)
        assert cut_off(hands) == []
        hands.key(Qt.Key.Key_Escape)


def test_a_measure_stays_in_sight(hands) -> None:
    hands.action("tool.measure")
    hands.click(-290, -140, held=ALT)
    hands.click(-288, 140, held=ALT)
    (words,) = boxes(hands)
    for x, y, zoom in ((-289, 0, 2.0), (-289, 0, 0.6), (0, 0, 0.5), (-100, 130, 3.0)):
        look_at(hands, x, y, zoom)
        assert cut_off(hands) == []
    look_at(hands, -289, 100, 20.0)
    assert list(boxes(hands)) == [words]


def test_words_wider_than_the_view_take_several_lines(hands) -> None:
    hands.action("tool.measure")
    hands.window.bench.view.setFixedWidth(130)
    look_at(hands, 0, 0, 1.0)
    hands.click(-20, 0, held=ALT)
    hands.click(20, 10, held=ALT)
    assert len(boxes(hands)) == 1
    assert cut_off(hands) == []


def test_values_of_the_rulers_are_whole(hands) -> None:
    rulers = hands.window.findChildren(Ruler)
    for step in range(12):
        look_at(hands, -300 + 7 * step, 100 - 9 * step, 0.7 + 0.35 * step)
        for ruler in rulers:
            ruler.grab()
            long = max(ruler.width(), ruler.height())
            assert ruler.values
            assert all(start >= 0 and end <= long for _, start, end in ruler.values)
