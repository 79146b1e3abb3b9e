"""Each pane of the table in a dock of its own."""

from math import ceil
from typing import Final

from PySide6.QtCore import QByteArray, QEvent, QObject, Qt, QTimer
from PySide6.QtGui import QAction, QKeyEvent, QKeySequence, QShowEvent
from PySide6.QtWidgets import QAbstractButton, QApplication, QDockWidget, QMainWindow, QScrollArea, QWidget

from panelcad.desktop.panes.form import Form
from panelcad.desktop.panes.table import PANES, PaneKind, Side
from panelcad.desktop.panes.title import PaneTitle
from panelcad.desktop.single_keys import keep_from_shortcuts
from panelcad.desktop.workbench import Workbench

_AREAS: Final = {
    Side.LEFT: Qt.DockWidgetArea.LeftDockWidgetArea,
    Side.RIGHT: Qt.DockWidgetArea.RightDockWidgetArea,
    Side.BOTTOM: Qt.DockWidgetArea.BottomDockWidgetArea,
}
_WIDTH: Final = 264
_ENTERS: Final = {Qt.Key.Key_Return, Qt.Key.Key_Enter}


class PaneDock(QDockWidget):
    """A dock whose pane is made when it is first shown or asked for."""

    def __init__(self, kind: PaneKind, window: QMainWindow, bench: Workbench) -> None:
        super().__init__(kind.title, window)
        self._kind, self._window, self._bench = kind, window, bench
        self._pane: QWidget | None = None
        self._asked_for = 0
        """How high its pane was to be, in pixels, when that was last asked for."""
        self.setObjectName(f"dock-{kind.id}")
        self.way = self._way()
        keys = self.way.shortcut().toString(QKeySequence.SequenceFormat.NativeText)
        self.setTitleBarWidget(PaneTitle(self, keys))

    def _way(self) -> QAction:
        """The action, in the menu and by its key, that goes to the pane, and closes it once the keyboard is there."""
        made = QAction(self._kind.title, self)
        made.setShortcut(QKeySequence(self._kind.shortcut))
        made.setCheckable(True)
        made.triggered.connect(self._go_or_close)
        self.toggleViewAction().toggled.connect(made.setChecked)
        return made

    def _go_or_close(self) -> None:
        focus = QApplication.focusWidget()
        if focus is not None and self.isAncestorOf(focus):
            self.hide()
            self._bench.view.setFocus(Qt.FocusReason.ShortcutFocusReason)
        else:
            self.go()
        self.way.setChecked(not self.isHidden())

    def go(self) -> None:
        """Show the pane and put the keyboard where one works in it."""
        was_hidden = self.isHidden()
        self.show()
        self.raise_()
        first_stop(self.widget()).setFocus(Qt.FocusReason.ShortcutFocusReason)
        if was_hidden and not self._kind.share:
            QTimer.singleShot(0, self, self.ask_for_height)

    def widget(self) -> QWidget:
        """The pane; a form is scrolled where the window is too low for all of it."""
        if self._pane is None:
            self._pane = self._kind.make(self._bench)
            is_scrolled = self._kind.is_scrolled or isinstance(self._pane, Form)
            self.setWidget(_scrolled(self._pane) if is_scrolled else self._pane)
            if self._kind.is_only_for_tool:
                self._pane.installEventFilter(self)
        return self._pane

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """A tool's pane that has more to show than before asks for its height again."""
        is_laid_out = watched is self._pane and event.type() is QEvent.Type.LayoutRequest
        if is_laid_out and self._pane is not None and _whole_height(self._pane) > self._asked_for > 0:
            QTimer.singleShot(0, self, self.ask_for_height)
        return super().eventFilter(watched, event)

    def ask_for_height(self) -> None:
        """It is seen whole where there is room; the others of its side make way as far as they can.

        Asked for once it is laid out.
        """
        if not self.isVisible():
            return
        layout = self._window.layout()
        if layout is not None:
            layout.activate()
        self._asked_for = _whole_height(self.widget())
        lacks = self._asked_for - super().widget().height()
        if lacks <= 0:
            return
        others = self._others_of_its_side()
        spare = [max(dock.height() - dock.minimumSizeHint().height(), 0) for dock in others]
        given = min(lacks, sum(spare))
        shares = [ceil(given * room / max(sum(spare), 1)) for room in spare]
        heights = [max(dock.height() - share, 1) for dock, share in zip(others, shares, strict=True)]
        self._window.resizeDocks([self, *others], [self.height() + given, *heights], Qt.Orientation.Vertical)

    def _others_of_its_side(self) -> list["PaneDock"]:
        docks = self._window.findChildren(PaneDock)
        return [dock for dock in docks if dock is not self and dock.isVisible() and dock.side == self.side]

    @property
    def side(self) -> Qt.DockWidgetArea:
        return self._window.dockWidgetArea(self)

    def event(self, event: QEvent) -> bool:
        """A pane that stands by itself is a window of its own, to which the same keys belong."""
        return keep_from_shortcuts(event) or super().event(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if self.isWindow() and event.key() == Qt.Key.Key_Escape:
            self._window.activateWindow()
            self._bench.view.setFocus(Qt.FocusReason.ShortcutFocusReason)
        elif event.key() in _ENTERS and isinstance(button := self.focusWidget(), QAbstractButton):
            button.click()
        else:
            super().keyPressEvent(event)

    def showEvent(self, event: QShowEvent) -> None:
        self.widget()
        super().showEvent(event)


def first_stop(pane: QWidget) -> QWidget:
    """What the pane names as its own, or the first thing in it that Tab stops at."""
    if pane.focusProxy() is not None:
        return pane
    here = pane.nextInFocusChain()
    while here is not None and pane.isAncestorOf(here):
        if here.isVisibleTo(pane) and here.isEnabled() and here.focusPolicy() & Qt.FocusPolicy.TabFocus:
            return here
        here = here.nextInFocusChain()
    return pane


def _whole_height(pane: QWidget) -> int:
    """What the pane needs as wide as it is, in pixels."""
    if isinstance(pane, Form) and pane.column.hasHeightForWidth():
        return pane.column.totalHeightForWidth(pane.width())
    return pane.sizeHint().height()


def _scrolled(form: QWidget) -> QScrollArea:
    area = QScrollArea()
    area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
    area.setWidget(form)
    area.setWidgetResizable(True)
    area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
    return area


class Docks:
    def __init__(self, window: QMainWindow, bench: Workbench) -> None:
        self._window = window
        self._docks = {kind.id: self._dock(kind, bench) for kind in PANES}
        self._wanted = {kind.id for kind in PANES if kind.share}
        self._put_away: set[str] = set()
        """What was there before all panes were put away at once."""
        self._shown = True
        self._is_as_at_first = True
        """Nobody arranged the panes yet."""
        self._heights: dict[str, int] = {}
        """How high panes were before a tool brought its own."""
        self._show_as_at_first()

    def _show_as_at_first(self) -> None:
        for kind in PANES:
            self._docks[kind.id].setVisible(kind.share > 0)
        self._share_out()

    def _share_out(self) -> None:
        """Each side's height is shared out among its panes. It counts once the window has its size."""
        for side in Side:
            mine = [kind for kind in PANES if kind.side is side and kind.share]
            docks = [self._docks[kind.id] for kind in mine]
            self._window.resizeDocks(docks, [_WIDTH] * len(docks), Qt.Orientation.Horizontal)
            self._window.resizeDocks(docks, [kind.share * 100 for kind in mine], Qt.Orientation.Vertical)

    def as_at_first(self) -> None:
        """Every pane where it was in the first window; those that were closed then are closed."""
        for kind in PANES:
            dock = self._docks[kind.id]
            dock.setFloating(False)
            self._window.removeDockWidget(dock)
            self._window.addDockWidget(_AREAS[kind.side], dock)
        self._show_as_at_first()

    def restore(self, state: QByteArray) -> None:
        """Arrange the panes as they were remembered, without those that only a tool brings."""
        self._is_as_at_first = not self._window.restoreState(state)
        self.show_for_tool("")

    def put_away_or_back(self) -> None:
        """Leave the canvas alone in the window, or bring back the panes that were there before."""
        shown = {name for name, dock in self._docks.items() if not dock.isHidden()}
        wanted = set() if shown else self._put_away or {kind.id for kind in PANES if kind.share}
        self._put_away = shown
        for name in shown ^ wanted:
            self._docks[name].setVisible(name in wanted)

    def _dock(self, kind: PaneKind, bench: Workbench) -> PaneDock:
        dock = PaneDock(kind, self._window, bench)
        self._window.addDockWidget(_AREAS[kind.side], dock)
        self._window.addAction(dock.way)
        return dock

    @property
    def all(self) -> tuple[PaneDock, ...]:
        return tuple(self._docks.values())

    def dock(self, pane_id: str) -> PaneDock:
        """Raises KeyError."""
        return self._docks[pane_id]

    def show_for_tool(self, pane_id: str) -> None:
        """A tool brings its pane; one that is for nothing else goes with the tool."""
        for kind in PANES:
            if kind.is_only_for_tool and kind.id != pane_id:
                self._docks[kind.id].setVisible(False)
        if pane_id not in self._docks:
            self._give_heights_back()
        elif self._shown:
            self._heights = self._heights or {
                name: one.height() for name, one in self._docks.items() if one.isVisible()
            }
            dock = self._docks[pane_id]
            dock.setVisible(True)
            dock.raise_()
            QTimer.singleShot(0, dock, dock.ask_for_height)

    def _give_heights_back(self) -> None:
        """What made way for a tool's pane has its height again."""
        visible = {name: height for name, height in self._heights.items() if height and self._docks[name].isVisible()}
        docks = [self._docks[name] for name in visible]
        self._window.resizeDocks(docks, list(visible.values()), Qt.Orientation.Vertical)
        self._heights = {}

    def show_all(self, *, visible: bool) -> None:
        """Panes go away while there is no panel to work on, and come back as they were."""
        if visible == self._shown:
            return
        if not visible:
            self._wanted = {name for name, dock in self._docks.items() if not dock.isHidden()}
        self._shown = visible
        for name, dock in self._docks.items():
            dock.way.setEnabled(visible)
            dock.setVisible(visible and name in self._wanted)
        if visible and self._is_as_at_first:
            self._is_as_at_first = False
            QTimer.singleShot(0, self._window, self._share_out)
