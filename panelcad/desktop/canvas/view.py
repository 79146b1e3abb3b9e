"""The canvas: gestures handed to the tool in mm, and things dragged in to whoever takes them."""

from typing import Protocol

from PySide6.QtCore import QEvent, QPoint, Qt, Signal
from PySide6.QtGui import (
    QColor,
    QDragEnterEvent,
    QDragMoveEvent,
    QDropEvent,
    QKeyEvent,
    QMouseEvent,
)

from panelcad.desktop.canvas.gesture import Held, Pointer
from panelcad.desktop.canvas.scene import PanelScene
from panelcad.desktop.canvas.zooming import ZoomingView
from panelcad.desktop.theme import Theme
from panelcad.geometry.point import Point


class CanvasTool(Protocol):
    """What answers to the pointer and the keys; one method an event."""

    def press(self, pointer: Pointer) -> None: ...
    def move(self, pointer: Pointer) -> None: ...
    def release(self, pointer: Pointer) -> None: ...
    def double_click(self, pointer: Pointer) -> None: ...
    def key(self, event: QKeyEvent) -> bool: ...
    def cancel(self) -> None: ...


class DropTarget(Protocol):
    """What takes things that are dragged onto the canvas."""

    def accepts(self, event: QDragEnterEvent) -> bool: ...
    def hover(self, event: QDragMoveEvent, at: Point) -> None: ...
    def leave(self) -> None: ...
    def drop(self, event: QDropEvent, at: Point) -> None: ...


class PanelView(ZoomingView):
    """Signals: `pointed` at a place in mm, `left` by the pointer, `menu_wanted` at a pointer and a screen place."""

    pointed = Signal(object)
    left = Signal()
    menu_wanted = Signal(object, QPoint)

    def __init__(self, scene: PanelScene, theme: Theme) -> None:
        super().__init__(scene)
        self.tool: CanvasTool | None = None
        self.drop_target: DropTarget | None = None
        self.last_pointed: Point | None = None
        """Where the pointer was last, in mm of the picture."""
        self._pan_from: QPoint | None = None
        self._space_held = False
        self.setObjectName("canvas")
        self.setAccessibleName("Panel")
        self.setAccessibleDescription("The panel drawn to scale")
        self.setMouseTracking(True)
        self.setAcceptDrops(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.themed(theme)

    def themed(self, theme: Theme) -> None:
        background = theme.view.palette.background
        self.setBackgroundBrush(QColor(background.text))
        self.viewport().update()

    def pointer(self, event: QMouseEvent) -> Pointer:
        at = self.scene_at(event.position())
        return Pointer(Point(at.x(), at.y()), 1 / self.zoom, Held.of(event.modifiers()), event.button())

    def mousePressEvent(self, event: QMouseEvent) -> None:
        if event.button() is Qt.MouseButton.MiddleButton or (
            event.button() is Qt.MouseButton.LeftButton and self._space_held
        ):
            self._start_pan(event.position().toPoint())
        elif self.tool is not None and event.button() is Qt.MouseButton.LeftButton:
            self.tool.press(self.pointer(event))
        elif event.button() is Qt.MouseButton.RightButton:
            self.menu_wanted.emit(self.pointer(event), event.globalPosition().toPoint())

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        if self._pan_from is not None:
            here = event.position().toPoint()
            self.pan_by(self._pan_from - here)
            self._pan_from = here
            return
        pointer = self.pointer(event)
        self.last_pointed = pointer.at
        self.pointed.emit(pointer.at)
        if self.tool is not None:
            self.tool.move(pointer)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        if self._pan_from is not None and event.button() in {
            Qt.MouseButton.MiddleButton,
            Qt.MouseButton.LeftButton,
        }:
            self._pan_from = None
            self.viewport().unsetCursor()
        elif self.tool is not None and event.button() is Qt.MouseButton.LeftButton:
            self.tool.release(self.pointer(event))

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        if self.tool is not None and event.button() is Qt.MouseButton.LeftButton:
            self.tool.double_click(self.pointer(event))

    def _start_pan(self, at: QPoint) -> None:
        self._pan_from = at
        self.viewport().setCursor(Qt.CursorShape.ClosedHandCursor)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if self.tool is not None and self.tool.key(event):
            return
        if event.key() == Qt.Key.Key_Space and not event.isAutoRepeat():
            self._space_held = True
            self.viewport().setCursor(Qt.CursorShape.OpenHandCursor)
        else:
            event.ignore()

    def keyReleaseEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Space and not event.isAutoRepeat():
            self._space_held = False
            self.viewport().unsetCursor()

    def leaveEvent(self, event: QEvent) -> None:
        self.left.emit()
        super().leaveEvent(event)

    # Things dragged in

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        if self.drop_target is not None and self.drop_target.accepts(event):
            _take_copy(event)
        else:
            event.ignore()

    def dragMoveEvent(self, event: QDragMoveEvent) -> None:
        if self.drop_target is not None:
            at = self.scene_at(event.position())
            self.drop_target.hover(event, Point(at.x(), at.y()))
            _take_copy(event)

    def dragLeaveEvent(self, event: object) -> None:  # noqa: ARG002
        if self.drop_target is not None:
            self.drop_target.leave()

    def dropEvent(self, event: QDropEvent) -> None:
        if self.drop_target is not None:
            at = self.scene_at(event.position())
            self.drop_target.drop(event, Point(at.x(), at.y()))
            _take_copy(event)
            self.setFocus()


def _take_copy(event: QDropEvent) -> None:
    """Whoever it came from must keep what was dragged: nothing is moved away, whatever is proposed."""
    event.setDropAction(Qt.DropAction.CopyAction)
    event.accept()
