"""An outline drawn point by point, with the mouse and with typed figures."""

from itertools import combinations

import pytest
from PySide6.QtCore import Qt

from panelcad.desktop.canvas.label import LabelItem
from panelcad.desktop.tools.course_picture import course_picture
from panelcad.editing.outline import edges, outline_of
from panelcad.geometry.point import distance
from panelcad.geometry.segment import Arc
from tests.desktop.next_dialog import in_dialog
from tests.desktop.test_panel_dialogs import box, field, fill, press

ALT, SHIFT = Qt.KeyboardModifier.AltModifier, Qt.KeyboardModifier.ShiftModifier
SPOTS = ((-250, -120), (250, -120), (250, 130), (-250, 130))


@pytest.fixture
def drawing(hands):
    """The tool in hand; the unit is the millimetre and a pixel about half of one."""
    hands.action("tool.course-outline")
    return hands


@pytest.fixture
def pane(drawing):
    return drawing.window.docks.dock("drawing").widget()


@pytest.fixture
def desk(drawing):
    return drawing.window.bench.drawing


def outline(hands, plate=0):
    return outline_of(hands.window.bench.document.option.plates[plate].outline)


def titles(hands) -> list[str]:
    return [step.title for step in hands.window.bench.document.done]


def typed(qtbot, pane, first: str, second: str = "", *, enter: bool = True) -> None:
    """Two figures of the next point, then Enter."""
    qtbot.keyClicks(pane.figures[0], first)
    qtbot.keyClick(pane.figures[0], Qt.Key.Key_Tab)
    qtbot.keyClicks(pane.figures[1], second)
    if enter:
        qtbot.keyClick(pane.figures[1], Qt.Key.Key_Return)


def choose(chooser, words: str) -> None:
    index = chooser.findText(words, Qt.MatchFlag.MatchStartsWith)
    chooser.setCurrentIndex(index)
    chooser.activated.emit(index)


def test_clicks_and_a_click_on_the_first_point_make_an_outline_in_one_step(drawing, desk) -> None:
    for x, y in SPOTS:
        drawing.hover(x, y)
        drawing.click(x, y, held=ALT)
    assert titles(drawing) == []
    drawing.hover(SPOTS[0][0] + 2, SPOTS[0][1] - 2)
    assert desk.coming().closes
    drawing.click(SPOTS[0][0] + 2, SPOTS[0][1] - 2)
    made = outline(drawing)
    assert [(c.x, c.y) for c in made.corners] == [pytest.approx(spot, abs=1.0) for spot in SPOTS]
    assert titles(drawing) == ["Draw the outline"]
    assert drawing.window.toolbox.tool_id == "select"
    drawing.action("edit.undo")
    assert outline(drawing).corners[0].x == -300.0


def test_a_point_is_caught_at_the_height_of_an_earlier_one(drawing, desk) -> None:
    drawing.click(-250, -120, held=ALT)
    drawing.click(180, -90, held=ALT)
    told = []
    drawing.window.bench.told.connect(told.append)
    drawing.hover(200, -121)
    assert "point 1" in told[-1]
    drawing.click(200, -121)
    first, _, last = desk.course.stations
    assert last.at.y == first.at.y


def test_shift_keeps_an_edge_level(drawing, desk) -> None:
    drawing.click(-250, -120, held=ALT)
    drawing.click(100, -60, held=SHIFT | ALT)
    assert desk.course.last.at.y == desk.course.first.y


def test_enter_closes_and_backspace_takes_a_point_back(drawing, desk) -> None:
    for x, y in (*SPOTS[:3], (0, 0), SPOTS[3]):
        drawing.click(x, y, held=ALT)
    drawing.key(Qt.Key.Key_Backspace)
    drawing.key(Qt.Key.Key_Backspace)
    assert len(desk.course.stations) == 3
    drawing.key(Qt.Key.Key_Return)
    assert len(outline(drawing).corners) == 3


def test_undo_takes_the_last_point_back_while_drawing(drawing, desk) -> None:
    drawing.click(-250, -120, held=ALT)
    drawing.click(250, -120, held=ALT)
    assert drawing.window.menus.actions["edit.undo"].text().endswith("'Point 2'")
    drawing.action("edit.undo")
    assert len(desk.course.stations) == 1


def test_a_crossing_edge_is_refused_in_a_sentence_and_shown_as_it_is_drawn(drawing, desk, qtbot) -> None:
    for x, y in SPOTS[:3]:
        drawing.click(x, y, held=ALT)
    told = drawing.window.bench.told
    with qtbot.waitSignal(told, check_params_cb=lambda words: "cross the one from point 1 to point 2" in words):
        drawing.hover(0, -140)
    drawing.click(0, -140, held=ALT)
    assert len(desk.course.stations) == 3


def test_escape_abandons_and_backspace_in_a_new_drawing_brings_the_points_back(drawing, desk) -> None:
    before = drawing.window.bench.document.project
    for x, y in SPOTS[:3]:
        drawing.click(x, y, held=ALT)
    drawing.key(Qt.Key.Key_Escape)
    assert drawing.window.toolbox.tool_id == "select"
    assert drawing.window.bench.document.project is before
    assert not drawing.window.docks.dock("drawing").isVisible()
    drawing.action("tool.course-outline")
    drawing.key(Qt.Key.Key_Backspace)
    assert len(desk.course.stations) == 3


def test_keys_go_to_the_tool_that_was_taken_while_a_field_had_them(drawing, desk) -> None:
    drawing.click(*SPOTS[0], held=ALT)
    drawing.key(Qt.Key.Key_Escape)
    drawing.window.docks.dock("library").widget().search.setFocus()
    drawing.action("tool.course-outline")
    assert drawing.window.bench.view.hasFocus()


def test_words_of_an_arc_stand_away_from_those_of_what_caught_it(drawing, desk) -> None:
    drawing.click(-100, 0, held=ALT)
    drawing.click(100, 0, held=ALT)
    drawing.key(Qt.Key.Key_A)
    drawing.click(-100, 0, held=ALT)
    drawing.hover(0, 100)
    labels = [item for item in drawing.window.bench.stage.scene.items() if isinstance(item, LabelItem)]
    boxes = [item.deviceTransform(drawing.view.viewportTransform()).mapRect(item.boundingRect()) for item in labels]
    assert len(boxes) > 1
    assert not any(one.intersects(other) for one, other in combinations(boxes, 2))


def test_an_arc_is_drawn_by_its_end_and_a_place_it_passes_through(drawing, desk) -> None:
    drawing.click(-100, 0, held=ALT)
    drawing.click(100, 0, held=ALT)
    drawing.key(Qt.Key.Key_A)
    drawing.click(-100, 0)
    drawing.hover(0, 100)
    drawing.click(0, 100, held=ALT)
    arc = next(edge for edge in edges(outline(drawing)) if isinstance(edge, Arc))
    assert arc.radius == pytest.approx(100.0, abs=1.0)


def test_figures_begun_on_the_canvas_set_points(drawing, pane, desk, qtbot) -> None:
    drawing.key(Qt.Key.Key_Minus)
    assert pane.figures[0].hasFocus()
    typed(qtbot, pane, "10 in", "-4in")
    assert desk.course.first == (-254.0, -101.6)
    typed(qtbot, pane, "10in + 1/4 in", "")
    assert desk.course.last.at == (260.35, -101.6)
    choose(pane.manner, "from the last")
    typed(qtbot, pane, "0", "200")
    assert desk.course.last.at == (260.35, 98.4)
    choose(pane.manner, "length and angle")
    typed(qtbot, pane, "514.35", "180")
    assert desk.course.last.at == pytest.approx((-254.0, 98.4))
    qtbot.keyClick(pane.figures[0], Qt.Key.Key_Return)
    assert outline(drawing).contour().area == pytest.approx(514.35 * 200.0)
    assert titles(drawing) == ["Draw the outline"]


def test_an_arc_by_its_radius_and_a_rounded_corner_are_typed(drawing, pane, desk, qtbot) -> None:
    for first, second in (("0", "0"), ("200", "0")):
        typed(qtbot, pane, first, second)
    qtbot.keyClicks(pane.radius, "20")
    qtbot.keyClick(pane.radius, Qt.Key.Key_Return)
    assert desk.course.last.radius == 20.0
    typed(qtbot, pane, "200", "100")
    choose(pane.edge, "arc by its radius")
    qtbot.keyClicks(pane.bow, "-125")
    typed(qtbot, pane, "0", "100")
    assert desk.edge.value == "straight"
    qtbot.keyClick(pane.figures[0], Qt.Key.Key_Return)
    radii = sorted(edge.radius for edge in edges(outline(drawing)) if isinstance(edge, Arc))
    assert radii == pytest.approx([20.0, 125.0])
    assert outline(drawing).contour().bounds[3] == pytest.approx(150.0)


def test_a_typed_point_is_seen_before_it_is_set(drawing, pane, desk, qtbot) -> None:
    typed(qtbot, pane, "0", "0")
    typed(qtbot, pane, "120", "50", enter=False)
    assert desk.coming().end == (120.0, 50.0)
    assert len(desk.course.stations) == 1


def test_nonsense_is_told_where_it_was_typed(drawing, pane, desk, qtbot) -> None:
    typed(qtbot, pane, "abc", "")
    assert "abc" in pane.problem.text()
    assert desk.course is None


def test_backspace_and_escape_in_empty_figures_take_back_and_abandon(drawing, pane, desk, qtbot) -> None:
    typed(qtbot, pane, "0", "0")
    typed(qtbot, pane, "120", "50")
    qtbot.keyClick(pane.figures[0], Qt.Key.Key_Backspace)
    assert len(desk.course.stations) == 1
    qtbot.keyClick(pane.figures[0], Qt.Key.Key_Escape)
    assert drawing.window.toolbox.tool_id == "select"


def test_a_new_panel_is_begun_point_by_point(hands, qtbot) -> None:
    def begin(dialog) -> None:
        choose(box(dialog, "Outline"), "drawn point by point")
        press(dialog, "Begin")

    in_dialog(begin)
    hands.action("file.new")
    assert hands.window.bench.document.path is None
    assert hands.window.toolbox.tool_id == "course-outline"
    hands.action("tool.select")


def test_a_plate_is_drawn_beside_the_others(hands) -> None:
    hands.action("tool.course-plate")
    for x, y in SPOTS[:3]:
        hands.click(x, y, held=ALT)
    hands.key(Qt.Key.Key_Return)
    assert len(hands.window.bench.document.option.plates) == 2
    assert hands.window.bench.stage.plate_id == hands.window.bench.document.option.plates[1].id
    assert titles(hands) == ["Draw another plate"]


def test_an_opening_of_any_form_is_drawn_and_named(hands, qtbot) -> None:
    hands.action("tool.course-hole")
    for x, y in ((-20, -100), (20, -100), (0, -60)):
        hands.click(x, y, held=ALT)

    def say(dialog) -> None:
        assert field(dialog, "x").text() != ""
        fill(dialog, Purpose="control column")
        press(dialog, "Cut")

    in_dialog(say)
    hands.key(Qt.Key.Key_Return)
    qtbot.waitUntil(lambda: bool(hands.window.bench.document.option.plates[0].inner_openings))
    opening = hands.window.bench.document.option.plates[0].inner_openings[0]
    assert len(outline_of(opening.shape).corners) == 3
    assert (opening.x, opening.y) == pytest.approx((0, -80), abs=1.0)


def test_a_radius_is_seen_while_it_is_typed_and_before_the_next_edge_is_set(drawing, pane, desk, qtbot) -> None:
    for at in ((-200, -100), (100, -100)):
        drawing.click(*at, held=ALT)
    drawing.hover(100, 100)
    picture = course_picture(drawing.window.bench)
    assert len(picture.coming) == 1
    qtbot.keyClicks(pane.radius, "25")
    picture = course_picture(drawing.window.bench)
    arc, edge = picture.coming
    assert arc[-1] == edge[0]
    assert distance(arc[0], desk.course.last.at) == pytest.approx(25.0, abs=1.0)
    assert "R 25.00 mm" in {label.words for label in picture.labels}
    assert desk.course.last.radius == 0.0
    qtbot.keyClick(pane.radius, Qt.Key.Key_Return)
    assert course_picture(drawing.window.bench) == picture
    assert desk.course.last.radius == 25.0


def test_a_radius_that_is_not_entered_is_forgotten(drawing, pane, desk, qtbot) -> None:
    drawing.click(-200, -100, held=ALT)
    drawing.click(100, -100, held=ALT)
    drawing.hover(100, 100)
    qtbot.keyClicks(pane.radius, "25")
    qtbot.keyClick(pane.radius, Qt.Key.Key_Escape)
    assert len(course_picture(drawing.window.bench).coming) == 1


def test_a_radius_too_large_for_its_edges_is_told_while_it_is_typed(drawing, pane, desk, qtbot) -> None:
    drawing.click(-200, -100, held=ALT)
    drawing.click(100, -100, held=ALT)
    drawing.hover(100, 100)
    qtbot.keyClicks(pane.radius, "900")
    assert course_picture(drawing.window.bench).is_refused
    assert "too short for that radius" in pane.problem.text()


def test_the_first_corner_is_seen_rounded_when_the_outline_would_close(drawing, pane, desk, qtbot) -> None:
    drawing.click(*SPOTS[0], held=ALT)
    qtbot.keyClicks(pane.radius, "30")
    qtbot.keyClick(pane.radius, Qt.Key.Key_Return)
    for spot in SPOTS[1:]:
        drawing.click(*spot, held=ALT)
    drawing.hover(*SPOTS[0])
    picture = course_picture(drawing.window.bench)
    assert picture.closes
    edge, arc = picture.coming
    assert arc[0] == edge[-1]
    assert arc[-1] == picture.standing[0][0]
    assert distance(arc[0], desk.course.first) == pytest.approx(30.0, abs=1.0)
    drawing.click(*SPOTS[0])
    (found,) = (edge for edge in edges(outline(drawing)) if isinstance(edge, Arc))
    assert found.radius == pytest.approx(30.0)


def test_rounding_the_last_corner_keeps_the_arc_that_is_chosen(drawing, pane, desk, qtbot) -> None:
    typed(qtbot, pane, "-200", "-100")
    typed(qtbot, pane, "200", "-100")
    choose(pane.edge, "arc by its rise")
    qtbot.keyClicks(pane.bow, "-30")
    qtbot.keyClicks(pane.radius, "10")
    qtbot.keyClick(pane.radius, Qt.Key.Key_Return)
    assert pane.edge.currentText() == "arc by its rise"
    typed(qtbot, pane, "200", "100")
    assert desk.course.last.bulge > 0
    assert desk.course.stations[1].radius == 10.0


def test_a_size_that_cannot_be_read_is_told_above_the_buttons(drawing, pane, qtbot) -> None:
    typed(qtbot, pane, "0", "0")
    choose(pane.edge, "arc by its radius")
    pane.bow.setFocus()
    qtbot.keyClicks(pane.bow, "10x")
    qtbot.keyClick(pane.bow, Qt.Key.Key_Tab)
    assert pane.problem.text().startswith("Radius: '10x' cannot be read")
    assert pane.problem.isVisible()
    assert pane.problem.geometry().bottom() < pane._buttons[0].parentWidget().geometry().top()


def test_an_arc_is_said_with_the_rise_that_was_typed(drawing, pane, desk, qtbot) -> None:
    """To the left of the way it bows inward here; the picture shows that."""
    typed(qtbot, pane, "-200", "-100")
    choose(pane.edge, "arc by its rise")
    qtbot.keyClicks(pane.bow, "30")
    typed(qtbot, pane, "200", "-100", enter=False)
    shown = course_picture(drawing.window.bench).labels
    assert any("rise 30.00 mm" in label.words for label in shown)
