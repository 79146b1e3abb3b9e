"""The table of actions, and the ways to reach them."""

import pytest
from PySide6.QtCore import QPoint, Qt, QTimer
from PySide6.QtGui import QKeySequence
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QTabWidget

from panelcad.desktop.actions import MENUS, all_actions
from panelcad.desktop.canvas.gesture import Pointer
from panelcad.desktop.dialogs.command_search import CommandSearch
from panelcad.desktop.dialogs.preferences import Preferences
from panelcad.desktop.help.window import HelpWindow
from panelcad.desktop.theme import DARK, LIGHT, ThemeChoice
from panelcad.geometry.point import Point
from panelcad.units import LengthUnit
from tests.desktop.next_dialog import in_dialog


def test_ids_are_used_once_and_menus_are_known(qapp) -> None:
    actions = all_actions()
    assert len({action.id for action in actions}) == len(actions)
    assert {action.menu for action in actions} == set(MENUS)


def test_no_two_actions_share_a_shortcut(window) -> None:
    seen: dict[str, str] = {}
    docks = [(dock.windowTitle(), dock.way) for dock in window.docks.all]
    for name, action in (*window.menus.actions.items(), *docks):
        for sequence in action.shortcuts():
            keys = sequence.toString()
            assert keys not in seen, f"{name} and {seen[keys]} share {keys}"
            seen[keys] = name


def test_mnemonics_of_a_menu_differ(window) -> None:
    for menu in MENUS:
        titles = [window.menus.actions[a.id].text() for a in all_actions() if a.menu == menu]
        letters = [title[title.index("&") + 1].lower() for title in titles if "&" in title]
        assert len(letters) == len(set(letters)), f"{menu}: {sorted(letters)}"
        assert len(letters) >= 0.8 * len(titles)


def test_every_action_has_a_readable_tooltip(window) -> None:
    for name, action in window.menus.actions.items():
        assert action.toolTip().strip(), name
        assert "&" not in action.toolTip(), name


def test_what_cannot_be_done_is_not_offered(hands) -> None:
    actions = hands.window.menus.actions
    assert not actions["edit.delete"].isEnabled()
    hands.click(0, 50)
    assert actions["edit.delete"].isEnabled()
    assert not actions["arrange.align-left"].isEnabled()


@pytest.mark.parametrize(
    ("key", "held", "told"),
    [
        (Qt.Key.Key_Return, Qt.KeyboardModifier.ControlModifier, "select one obstacle, keep-out, depth limit"),
        (Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier, "nothing to take back"),
        (Qt.Key.Key_D, Qt.KeyboardModifier.ControlModifier, "select something first"),
    ],
)
def test_a_key_that_can_do_nothing_now_says_what_it_needs(hands, key, held, told) -> None:
    said: list[str] = []
    hands.window.bench.refused.connect(said.append)
    hands.key(key, held)
    assert [told in one for one in said] == [True]


def test_undo_says_what_it_takes_back(hands) -> None:
    hands.click(0, 50)
    hands.key(Qt.Key.Key_Right)
    assert hands.window.menus.actions["edit.undo"].text() == "&Undo 'Nudge'"


def test_an_action_is_found_by_words(hands) -> None:
    hands.click(0, 50)

    def find(dialog) -> None:
        QTest.keyClicks(dialog.words, "turn left")
        QTest.keyClick(dialog.words, Qt.Key.Key_Return)

    in_dialog(find, CommandSearch)
    QTest.keyClick(hands.window, Qt.Key.Key_Space, Qt.KeyboardModifier.ControlModifier)
    assert hands.item("two").rotation in {15.0, 90.0}


def test_what_cannot_be_done_now_says_so_and_leaves_the_search_open(hands) -> None:
    def find(dialog) -> None:
        QTest.keyClicks(dialog.words, "take away")
        assert dialog.list.item(0).text().endswith("(not now)")
        QTest.keyClick(dialog.words, Qt.Key.Key_Return)
        assert dialog.isVisible()
        assert dialog.why_not.isVisible()
        assert dialog.why_not.text() == "Take away: select something first"
        dialog.words.selectAll()
        QTest.keyClicks(dialog.words, "equal gaps across")
        assert not dialog.why_not.isVisible()
        QTest.keyClick(dialog.words, Qt.Key.Key_Return)
        assert dialog.why_not.text() == "Equal gaps across: select three things or more first"

    in_dialog(find, CommandSearch)
    hands.action("help.find")
    assert hands.window.bench.document.is_untouched


def test_a_section_of_help_is_found_by_words(hands) -> None:
    def find(dialog) -> None:
        QTest.keyClicks(dialog.words, "after a crash")
        assert dialog.list.item(0).text() == "Help: After a crash (Files and preferences)"
        QTest.keyClick(dialog.words, Qt.Key.Key_Return)

    in_dialog(find, CommandSearch)
    hands.action("help.find")
    help_window = next(one for one in QApplication.topLevelWidgets() if isinstance(one, HelpWindow))
    assert help_window.page.link == "help/files.md#after-a-crash"
    help_window.close()


def test_a_pane_is_found_by_words_and_shown(hands) -> None:
    dock = hands.window.docks.dock("history")
    assert dock.isHidden()

    def find(dialog) -> None:
        QTest.keyClicks(dialog.words, "history")
        QTest.keyClick(dialog.words, Qt.Key.Key_Return)

    in_dialog(find, CommandSearch)
    hands.action("help.find")
    assert dock.isVisible()


def test_words_that_suit_nothing_are_answered(hands) -> None:
    def find(dialog) -> None:
        assert not dialog.none.isVisible()
        QTest.keyClicks(dialog.words, "xyzzyx")
        assert dialog.none.isVisible()
        QTest.keyClick(dialog.words, Qt.Key.Key_Return)
        assert dialog.isVisible()

    in_dialog(find, CommandSearch)
    hands.action("help.find")


def test_no_pane_is_offered_where_there_is_no_panel(hands) -> None:
    hands.window.show_start_page()
    assert not any(dock.way.isEnabled() for dock in hands.window.docks.all)
    hands.window.show_panel()
    assert all(dock.way.isEnabled() for dock in hands.window.docks.all)


def test_the_menu_at_the_pointer_picks_the_thing_there(hands) -> None:
    pointer = Pointer(Point(0, 50), 1 / hands.view.zoom)
    hands.click(200, -50)
    menu = hands.window.context_menu.made(pointer, "two")
    titles = [entry.text() for entry in menu.actions()]
    assert "Take away" in [title.replace("&", "") for title in titles]
    letters = [title[title.index("&") + 1].lower() for title in titles if "&" in title]
    assert len(letters) == len(set(letters)) > 5
    menu.deleteLater()


def test_a_right_click_selects_and_opens_a_menu(hands, qtbot) -> None:
    def close() -> None:
        popup = QApplication.activePopupWidget()
        if popup is None:
            QTimer.singleShot(10, close)
        else:
            popup.close()

    QTimer.singleShot(10, close)
    at = hands.pixel(0, 50)
    QTest.mouseClick(hands.view.viewport(), Qt.MouseButton.RightButton, pos=QPoint(at))
    assert hands.window.bench.selection.ids == ("two",)


def test_preferences_are_kept(hands) -> None:
    def fill(dialog) -> None:
        field = dialog.steps[LengthUnit.MM, "fine"]
        field.selectAll()
        QTest.keyClicks(field, "1/2")
        dialog.theme.setCurrentIndex(dialog.theme.findData(ThemeChoice.DARK))
        QTest.keyClick(dialog, Qt.Key.Key_Return)

    in_dialog(fill, Preferences)
    hands.action("edit.preferences")
    assert hands.window.settings.step("fine", LengthUnit.MM) == 0.5
    assert hands.window.bench.theme is DARK
    hands.click(0, 50)
    hands.key(Qt.Key.Key_Right)
    assert hands.item("two").x == 0.5
    hands.window.settings.theme = ThemeChoice.LIGHT
    assert hands.window.bench.theme is LIGHT


def test_the_screen_is_measured_with_a_ruler(hands) -> None:
    def fill(dialog) -> None:
        line = dialog.screen_size.line
        line.selectAll()
        QTest.keyClicks(line, "100 mm")
        QTest.keyClick(dialog, Qt.Key.Key_Return)

    in_dialog(fill, Preferences)
    hands.action("edit.preferences")
    # The line is 400 pixels long.
    assert hands.window.settings.pixels_per_mm == 4.0
    hands.action("view.true")
    assert hands.view.zoom == pytest.approx(4.0)


def test_the_dialog_makes_room_for_the_whole_card(hands) -> None:
    def fill(dialog) -> None:
        dialog.findChild(QTabWidget).setCurrentWidget(dialog.screen_size)
        QTest.keyClick(dialog.screen_size.slider, Qt.Key.Key_End)
        QTest.qWait(50)
        # A bank card is 85.60 mm wide (ISO/IEC 7810); the slider ends at 8 pixels a mm.
        assert dialog.width() > 85.60 * 8
        dialog.reject()

    in_dialog(fill, Preferences)
    hands.action("edit.preferences")


@pytest.mark.parametrize("text", ["nonsense", "0", "2 m"])
def test_a_length_that_the_line_cannot_have_is_refused(hands, text) -> None:
    def fill(dialog) -> None:
        before = dialog.screen_size.pixels_per_mm
        line = dialog.screen_size.line
        line.selectAll()
        QTest.keyClicks(line, text)
        QTest.keyClick(dialog, Qt.Key.Key_Return)
        assert dialog.isVisible()
        assert "cannot be read" in dialog.problem.text()
        assert dialog.screen_size.pixels_per_mm == before
        dialog.reject()

    in_dialog(fill, Preferences)
    hands.action("edit.preferences")


@pytest.mark.parametrize("text", ["nonsense", "0", "-1"])
def test_a_step_that_is_none_is_refused(hands, text) -> None:
    def fill(dialog) -> None:
        field = dialog.steps[LengthUnit.MM, "grid"]
        field.selectAll()
        QTest.keyClicks(field, text)
        QTest.keyClick(dialog, Qt.Key.Key_Return)
        assert dialog.isVisible()
        assert "cannot be read" in dialog.problem.text()
        QTest.keyClick(dialog, Qt.Key.Key_Escape)

    in_dialog(fill, Preferences)
    hands.action("edit.preferences")
    assert hands.window.settings.step_text("grid", LengthUnit.MM) == "5"


def test_cautions_can_be_read(hands) -> None:
    in_dialog(lambda dialog: QTest.keyClick(dialog, Qt.Key.Key_Escape))
    hands.action("help.cautions")


def test_the_first_screen_shows_the_cautions(qtbot, own_settings) -> None:
    from PySide6.QtWidgets import QLabel

    from panelcad.desktop.cautions import FULL
    from panelcad.desktop.main_window import MainWindow
    from panelcad.desktop.settings import Settings

    window = MainWindow(Settings())
    window.show()
    shown = {label.text() for label in window.start_page.findChildren(QLabel) if label.isVisible()}
    assert set(FULL) <= shown
    window.close()
    window.deleteLater()


def test_a_distance_is_measured_between_edges(hands) -> None:
    QTest.keyClick(hands.window, Qt.Key.Key_M)
    radius = 79.375 / 2
    hands.click(-200 + radius, 50)
    hands.click(0 - 42, 50)
    words = hands.window.statusBar().words.text()
    # From the edge of one cut to the bezel of the next: 200 - 39.6875 - 42 mm.
    assert words.startswith("118.31 mm")
    assert "the bezel of two" in words
    hands.key(Qt.Key.Key_Escape)
    hands.key(Qt.Key.Key_Escape)
    assert hands.window.toolbox.tool_id == "select"


def test_keys_are_written_as_the_platform_does(qapp) -> None:
    save = next(action for action in all_actions() if action.id == "file.save")
    assert save.keys == QKeySequence(QKeySequence.StandardKey.Save).toString(QKeySequence.SequenceFormat.NativeText)
