"""One row of the library list: picture, title, size and family."""

from typing import TYPE_CHECKING, Final

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, QRect, QSize, Qt
from PySide6.QtGui import QColor, QFont, QFontMetrics, QPainter
from PySide6.QtWidgets import QApplication, QStyle, QStyledItemDelegate, QStyleOptionViewItem, QWidget

from panelcad.drawing.extent import extent
from panelcad.model.cutout import Cutout
from panelcad.units import LengthUnit, format_number

if TYPE_CHECKING:
    from panelcad.desktop.workbench import Workbench

_PADDING: Final = 6


class CutoutRow(QStyledItemDelegate):
    def __init__(self, bench: "Workbench", parent: QWidget) -> None:
        super().__init__(parent)
        self._bench = bench

    def sizeHint(self, option: QStyleOptionViewItem, index: QModelIndex | QPersistentModelIndex) -> QSize:  # noqa: ARG002
        return QSize(120, option.decorationSize.height() + 2 * _PADDING)

    def paint(
        self, painter: QPainter, option: QStyleOptionViewItem, index: QModelIndex | QPersistentModelIndex
    ) -> None:
        style = option.widget.style() if option.widget else QApplication.style()
        bare = QStyleOptionViewItem(option)
        style.drawPrimitive(QStyle.PrimitiveElement.PE_PanelItemViewItem, bare, painter, option.widget)
        cutout = index.data(int(Qt.ItemDataRole.UserRole))
        picture = index.data(Qt.ItemDataRole.DecorationRole)
        side = option.decorationSize
        place = QRect(option.rect.left() + _PADDING, option.rect.top() + _PADDING, side.width(), side.height())
        painter.drawPixmap(place, picture)
        self._write(painter, option, cutout, place.right() + 10)

    def _write(self, painter: QPainter, option: QStyleOptionViewItem, cutout: Cutout, left: int) -> None:
        theme = self._bench.theme
        small = QFont(option.font)
        small.setPointSizeF(option.font.pointSizeF() * 0.88)
        metrics, small_metrics = option.fontMetrics, QFontMetrics(small)
        width = option.rect.right() - left - 4
        title = two_lines(cutout.title, metrics, width)
        size = small_metrics.elidedText(size_words(cutout, self._bench.unit), Qt.TextElideMode.ElideRight, width)
        high = len(title) * metrics.height() + small_metrics.height()
        at = QRect(left, option.rect.top() + (option.rect.height() - high) // 2, width, metrics.height())
        for font, ink, lines in ((option.font, theme.ink, title), (small, theme.faint, [size])):
            painter.setFont(font)
            painter.setPen(QColor(ink))
            for line in lines:
                painter.drawText(at, Qt.AlignmentFlag.AlignVCenter, line)
                at.translate(0, metrics.height())


def two_lines(title: str, metrics: QFontMetrics, width: int) -> list[str]:
    """A title broken between words where it is wider than so many pixels; the second line ends in dots if need be."""
    words = title.split()
    count = len(words)
    while count > 1 and metrics.horizontalAdvance(" ".join(words[:count])) > width:
        count -= 1
    parts = (" ".join(words[:count]), " ".join(words[count:]))
    return [metrics.elidedText(part, Qt.TextElideMode.ElideRight, width) for part in parts if part]


def size_words(cutout: Cutout, unit: LengthUnit) -> str:
    """What it covers in front, and how deep it reaches: '3.25 × 3.25 in, 6.00 deep'."""
    from panelcad.desktop.theme import LIGHT  # noqa: PLC0415
    from panelcad.desktop.thumbnails import cutout_picture  # noqa: PLC0415 - thumbnails need the views

    x1, y1, x2, y2 = extent(cutout_picture(cutout, LIGHT))
    deep = max((body.far for body in cutout.bodies if not body.in_front), default=0.0)
    places = 2 if unit is LengthUnit.INCH else 0
    width, height = format_number(x2 - x1, unit, places=places), format_number(y2 - y1, unit, places=places)
    depth = f", {format_number(deep, unit, places=places)} deep" if deep else ""
    return f"{width} × {height} {unit.value}{depth}"
