"""What lies over the picture: highlights, finding marks, guide lines, the selection box. Sizes are screen pixels."""

from collections.abc import Collection
from dataclasses import dataclass
from enum import StrEnum
from typing import Final

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QBrush, QColor, QPainterPath, QPen
from PySide6.QtWidgets import (
    QGraphicsItem,
    QGraphicsLineItem,
    QGraphicsPathItem,
    QGraphicsRectItem,
    QGraphicsScene,
)

from panelcad.desktop.canvas.badge import Badge, MarkKind
from panelcad.desktop.canvas.label import Label, Labels, LabelSide
from panelcad.desktop.theme import Theme
from panelcad.drawing.display import Bounds
from panelcad.geometry.point import Point, middle

_ABOVE: Final = 1_000_000.0
_BADGE_HEIGHTS: Final = {MarkKind.ACCEPTED: 3.0, MarkKind.ADVICE: 3.1, MarkKind.WARNING: 3.2, MarkKind.ERROR: 3.3}


class Highlight(StrEnum):
    SELECTED = "selected"
    HOVERED = "hovered"


@dataclass(frozen=True)
class Guide:
    """A line on the panel with words beside it."""

    start: Point
    end: Point
    label: str = ""
    label_at: Point | None = None
    """Where the words stand; along the line where it is not given."""
    label_side: LabelSide = LabelSide.ABOVE

    @property
    def words(self) -> Label:
        if self.label_at is not None:
            return Label(self.label_at, self.label, self.label_side)
        return Label(middle(self.start, self.end), self.label, self.label_side, (self.start, self.end))


@dataclass(frozen=True)
class Mark:
    """A finding's place: a spot, or the line that was measured."""

    key: str
    kind: MarkKind
    where: tuple[Point, ...]
    title: str
    stands_out: bool = False


class Overlay:
    def __init__(self, scene: QGraphicsScene, labels: Labels, theme: Theme) -> None:
        self._scene, self._labels = scene, labels
        self._theme = theme
        self._highlights: dict[str, QGraphicsPathItem] = {}
        self._marks: dict[Mark, list[QGraphicsItem]] = {}
        self._guides: list[QGraphicsItem] = []
        self._band: QGraphicsRectItem | None = None
        self._section: QGraphicsLineItem | None = None

    def themed(self, theme: Theme) -> None:
        self._theme = theme
        marks = tuple(self._marks)
        self.set_marks(())
        self.set_marks(marks)

    def set_highlights(self, wanted: dict[str, tuple[QPainterPath, Highlight]]) -> None:
        for owner in self._highlights.keys() - wanted.keys():
            self._scene.removeItem(self._highlights.pop(owner))
        for owner, (area, how) in wanted.items():
            item = self._highlights.get(owner)
            if item is None:
                item = self._highlights[owner] = QGraphicsPathItem()
                self._add(item, 1)
            item.setPath(area)
            item.setPos(0.0, 0.0)
            self._dress(item, how)

    def _dress(self, item: QGraphicsPathItem, how: Highlight) -> None:
        accent = QColor(self._theme.selection)
        item.setPen(self._thin(accent, 2.0 if how is Highlight.SELECTED else 1.2))
        accent.setAlphaF(0.14 if how is Highlight.SELECTED else 0.06)
        item.setBrush(QBrush(accent))

    def shift_highlights(self, owners: Collection[str], dx: float, dy: float) -> None:
        for owner in owners:
            if owner in self._highlights:
                self._highlights[owner].setPos(QPointF(dx, dy))

    def set_marks(self, marks: tuple[Mark, ...]) -> None:
        """Marks that stay are kept as they are."""
        wanted = set(marks)
        for mark in self._marks.keys() - wanted:
            self._remove(self._marks.pop(mark))
        for mark in marks:
            if mark not in self._marks and mark.where:
                self._marks[mark] = self._mark_items(mark)

    @property
    def marks(self) -> tuple[Mark, ...]:
        """The marks that are shown."""
        return tuple(self._marks)

    def _mark_items(self, mark: Mark) -> list[QGraphicsItem]:
        colour = QColor(self._theme.severity[mark.kind.value])
        made: list[QGraphicsItem] = []
        if len(mark.where) > 1:
            line = QGraphicsLineItem(*mark.where[0], *mark.where[-1])
            line.setPen(self._thin(colour, 3.0 if mark.stands_out else 2.0))
            made.append(self._add(line, 2))
        badge = Badge(mark.kind, colour, QColor(self._theme.on_severity), stands_out=mark.stands_out)
        badge.setPos(QPointF(*middle(mark.where[0], mark.where[-1])))
        badge.setToolTip(mark.title)
        badge.setData(0, mark.key)
        made.append(self._add(badge, 4 if mark.stands_out else _BADGE_HEIGHTS[mark.kind]))
        return made

    def badge_boxes(self) -> tuple[Bounds, ...]:
        """What the badges of the marks cover on the picture, in mm."""
        scale = self._scene.views()[0].transform().m11() if self._scene.views() else 1.0
        badges = (item for items in self._marks.values() for item in items if isinstance(item, Badge))
        return tuple(_around(badge.pos(), badge.boundingRect().width() / 2 / scale) for badge in badges)

    def mark_at(self, at: Point) -> str:
        """The key of the mark whose badge covers a point, or ''."""
        transform = self._scene.views()[0].viewportTransform() if self._scene.views() else None
        for item in self._scene.items(
            QPointF(*at),
            Qt.ItemSelectionMode.IntersectsItemShape,
            Qt.SortOrder.DescendingOrder,
            *([transform] if transform else []),
        ):
            if isinstance(item, Badge):
                return str(item.data(0))
        return ""

    def set_guides(self, guides: tuple[Guide, ...]) -> None:
        self._remove(self._guides)
        self._guides = []
        for guide in guides:
            line = QGraphicsLineItem(*guide.start, *guide.end)
            line.setPen(self._thin(QColor(self._theme.guide), 1.0))
            self._guides.append(self._add(line, 5))
        words = tuple(guide.words for guide in guides if guide.label)
        self._labels.show("guides", words, QColor(self._theme.guide), QColor(self._theme.label_ground))

    def set_words(self, words: tuple[Label, ...]) -> None:
        """Words beside what is being drawn out, with no line of their own."""
        self._labels.show("words", words, QColor(self._theme.guide), QColor(self._theme.label_ground))

    def set_section(self, line: Guide | None) -> None:
        """The line along which the section runs."""
        if self._section is not None:
            self._scene.removeItem(self._section)
            self._section = None
        if line is not None:
            self._section = QGraphicsLineItem(*line.start, *line.end)
            pen = self._thin(QColor(self._theme.guide), 1.6)
            pen.setDashPattern([12.0, 3.0, 2.0, 3.0])
            self._section.setPen(pen)
            self._section.setToolTip(line.label)
            self._add(self._section, 0.5)

    def set_band(self, band: Bounds | None) -> None:
        """The box that is being drawn to select with."""
        if band is None:
            if self._band is not None:
                self._scene.removeItem(self._band)
                self._band = None
            return
        if self._band is None:
            accent = QColor(self._theme.selection)
            self._band = QGraphicsRectItem()
            self._band.setPen(self._thin(accent, 1.0))
            accent.setAlphaF(0.10)
            self._band.setBrush(accent)
            self._add(self._band, 7)
        self._band.setRect(QRectF(band[0], band[1], band[2] - band[0], band[3] - band[1]))

    def _thin(self, colour: QColor, pixels: float) -> QPen:
        return thin(colour, pixels, screen_ratio(self._scene))

    def _add(self, item: QGraphicsItem, height: float) -> QGraphicsItem:
        item.setZValue(_ABOVE + height)
        self._scene.addItem(item)
        return item

    def _remove(self, items: list[QGraphicsItem]) -> None:
        for item in items:
            self._scene.removeItem(item)


def _around(at: QPointF, reach: float) -> Bounds:
    return at.x() - reach, at.y() - reach, at.x() + reach, at.y() + reach


def thin(colour: QColor, pixels: float, ratio: float) -> QPen:
    """A pen of so many pixels at any zoom, on a screen with so many of its own for one."""
    pen = QPen(colour, pixels * ratio)
    pen.setCosmetic(True)
    return pen


def screen_ratio(scene: QGraphicsScene) -> float:
    """How many pixels of the screen one pixel is, where the scene is seen."""
    views = scene.views()
    return float(views[0].devicePixelRatioF()) if views else 1.0
