"""The lists beside the panel stay where one has scrolled them while something is dragged or made."""

import pytest
from PySide6.QtCore import QPoint, Qt

from panelcad.desktop.canvas.badge import MarkKind
from panelcad.editing.plates import add_engraving
from panelcad.editing.row import Row, place_row
from panelcad.geometry.point import Point
from panelcad.model.plate import Engraving
from tests.desktop.test_keyboard_goes_on import ALT, choose, pane, settled


@pytest.fixture
def findings(hands, qtbot):
    """Eight breakers 17 mm apart, a low list of what is wrong with them, scrolled down."""
    bench = hands.window.bench
    cutout = bench.catalogue.cutout("breaker")
    row = Row(Point(-250.0, -110.0), 8, 17.0)
    bench.edit("Place", lambda project, option: place_row(project, option, "main", cutout, row).project)
    made = pane(hands, "findings")
    settled(hands, qtbot)
    hands.window.docks.dock("findings").setFloating(True)
    made.setFixedHeight(420)
    bar = made.list.verticalScrollBar()
    qtbot.waitUntil(lambda: bar.maximum() > 200)
    bar.setValue(bar.maximum() // 2)
    made.list.clearFocus()
    return made


def at_top(findings) -> tuple[str, int]:
    """The first finding whose upper edge is seen, and where that is."""
    rows = [
        (findings.list.visualRect(findings.model.index(row)).top(), row) for row in range(findings.model.rowCount())
    ]
    top, row = min((top, row) for top, row in rows if top >= 0)
    return findings.model.entries[row].finding.identity, top


def proposed(hands, qtbot) -> None:
    """What a gesture under way would bring is judged."""
    bench = hands.window.bench
    qtbot.waitUntil(lambda: bench.judge.report is not None and bench.judge.report.project is not bench.document.project)


def errors(findings) -> int:
    return sum(entry.kind is MarkKind.ERROR for entry in findings.model.entries)


def test_the_findings_stay_in_sight_while_a_drag_brings_new_ones_above_them(hands, qtbot, findings) -> None:
    before, count = at_top(findings), errors(findings)
    hands.press(200, -50)
    hands.move(-50, 40, held=ALT)
    hands.move(-60, 45, held=ALT)
    proposed(hands, qtbot)
    qtbot.waitUntil(lambda: errors(findings) > count)
    assert at_top(findings) == before
    hands.key(Qt.Key.Key_Escape)
    settled(hands, qtbot)
    hands.release(-60, 45)
    assert at_top(findings) == before


def test_a_chosen_finding_does_not_pull_the_list_to_it(hands, qtbot, findings) -> None:
    bar = findings.list.verticalScrollBar()
    choose(findings, lambda entry: entry is findings.model.entries[findings.list.indexAt(QPoint(4, 40)).row()])
    bar.setValue(bar.maximum() * 2 // 3)
    before, count = at_top(findings), errors(findings)
    hands.press(200, -50)
    hands.move(-50, 40, held=ALT)
    hands.move(-60, 45, held=ALT)
    qtbot.waitUntil(lambda: errors(findings) > count)
    assert at_top(findings) == before
    hands.key(Qt.Key.Key_Escape)
    hands.release(-60, 45)


def list_of_breakers(hands, qtbot):
    """A row of breakers is placed, so many that their list scrolls; the list."""
    bench = hands.window.bench
    cutout = bench.catalogue.cutout("breaker")
    row = Row(Point(-250.0, -110.0), 20, 25.0)
    bench.edit("Place", lambda project, option: place_row(project, option, "main", cutout, row).project)
    tree = pane(hands, "items").tree
    qtbot.waitUntil(lambda: tree.verticalScrollBar().maximum() > 5)
    return tree


def test_the_list_of_things_stays_where_it_is_when_words_are_engraved(hands, qtbot) -> None:
    tree = list_of_breakers(hands, qtbot)
    tree.verticalScrollBar().setValue(5)
    top = tree.itemAt(0, 0).text(0)
    hands.click(-250, -110)
    tree.verticalScrollBar().setValue(5)
    engrave(hands)
    assert hands.window.bench.selection.ids
    assert tree.itemAt(0, 0).text(0) == top


def engrave(hands) -> None:
    """A line of lettering more, which is selected as what a dialog made is."""
    bench = hands.window.bench
    words = Engraving(id="words", text="FUEL", x=-250.0, y=-130.0, height=3.0)
    bench.make("Engrave", lambda project, option: add_engraving(project, option, "main", words))


def test_what_is_picked_on_the_panel_still_comes_into_sight_in_the_list(hands, qtbot) -> None:
    tree = list_of_breakers(hands, qtbot)
    tree.verticalScrollBar().setValue(0)
    hands.key(Qt.Key.Key_Escape)
    hands.click(-200, 50)
    hands.click(200, -50)
    (chosen,) = tree.selectedItems()
    assert tree.viewport().rect().contains(tree.visualItemRect(chosen).center())
