"""Help: what F1 opens wherever one is, and the window that shows it."""

import ast
import re
from pathlib import Path

import pytest
from PySide6.QtCore import Qt, QUrl
from PySide6.QtGui import QImage, QTextDocument
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QLineEdit, QMessageBox, QPushButton

import panelcad.desktop
from panelcad.desktop.actions import MENUS, all_actions
from panelcad.desktop.dialogs.explanation import explain
from panelcad.desktop.help.keys_page import PAGE, keys_page
from panelcad.desktop.help.page_html import anchors
from panelcad.desktop.help.pages import GUIDE, PAGES, Page, root
from panelcad.desktop.help.topics import MESSAGES, PANES, TOOLS, VIEWS, Dialog
from panelcad.desktop.help.window import HelpWindow, open_help
from panelcad.desktop.main_window import MainWindow
from panelcad.desktop.panes.table import PANES as PANE_TABLE
from panelcad.desktop.settings import Settings
from panelcad.desktop.theme import DARK, LIGHT, ThemeChoice, dress
from panelcad.desktop.tools.table import TOOLS as TOOL_TABLE
from panelcad.desktop.tools.toolbox import PLACING
from panelcad.desktop.views import VIEWS as VIEW_TABLE
from tests.desktop.next_dialog import in_dialog

DESKTOP = Path(panelcad.desktop.__file__).parent
ROOT = DESKTOP.parent.parent


@pytest.fixture(autouse=True)
def no_help_is_left(qapp):
    yield
    for widget in QApplication.topLevelWidgets():
        if isinstance(widget, HelpWindow):
            widget.close()
            widget.deleteLater()


def help_window() -> HelpWindow:
    shown = [one for one in QApplication.topLevelWidgets() if isinstance(one, HelpWindow) and one.isVisible()]
    assert len(shown) == 1
    return shown[0]


def activate(window) -> None:
    """Keys go to the window that is in front."""
    window.activateWindow()
    for _ in range(20):
        QApplication.processEvents()
        if QApplication.activeWindow() is window:
            return
        QTest.qWait(10)


# The tables are complete, and lead to sections that are there


def test_every_tool_view_and_pane_has_a_section() -> None:
    assert set(TOOLS) == {kind.id for kind in TOOL_TABLE} | {PLACING}
    assert set(VIEWS) == {kind.id for kind in VIEW_TABLE}
    assert set(PANES) == {kind.id for kind in PANE_TABLE}


@pytest.mark.parametrize(
    "link", sorted({*TOOLS.values(), *VIEWS.values(), *PANES.values(), *(one.value for one in Dialog)})
)
def test_every_link_of_the_tables_leads_to_a_section(qapp, link) -> None:
    file, _, anchor = link.partition("#")
    assert anchor in anchors(Page(file).markdown)


def _calls(tree: ast.Module, name: str) -> list[ast.Call]:
    calls = [node for node in ast.walk(tree) if isinstance(node, ast.Call)]
    return [call for call in calls if getattr(call.func, "id", getattr(call.func, "attr", "")) == name]


def _desktop() -> dict[Path, ast.Module]:
    return {file: ast.parse(file.read_text(encoding="utf-8")) for file in DESKTOP.rglob("*.py")}


def test_every_dialog_says_where_it_is_explained() -> None:
    used: set[str] = set()
    for file, tree in _desktop().items():
        for call in _calls(tree, "EditDialog"):
            assert "at" in {keyword.arg for keyword in call.keywords}, f"{file.name}:{call.lineno}"
        used |= {
            node.attr
            for node in ast.walk(tree)
            if isinstance(node, ast.Attribute) and ast.unparse(node.value) == "Dialog"
        }
        bases = {ast.unparse(b) for node in ast.walk(tree) if isinstance(node, ast.ClassDef) for b in node.bases}
        is_asked = not bases.isdisjoint(("QDialog", "FittedDialog")) and file.name != "fitted.py"  # what they all are
        if is_asked or _calls(tree, "QDialog") or _calls(tree, "QInputDialog"):
            assert _calls(tree, "explained") or _calls(tree, "explained_by_key"), f"{file.name} is not explained"
    assert used == {one.name for one in Dialog}


def test_every_message_has_a_section() -> None:
    titles = {
        call.args[0].value
        for tree in _desktop().values()
        for name in ("choice", "tell", "_box")
        for call in _calls(tree, name)
        if call.args and isinstance(call.args[0], ast.Constant)
    }
    assert {title for title in titles if title} >= set(MESSAGES)
    asked = {
        call.args[0].value
        for tree in _desktop().values()
        for name in ("choice", "tell")
        for call in _calls(tree, name)
        if "asking" in ast.unparse(call.func) and isinstance(call.args[0], ast.Constant)
    }
    assert asked <= set(MESSAGES)


def test_the_page_of_keys_agrees_with_the_actions(qapp) -> None:
    """After a change of actions run `python -m panelcad.desktop.help.keys_page`."""
    assert (ROOT / PAGE).read_text(encoding="utf-8") == keys_page()


def _said_in_italics() -> list[tuple[str, str, str]]:
    """Page, words in italics, and what stands in brackets right after them."""
    files = (file for file in [ROOT / "README.md", *(ROOT / "docs").rglob("*.md")] if file.name != "rules.md")
    found = []
    for file in files:
        text = " ".join(file.read_text(encoding="utf-8").split())
        found += [(file.name, *pair) for pair in re.findall(r"(?<!\*)\*([^*|]{2,60})\*(?!\*)(?: \(([^)]*)\))?", text)]
    return found


def test_menus_and_keys_on_the_pages_are_those_of_the_program(qapp) -> None:
    menus = {menu.replace("&", "") for menu in MENUS}
    actions = {(a.menu.replace("&", ""), a.plain_title): a.keys for a in all_actions()}
    submenus = {("File", "Open recent"), ("View", "Panes")}
    keys = {(title, key) for (_, title), key in actions.items()} | {(pane.title, pane.shortcut) for pane in PANE_TABLE}
    titles = {title for title, _ in keys}
    told = 0
    for page, words, bracket in _said_in_italics():
        menu, _, title = words.partition(", ")
        if menu in menus and title and (menu, title) not in submenus:
            assert (menu, title) in actions, f"{page}: {words}"
            told += 1
        name = title if menu in menus and title else words
        if name in titles and re.fullmatch(r"(Ctrl|Alt|Shift)\+\S+|F\d+|[A-Z]", bracket):
            assert (name, bracket) in keys, f"{page}: {words} ({bracket})"
            told += 1
    assert told > 60


def test_every_title_of_a_page_fits_the_list_of_pages(window) -> None:
    shown = open_help("help/README.md", window)
    QApplication.processEvents()
    contents = shown.contents
    assert contents.sizeHintForColumn(0) <= contents.viewport().width()


def test_every_page_can_be_shown_and_all_its_pictures_are_there(qtbot) -> None:
    window = HelpWindow()
    qtbot.addWidget(window)
    for page in PAGES:
        window.go_to(page.file)
        assert window.page.link == page.file
        assert page.title in window.page.toPlainText()
        for link in (link for link in _pictures(window) if link):
            picture = window.page.loadResource(QTextDocument.ResourceType.ImageResource.value, QUrl(link))
            assert isinstance(picture, QImage)
            assert not picture.isNull(), f"{page.file}: {link}"


def _pictures(window: HelpWindow) -> set[str]:
    block, found = window.page.document().begin(), set()
    while block.isValid():
        found |= {part.format.toImageFormat().name() for part in block.textFormats() if part.format.isImageFormat()}
        block = block.next()
    return found


# Asking


@pytest.mark.parametrize("tool", [kind.id for kind in TOOL_TABLE])
def test_f1_explains_the_tool_in_hand(hands, tool) -> None:
    hands.window.toolbox.take(tool)
    hands.view.setFocus()
    hands.action("help.here")
    assert help_window().page.link == TOOLS[tool]


def test_f1_is_the_key(hands) -> None:
    hands.window.toolbox.take("measure")
    hands.view.setFocus()
    activate(hands.window)
    hands.key(Qt.Key.Key_F1)
    assert help_window().page.link == TOOLS["measure"]


@pytest.mark.parametrize("view", [kind.id for kind in VIEW_TABLE])
def test_f1_explains_the_view_while_one_only_looks(hands, view) -> None:
    hands.window.bench.stage.look_from(view)
    hands.view.setFocus()
    hands.action("help.here")
    assert help_window().page.link == (TOOLS["select"] if view == "front" else VIEWS[view])


def test_f1_explains_the_pane_one_is_in(hands) -> None:
    search = hands.window.docks.dock("library").widget().findChild(QLineEdit, "search")
    search.setFocus()
    hands.action("help.here")
    assert help_window().page.link == PANES["library"]


def test_f1_explains_the_rule_of_the_chosen_finding(hands) -> None:
    window = hands.window
    hands.drag((0, 50), (-195, 50), held=Qt.KeyboardModifier.AltModifier)
    window.bench.judge.check_now()
    pane = window.docks.dock("findings").widget()
    pane.list.setCurrentIndex(pane.model.index(0))
    pane.list.setFocus()
    hands.action("help.here")
    assert help_window().page.link == f"rules.md#{pane.chosen.rule}"


def test_the_start_page_leads_to_the_first_page(window) -> None:
    window.show_start_page()
    window.menus.run("help.here")
    assert help_window().page.link == GUIDE[0]
    help_window().go_to("help/keys.md")
    next(b for b in window.start_page.findChildren(QPushButton) if "first panel" in b.text()).click()
    assert help_window().page.link == GUIDE[0]


def test_a_dialog_leads_to_its_section_by_key_and_by_button(hands) -> None:
    seen = []

    def ask(dialog) -> None:
        activate(dialog)
        QTest.keyClick(dialog, Qt.Key.Key_F1)
        seen.append(help_window().page.link)
        help_window().go_to("help/select.md")
        next(button for button in dialog.findChildren(QPushButton) if button.text() == "Help").click()
        seen.append(help_window().page.link)
        seen.append(help_window().parentWidget() is dialog)

    in_dialog(ask)
    hands.action("place.basic-t")
    assert seen == [Dialog.BASIC_T.value, Dialog.BASIC_T.value, True]
    assert help_window().parentWidget() is hands.window  # it stays open when the dialog goes


def test_a_message_leads_to_its_section(hands, tmp_path) -> None:
    seen = []

    def ask(box) -> None:
        assert isinstance(box, QMessageBox)
        activate(box)
        QTest.keyClick(box, Qt.Key.Key_F1)
        seen.append(help_window().page.link)

    in_dialog(ask)
    hands.window.open(tmp_path / "missing.panel.json")
    assert seen == [Dialog.FILES.value]


def test_why_leads_to_the_rule(hands) -> None:
    bench = hands.window.bench
    hands.drag((0, 50), (-195, 50), held=Qt.KeyboardModifier.AltModifier)
    bench.judge.check_now()
    finding = bench.judge.report.findings[0]

    def follow(dialog) -> None:
        next(button for button in dialog.findChildren(QPushButton) if finding.rule in button.text()).click()

    in_dialog(follow)
    explain(bench, finding, hands.window)
    assert help_window().page.link == f"rules.md#{finding.rule}"


def test_the_help_menu_lists_the_pages(window) -> None:
    menu = next(a.menu() for a in window.menuBar().actions() if a.text() == "&Help")
    guide = next(a.menu() for a in menu.actions() if a.menu() is not None)
    guide.aboutToShow.emit()
    assert [a.text().replace("&", "") for a in guide.actions()] == [Page(file).title for file in GUIDE]
    guide.actions()[3].trigger()
    assert help_window().page.link == GUIDE[3]


def test_the_list_of_keys_is_a_page(window) -> None:
    window.menus.run("help.shortcuts")
    assert help_window().page.link == "help/keys.md"


def test_tools_say_that_f1_explains_them(window) -> None:
    for kind in TOOL_TABLE:
        assert "F1" in window.menus.actions[f"tool.{kind.id}"].toolTip()


def test_the_status_bar_says_which_key_explains(hands) -> None:
    hands.window.toolbox.take("dimension")
    button = hands.window.statusBar().help
    assert "F1" in button.text()
    QTest.mouseClick(button, Qt.MouseButton.LeftButton)
    assert help_window().page.link == TOOLS["dimension"]


# Reading


def test_links_lead_on_and_back(window) -> None:
    shown = open_help("help/select.md", window)
    page = shown.page
    page.setSource(QUrl("snapping.md#what-catches"))
    assert page.link == "help/snapping.md#what-catches"
    assert page.verticalScrollBar().value() > 0
    activate(shown)
    QTest.keyClick(shown, Qt.Key.Key_Left, Qt.KeyboardModifier.AltModifier)
    assert page.link == "help/select.md"
    assert shown.contents.currentItem().text() == "Select and move"
    shown.forward.click()
    assert page.link == "help/snapping.md#what-catches"
    assert shown.contents.currentItem().text() == "Snapping and guides"


@pytest.mark.parametrize("link", ["https://example.org/", "../../README.md", "file:///etc/hosts", "nothing.md"])
def test_what_leads_out_of_help_is_told_and_not_opened(window, link) -> None:
    shown = open_help("help/select.md", window)
    shown.page.setSource(QUrl(link))
    assert shown.page.link == "help/select.md"
    assert "Not a page" in shown.told.text()


def test_pictures_are_found_after_going_back_from_another_folder(window, monkeypatch) -> None:
    shown = open_help("help/views.md", window)
    QApplication.processEvents()
    shown.go_to("words.md")
    asked = []
    real = shown.page._picture
    monkeypatch.setattr(shown.page, "_picture", lambda file: asked.append(file) or real(file))
    shown.page.backward()
    QApplication.processEvents()
    assert asked
    assert [file for file in asked if not file.is_file()] == []


def test_words_are_found_on_this_page_and_then_on_others(window) -> None:
    shown = open_help("help/select.md", window)
    activate(shown)
    QTest.keyClick(shown, Qt.Key.Key_F, Qt.KeyboardModifier.ControlModifier)
    QTest.keyClicks(shown.words, "bank card")
    QTest.keyClick(shown.words, Qt.Key.Key_Return)
    assert shown.page.link == "help/select.md"
    assert shown.page.textCursor().selectedText().casefold() == "bank card"
    QTest.keyClick(shown.words, Qt.Key.Key_Return)
    assert shown.page.link == "help/files.md"
    assert shown.page.textCursor().hasSelection()
    shown.words.setText("qqqq")
    shown.find_next()
    assert shown.told.text() == "Not found"


def test_escape_closes_it(window) -> None:
    shown = open_help("help/select.md", window)
    activate(shown)
    QTest.keyClick(shown, Qt.Key.Key_Escape)
    assert not shown.isVisible()


def test_the_list_of_pages_follows_the_page(window) -> None:
    shown = open_help("help/select.md#pick", window)
    titles = []
    for link in ("help/files.md#after-a-crash", "rules.md", "help/views.md"):
        shown.go_to(link)
        titles.append(shown.contents.currentItem().text())
    assert titles == [Page(file).title for file in ("help/files.md", "rules.md", "help/views.md")]
    shown.page.backward()
    assert shown.contents.currentItem().text() == Page("rules.md").title


def test_it_goes_with_the_window(qtbot, own_settings) -> None:
    made = MainWindow(Settings())
    made.show()
    shown = open_help("help/select.md", made)
    made.close()
    assert not shown.isVisible()
    made.deleteLater()


def test_it_comes_back_as_large_as_it_was(window) -> None:
    window.menus.run("help.shortcuts")
    shown = help_window()
    shown.resize(640, 480)
    shown.contents.parentWidget().setSizes([300, 300])
    width = shown.contents.width()
    activate(shown)
    QTest.keyClick(shown, Qt.Key.Key_Escape)
    another = HelpWindow()
    another.show()
    assert (another.width(), another.height()) == (640, 480)
    assert another.contents.width() == width
    another.close()
    another.deleteLater()


def test_it_follows_the_colours_of_the_window(window) -> None:
    shown = open_help("help/select.md", window)
    for choice, theme in ((ThemeChoice.DARK, DARK), (ThemeChoice.LIGHT, LIGHT)):
        window.settings.theme = choice
        dress(QApplication.instance(), theme)
        QApplication.processEvents()
        cursor = shown.page.document().find("Click a thing")
        assert theme.accent in shown.page.document().defaultStyleSheet()
        assert cursor.hasSelection()


def test_pictures_are_never_wider_than_the_page(window) -> None:
    shown = open_help("help/views.md", window)
    for width in (640, 1100):
        shown.resize(width, 600)
        QApplication.processEvents()
        picture = shown.page.loadResource(
            QTextDocument.ResourceType.ImageResource.value, QUrl("pictures/view-front@2x.png")
        )
        assert picture.deviceIndependentSize().width() <= shown.page.viewport().width()
        assert shown.page.horizontalScrollBar().maximum() == 0


def test_docs_are_found(qapp) -> None:
    assert (root() / "help" / "README.md").is_file()
