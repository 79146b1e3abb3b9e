"""Dialogs whose outcome is seen while they are filled in: what Enter takes, where they stand, what they say."""

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QLabel, QListWidget, QPushButton

from panelcad.desktop.dialogs.cutout_choice import CutoutChoice
from panelcad.desktop.dialogs.entries import LengthEntry
from panelcad.editing.rename import rename
from panelcad.errors import EditRefused
from panelcad.library.catalogue import packaged_catalogue
from panelcad.units import LengthUnit, parse_length
from tests.desktop.next_dialog import in_dialog

CTRL = Qt.KeyboardModifier.ControlModifier
ALT = Qt.KeyboardModifier.AltModifier


def words(dialog) -> str:
    return " ".join(label.text() for label in dialog.findChildren(QLabel))


def test_all_that_is_selected_is_replaced_as_one_step_and_told(hands) -> None:
    smaller = next(one for one in packaged_catalogue().search("2 1/4") if one.openings)
    document = hands.window.bench.document
    QTest.keyClick(hands.window, Qt.Key.Key_A, CTRL)
    said = []

    def choose(dialog) -> None:
        dialog.findChild(CutoutChoice).choose(smaller.name)
        said.append(words(dialog))
        QTest.keyClick(dialog.findChild(CutoutChoice), Qt.Key.Key_Return)

    in_dialog(choose)
    before = document.project
    hands.action("place.replace")
    assert {document.project.cutout(item.cutout).title for item in document.option.items} == {smaller.title}
    assert "in place of" in said[0]
    assert "3 things replaced" in hands.window.statusBar().words.text()
    document.undo()
    assert document.project is before


def test_what_fits_the_same_opening_is_offered_first(hands) -> None:
    cutout = packaged_catalogue().search("3 1/8 in instrument")[0]
    offered = []
    hands.window.bench.place_wanted.emit(cutout)
    hands.click(100, 100)
    hands.key(Qt.Key.Key_Escape)

    def look(dialog) -> None:
        choice = dialog.findChild(CutoutChoice)
        offered.extend(choice.itemData(i) for i in range(choice.count()))

    in_dialog(look)
    hands.action("place.replace")
    known = packaged_catalogue().cutouts
    same = [[(o.shape, o.x, o.y) for o in known[name].openings] for name in offered]
    wanted = [(o.shape, o.x, o.y) for o in cutout.openings]
    alike = [openings == wanted for openings in same]
    assert alike[0]
    assert alike == sorted(alike, reverse=True)


def test_the_button_takes_the_first_that_is_like_what_is_typed_for_the_stack(hands) -> None:
    listed = []

    def type_it(dialog) -> None:
        choice = dialog.findChild(CutoutChoice)
        choice.lineEdit().selectAll()
        QTest.keyClicks(choice.lineEdit(), "audio")
        add = next(one for one in dialog.findChildren(QPushButton) if "Add below" in one.text().replace("&", ""))
        QTest.mouseClick(add, Qt.MouseButton.LeftButton)
        units = dialog.findChild(QListWidget)
        listed.extend(units.item(i).text() for i in range(units.count()))
        choice.lineEdit().setText("no such thing")
        QTest.mouseClick(add, Qt.MouseButton.LeftButton)
        listed.append(dialog.problem.text())

    in_dialog(type_it)
    hands.action("place.stack")
    assert len(listed) == 2
    assert "audio" in listed[0].lower()
    assert "no such thing" in listed[1]


def test_units_are_typed_one_after_the_other_and_enter_adds_each_to_the_stack(hands) -> None:
    listed, said = [], []

    def type_it(dialog) -> None:
        choice, units = dialog.findChild(CutoutChoice), dialog.findChild(QListWidget)
        choice.lineEdit().selectAll()
        for words in ("audio", "transponder", "no such thing"):
            QTest.keyClicks(choice, words)
            QTest.keyClick(choice, Qt.Key.Key_Return)
        listed.extend(units.item(i).text() for i in range(units.count()))
        said.append(dialog.problem.text())
        assert dialog.isVisible()

    in_dialog(type_it)
    hands.action("place.stack")
    assert listed == ["Audio panel, rack", "Transponder, rack"]
    assert "no such thing" in said[0]


def test_the_list_of_what_is_like_the_words_goes_when_enter_added_the_unit(hands) -> None:
    seen = []

    def type_it(dialog) -> None:
        choice, units = dialog.findChild(CutoutChoice), dialog.findChild(QListWidget)
        choice.lineEdit().selectAll()
        QTest.keyClicks(choice.lineEdit(), "transp")
        popup = choice.completer().popup()
        seen.append(popup.isVisible())
        QTest.keyClick(popup, Qt.Key.Key_Return)  # a list that is open gets the keys first
        seen.extend((popup.isVisible(), units.count()))

    in_dialog(type_it)
    hands.action("place.stack")
    assert seen == [True, False, 1]


@pytest.mark.parametrize("adds", [False, True])
def test_a_key_that_leads_on_from_the_open_list_takes_the_first_figure_with_it(hands, qtbot, adds) -> None:
    """Alt+X after the words, or after Alt+A has added their unit: what is typed then is all x."""
    typed = []

    def type_it(dialog) -> None:
        choice = dialog.findChild(CutoutChoice)
        x = next(entry for entry in dialog.findChildren(LengthEntry) if entry.accessibleName() == "x")
        choice.lineEdit().selectAll()
        QTest.keyClicks(choice.lineEdit(), "audio")
        popup = choice.completer().popup()
        assert popup.isVisible()
        if adds:
            QTest.keyClick(popup, Qt.Key.Key_A, ALT)
            qtbot.waitUntil(lambda: not popup.isVisible())
        QTest.keyClick(QApplication.activePopupWidget() or dialog, Qt.Key.Key_X, ALT)
        for key in "-12":
            QTest.keyClicks(QApplication.activePopupWidget() or QApplication.focusWidget(), key)
        typed.append(x.text())

    in_dialog(type_it)
    hands.action("place.stack")
    assert typed == ["-12"]


def test_the_cutout_chosen_already_is_kept_where_the_words_suit_it_as_well_as_others(hands) -> None:
    chosen = []

    def type_it(dialog) -> None:
        choice = dialog.findChild(CutoutChoice)
        chosen.append(choice.cutout.title)
        for words in ("toggle", "toggle breaker"):
            choice.lineEdit().selectAll()
            QTest.keyClicks(choice.lineEdit(), words)
            chosen.append(choice.completer().model().index(0, 0).data())
            QTest.keyClick(choice.completer().popup(), Qt.Key.Key_Return)
            assert not choice.completer().popup().isVisible()
            chosen.append(choice.cutout.title)

    in_dialog(type_it)
    hands.action("place.row")
    assert chosen == ["Toggle switch"] * 3 + ["Toggle breaker"] * 2


@pytest.mark.parametrize("x", [-200.0, 200.0])
def test_a_dialog_stands_at_the_side_away_from_what_is_worked_on(hands, x) -> None:
    hands.click(x, 50 if x < 0 else -50)
    stands = []

    def look(dialog) -> None:
        stands.append(dialog.x() - hands.view.mapToGlobal(QPoint(0, 0)).x())

    in_dialog(look)
    hands.action("arrange.turn")
    assert (stands[0] > 50) == (x < 0)


def test_a_row_starts_where_it_covers_nothing(hands) -> None:
    hands.hover(0, 50)

    def look(dialog) -> None:
        QTest.keyClick(dialog, Qt.Key.Key_Return)

    in_dialog(look)
    hands.action("place.row")
    document = hands.window.bench.document
    fresh = [item for item in document.option.items if item.id not in {"one", "two", "three"}]
    assert len(fresh) == 6
    assert all(
        abs(item.x - old.x) > 30 or abs(item.y - old.y) > 30 for item in fresh for old in document.option.items[:3]
    )


def test_what_cannot_be_read_names_its_field(hands) -> None:
    hands.click(0, 50)
    said = []

    def type_it(dialog) -> None:
        entry = next(one for one in dialog.findChildren(LengthEntry) if one.accessibleName() == "Pitch up")
        entry.selectAll()
        QTest.keyClicks(entry, "x")
        said.append(dialog.problem.text())

    in_dialog(type_it)
    hands.action("arrange.repeat")
    assert said[0].startswith("Pitch up: 'x' cannot be read")


def test_an_empty_name_is_refused_in_plain_words(hands) -> None:
    document = hands.window.bench.document
    with pytest.raises(EditRefused, match=r"^A name is needed\.$"):
        rename(document.project, document.option_id, "two", "")


def test_a_long_figure_is_shown_short_and_stays_exact_until_it_is_edited(qtbot) -> None:
    mm = parse_length("7.68562992", LengthUnit.INCH)
    entry = LengthEntry("Width", mm, LengthUnit.INCH)
    qtbot.addWidget(entry)
    assert entry.text() == "7.686"
    assert entry.mm == mm
    QTest.keyClick(entry, Qt.Key.Key_Backspace)
    assert entry.mm == parse_length("7.68", LengthUnit.INCH)


def test_the_outline_pane_goes_with_its_tool_and_the_others_have_their_height_again(hands, qtbot) -> None:
    docks = hands.window.docks
    before = docks.dock("findings").height()
    hands.window.bench.take_tool("outline")
    qtbot.waitUntil(lambda: docks.dock("outline").isVisible())
    qtbot.wait(50)
    hands.key(Qt.Key.Key_Escape)
    assert not docks.dock("outline").isVisible()
    qtbot.waitUntil(lambda: abs(docks.dock("findings").height() - before) < 12)


def test_escape_leaves_the_tool_after_a_dialog_was_left(hands) -> None:
    hands.window.bench.take_tool("outline")
    in_dialog(lambda dialog: QTest.keyClick(dialog, Qt.Key.Key_Escape))
    hands.action("place.basic-t")
    assert hands.window.focusWidget() is hands.view
    QTest.keyClick(hands.window.focusWidget(), Qt.Key.Key_Escape)
    assert hands.window.toolbox.tool_id == "select"
