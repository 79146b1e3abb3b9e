"""Words laid over the picture: they keep their size on the screen and stay within the view, wherever it is scrolled."""

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from typing import Final

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QPainter, QTransform
from PySide6.QtWidgets import QGraphicsItem, QGraphicsScene, QStyleOptionGraphicsItem, QWidget

from panelcad.geometry.point import Point

_HEIGHT: Final = 1_000_009.0
_AWAY: Final = 5.0
"""Between a place and its words, in pixels of the screen, as all sizes here."""
_AROUND: Final = (10.0, 4.0)
"""What the ground is wider and higher than the words."""
_FROM_EDGE: Final = 3.0
_WRAPPED: Final = Qt.AlignmentFlag.AlignCenter | Qt.TextFlag.TextWordWrap


class LabelSide(StrEnum):
    """On which side of its place a label stands."""

    ABOVE = "above"
    BELOW = "below"


@dataclass(frozen=True)
class Label:
    """Words at a place of the picture in mm.

    Those that are said of a `run`, which may be one place, move along it into the view and go where none of it is seen.
    """

    at: Point
    words: str
    side: LabelSide = LabelSide.ABOVE
    run: tuple[Point, ...] = ()


class LabelItem(QGraphicsItem):
    """Words on a ground of its own, centred a little above or below its place where there is room."""

    def __init__(self, label: Label, ink: QColor, ground: QColor) -> None:
        super().__init__()
        self._label, self._ink, self._ground = label, ink, ground
        self._font = QFont()
        self._font.setPointSizeF(max(8.0, self._font.pointSizeF() * 0.92))
        self._box = QRectF()
        self.setFlag(QGraphicsItem.GraphicsItemFlag.ItemIgnoresTransformations)
        self.setZValue(_HEIGHT)

    @property
    def words(self) -> str:
        return self._label.words

    def stand(self, to_screen: QTransform, room: QRectF, taken: Sequence[QRectF]) -> QRectF | None:
        """Where it now stands on the screen, in the room and clear of what is taken; None where it says nothing."""
        at = _seen_place(self._label, to_screen, room)
        self.setVisible(at is not None)
        if at is None:
            return None
        place = to_screen.map(at)
        box = standing(self._size(room), place, self._label.side, room, taken)
        self.prepareGeometryChange()
        self.setPos(at)
        self._box = box.translated(-place)
        return box

    def _size(self, room: QRectF) -> QRectF:
        """What the words and their ground take, in several lines where one would be wider than the room."""
        wide, high = _AROUND
        measure = QFontMetricsF(self._font)
        words = measure.boundingRect(self._label.words)
        if words.width() + wide > room.width():
            words = measure.boundingRect(QRectF(0.0, 0.0, room.width() - wide, room.height()), _WRAPPED, self.words)
        return QRectF(0.0, 0.0, words.width() + wide, words.height() + high)

    def boundingRect(self) -> QRectF:
        return self._box.adjusted(-1, -1, 1, 1)

    def paint(self, painter: QPainter, option: QStyleOptionGraphicsItem, widget: QWidget | None = None) -> None:  # noqa: ARG002
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(self._ground)
        painter.drawRoundedRect(self._box, 3, 3)
        painter.setFont(self._font)
        painter.setPen(self._ink)
        painter.drawText(self._box, _WRAPPED, self.words)


class Labels:
    """All labels over one scene, in named groups that are shown as a whole."""

    def __init__(self, scene: QGraphicsScene) -> None:
        self._scene = scene
        self._items: dict[str, list[LabelItem]] = {}

    def show(self, group: str, labels: Sequence[Label], ink: QColor, ground: QColor) -> None:
        """These in the group, and no others."""
        for old in self._items.pop(group, ()):
            self._scene.removeItem(old)
        if labels:
            self._items[group] = [LabelItem(label, ink, ground) for label in labels]
            for item in self._items[group]:
                self._scene.addItem(item)
            self.settle()

    @property
    def shown(self) -> tuple[LabelItem, ...]:
        return tuple(item for items in self._items.values() for item in items if item.isVisible())

    def settle(self) -> None:
        """Move them to where they are seen, and clear of one another; the view shows another part of the picture."""
        views = self._scene.views()
        if not views or not self._items:
            return
        edge = _FROM_EDGE
        room = QRectF(views[0].viewport().rect()).adjusted(edge, edge, -edge, -edge)
        taken: list[QRectF] = []
        for item in (item for items in self._items.values() for item in items):
            box = item.stand(views[0].viewportTransform(), room, taken)
            if box is not None:
                taken.append(box)


def standing(size: QRectF, at: QPointF, side: LabelSide, room: QRectF, taken: Sequence[QRectF]) -> QRectF:
    """The box of a label at a place of the screen: on its side, else on the other, else as near as the room allows."""
    left = at.x() - size.width() / 2
    above = QRectF(left, at.y() - _AWAY - size.height(), size.width(), size.height())
    below = QRectF(left, at.y() + _AWAY, size.width(), size.height())
    wanted, other = (above, below) if side is LabelSide.ABOVE else (below, above)
    pushed = _pushed_into(wanted, room)
    beside = [
        _pushed_into(QRectF(pushed.left(), top, size.width(), size.height()), room)
        for box in taken
        for top in (box.top() - size.height() - 1.0, box.bottom() + 1.0)
    ]
    beside.sort(key=lambda box: abs(box.top() - wanted.top()))
    free = (
        box
        for box in (*(box for box in (wanted, other) if room.contains(box)), pushed, *beside)
        if not any(box.intersects(one) for one in taken)
    )
    return next(free, pushed)


def _pushed_into(box: QRectF, room: QRectF) -> QRectF:
    left = max(room.left(), min(box.left(), room.right() - box.width()))
    top = max(room.top(), min(box.top(), room.bottom() - box.height()))
    return QRectF(left, top, box.width(), box.height())


def _seen_place(label: Label, to_screen: QTransform, room: QRectF) -> QPointF | None:
    """Its place, or the middle of the longest part of its run that is in the room; None where no part is."""
    at = QPointF(*label.at)
    if not label.run or room.contains(to_screen.map(at)):
        return at
    if len(label.run) == 1:
        return None
    import shapely  # noqa: PLC0415 - waits until a line with words leaves the view

    on_screen = [to_screen.map(QPointF(*place)) for place in label.run]
    seen = shapely.LineString([(place.x(), place.y()) for place in on_screen]).intersection(
        shapely.box(room.left(), room.top(), room.right(), room.bottom())
    )
    parts = [part for part in getattr(seen, "geoms", [seen]) if part.length > 0]
    if not parts:
        return None
    spot = max(parts, key=lambda part: part.length).interpolate(0.5, normalized=True)
    return to_screen.inverted()[0].map(QPointF(spot.x, spot.y))
