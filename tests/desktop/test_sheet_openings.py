"""An opening of the sheet itself is picked, listed, changed in its properties, moved and taken away as a thing is."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLineEdit

from panelcad.desktop.dialogs.edit_dialog import EditDialog
from panelcad.editing.around import add_standing
from panelcad.editing.plates import add_inner_opening
from panelcad.model.cutout import Opening
from panelcad.model.shape import Rectangle
from panelcad.model.surroundings import KeepOut, Volume
from tests import builders
from tests.desktop.next_dialog import in_dialog
from tests.desktop.test_keyboard_goes_on import ALT, pane

SHIFT = Qt.KeyboardModifier.ShiftModifier
MIDDLE = (-100.0, -80.0)


@pytest.fixture
def glove_box(hands):
    """An opening of 100 × 60 mm; what it is now."""
    document = hands.window.bench.document
    shape = Rectangle(width=100.0, height=60.0, corner_radius=5.0)
    opening = Opening(shape=shape, x=MIDDLE[0], y=MIDDLE[1], purpose="glove box", source=builders.SOURCE)
    document.apply("opening", add_inner_opening(document.project, document.option_id, "main", opening))
    return lambda: document.option.plate("main").inner_openings[0]


def openings(hands):
    return hands.window.bench.document.option.plate("main").inner_openings


def type_into(field: QLineEdit, text: str) -> None:
    field.setFocus()
    field.selectAll()
    QTest.keyClicks(field, text)
    QTest.keyClick(field, Qt.Key.Key_Return)


@pytest.mark.parametrize("at", [MIDDLE, (-150.0, -80.0)], ids=["inside", "edge"])
def test_a_click_inside_or_on_the_edge_selects_it(hands, glove_box, at) -> None:
    hands.click(*at)
    assert pane(hands, "properties").sheet.purpose.text() == "glove box"
    bench = hands.window.bench
    assert bench.selection_words() == "glove box"
    assert not bench.stage.scene.area(bench.selection.current).isEmpty()


def test_what_lies_in_it_is_picked_first(hands, glove_box) -> None:
    hands.drag((200, -50), MIDDLE, held=ALT)
    hands.key(Qt.Key.Key_Escape)
    hands.click(*MIDDLE)
    assert hands.window.bench.selection.ids == ("three",)


def test_it_is_picked_within_a_keep_out_that_is_larger(hands, glove_box) -> None:
    document = hands.window.bench.document
    volume = Volume(shape=Rectangle(width=300.0, height=200.0), x=MIDDLE[0], y=MIDDLE[1], near=-200.0, far=-100.0)
    yoke = KeepOut(id="yoke", name="yoke", plate="main", volume=volume)
    document.apply("keep-out", add_standing(document.project, yoke).project)
    hands.click(*MIDDLE)
    assert hands.window.bench.selection_words() == "glove box"


def test_purpose_size_and_place_are_changed_in_figures(hands, glove_box) -> None:
    hands.click(*MIDDLE)
    sheet = pane(hands, "properties").sheet
    type_into(sheet.purpose, "map box")
    type_into(sheet.across, "-90")
    type_into(sheet.up, "-75")
    width, height, radius = sheet.sizes
    type_into(width, "4 in")
    type_into(radius, "6")
    changed = glove_box()
    assert (changed.purpose, changed.x, changed.y) == ("map box", -90.0, -75.0)
    assert (changed.shape.width, changed.shape.height, changed.shape.corner_radius) == (101.6, 60.0, 6.0)
    assert height.text() == "60"


def test_sizes_that_make_no_shape_are_refused_in_words(hands, glove_box) -> None:
    told = []
    hands.window.bench.refused.connect(told.append)
    hands.click(*MIDDLE)
    radius = pane(hands, "properties").sheet.sizes[2]
    type_into(radius, "200")
    assert glove_box().shape.corner_radius == 5.0
    assert radius.text() == "5"
    assert told[-1]


def test_it_is_listed_by_its_purpose_and_picked_there(hands, glove_box) -> None:
    tree = pane(hands, "items").tree
    (row,) = tree.findItems("glove box", Qt.MatchFlag.MatchExactly)
    assert (row.text(1), row.text(2)) == ("-100.00", "-80.00")
    QTest.mouseClick(tree.viewport(), Qt.MouseButton.LeftButton, pos=tree.visualItemRect(row).center())
    assert pane(hands, "properties").sheet.purpose.text() == "glove box"


def test_it_is_nudged_and_dragged_once_it_is_selected(hands, glove_box) -> None:
    hands.click(*MIDDLE)
    hands.key(Qt.Key.Key_Left, SHIFT)
    assert glove_box().x == -105.0
    hands.drag((-105, -80), (-125, -70), held=ALT)
    assert (glove_box().x, glove_box().y) == pytest.approx((-125, -70), abs=1.0)
    assert hands.window.bench.document.done[-1].title == "Move glove box"


def test_a_drag_in_it_before_draws_a_box(hands, glove_box) -> None:
    before = glove_box()
    hands.drag(MIDDLE, (-60, -60), held=ALT)
    assert glove_box() is before


def test_delete_fills_it_in_again(hands, glove_box) -> None:
    hands.click(*MIDDLE)
    hands.key(Qt.Key.Key_Delete)
    assert openings(hands) == ()
    assert hands.window.bench.selection.ids == ()


def test_it_is_selected_alone_and_nothing_that_only_things_can_is_offered(hands, glove_box) -> None:
    hands.click(0, 50)
    hands.click(*MIDDLE, held=SHIFT)
    assert hands.window.bench.selection.ids == ("two",)
    hands.click(*MIDDLE)
    actions = hands.window.menus.actions
    assert actions["edit.delete"].isEnabled()
    for name in ("edit.copy", "edit.duplicate", "arrange.lock", "place.replace", "arrange.turn-left"):
        assert not actions[name].isEnabled()


def test_it_is_picked_from_behind_where_it_is_seen(hands, glove_box) -> None:
    hands.action("view.behind")
    hands.click(*MIDDLE)
    assert pane(hands, "properties").sheet.purpose.text() == "glove box"


def test_a_new_one_is_for_nothing_yet(hands, qtbot) -> None:
    said = []
    in_dialog(lambda dialog: said.extend(field.text() for field in dialog.findChildren(QLineEdit)), EditDialog)
    hands.action("tool.draw-opening")
    hands.drag((-150, -110), (-50, -50))
    qtbot.waitUntil(lambda: bool(said))
    assert said[0] == "opening"


def test_one_that_was_just_cut_is_selected(hands, qtbot) -> None:
    in_dialog(lambda dialog: dialog.accept(), EditDialog)
    hands.action("tool.draw-opening")
    hands.drag((-150, -110), (-50, -50))
    qtbot.waitUntil(lambda: len(openings(hands)) == 1)
    assert hands.window.bench.selection_words() == "opening"


def test_the_library_says_where_a_glove_box_is_drawn(hands, qtbot) -> None:
    library = pane(hands, "library")
    qtbot.waitUntil(lambda: library.model.rowCount() > 0)
    QTest.keyClicks(library.search, "glove")
    assert library.none.isVisible()
    assert "Panel, Draw an opening" in library.none.text()
