import pytest
from PySide6.QtCore import Qt

from panelcad.desktop.panes.outline import OutlinePane
from panelcad.editing.outline import edges, outline_of
from panelcad.geometry.corner import is_smooth
from panelcad.geometry.segment import Arc
from panelcad.model.plate import PlateState

ALT = Qt.KeyboardModifier.AltModifier


@pytest.fixture
def outline_hands(hands):
    """The outline tool in hand; the sheet is 600 × 300 mm about the datum, corner 0 at its lower left."""
    hands.action("tool.outline")
    return hands


def outline(hands):
    return outline_of(hands.window.bench.document.option.plates[0].outline)


def corners(hands) -> list[tuple[float, float]]:
    return [(corner.x, corner.y) for corner in outline(hands).corners]


def titles(hands) -> list[str]:
    return [step.title for step in hands.window.bench.document.done]


def test_a_corner_is_dragged_as_one_step(outline_hands) -> None:
    outline_hands.drag((300, 150), (340, 180), held=ALT)
    assert corners(outline_hands)[2] == pytest.approx((340, 180), abs=1.0)
    assert titles(outline_hands) == ["Move a corner"]
    outline_hands.action("edit.undo")
    assert corners(outline_hands)[2] == (300.0, 150.0)


def test_a_dragged_corner_snaps_to_the_height_of_another(outline_hands) -> None:
    outline_hands.drag((300, 150), (352, 151.5))
    assert corners(outline_hands)[2][1] == 150.0


def test_the_middle_of_an_edge_is_dragged_into_an_arc(outline_hands) -> None:
    outline_hands.drag((0, 150), (0, 190))
    top = edges(outline(outline_hands))[2]
    assert isinstance(top, Arc)
    assert top.bounds[3] == pytest.approx(190, abs=1.0)


def test_a_drag_that_would_cross_the_outline_stays_where_it_last_was_sound(outline_hands) -> None:
    outline_hands.drag((300, 150), (-500, -400), held=ALT, steps=10)
    shape = outline(outline_hands)
    assert shape.contour().area > 0
    assert len(titles(outline_hands)) == 1


def test_escape_puts_a_corner_back_and_then_the_tool_away(outline_hands) -> None:
    before = outline_hands.window.bench.document.project
    outline_hands.press(300, 150)
    outline_hands.move(330, 170)
    outline_hands.key(Qt.Key.Key_Escape)
    assert outline_hands.window.bench.document.project is before
    outline_hands.release(330, 170)
    outline_hands.key(Qt.Key.Key_Escape)
    assert outline_hands.window.toolbox.tool_id == "select"
    assert outline_hands.window.bench.document.project is before


def test_a_double_click_adds_a_corner_and_delete_takes_it_away(outline_hands) -> None:
    tool = outline_hands.window.toolbox.tool
    outline_hands.double_click(100, -150)
    assert corners(outline_hands)[1] == pytest.approx((100, -150), abs=1.0)
    assert len(tool.handles) == 10
    outline_hands.key(Qt.Key.Key_Delete)
    assert len(corners(outline_hands)) == 4
    assert titles(outline_hands) == ["Add a corner", "Take a corner away"]


def test_arrow_keys_nudge_the_picked_corner(outline_hands) -> None:
    outline_hands.click(-300, 150)
    step = outline_hands.window.settings.step("fine", outline_hands.window.bench.unit)
    outline_hands.key(Qt.Key.Key_Right)
    assert corners(outline_hands)[3] == (-300.0 + step, 150.0)


def test_a_kept_plate_is_told_and_stays(outline_hands, qtbot) -> None:
    document = outline_hands.window.bench.document
    option = document.option
    kept = option.revised(plates=(option.plates[0].revised(state=PlateState.KEPT),))
    document.apply("keep it", document.project.with_option(kept))
    with qtbot.waitSignal(
        outline_hands.window.bench.refused, check_params_cb=lambda words: "is kept as it is" in words
    ):
        outline_hands.press(300, 150)
    outline_hands.release(300, 150)


def test_handles_go_with_the_tool(outline_hands) -> None:
    tool = outline_hands.window.toolbox.tool
    assert len(tool.handles) == 8
    outline_hands.action("tool.select")
    assert tool.handles == ()


@pytest.fixture
def pane(hands) -> OutlinePane:
    dock = hands.window.docks.dock("outline")
    dock.setVisible(True)
    return dock.widget()


def typed(qtbot, field, text: str) -> None:
    field.setFocus()
    field.selectAll()
    qtbot.keyClicks(field, text)
    qtbot.keyClick(field, Qt.Key.Key_Return)


def test_the_tool_brings_its_pane(outline_hands) -> None:
    assert outline_hands.window.docks.dock("outline").isVisible()


def test_a_corner_and_its_edge_are_typed(hands, pane, qtbot) -> None:
    pane.corner.setCurrentIndex(2)
    pane.corner.activated.emit(2)
    typed(qtbot, pane.across, "300 + 1in")
    assert corners(hands)[2] == (325.4, 150.0)
    typed(qtbot, pane.rise, "25")
    assert isinstance(edges(outline(hands))[2], Arc)
    typed(qtbot, pane.rise, "0")
    assert not isinstance(edges(outline(hands))[2], Arc)
    assert titles(hands) == ["Move a corner", "Bow an edge", "Bow an edge"]


def button(pane, words: str):
    from PySide6.QtWidgets import QPushButton

    return next(b for b in pane.findChildren(QPushButton) if b.text().replace("&", "") == words)


def test_buttons_round_all_cut_off_add_and_take_away(hands, pane, qtbot) -> None:
    typed(qtbot, pane.radius, "20")
    assert len(corners(hands)) == 5
    button(pane, "Round all").click()
    assert len(corners(hands)) == 8
    hands.action("edit.undo")
    hands.action("edit.undo")
    button(pane, "Cut off").click()
    button(pane, "Add after").click()
    button(pane, "Take away").click()
    assert titles(hands) == ["Cut the corner off", "Add a corner", "Take a corner away"]


def test_a_rounded_corner_gets_another_radius_and_is_sharp_again(hands, pane, qtbot) -> None:
    typed(qtbot, pane.radius, "20")
    assert pane.corner.currentText() == "1: -300.00, -150.00, rounded 20"
    assert (pane.across.text(), pane.up.text(), pane.radius.text()) == ("-300", "-150", "20")
    typed(qtbot, pane.radius, "35")
    arcs = [edge.radius for edge in edges(outline(hands)) if isinstance(edge, Arc)]
    assert arcs == pytest.approx([35.0], abs=1e-5)
    typed(qtbot, pane.radius, "0")
    assert sorted(corners(hands)) == [(-300.0, -150.0), (-300.0, 150.0), (300.0, -150.0), (300.0, 150.0)]


def test_an_edge_is_bowed_by_a_typed_radius(hands, pane, qtbot) -> None:
    pane.corner.setCurrentIndex(2)
    pane.corner.activated.emit(2)
    typed(qtbot, pane.bow, "500")
    assert edges(outline(hands))[2].radius == pytest.approx(500.0, abs=1e-5)
    assert outline(hands).contour().bounds[3] > 150.0
    typed(qtbot, pane.bow, "10")
    assert edges(outline(hands))[2].radius == pytest.approx(500.0, abs=1e-5)
    assert pane.bow.text() == "500"


@pytest.fixture
def rounded_hands(outline_hands, pane, qtbot):
    """Every corner of the sheet rounded by 60 mm."""
    typed(qtbot, pane.radius, "60")
    button(pane, "Round all").click()
    return outline_hands


def test_a_rounding_is_dragged_to_another_radius(rounded_hands) -> None:
    """The middle of a fillet at a right angle is (sqrt 2 - 1) r from the corner."""

    def middle(radius: float) -> tuple[float, float]:
        depth = (2**0.5 - 1) * radius / 2**0.5
        return 300.0 - depth, 150.0 - depth

    rounded_hands.drag(middle(60.0), middle(100.0))
    radii = [edge.radius for edge in edges(outline(rounded_hands)) if isinstance(edge, Arc)]
    assert sorted(radii) == pytest.approx([60.0, 60.0, 60.0, 100.0], abs=5.0)
    assert titles(rounded_hands)[-1] == "Round the corner"


def test_a_rounded_corner_is_dragged_as_a_whole(rounded_hands) -> None:
    rounded_hands.drag((300, 150), (340, 180), held=ALT)
    around = edges(outline(rounded_hands))
    assert all(is_smooth(around[i - 1], edge) for i, edge in enumerate(around))
    assert [edge.radius for edge in around if isinstance(edge, Arc)] == pytest.approx([60.0] * 4, abs=1e-3)


def test_a_refused_number_leaves_the_field_as_it_was(hands, pane, qtbot) -> None:
    typed(qtbot, pane.across, "900000")
    assert pane.across.property("wrong")
    assert titles(hands) == []
