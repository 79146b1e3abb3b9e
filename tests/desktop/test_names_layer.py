"""Names on the canvas: switched on in the layers, placed for the zoom, moved with their things, and remembered."""

import pytest
from PySide6.QtWidgets import QApplication

from panelcad.desktop.settings import Settings
from panelcad.desktop.stage import LEFT_OUT_AT_FIRST
from panelcad.drawing.box import is_within
from panelcad.drawing.display import Text, walk
from panelcad.drawing.extent import extent
from panelcad.drawing.layers import Layer
from tests.desktop.test_layers import pane
from tests.desktop.test_words_in_sight import look_at


@pytest.fixture
def named(hands):
    pane(hands).boxes[Layer.NAMES].click()
    hands.view.show_all()
    return hands


def shown(hands) -> dict[str, str]:
    groups = hands.window.bench.stage.scene.names.shown
    return {group.owner: " ".join(node.text for node in walk((group,)) if isinstance(node, Text)) for group in groups}


def test_names_are_off_at_first_and_come_and_go_with_their_box(hands) -> None:
    assert shown(hands) == {}
    box = pane(hands).boxes[Layer.NAMES]
    assert not box.isHidden()
    box.click()
    assert shown(hands) == {"one": "one", "two": "two", "three": "three"}
    box.click()
    assert shown(hands) == {}


def test_views_without_names_do_not_offer_them(named) -> None:
    named.window.bench.stage.look_from("look-day")
    assert shown(named) == {}
    assert pane(named).boxes[Layer.NAMES].isHidden()
    named.window.bench.stage.look_from("front")
    assert len(shown(named)) == 3


def test_names_are_remembered_and_so_is_that_they_were_put_away(named) -> None:
    assert Settings().left_out(LEFT_OUT_AT_FIRST) == {Layer.NUMBERS}
    pane(named).boxes[Layer.NAMES].click()
    assert Settings().left_out(LEFT_OUT_AT_FIRST) == {Layer.NUMBERS, Layer.NAMES}


def test_other_layers_that_were_switched_off_are_on_again_at_the_next_start(named) -> None:
    pane(named).boxes[Layer.BEZELS].click()
    assert Settings().left_out(LEFT_OUT_AT_FIRST) == {Layer.NUMBERS}


def test_a_name_moves_with_its_thing_and_is_not_in_the_way_of_a_click(named) -> None:
    scene = named.window.bench.stage.scene
    before = {group.owner: extent((group,)) for group in scene.names.shown}
    named.press(0, 50)
    named.move(20, 60)
    named.move(40, 80)
    moved = next(item for item in scene.items() if getattr(item, "owner", "") == "two" and item.zValue() > 900_000)
    assert (moved.pos().x(), moved.pos().y()) == pytest.approx((40, 30), abs=6.0)
    named.release(40, 80)
    QApplication.processEvents()
    after = {group.owner: extent((group,)) for group in scene.names.shown}
    assert after["two"][0] == pytest.approx(before["two"][0] + 40, abs=6.0)
    assert after["one"] == before["one"]
    named.click(-200, 50)
    assert set(named.window.bench.selection.ids) == {"one"}


def test_a_rename_is_seen_at_once(named) -> None:
    named.click(0, 50)
    sheet = named.window.docks.dock("properties").widget().sheet
    sheet.name.setText("Clock")
    sheet.name.setModified(True)
    sheet.name.editingFinished.emit()
    assert shown(named)["two"] == "Clock"


def test_no_name_is_cut_off_at_the_edge_of_the_view(named) -> None:
    scene = named.window.bench.stage.scene
    for x, y, zoom in ((-200, 50, 3.0), (-240, 50, 4.0), (-200, 90, 4.0), (0, 50, 2.0), (15, 58, 14.0)):
        look_at(named, x, y, zoom)
        assert all(is_within(extent((group,)), named.view.seen()) for group in scene.names.shown)
    look_at(named, -200, 50, 3.0)
    assert "one" in shown(named)


def test_a_name_that_is_dragged_over_the_edge_of_the_view_is_left_out(named) -> None:
    look_at(named, 0, 50, 3.0)
    half_wide = named.view.viewport().width() / 2 / 3.0
    named.press(0, 50)
    named.move(20, 50)
    assert "two" in shown(named)
    named.move(half_wide - 2, 50)
    assert "two" not in shown(named)
    named.move(20, 50)
    assert "two" in shown(named)
    named.release(20, 50)


def test_names_keep_clear_of_the_numbers_that_stay(named) -> None:
    before = {group.owner: extent((group,)) for group in named.window.bench.stage.scene.names.shown}
    pane(named).boxes[Layer.NUMBERS].click()
    after = {group.owner: extent((group,)) for group in named.window.bench.stage.scene.names.shown}
    assert after.keys() == before.keys()
    assert all(after[one] != before[one] for one in after)
