"""What is placed from the library is known as equipment where it can be one thing only; the rest is said."""

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QComboBox

from panelcad.desktop.panes.unit_choice import UnitChoice
from panelcad.editing.place import place
from tests.desktop.hands import Hands


def test_placing_says_what_can_be_only_one(window, qtbot):
    bench = window.bench
    window.toolbox.place(bench.catalogue.cutout("vertical-speed-3-1-8"))
    hands = Hands(window)
    hands.hover(100.0, 60.0)
    hands.click(100.0, 60.0)
    assert bench.document.option.items[-1].unit == "vertical-speed-round"
    assert [step.title for step in bench.document.done] == ["Place Vertical speed indicator"]


def test_the_pane_counts_what_nobody_said_and_takes_what_is_chosen(window, qtbot):
    """Of two altimeters nobody can tell which it is; an airspeed indicator of an older file can be only one."""
    bench = window.bench
    for name, x in (("altimeter-knob-3-1-8", 100.0), ("airspeed-3-1-8", -100.0)):
        cutout = bench.catalogue.cutout(name)
        bench.edit("Place", lambda project, option, c=cutout, x=x: place(project, option, "main", c, x, -60.0).project)
    altimeter, airspeed = bench.document.option.items[-2:]
    dock = window.docks.dock("equipment")
    dock.show()
    dock.raise_()
    pane = dock.widget()
    qtbot.waitUntil(pane.isVisible)
    assert pane.count.text().startswith("2 items without equipment")
    pane.say_clear.click()
    assert bench.document.option.item(airspeed.id).unit == "airspeed-round"
    assert pane.count.text().startswith("1 item without equipment")
    assert not pane.say_clear.isVisible()
    pane.fitted.setCurrentItem(pane.fitted.topLevelItem(0))
    assert bench.selection.current == altimeter.id
    at = pane.unit.findText("Encoding altimeter")
    pane.unit.setCurrentIndex(at)
    pane.unit.activated.emit(at)
    assert bench.document.option.item(altimeter.id).unit == "altimeter-encoding"
    assert not pane.count.isVisible()
    shown = window.docks.dock("properties").widget().findChild(UnitChoice)
    assert shown.currentText() == "Encoding altimeter"


@pytest.fixture
def pane(window, qtbot):
    """A low list of many instruments, of which two may be one of several units, scrolled down."""
    bench = window.bench
    names = ["hour-meter"] * 12 + ["altimeter-knob-3-1-8", "rack-nav-com", "ati-3-standby-display"]
    bench.edit("Place", lambda project, _: _with(bench, project, names))
    dock = window.docks.dock("equipment")
    dock.show()
    dock.raise_()
    made = dock.widget()
    qtbot.waitUntil(made.isVisible)
    dock.setFloating(True)
    made.fitted.setFixedHeight(100)
    qtbot.waitUntil(lambda: made.fitted.verticalScrollBar().maximum() > 5)
    return made


def _with(bench, project, names):
    """Each of these cutouts placed below the sheet, apart, and known as equipment where it can be only one."""
    made = []
    for i, name in enumerate(names):
        x, y = 250.0 * (i % 4), -400.0 - 150.0 * (i // 4)
        put = place(project, bench.document.option_id, "main", bench.catalogue.cutout(name), x, y)
        project = put.project
        made.append(put.item_id)
    return bench.said(project, made)


def click_top(pane) -> str:
    """The topmost line that is seen is chosen; what it says."""
    QTest.mouseClick(pane.fitted.viewport(), Qt.MouseButton.LeftButton, pos=QPoint(20, 8))
    return pane.fitted.currentItem().text(0)


def say(pane, title: str) -> None:
    at = pane.unit.findText(title)
    pane.unit.setCurrentIndex(at)
    pane.unit.activated.emit(at)


def test_a_line_stays_under_the_pointer_when_it_is_said_what_it_is(window, pane) -> None:
    bar = pane.fitted.verticalScrollBar()
    bar.setValue(3)
    listed = [pane.fitted.topLevelItem(i).text(0) for i in range(pane.fitted.topLevelItemCount())]
    chosen = click_top(pane)
    say(pane, "Airspeed indicator")
    assert bar.value() == 3
    assert [pane.fitted.topLevelItem(i).text(0) for i in range(pane.fitted.topLevelItemCount())] == listed
    assert click_top(pane) == chosen
    bar.setValue(0)
    pane.fitted.setCurrentItem(pane.fitted.topLevelItem(0))
    say(pane, pane.unit.itemText(2))
    assert pane.fitted.topLevelItem(0).text(0) == listed[0]
    assert pane.fitted.topLevelItem(0).text(1) == "panel"


def test_a_change_on_the_panel_leaves_the_selection_to_the_panel(window, pane) -> None:
    bench = window.bench
    click_top(pane)
    other = bench.document.option.items[-1].id
    bench.selection.set((other,))
    bench.edit("Place", lambda project, _: _with(bench, project, ["hour-meter"]))
    assert bench.selection.current == other


def offered(choice: QComboBox) -> list[str]:
    return [choice.itemText(i) for i in range(choice.count())]


def test_units_that_do_what_the_cutout_shows_are_offered_before_all_others(window, pane) -> None:
    lines = {pane.fitted.topLevelItem(i).text(0): pane.fitted.topLevelItem(i) for i in range(3)}
    pane.fitted.setCurrentItem(lines["Standby display, 3 ATI"])
    assert offered(pane.unit)[:4] == [
        "Say what it is…",
        "",
        "Small round flight display",
        "Backup flight display, 5 in",
    ]
    pane.fitted.setCurrentItem(lines["NAV/COM radio, rack"])
    assert offered(pane.unit)[:5] == ["Say what it is…", "", "NAV/COM radio", "NAV/COM radio of the 1980s", ""]
    assert "NAV/COM radio of the 1980s" in lines["NAV/COM radio, rack"].toolTip(0)
    titles = [words for words in offered(pane.unit) if words]
    assert len(titles) == len(set(titles))


def test_enter_goes_from_the_words_to_the_list_and_puts_in_what_is_chosen(window, pane) -> None:
    document = window.bench.document
    before = len(document.option.items)
    pane.tabs.setCurrentIndex(1)
    pane.search.setFocus()
    QTest.keyClicks(pane.search, "digital clock")
    QTest.keyClick(pane.search, Qt.Key.Key_Return)
    assert pane.offered.currentItem().text() == "Digital clock"
    QTest.keyClick(pane.offered, Qt.Key.Key_Return)
    assert len(document.option.items) == before + 1
    assert "Place" in window.statusBar().words.text()
    pane.put_in.setFocus()
    QTest.keyClick(pane.put_in, Qt.Key.Key_Return)
    assert len(document.option.items) == before + 2
