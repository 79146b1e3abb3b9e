"""What is being drawn over the picture: edges that stand, the one that follows the pointer, points and their words."""

from dataclasses import dataclass
from typing import Final

from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QColor, QPainterPath
from PySide6.QtWidgets import QGraphicsItem, QGraphicsPathItem

from panelcad.desktop.canvas.handles import Grip, Handle, HandleItem
from panelcad.desktop.canvas.label import Label
from panelcad.desktop.canvas.overlay import screen_ratio, thin
from panelcad.desktop.canvas.scene import PanelScene
from panelcad.desktop.theme import Theme
from panelcad.geometry.point import Point

_HEIGHT: Final = 1_000_007.0
Run = tuple[Point, ...]


@dataclass(frozen=True)
class Drawn:
    """Places of the picture in mm: `standing` edges, the `coming` ones, points and labels.

    One that is refused is dotted and in the colour of what is wrong, one that may be set is dashed.
    """

    standing: tuple[Run, ...] = ()
    coming: tuple[Run, ...] = ()
    is_refused: bool = False
    points: tuple[Point, ...] = ()
    labels: tuple[Label, ...] = ()
    closes: bool = False
    """The coming edge would close the outline: its first point is filled."""


class Sketch:
    def __init__(self, scene: PanelScene) -> None:
        self._scene = scene
        self._items: list[QGraphicsItem] = []

    def show(self, drawn: Drawn, theme: Theme) -> None:
        """This and nothing else."""
        self.clear()
        ink = QColor(theme.selection)
        for run in drawn.standing:
            self._path(run, ink, Qt.PenStyle.SolidLine)
        style = Qt.PenStyle.DotLine if drawn.is_refused else Qt.PenStyle.DashLine
        for run in drawn.coming:
            self._path(run, QColor(theme.wrong) if drawn.is_refused else ink, style)
        for number, at in enumerate(drawn.points):
            is_picked = number == 0 if drawn.closes else number == len(drawn.points) - 1
            handle = Handle(Grip.CORNER, number, at, is_picked=is_picked)
            self._add(HandleItem(handle, ink, QColor(theme.raised)), at, 1)
        self._scene.labels.show("sketch", drawn.labels, QColor(theme.guide), QColor(theme.label_ground))

    def clear(self) -> None:
        for item in self._items:
            self._scene.removeItem(item)
        self._items = []
        self._scene.labels.show("sketch", (), QColor(), QColor())

    def _path(self, run: Run, ink: QColor, style: Qt.PenStyle) -> None:
        path = QPainterPath(QPointF(*run[0]))
        for at in run[1:]:
            path.lineTo(QPointF(*at))
        item = QGraphicsPathItem(path)
        pen = thin(ink, 2.0, screen_ratio(self._scene))
        pen.setStyle(style)
        item.setPen(pen)
        self._add(item, Point(0.0, 0.0), 0)

    def _add(self, item: QGraphicsItem, at: Point, height: float) -> None:
        item.setPos(QPointF(*at))
        item.setZValue(_HEIGHT + height)
        self._scene.addItem(item)
        self._items.append(item)
