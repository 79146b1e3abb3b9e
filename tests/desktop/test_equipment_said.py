"""What is placed from the library is known as equipment where it can be one thing only; the rest is said."""

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
