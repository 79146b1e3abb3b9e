"""The window onto the scene: zoom at the pointer, pan, and gestures handed to the tool in mm."""

from typing import Final, Protocol

from PySide6.QtCore import QEvent, QPoint, QPointF, QRectF, Qt, Signal
from PySide6.QtGui import (
    QColor,
    QDragEnterEvent,
    QDragMoveEvent,
    QDropEvent,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QResizeEvent,
    QTransform,
    QWheelEvent,
)
from PySide6.QtWidgets import QGraphicsView

from panelcad.desktop.canvas.gesture import Held, Pointer
from panelcad.desktop.canvas.scene import PanelScene
from panelcad.desktop.theme import Theme
from panelcad.drawing.display import Bounds, union
from panelcad.geometry.point import Point

LEAST_ZOOM: Final = 0.05
MOST_ZOOM: Final = 200.0
_WHEEL_NOTCH: Final = 1.2
_AROUND_PX: Final = 40


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


class PanelView(QGraphicsView):
    """Signals: `pointed` at a place in mm, `zoomed` to pixels per mm, `scrolled` when what is seen has changed."""

    pointed = Signal(object)
    left = Signal()
    zoomed = Signal(float)
    scrolled = Signal()
    menu_wanted = Signal(object, QPoint)

    def __init__(self, scene: PanelScene, theme: Theme) -> None:
        super().__init__(scene)
        self.panel_scene = scene
        self.tool: CanvasTool | None = None
        self.drop_target: DropTarget | None = None
        self.last_pointed: Point | None = None
        """Where the pointer was last, in mm of the picture."""
        self._pan_from: QPoint | None = None
        self._space_held = False
        self._wants_all: Bounds | None = None
        self.setObjectName("canvas")
        self.setAccessibleName("Panel")
        self.setAccessibleDescription("The panel drawn to scale")
        self.setRenderHint(QPainter.RenderHint.Antialiasing)
        self.setViewportUpdateMode(QGraphicsView.ViewportUpdateMode.MinimalViewportUpdate)
        self.setTransformationAnchor(QGraphicsView.ViewportAnchor.NoAnchor)
        self.setResizeAnchor(QGraphicsView.ViewportAnchor.AnchorViewCenter)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setMouseTracking(True)
        self.setAcceptDrops(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setTransform(QTransform.fromScale(2.0, -2.0))
        self.scrolled.connect(scene.keep_words_whole)
        self.themed(theme)

    def themed(self, theme: Theme) -> None:
        background = theme.view.palette.background
        self.setBackgroundBrush(QColor(background.text))
        self.viewport().update()

    # Zoom and pan

    @property
    def zoom(self) -> float:
        """Logical pixels a mm."""
        return self.transform().m11()

    def zoom_by(self, factor: float, at: QPointF | None = None) -> None:
        """Zoom so that the place under `at` (viewport pixels; its middle where none is given) stays where it is."""
        here = at if at is not None else QPointF(self.viewport().rect().center())
        before = self._scene_at(here)
        wanted = min(MOST_ZOOM, max(LEAST_ZOOM, self.zoom * factor))
        self._set_zoom(wanted)
        moved = self.mapFromScene(before) - here.toPoint()
        self._scroll_by(moved)

    def set_zoom(self, pixels_per_mm: float) -> None:
        self.zoom_by(pixels_per_mm / self.zoom)

    def _set_zoom(self, pixels_per_mm: float) -> None:
        self._wants_all = None
        self.setTransform(QTransform.fromScale(pixels_per_mm, -pixels_per_mm))
        self.panel_scene.zoomed(1 / pixels_per_mm)
        self.zoomed.emit(pixels_per_mm)
        self.scrolled.emit()

    def show_box(self, box: Bounds, most: float = MOST_ZOOM) -> None:
        """Zoom and scroll so that a box in mm fills the view."""
        self.panel_scene.make_room(box)
        width, height = max(box[2] - box[0], 1.0), max(box[3] - box[1], 1.0)
        room = self.viewport().rect()
        across = (room.width() - 2 * min(_AROUND_PX, 0.08 * room.width())) / width
        up = (room.height() - 2 * min(_AROUND_PX, 0.08 * room.height())) / height
        self._set_zoom(min(most, max(LEAST_ZOOM, min(across, up))))
        self.centerOn(QPointF((box[0] + box[2]) / 2, (box[1] + box[3]) / 2))
        self.scrolled.emit()

    def show_finding(self, where: list[Point]) -> None:
        """Zoom to a finding so that its neighbourhood is seen."""
        if where:
            xs, ys = [p.x for p in where], [p.y for p in where]
            self.show_box((min(xs) - 60, min(ys) - 45, max(xs) + 60, max(ys) + 45))

    def show_all(self) -> None:
        box = self.panel_scene.box()
        if box is not None:
            self.show_box(box)
            self._wants_all = box

    def keep_all(self) -> None:
        """Where all was in view, all of what is drawn now is brought into view."""
        if self._wants_all is not None and self.panel_scene.box() != self._wants_all:
            self.show_all()

    def keep_in_sight(self) -> None:
        """Where something of what is drawn now is out of view, all of it is brought into view."""
        box, seen = self.panel_scene.box(), self.seen()
        if box is not None and union([box, seen]) != seen:
            self.show_all()

    def seen(self) -> Bounds:
        """The box in mm that is in view."""
        polygon = self.mapToScene(self.viewport().rect()).boundingRect()
        return polygon.left(), polygon.top(), polygon.right(), polygon.bottom()

    def _scene_at(self, pixel: QPointF) -> QPointF:
        inverse, _ = self.viewportTransform().inverted()
        return inverse.map(pixel)

    def _scroll_by(self, pixels: QPoint) -> None:
        self.horizontalScrollBar().setValue(self.horizontalScrollBar().value() + pixels.x())
        self.verticalScrollBar().setValue(self.verticalScrollBar().value() + pixels.y())
        self.scrolled.emit()

    def scroll_mm(self, dx: float, dy: float) -> None:
        """Scroll so that what was dx, dy mm away comes here."""
        self._wants_all = None
        self._scroll_by(QPoint(round(dx * self.zoom), round(-dy * self.zoom)))

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Wheel zooms at the pointer; with Shift or on a touch pad's own scrolling it pans."""
        touch = event.pixelDelta()
        if not touch.isNull() and not event.modifiers() & Qt.KeyboardModifier.ControlModifier:
            self._scroll_by(-touch)
        elif event.modifiers() & Qt.KeyboardModifier.ShiftModifier:
            turn = event.angleDelta()
            self._scroll_by(QPoint(-(turn.y() or turn.x()), 0))
        else:
            self.zoom_by(_WHEEL_NOTCH ** (event.angleDelta().y() / 120.0), event.position())
        event.accept()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        if self._wants_all is not None:
            self.show_all()
        self.scrolled.emit()

    # Gestures

    def pointer(self, event: QMouseEvent) -> Pointer:
        at = self._scene_at(event.position())
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
            self._wants_all = None
            self._scroll_by(self._pan_from - here)
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
            at = self._scene_at(event.position())
            self.drop_target.hover(event, Point(at.x(), at.y()))
            _take_copy(event)

    def dragLeaveEvent(self, event: object) -> None:  # noqa: ARG002
        if self.drop_target is not None:
            self.drop_target.leave()

    def dropEvent(self, event: QDropEvent) -> None:
        if self.drop_target is not None:
            at = self._scene_at(event.position())
            self.drop_target.drop(event, Point(at.x(), at.y()))
            _take_copy(event)
            self.setFocus()

    def repaint_box(self, box: Bounds) -> None:
        """Ask for a repaint of a box in mm."""
        self.panel_scene.update(QRectF(box[0], box[1], box[2] - box[0], box[3] - box[1]))


def _take_copy(event: QDropEvent) -> None:
    """Whoever it came from must keep what was dragged: nothing is moved away, whatever is proposed."""
    event.setDropAction(Qt.DropAction.CopyAction)
    event.accept()
