"""The window in a small frame and with long words; every dialog by its keys, names and order.

No title is translated yet: letters set 35 % wider stand for the longer words of other languages. A screen of
1920 × 1080 at 200 % leaves 960 × 540.
"""

from itertools import pairwise

import pytest
from PySide6.QtCore import QObject, QPoint, Qt
from PySide6.QtGui import QFont
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractSpinBox,
    QApplication,
    QComboBox,
    QDialog,
    QDialogButtonBox,
    QGroupBox,
    QLabel,
    QTabBar,
    QToolButton,
    QWidget,
)

from panelcad.desktop.dialogs.edit_dialog import EditDialog
from panelcad.desktop.elided import ElidedLabel
from panelcad.desktop.help.window import HelpWindow
from panelcad.desktop.main_window import MainWindow
from panelcad.desktop.owner_view import OwnerView
from panelcad.desktop.settings import Settings
from panelcad.desktop.theme import LIGHT, dress
from panelcad.editing.label_row import controls
from panelcad.library.samples import sample_file
from panelcad.model.cutout import Opening
from panelcad.model.shape import Circle
from panelcad.store.project_file import load, save
from tests import builders
from tests.desktop.clipping import clipped
from tests.desktop.dialog_walk import dialog_actions, walk_dialog, walk_finding, walk_messages, walk_tools

NARROW = (900, 650)
WIDE_LETTERS = 135.0
NO_DIALOGS = {"place.find", "place.own-like", "place.own-change", "place.own-forget", "view.owner"}
"""The first goes to the library's search, three want a cutout chosen there, the last is a window of its own."""
FILE_QUESTIONS = {"file.open", "file.take-in", "file.save-as", "file.take-limits", "file.write-limits"}
NEEDS_A_RELEASE = {"file.revision"}


@pytest.fixture(params=[100.0, WIDE_LETTERS], ids=["plain letters", "wide letters"])
def letters(request, qapp):
    """Letters of usual width, and wide ones."""
    usual = QApplication.font()
    font = QFont(usual)
    font.setLetterSpacing(QFont.SpacingType.PercentageSpacing, request.param)
    QApplication.setFont(font)
    yield request.param
    QApplication.setFont(usual)


@pytest.fixture
def narrow(qtbot, tmp_path, own_settings, letters):
    """A twin's panel with three plates, in a window of 900 × 650."""
    path = tmp_path / "twin.panel.json"
    save(with_own_cut(load(sample_file("twin"))), path)
    dress(QApplication.instance(), LIGHT)
    window = MainWindow(Settings())
    window.resize(*NARROW)
    window.show()
    qtbot.waitExposed(window)
    window.open(path)
    qtbot.waitUntil(lambda: window.bench.judge.report is not None, timeout=20_000)
    settle()
    yield window
    window.bench.document.mark_saved(path, window.bench.document.project)
    window.close()
    window.deleteLater()


def with_own_cut(project):
    """The twin's panel with a cut made to measure besides."""
    option = project.options[0]
    plate = option.plates[0]
    opening = Opening(shape=Circle(diameter=20.0), purpose="map light", source=builders.SOURCE)
    cut = builders.cut("own-cut", 0.0, 30.0, cutout=None, openings=(opening,), state="new")
    plates = (plate.revised(cuts=(*plate.cuts, cut)), *option.plates[1:])
    return project.with_option(option.revised(plates=plates))


def settle() -> None:
    for _ in range(30):
        QApplication.processEvents()


def things(window) -> list[str]:
    document = window.bench.document
    return [item.id for item in document.option.items if item.cut and item.plate == window.bench.stage.plate_id]


def opened(window, action_id, look) -> bool:
    """Open what the action asks, with nothing, one or two things selected, or something that stands around."""
    standing = window.bench.document.project.surroundings.obstacles[0].id
    project, option = window.bench.document.project, window.bench.document.option
    labelled = [item.id for item in controls(project, option, things(window))][:9]
    for chosen in ((), things(window)[:1], things(window)[:2], labelled, (standing,), ("own-cut",)):
        window.bench.selection.set(chosen)
        window.menus.refresh()
        if window.menus.actions[action_id].isEnabled():
            return walk_dialog(window, action_id, look)
    return False


def every_dialog(window, look) -> None:
    """All dialogs that actions open; the files' own are the platform's."""
    never = [name for name in dialog_actions() if name != "view.owner" and not opened(window, name, look)]
    assert set(never) <= FILE_QUESTIONS | NO_DIALOGS | NEEDS_A_RELEASE


def test_no_pane_cuts_words_off_in_a_narrow_window(narrow) -> None:
    docks = narrow.docks.all
    faults = [f"window: {fault}" for fault in clipped(narrow)]
    for chosen in (things(narrow)[:1], things(narrow)[:3]):
        narrow.bench.selection.set(chosen)
        settle()
        faults += [f"{len(chosen)} selected: {fault}" for fault in clipped(narrow)]
    for dock in docks:
        for other in docks:
            other.setVisible(other is dock)
        settle()
        faults += [f"{dock.windowTitle()}: {fault}" for fault in clipped(narrow)]
    assert not faults, "\n".join(faults)


def test_no_dialog_cuts_words_off_or_is_larger_than_a_low_screen(narrow) -> None:
    faults = []

    def look(name: str, dialog: QDialog) -> None:
        faults.extend(f"{name}: {fault}" for fault in clipped(dialog))
        least = dialog.minimumSizeHint().expandedTo(dialog.minimumSize())
        if least.width() > 960 or least.height() > 500:
            faults.append(f"{name}: cannot be smaller than {least.width()} × {least.height()}")

    every_dialog(narrow, look)
    assert not faults, "\n".join(faults)


def test_every_chooser_is_on_the_bar_of_a_narrow_window(narrow, letters) -> None:
    """With wide letters the last may stand behind the overflow button, which the keyboard reaches."""
    bar = narrow.menus.bar
    seen = {box.accessibleName() for box in bar.findChildren(QComboBox) if box.isVisible()}
    overflow = bar.findChild(QToolButton, "qt_toolbar_ext_button")
    assert seen == {"Option", "Plate", "Seen from"} or (letters == WIDE_LETTERS and overflow.isVisible())
    assert overflow.focusPolicy() == Qt.FocusPolicy.StrongFocus
    assert overflow.accessibleName()


def test_no_tool_makes_the_window_taller(narrow) -> None:
    for tool in ("outline", "course-outline"):
        narrow.bench.take_tool(tool)
        settle()
    assert (narrow.width(), narrow.height()) == NARROW


def test_a_hint_ends_in_dots_and_is_told_whole(narrow) -> None:
    words = narrow.statusBar().words
    assert isinstance(words, ElidedLabel)
    narrow.bench.take_tool("course-outline")
    assert words.shown_text.endswith("…")
    assert words.toolTip() == words.text()


@pytest.mark.parametrize("letters", [100.0], indirect=True, ids=["plain letters"])
class TestEveryDialog:
    def test_no_two_keys_are_the_same(self, narrow) -> None:
        faults = []

        def look(name: str, dialog: QDialog) -> None:
            keys = sorted(mnemonics(dialog))
            faults.extend(f"{name}: {a[0]} is {a[1]} and {b[1]}" for a, b in pairwise(keys) if a[0] == b[0])

        every_dialog(narrow, look)
        assert not faults, "\n".join(faults)

    def test_no_letter_makes_the_change_itself(self, narrow) -> None:
        """Enter makes it; Alt and a letter go to a field, and what was typed is not lost."""
        faults = []

        def look(name: str, dialog: QDialog) -> None:
            if isinstance(dialog, EditDialog) and "&" in dialog.verb.text():
                faults.append(f"{name}: {dialog.verb.text()}")

        every_dialog(narrow, look)
        assert not faults, "\n".join(faults)

    def test_every_field_has_a_name(self, narrow) -> None:
        faults = []

        def look(name: str, dialog: QDialog) -> None:
            faults.extend(f"{name}: {type(one).__name__}" for one in stops(dialog) if not spoken_name(one))

        every_dialog(narrow, look)
        assert not faults, "\n".join(faults)

    def test_tab_goes_down_the_fields_and_to_the_buttons_last(self, narrow) -> None:
        faults = []

        def look(name: str, dialog: QDialog) -> None:
            chain = in_tab_order(dialog)
            faults.extend(
                f"{name}: from {spoken_name(a)} to {spoken_name(b)}"
                for a, b in pairwise(chain)
                if goes_back(a, b, dialog)
            )

        every_dialog(narrow, look)
        assert not faults, "\n".join(faults)

    def test_those_of_tools_and_findings_and_every_message_take_the_same_care(self, narrow) -> None:
        faults = []

        def look(name: str, dialog: QDialog) -> None:
            keys, chain = sorted(mnemonics(dialog)), in_tab_order(dialog)
            found = list(clipped(dialog))
            found += [f"{a[0]} is {a[1]} and {b[1]}" for a, b in pairwise(keys) if a[0] == b[0]]
            found += [f"{type(one).__name__} has no name" for one in stops(dialog) if not spoken_name(one)]
            found += [
                f"from {spoken_name(a)} to {spoken_name(b)}" for a, b in pairwise(chain) if goes_back(a, b, dialog)
            ]
            faults.extend(f"{name}: {fault}" for fault in found)

        for walk in (walk_tools, walk_finding, walk_messages):
            walk(narrow, look)
        assert faults == []

    def test_every_pane_names_its_fields_and_leaves_the_menus_keys_alone(self, narrow) -> None:
        """Alt and a letter of the menus or the tool bar goes there wherever one is."""
        menus = {action.text()[action.text().index("&") + 1].lower() for action in narrow.menuBar().actions()}
        menus |= {letter for letter, _ in mnemonics(narrow.menus.bar)}
        faults = []
        for dock in narrow.docks.all:
            dock.setVisible(True)
            settle()
            pane = dock.widget()
            keys = sorted(mnemonics(pane))
            mine = [type(one).__name__ for one in stops(pane) if not spoken_name(one)]
            mine += [f"{key} of {words} is a menu's or the bar's" for key, words in keys if key in menus]
            mine += [f"{a[0]} is {a[1]} and {b[1]}" for a, b in pairwise(keys) if a[0] == b[0]]
            faults += [f"{dock.windowTitle()}: {fault}" for fault in mine]
        assert not faults, "\n".join(faults)

    @pytest.mark.parametrize("tool", ["select", "outline", "course-outline", "section"])
    def test_no_two_keys_of_the_window_are_the_same_in_any_layout(self, narrow, tool) -> None:
        """With every pane open that can be open at once, whatever is selected, whatever finding is chosen."""
        faults = set()
        for dock in narrow.docks.all:
            dock.setVisible(True)
        narrow.bench.take_tool(tool)
        settle()
        for shown in every_state(narrow):
            keys = sorted([*mnemonics(narrow), *of_menus(narrow)])
            faults |= {f"{shown}: {a[0]} is {a[1]} and {b[1]}" for a, b in pairwise(keys) if a[0] == b[0]}
        assert not faults, "\n".join(sorted(faults))

    def test_no_two_keys_of_a_menu_are_the_same(self, narrow) -> None:
        faults = []
        for top in narrow.menuBar().actions():
            for menu in (top.menu(), *(entry.menu() for entry in top.menu().actions() if entry.menu() is not None)):
                menu.aboutToShow.emit()
                keys = sorted(marked([entry.text() for entry in menu.actions()]))
                faults += [f"{menu.title()}: {a[0]} is {a[1]} and {b[1]}" for a, b in pairwise(keys) if a[0] == b[0]]
        assert not faults, "\n".join(faults)


def every_state(window):
    """What panes show while one, two or nothing is selected of each kind, and each kind of finding is chosen."""
    bench, docks = window.bench, window.docks
    option, surroundings = bench.document.option, bench.document.project.surroundings
    marks = {type(mark): mark.id for mark in option.marks()}
    things_of_each = {bench.document.project.cutout(option.item(one).cutout).family: one for one in things(window)}
    standing = {type(thing): thing.id for thing in surroundings.things}
    engraved = [one.id for one in option.plate(bench.stage.plate_id).engravings[:1]]
    one_of_each = (*things_of_each.values(), *marks.values(), *standing.values(), *engraved, "own-cut")
    for chosen in ((), *((one,) for one in one_of_each)):
        bench.selection.set(chosen)
        settle()
        yield f"{chosen} selected"
    bench.selection.set(things(window)[:3])
    settle()
    yield "three selected"
    tabs = docks.dock("equipment").widget().tabs
    for tab in range(tabs.count()):
        tabs.setCurrentIndex(tab)
        settle()
        yield f"equipment, {tabs.tabText(tab)}"
    findings = docks.dock("findings").widget()
    for row in range(findings.model.rowCount()):
        findings.list.setCurrentIndex(findings.model.index(row))
        yield f"finding {row} chosen"


def test_everything_in_the_window_that_tab_stops_at_has_a_name(narrow) -> None:
    """On the start page, and with a panel and every pane open."""
    faults = []
    for chosen in ((), things(narrow)[:1], things(narrow)[:2]):
        for dock in narrow.docks.all:
            dock.setVisible(True)
        narrow.bench.selection.set(chosen)
        settle()
        faults += [type(one).__name__ for one in stops(narrow) if not spoken_name(one)]
    narrow.show_start_page()
    settle()
    faults += [type(one).__name__ for one in stops(narrow) if not spoken_name(one)]
    assert faults == []


def test_everything_in_help_and_in_the_owners_view_has_a_name(narrow) -> None:
    option = narrow.bench.document.option_id
    shown = [HelpWindow(), OwnerView(narrow.bench.document.project, option, option)]
    for window in shown:
        window.show()
        settle()
        assert stops(window)
        assert [type(one).__name__ for one in stops(window) if not spoken_name(one)] == []
        window.close()
        window.deleteLater()


@pytest.mark.parametrize("letters", [100.0], indirect=True, ids=["plain letters"])
def test_tab_goes_down_each_pane(narrow, letters) -> None:
    faults = []
    for dock in narrow.docks.all:
        for other in narrow.docks.all:
            other.setVisible(other is dock)
        narrow.bench.selection.set(things(narrow)[:1])
        settle()
        pane = dock.widget()
        chain = in_tab_order(pane)
        faults += [
            f"{dock.windowTitle()}: from {spoken_name(a)} to {spoken_name(b)}"
            for a, b in pairwise(chain)
            if goes_back(a, b, pane)
        ]
    assert faults == []


def of_menus(window) -> list[tuple[str, str]]:
    return marked([action.text() for action in window.menuBar().actions()])


def mnemonics(root: QWidget) -> list[tuple[str, str]]:
    """(letter, words) of every key that works in a dialog or pane now."""
    words = [label.text() for label in root.findChildren(QLabel) if label.isVisible()]
    words += [button.text() for button in root.findChildren(QAbstractButton) if button.isVisible()]
    words += [box.title() for box in root.findChildren(QGroupBox) if box.isVisible()]
    for bar in root.findChildren(QTabBar):
        words += [bar.tabText(i) for i in range(bar.count()) if bar.isVisible()]
    return marked(words)


def marked(words: list[str]) -> list[tuple[str, str]]:
    """(letter, words) of those that have a key."""
    plain = [text.replace("&&", "") for text in words]
    return [(text[text.index("&") + 1].lower(), text) for text in plain if "&" in text[:-1]]


def stops(root: QWidget) -> list[QWidget]:
    """Everything that Tab stops at; what hands the keyboard on, as a tab widget to its bar, is no stop."""
    return [
        one
        for one in root.findChildren(QWidget)
        if one.isVisible()
        and bool(one.focusPolicy() & Qt.FocusPolicy.TabFocus)
        and one.focusProxy() is None
        and not isinstance(one.parent(), QComboBox | QAbstractSpinBox)
    ]


def spoken_name(widget: QWidget) -> str:
    """What a screen reader says of it: its accessible name, or its words."""
    return widget.accessibleName() or (widget.text() if isinstance(widget, QAbstractButton) else "")


def in_tab_order(root: QWidget) -> list[QWidget]:
    wanted = stops(root)
    chain, here = [], root.nextInFocusChain()
    while here is not root:
        if here in wanted:
            chain.append(here)
        here = here.nextInFocusChain()
    return chain


def goes_back(before: QWidget, after: QWidget, dialog: QWidget) -> bool:
    """Whether `after` stands above `before`, unless in a column to its right."""
    if belongs_to(after, QDialogButtonBox) and not belongs_to(before, QDialogButtonBox):
        return False
    a, b = (one.mapTo(dialog, QPoint(0, 0)) for one in (before, after))
    is_beside = b.x() >= a.x() + before.width()
    if belongs_to(before, QDialogButtonBox) or (isinstance(after, QTabBar) and not is_beside):
        return not belongs_to(after, QDialogButtonBox)
    in_line = abs(a.y() + before.height() / 2 - b.y() - after.height() / 2) < 8
    if in_line:
        return b.x() < a.x()
    return b.y() < a.y() and not is_beside


def belongs_to(widget: QWidget, kind: type[QObject]) -> bool:
    parent = widget.parent()
    while parent is not None and not isinstance(parent, kind):
        parent = parent.parent()
    return parent is not None
