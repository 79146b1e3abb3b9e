"""The window: it puts canvas, panes, menus and tool bar together and holds nothing itself."""

from pathlib import Path

from PySide6.QtCore import QByteArray, QEvent, QSize, Qt, QTimer
from PySide6.QtGui import QCloseEvent, QDragEnterEvent, QDropEvent, QKeyEvent
from PySide6.QtWidgets import QApplication, QMainWindow, QStackedWidget

from panelcad.desktop.asking import Asking
from panelcad.desktop.clip_keeper import keep_at_close, something_was_copied
from panelcad.desktop.context_menu import ContextMenu
from panelcad.desktop.document import Document
from panelcad.desktop.drop import CanvasDrop, dropped_file, open_after
from panelcad.desktop.files import FileDesk
from panelcad.desktop.icons import program_icon
from panelcad.desktop.menus import Menus
from panelcad.desktop.panes.docks import Docks
from panelcad.desktop.safekeeping import Safekeeping
from panelcad.desktop.screens import screen_of
from panelcad.desktop.settings import Settings
from panelcad.desktop.single_keys import is_single, keep_from_shortcuts
from panelcad.desktop.start_page import StartPage
from panelcad.desktop.status import Status
from panelcad.desktop.theme import dress, theme_for
from panelcad.desktop.tools.toolbox import Toolbox
from panelcad.desktop.window_parts import Parts
from panelcad.desktop.workbench import Workbench
from panelcad.desktop.workspace import Workspace
from panelcad.editing.blank import blank_project


class MainWindow(QMainWindow):
    def __init__(self, settings: Settings) -> None:
        super().__init__()
        self.setObjectName("main")
        self.settings = settings
        self.bench = Workbench(Document(blank_project(settings.unit)), settings)
        asking = Asking(self)
        self.desk = FileDesk(self.bench, asking)
        self.toolbox = Toolbox(self.bench)
        self.safekeeping = Safekeeping(self.bench, self.desk, asking)
        self.parts = Parts(self.bench, self.toolbox, self.desk, asking, self)
        self._set_up()
        self._connect()
        self._restore_layout()
        self.show_start_page()

    def _set_up(self) -> None:
        self.setWindowIcon(program_icon())
        self.workspace = Workspace(self.bench)
        self.start_page = StartPage(self.settings)
        self._middle = QStackedWidget()
        self._middle.addWidget(self.start_page)
        self._middle.addWidget(self.workspace)
        self.setCentralWidget(self._middle)
        self.setDockOptions(QMainWindow.DockOption.AllowTabbedDocks | QMainWindow.DockOption.AllowNestedDocks)
        self.setAcceptDrops(True)
        self.docks = Docks(self, self.bench)
        self.menus = Menus(self.parts, self.docks)
        self.context_menu = ContextMenu(self.parts)
        self.setStatusBar(Status(self.parts))
        self.bench.view.drop_target = CanvasDrop(self.bench, self.open)
        self.toolbox.take("select")

    def _connect(self) -> None:
        bench = self.bench
        bench.document.saved.connect(self._show_title)
        bench.document.replaced.connect(self._show_title)
        QApplication.clipboard().dataChanged.connect(something_was_copied)
        self.toolbox.changed.connect(lambda: self.docks.show_for_tool(self.toolbox.pane))
        self.desk.opened.connect(self.show_panel)
        self.desk.written.connect(self._show_title)
        bench.settings.changed.connect(self._take_theme)
        bench.finding_chosen.connect(self._go_to_finding)
        bench.reasons_wanted.connect(self._show_reasons)
        bench.action_wanted.connect(self.menus.run)
        self.workspace.cautions.read_all.connect(lambda: self.menus.run("help.cautions"))
        self.start_page.new_wanted.connect(lambda: self.menus.run("file.new"))
        self.start_page.open_wanted.connect(lambda: self.menus.run("file.open"))
        self.start_page.help_wanted.connect(lambda: self.menus.run("help.here"))
        self.start_page.file_wanted.connect(self.open)
        self.start_page.sample_wanted.connect(self.desk.open_copy)

    # What is on the screen

    @property
    def shows_panel(self) -> bool:
        return self._middle.currentWidget() is self.workspace

    def show_start_page(self) -> None:
        self.start_page.refresh()
        self._middle.setCurrentWidget(self.start_page)
        self._show_furniture(visible=False)
        self._show_title()
        self.menus.refresh()

    def show_panel(self) -> None:
        self._middle.setCurrentWidget(self.workspace)
        self._show_furniture(visible=True)
        self.bench.view.show_all()
        self.bench.view.setFocus()
        self._show_title()
        self.menus.refresh()

    def _show_furniture(self, *, visible: bool) -> None:
        """Panes, tool bar and status bar are for work on a panel."""
        if visible:
            self.menus.make_ready()
        self.docks.show_all(visible=visible)
        self.menus.bar.setVisible(visible)
        self.statusBar().setVisible(visible)

    def open(self, path: Path) -> None:
        self.desk.open(path)

    def _show_title(self) -> None:
        document = self.bench.document
        if not self.shows_panel:
            self.setWindowTitle("panelcad")
            self.setWindowModified(False)
            return
        self.setWindowTitle(f"{document.name}[*] – panelcad")
        self.setWindowModified(not document.is_untouched)

    def _take_theme(self) -> None:
        theme = theme_for(self.settings.theme)
        if theme is not self.bench.theme:
            app = QApplication.instance()
            if isinstance(app, QApplication):
                dress(app, theme)
            self.bench.take_theme(theme)

    def _go_to_finding(self, identity: str) -> None:
        finding = self.bench.judge.finding(identity)
        if finding is None:
            return
        stage = self.bench.stage
        with self.bench.view_before.kept():
            stage.look_at_plate(finding.plate)
            stage.look_at_finding(identity)
            self.bench.view.show_finding([stage.to_picture(p) for p in finding.where])

    def _show_reasons(self) -> None:
        """Everything that was found of the option, under Options side by side."""
        from panelcad.desktop.panes.options import OptionsPane  # noqa: PLC0415 - a pane loads when it is first shown

        dock = self.docks.dock("options")
        dock.go()
        pane = dock.widget()
        if isinstance(pane, OptionsPane):
            pane.show_everything()

    # Keys

    def event(self, event: QEvent) -> bool:
        """A single letter takes up a tool only where the keyboard is on a drawing; a list searches by it."""
        return keep_from_shortcuts(event) or super().event(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """What nothing in the window made use of: Esc goes to the panel, a key that can do nothing now says why, and a
        tool's letter says where it works.
        """
        if not self.shows_panel:
            super().keyPressEvent(event)
        elif event.key() == Qt.Key.Key_Escape:
            self.bench.view.setFocus(Qt.FocusReason.ShortcutFocusReason)
        elif why_not := self.menus.why_not(event.keyCombination()):
            self.bench.refused.emit(why_not)
        elif is_single(event) and self.menus.has_single_key(event.keyCombination()):
            self.bench.told.emit("A single letter takes up a tool while the keyboard is on the panel; Esc goes there")
        else:
            super().keyPressEvent(event)

    # Leaving

    def _restore_layout(self) -> None:
        room = screen_of(self).availableSize() - QSize(0, 40)
        self.resize(room.boundedTo(QSize(1440, 900)))
        place, panes = self.settings.layout()
        if not place.isEmpty():
            self.restoreGeometry(place)
        if not panes.isEmpty():
            self.docks.restore(panes)

    def closeEvent(self, event: QCloseEvent) -> None:
        if not self.desk.may_leave():
            event.ignore()
            return
        if self.shows_panel:
            self.settings.remember_layout(self.saveGeometry(), self.saveState())
        else:
            self.settings.remember_layout(self.saveGeometry(), self.settings.layout()[1] or QByteArray())
        keep_at_close()
        self.safekeeping.stop()
        self.desk.leave_note()
        self.bench.judge.stop()
        self.bench.equipment_judge.stop()
        self.bench.comparer.stop()
        event.accept()

    def changeEvent(self, event: QEvent) -> None:
        """Coming back to the window is the moment to notice what happened to its file."""
        super().changeEvent(event)
        if event.type() is QEvent.Type.ActivationChange and self.isActiveWindow() and self.shows_panel:
            QTimer.singleShot(0, self, self.desk.look_at_disk)

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        if dropped_file(event.mimeData()) is not None:
            event.setDropAction(Qt.DropAction.CopyAction)
            event.accept()

    def dropEvent(self, event: QDropEvent) -> None:
        path = dropped_file(event.mimeData())
        if path is not None:
            event.setDropAction(Qt.DropAction.CopyAction)
            event.accept()
            open_after(path, self.open)
