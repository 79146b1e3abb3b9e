"""A placard is lettered by keys, by the lettering tool, and under its properties."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from panelcad.drawing.display import Text, walk
from panelcad.editing.place import place
from panelcad.editing.rename import rename
from panelcad.library.catalogue import packaged_catalogue
from tests.desktop.next_dialog import in_dialog
from tests.desktop.test_panel_dialogs import fill
from tests.desktop.test_panes import pane, type_into

AT = (-100.0, -90.0)


@pytest.fixture
def placard(hands):
    """A placard of 2 by 0.5 in below the instruments, selected."""
    cutout = packaged_catalogue().cutout("placard-small")
    bench = hands.window.bench
    bench.edit("Place", lambda project, option: place(project, option, "main", cutout, *AT).project)
    bench.selection.set((bench.document.option.items[-1].id,))
    hands.view.setFocus()
    return hands


def said(hands) -> str:
    return hands.window.bench.document.option.items[-1].name


def found(hands) -> set[str]:
    judge = hands.window.bench.judge
    judge.check_now()
    return {finding.rule for finding in judge.report.findings}


def type_words(dialog) -> None:
    QTest.keyClicks(dialog.focusWidget(), "COMPASS CARD")
    QTest.keyClick(dialog, Qt.Key.Key_Return)


def test_l_asks_for_the_words_of_the_placard_that_is_selected(placard) -> None:
    bench, steps = placard.window.bench, len(placard.window.bench.document.done)
    in_dialog(type_words)
    QTest.keyClick(placard.window, Qt.Key.Key_L)
    assert said(placard) == "COMPASS CARD"
    assert bench.document.option.plates[0].engravings == ()
    assert "covered-words" not in found(placard)
    assert len(bench.document.done) == steps + 1
    bench.document.undo()
    assert said(placard).startswith("Placard")


def test_the_lettering_tool_on_a_placard_letters_the_placard(placard) -> None:
    bench = placard.window.bench
    bench.selection.clear()
    QTest.keyClick(placard.window, Qt.Key.Key_L)
    assert placard.window.toolbox.tool_id == "lettering"
    in_dialog(type_words)
    placard.click(AT[0] + 12.0, AT[1] + 3.0)
    QApplication.processEvents()
    assert said(placard) == "COMPASS CARD"
    assert bench.document.option.plates[0].engravings == ()


def test_several_are_lettered_together_each_in_its_field(placard) -> None:
    bench = placard.window.bench
    cutout = packaged_catalogue().cutout("placard-small")
    bench.edit("Place", lambda project, option: place(project, option, "main", cutout, 60.0, -120.0).project)
    first, second = bench.document.option.items[-2:]
    bench.selection.set((first.id, second.id))

    def act(dialog) -> None:
        fill(dialog, **{second.name: "NO SMOKING"})
        QTest.keyClick(dialog, Qt.Key.Key_Return)

    in_dialog(act)
    placard.action("place.label")
    assert [item.name for item in bench.document.option.items[-2:]] == [first.name, "NO SMOKING"]


def test_its_properties_call_the_name_its_words(placard) -> None:
    field = pane(placard, "properties").sheet.name
    assert field.accessibleName() == "Words"
    type_into(field, "INTENTIONAL SPINS PROHIBITED")
    assert said(placard) == "INTENTIONAL SPINS PROHIBITED"
    placard.window.bench.selection.set(("one",))
    assert pane(placard, "properties").sheet.name.accessibleName() == "Name"


def test_the_front_view_shows_the_words_and_marks_the_placard_alone(placard) -> None:
    """The placard is 50.8 by 12.7 mm, its corners 1.524 mm round."""
    bench = placard.window.bench
    bench.edit("Letter", lambda project, option: rename(project, option, bench.selection.current, "NO SMOKING"))
    mine = [one.picture for one in bench.stage.scene.groups if one.owner == bench.selection.current]
    shown = {node.text for node in walk(mine) if isinstance(node, Text)}
    assert shown == {"NO SMOKING"}
    area = bench.stage.scene.area(bench.selection.current)
    assert len(area.toSubpathPolygons()) == 1
    assert area.boundingRect().width() == pytest.approx(50.8)
