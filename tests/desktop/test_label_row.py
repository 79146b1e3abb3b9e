"""A row of switches is labelled from the keyboard: L, words, Tab, Enter."""

from itertools import pairwise

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QLineEdit

from panelcad.desktop.elided import ElidedLabel
from panelcad.editing.label_row import short_name
from panelcad.editing.rename import rename
from panelcad.editing.row import Row, place_row
from panelcad.geometry.point import Point
from panelcad.library.catalogue import packaged_catalogue
from panelcad.model.surroundings import Eye
from tests import builders
from tests.desktop.next_dialog import in_dialog
from tests.desktop.test_edit_dialogs import words
from tests.desktop.test_panel_dialogs import box, choose, field, fill

PITCH = 30.0


@pytest.fixture
def row(hands):
    """Three toggle switches below the instruments, selected."""
    cutout = packaged_catalogue().cutout("toggle")
    spots = Row(Point(-100.0, -60.0), 3, PITCH)
    hands.window.bench.make("Place", lambda project, option: place_row(project, option, "main", cutout, spots))
    hands.view.setFocus()
    return hands


def lettering(hands):
    return hands.window.bench.document.option.plates[0].engravings


def press_l(hands) -> None:
    QTest.keyClick(hands.window, Qt.Key.Key_L)


def test_each_is_named_by_keys_and_all_is_one_step(row) -> None:
    bench = row.window.bench
    before, steps = bench.document.project, len(bench.document.done)
    seen = []

    def name_them(dialog) -> None:
        seen.append(dialog.focusWidget().text())
        QTest.keyClicks(dialog.focusWidget(), "NAV")
        for text in ("LDG", "TAXI"):
            QTest.keyClick(dialog.focusWidget(), Qt.Key.Key_Tab)
            QTest.keyClicks(dialog.focusWidget(), text)
        seen.append({one.owner for one in bench.stage.scene.groups if one.owner.startswith("lettering")})
        seen.append("&" in dialog.verb.text())
        QTest.keyClick(dialog, Qt.Key.Key_Return)

    in_dialog(name_them)
    press_l(row)
    lines = lettering(row)
    assert seen == [short_name(bench.document.option.items[3].name), {line.id for line in lines}, False]
    assert [(line.text, line.x) for line in lines] == [("NAV", -100.0), ("LDG", -70.0), ("TAXI", -40.0)]
    assert {line.height for line in lines} == {3.0}  # no eye is known
    assert all(line.y < -60.0 for line in lines)
    assert bench.selection.ids == tuple(line.id for line in lines)
    assert len(bench.document.done) == steps + 1
    bench.document.undo()
    assert bench.document.project is before


def test_above_and_another_height(row) -> None:
    def change(dialog) -> None:
        choose(dialog, "Side", "above")
        fill(dialog, Height_of_a_capital="2 + 1/2")
        QTest.keyClick(dialog, Qt.Key.Key_Return)

    in_dialog(change)
    press_l(row)
    assert {line.height for line in lettering(row)} == {2.5}
    assert all(line.y > -60.0 for line in lettering(row))


def test_letters_start_as_high_as_the_eye_asks_for(row) -> None:
    eye = Eye(x=-200.0, y=250.0, z=-700.0, centre_line=-200.0, source=builders.SOURCE)
    bench = row.window.bench
    bench.edit("Eye", lambda project, _: project.revised(surroundings=project.surroundings.revised(eye=eye)))
    in_dialog(lambda dialog: QTest.keyClick(dialog, Qt.Key.Key_Return))
    press_l(row)
    bench.judge.check_now()
    found = {finding.rule for finding in bench.judge.report.findings}
    assert not found & {"letter-height", "covered-words", "label"}
    # 20 minutes of arc at 770 to 800 mm are 4.48 to 4.65 mm.
    assert {4.4 < line.height < 4.8 for line in lettering(row)} == {True}


def test_words_that_meet_are_told_and_none_are_refused(row) -> None:
    told = []

    def act(dialog) -> None:
        for text in ("LANDING LIGHT", "A"):
            for item in row.window.bench.document.option.items[3:]:
                fill(dialog, **{item.name: text})
            told.append(words(dialog))
        for item in row.window.bench.document.option.items[3:]:
            fill(dialog, **{item.name: ""})
        told.append((dialog.problem.text(), dialog.verb.isEnabled()))

    in_dialog(act)
    press_l(row)
    assert "Nearer than 1.50 mm" in told[0]
    assert "Nearer" not in told[1]
    assert told[2] == ("There are no words yet.", False)
    assert lettering(row) == ()


def test_only_the_controls_of_what_is_selected_are_listed(row) -> None:
    QTest.keyClick(row.window, Qt.Key.Key_A, Qt.KeyboardModifier.ControlModifier)
    listed = []

    def look(dialog) -> None:
        items = row.window.bench.document.option.items
        listed.extend(field(dialog, item.name).text() for item in items[3:])
        listed.append(len(dialog.form.findChildren(QLineEdit)))

    in_dialog(look)
    press_l(row)
    assert len(listed[:-1]) == 3
    assert listed[-1] == 3 + 1  # and the height


@pytest.mark.parametrize("chosen", [(), ("two",)])
def test_without_a_control_the_key_takes_the_lettering_tool(row, chosen) -> None:
    row.window.bench.selection.set(chosen)
    assert not row.window.menus.actions["place.label"].isEnabled()
    press_l(row)
    assert row.window.toolbox.tool_id == "lettering"
    assert lettering(row) == ()


def test_labelling_again_shows_the_old_words_and_changes_them_in_one_step(row) -> None:
    in_dialog(lambda dialog: QTest.keyClick(dialog, Qt.Key.Key_Return))
    press_l(row)
    bench, steps = row.window.bench, len(row.window.bench.document.done)
    items = bench.document.option.items[3:]
    before, first = bench.document.project, lettering(row)
    in_dialog(lambda dialog: (choose(dialog, "Side", "above"), QTest.keyClick(dialog, Qt.Key.Key_Return)))
    bench.selection.set(item.id for item in items)
    row.action("place.label")
    assert [line.id for line in lettering(row)] == [line.id for line in first]
    assert all(line.y > -60.0 for line in lettering(row))
    shown = []

    def act(dialog) -> None:
        shown.extend(field(dialog, item.name).text() for item in items)
        shown.append(box(dialog, "Side").currentText())
        fill(dialog, **{items[0].name: "", items[1].name: "LDG"})
        QTest.keyClick(dialog, Qt.Key.Key_Return)

    in_dialog(act)
    bench.selection.set(item.id for item in items)
    row.action("place.label")
    assert shown == [*(line.text for line in first), "above"]
    assert [line.text for line in lettering(row)] == ["LDG", first[2].text]
    assert len(bench.document.done) == steps + 2
    bench.document.undo()
    bench.document.undo()
    assert bench.document.project is before


def test_a_name_however_long_stands_beside_its_field(row) -> None:
    bench = row.window.bench
    items = bench.document.option.items[3:]
    long = "Landing and taxi light, left and right wing, with pulse, & strobe switch"
    bench.edit("Name", lambda project, option: rename(project, option, items[1].id, long))
    bench.selection.set(item.id for item in items)
    seen = []

    def look(dialog) -> None:
        dialog.resize(dialog.minimumWidth(), dialog.height())
        QApplication.processEvents()
        places = [field(dialog, item.name).geometry() for item in bench.document.option.items[3:]]
        seen.append({(place.left(), place.right()) for place in places})
        seen.append(max(b.top() - a.bottom() for a, b in pairwise(places)))
        seen.extend(label.toolTip() for label in dialog.findChildren(ElidedLabel) if label.text() == long)
        QTest.keyClick(dialog, Qt.Key.Key_Escape)

    in_dialog(look)
    press_l(row)
    columns, apart, *told = seen
    assert len(columns) == 1
    assert apart < 20
    assert told == [long]
