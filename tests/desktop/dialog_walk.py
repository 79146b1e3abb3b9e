"""Opens every dialog that an action, a tool or a finding leads to, and every message, and lets each be looked at."""

from collections.abc import Callable, Iterator

from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QApplication, QDialog, QFileDialog

from panelcad.desktop.actions import all_actions
from panelcad.desktop.asking import Asking
from panelcad.desktop.dialogs.acceptance import accept_findings
from panelcad.desktop.dialogs.explanation import explain
from panelcad.desktop.help.topics import MESSAGES
from panelcad.desktop.main_window import MainWindow
from panelcad.desktop.tools.draw_box import DRAWINGS
from panelcad.desktop.tools.words import WORDINGS
from tests.desktop.hands import Hands

Look = Callable[[str, QDialog], None]
_OF_THE_PLATFORM = (QFileDialog,)


def dialog_actions() -> Iterator[str]:
    """Ids of the actions that ask something first: their titles end with dots."""
    return (action.id for action in all_actions() if action.title.endswith("…"))


def walk_dialog(window: MainWindow, action_id: str, look: Look) -> bool:
    """Do the action; look at the first dialog it opens, and close all that it opens. False where none opened."""
    return walk(action_id, window.menus.actions[action_id].trigger, look)


def walk(name: str, open_it: Callable[[], object], look: Look) -> bool:
    """The same for whatever else opens a dialog."""
    watch = _Walk(name, look)
    watch.begin()
    open_it()
    for _ in range(5):
        QApplication.processEvents()
    watch.end()
    return watch.has_opened


def walk_tools(window: MainWindow, look: Look) -> None:
    """The dialog of each tool that draws or writes, after a drag across the middle of the plate."""
    hands = Hands(window)
    for tool in (*(f"draw-{drawing.id}" for drawing in DRAWINGS), *(wording.id for wording in WORDINGS)):
        window.bench.take_tool(tool)
        QApplication.processEvents()
        assert walk(f"tool {tool}", lambda: hands.drag((-30.0, 60.0), (40.0, 90.0)), look), tool


def walk_finding(window: MainWindow, look: Look) -> None:
    """Accepting a finding, and why it was found."""
    report = window.bench.judge.report
    assert report is not None
    finding = next(one for one in report.findings if one.acceptable)
    assert walk("accept", lambda: accept_findings(window.bench, (finding,), window), look)
    assert walk("why", lambda: explain(window.bench, finding, window), look)


def walk_messages(window: MainWindow, look: Look) -> None:
    """Every message by its title, with words as long as a file's fault, and questions with buttons of their own."""
    asking = Asking(window)
    fault = "/a/long/way/to/a/panel.panel.json, options.0.items.3: 'x' is missing; a length in inches is expected."
    for title in MESSAGES:
        assert walk(title, lambda title=title: asking.tell(title, fault), look)
    assert walk("leaving", lambda: asking.leaving("a-long-name-of-a-twin.panel.json"), look)
    answers = ("Save &under another name…", "&Save over it", "&Cancel")
    assert walk("choice", lambda: asking.choice("Changed on disk", fault, fault, *answers), look)


class _Walk:
    """Waits beside the event loop of the dialogs of one action, and for no longer than that action."""

    def __init__(self, action_id: str, look: Look) -> None:
        self._action_id, self._look = action_id, look
        self._timer = QTimer()
        self._timer.setInterval(5)
        self._timer.timeout.connect(self._see)
        self.has_opened = False

    def begin(self) -> None:
        self._timer.start()

    def end(self) -> None:
        self._timer.stop()

    def _see(self) -> None:
        dialog = QApplication.activeModalWidget()
        if dialog is None or not dialog.isVisible():
            return
        self._timer.stop()
        try:
            if isinstance(dialog, QDialog) and not self.has_opened and not isinstance(dialog, _OF_THE_PLATFORM):
                QApplication.processEvents()
                self._look(self._action_id, dialog)
            self.has_opened = True
        finally:
            dialog.reject() if isinstance(dialog, QDialog) else dialog.close()
            self._timer.start()
