"""A view of the scene that is zoomed at the pointer and scrolled, and tells what it shows."""

from typing import Final

from PySide6.QtCore import QPoint, QPointF, QRectF, Qt, Signal
from PySide6.QtGui import QPainter, QResizeEvent, QTransform, QWheelEvent
from PySide6.QtWidgets import QGraphicsView

from panelcad.desktop.canvas.scene import PanelScene
from panelcad.drawing.display import Bounds, union
from panelcad.geometry.point import Point

LEAST_ZOOM: Final = 0.05
MOST_ZOOM: Final = 200.0
_WHEEL_NOTCH: Final = 1.2
_AROUND_PX: Final = 40


class ZoomingView(QGraphicsView):
    """Signals: `zoomed` to pixels per mm, `scrolled` when what is seen has changed."""

    zoomed = Signal(float)
    scrolled = Signal()

    def __init__(self, scene: PanelScene) -> None:
        super().__init__(scene)
        self.panel_scene = scene
        self._wants_all: Bounds | None = None
        self.setRenderHint(QPainter.RenderHint.Antialiasing)
        self.setViewportUpdateMode(QGraphicsView.ViewportUpdateMode.MinimalViewportUpdate)
        self.setTransformationAnchor(QGraphicsView.ViewportAnchor.NoAnchor)
        self.setResizeAnchor(QGraphicsView.ViewportAnchor.AnchorViewCenter)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setTransform(QTransform.fromScale(2.0, -2.0))
        self.scrolled.connect(scene.keep_words_whole)

    @property
    def zoom(self) -> float:
        """Logical pixels a mm."""
        return self.transform().m11()

    def zoom_by(self, factor: float, at: QPointF | None = None) -> None:
        """Zoom so that the place under `at` (viewport pixels; its middle where none is given) stays where it is."""
        here = at if at is not None else QPointF(self.viewport().rect().center())
        before = self.scene_at(here)
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

    @property
    def wants_all(self) -> bool:
        """Whether all of the picture is kept in view."""
        return self._wants_all is not None

    def show_from(self, centre: QPointF, pixels_per_mm: float) -> None:
        """Bring a place of the picture to the middle, at this zoom."""
        seen = self.viewport().rect().size() / (2 * pixels_per_mm)
        x, y = centre.x(), centre.y()
        self.panel_scene.make_room((x - seen.width(), y - seen.height(), x + seen.width(), y + seen.height()))
        self._set_zoom(pixels_per_mm)
        self.centerOn(centre)
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

    def scene_at(self, pixel: QPointF) -> QPointF:
        """The place of the picture under a pixel of the viewport."""
        inverse, _ = self.viewportTransform().inverted()
        return inverse.map(pixel)

    def _scroll_by(self, pixels: QPoint) -> None:
        self.horizontalScrollBar().setValue(self.horizontalScrollBar().value() + pixels.x())
        self.verticalScrollBar().setValue(self.verticalScrollBar().value() + pixels.y())
        self.scrolled.emit()

    def scroll_mm(self, dx: float, dy: float) -> None:
        """Scroll so that what was dx, dy mm away comes here."""
        self.pan_by(QPoint(round(dx * self.zoom), round(-dy * self.zoom)))

    def pan_by(self, pixels: QPoint) -> None:
        """Scroll by so many pixels; all of the picture is not wanted in view any more."""
        self._wants_all = None
        self._scroll_by(pixels)

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

    def repaint_box(self, box: Bounds) -> None:
        """Ask for a repaint of a box in mm."""
        self.panel_scene.update(QRectF(box[0], box[1], box[2] - box[0], box[3] - box[1]))
