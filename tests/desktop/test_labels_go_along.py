"""Labels follow their switches under the pointer, by arrow keys and by figures."""

import pytest
from PySide6.QtCore import Qt

from panelcad.editing.groups import lock
from panelcad.editing.label_row import Side, label_row
from panelcad.editing.row import Row, place_row
from panelcad.geometry.point import Point
from panelcad.library.catalogue import packaged_catalogue
from tests.desktop.test_panes import pane, type_into

WORDS = "lettering-1"


@pytest.fixture
def row(hands):
    """Two labelled toggle switches below the instruments; the first is selected."""
    bench = hands.window.bench
    spots = Row(Point(-100.0, -60.0), 2, 60.0)
    cutout = packaged_catalogue().cutout("toggle")
    bench.make("Place", lambda project, option: place_row(project, option, "main", cutout, spots))
    ids = bench.selection.ids
    texts = dict(zip(ids, ("NAV", "LDG"), strict=True))
    bench.make("Label", lambda project, option: label_row(project, option, texts, 3.0, Side.BELOW))
    bench.selection.set(ids[:1])
    hands.view.setFocus()
    return hands


def label(row):
    (plate,) = row.window.bench.document.option.plates
    return next((line.x, line.y) for line in plate.engravings if line.id == WORDS)


def switch(row):
    item = row.window.bench.document.option.items[3]
    return item.x, item.y


def moves(row, act) -> tuple[tuple[float, float], tuple[float, float]]:
    """How far the switch and its label went."""
    before = switch(row), label(row)
    act()
    after = switch(row), label(row)
    return tuple((round(b[0] - a[0], 6), round(b[1] - a[1], 6)) for a, b in zip(before, after, strict=True))


def drag(row, held=Qt.KeyboardModifier.NoModifier) -> None:
    row.drag((-100.0, -60.0), (-143.0, -82.0), held=held)


def test_a_dragged_switch_takes_its_label_along_as_one_step(row) -> None:
    bench, steps = row.window.bench, len(row.window.bench.document.done)
    control, words = moves(row, lambda: drag(row))
    assert control == words
    assert control[0] < -30.0
    assert len(bench.document.done) == steps + 1
    bench.document.undo()
    assert label(row)[0] == -100.0


def test_the_picture_of_the_label_follows_the_pointer(row) -> None:
    row.press(-100.0, -60.0)
    row.move(-120.0, -70.0)
    row.move(-143.0, -82.0)
    (picture,) = (one for one in row.window.bench.stage.scene.groups if one.owner == WORDS)
    assert picture.pos().x() < -30.0
    row.key(Qt.Key.Key_Escape)
    row.release(-143.0, -82.0)
    assert label(row)[0] == -100.0


def test_the_key_that_suspends_snapping_leaves_the_label_and_says_so(row) -> None:
    told = []
    row.window.bench.told.connect(told.append)
    control, words = moves(row, lambda: drag(row, Qt.KeyboardModifier.AltModifier))
    assert control[0] < -30.0
    assert words == (0.0, 0.0)
    assert any("labels stay" in each for each in told)


def test_a_locked_label_stays(row) -> None:
    row.window.bench.edit("Lock", lambda project, option: lock(project, option, (WORDS,)))
    control, words = moves(row, lambda: drag(row))
    assert control[0] < -30.0
    assert words == (0.0, 0.0)


def test_arrows_figures_and_a_move_of_several_take_it_along(row) -> None:
    control, words = moves(row, lambda: row.key(Qt.Key.Key_Right))
    assert control == words != (0.0, 0.0)
    control, words = moves(row, lambda: type_into(pane(row, "properties").sheet.across, "-150"))
    assert control == words != (0.0, 0.0)
    bench = row.window.bench
    bench.selection.set(item.id for item in bench.document.option.items[3:])

    def by_figures() -> None:
        sheet = pane(row, "properties").sheet
        type_into(sheet.dy, "-7")

    control, words = moves(row, by_figures)
    assert control == words == (0.0, -7.0)


def test_a_label_dragged_itself_goes_alone(row) -> None:
    x, y = label(row)
    row.click(x, y)
    assert row.window.bench.selection.ids == (WORDS,)
    control, words = moves(row, lambda: row.drag((x, y), (x - 20.0, y - 9.0)))
    assert control == (0.0, 0.0)
    assert words[0] < -10.0
