"""Where an arrangement is to stand is typed from the datum, the pilot's centre line, or another thing."""

from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from panelcad.desktop.choice_box import ChoiceBox
from panelcad.desktop.dialogs.entries import LengthEntry
from panelcad.editing.eye import place_eye
from tests.desktop.next_dialog import in_dialog


def entry(dialog, name: str) -> LengthEntry:
    return next(one for one in dialog.findChildren(LengthEntry) if one.accessibleName() == name)


def write(field: LengthEntry, text: str) -> None:
    field.selectAll()
    QTest.keyClicks(field, text)


def reckon_from(dialog, words: str) -> None:
    """As letters typed on the box choose an entry."""
    box = dialog.findChild(ChoiceBox)
    QTest.keyClicks(box, words)
    assert box.currentText() == words


def first_of_row(hands):
    return next(item for item in hands.window.bench.document.option.items if item.id not in {"one", "two", "three"})


def test_a_row_begins_so_far_from_another_thing(hands) -> None:
    def fill(dialog) -> None:
        reckon_from(dialog, "three")
        write(entry(dialog, "x"), "-100")
        write(entry(dialog, "y"), "-2*20")
        QTest.keyClick(dialog, Qt.Key.Key_Return)

    in_dialog(fill)
    hands.action("place.row")
    made = first_of_row(hands)
    assert (made.x, made.y) == (100.0, -90.0)


def test_a_row_begins_so_far_from_the_pilots_centre_line(hands) -> None:
    hands.window.bench.edit("Eye", lambda project, _: place_eye(project, -150.0, 300.0, -700.0))

    def fill(dialog) -> None:
        reckon_from(dialog, "the pilot's centre line")
        write(entry(dialog, "x"), "1 in")
        write(entry(dialog, "y"), "-100")
        QTest.keyClick(dialog, Qt.Key.Key_Return)

    in_dialog(fill)
    hands.action("place.row")
    made = first_of_row(hands)
    assert (made.x, made.y) == (-150.0 + 25.4, -100.0)


def test_another_reference_says_the_same_place_in_other_figures(hands) -> None:
    def fill(dialog) -> None:
        write(entry(dialog, "x"), "-30")
        write(entry(dialog, "y"), "-100")
        reckon_from(dialog, "one")
        assert (entry(dialog, "x").text(), entry(dialog, "y").text()) == ("170", "-150")
        QTest.keyClick(dialog, Qt.Key.Key_Return)

    in_dialog(fill)
    hands.action("place.row")
    made = first_of_row(hands)
    assert (made.x, made.y) == (-30.0, -100.0)


def test_nonsense_is_put_right_before_the_reference_changes(hands) -> None:
    def fill(dialog) -> None:
        write(entry(dialog, "x"), "2 apples")
        QTest.keyClicks(dialog.findChild(ChoiceBox), "one")
        assert dialog.findChild(ChoiceBox).currentText() == "the datum"
        assert entry(dialog, "x").text() == "2 apples"
        QTest.keyClick(dialog, Qt.Key.Key_Escape)

    in_dialog(fill)
    hands.action("place.row")
