"""One row of the findings list: the sign of its severity, the sentence, and the rule's title."""

from typing import TYPE_CHECKING, Final

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, QRect, QSize, Qt
from PySide6.QtGui import QColor, QFont, QFontMetrics, QPainter
from PySide6.QtWidgets import QAbstractItemView, QApplication, QStyle, QStyledItemDelegate, QStyleOptionViewItem

from panelcad.desktop.canvas.badge import paint_badge

if TYPE_CHECKING:
    from panelcad.desktop.workbench import Workbench

_SIGN: Final = 30
_PADDING: Final = 7


class FindingRow(QStyledItemDelegate):
    def __init__(self, bench: "Workbench", view: QAbstractItemView) -> None:
        super().__init__(view)
        self._bench = bench
        self._view = view

    def sizeHint(self, option: QStyleOptionViewItem, index: QModelIndex | QPersistentModelIndex) -> QSize:
        width = max(self._view.viewport().width(), 120)
        entry = index.data(int(Qt.ItemDataRole.UserRole))
        words = option.fontMetrics.boundingRect(self._room(width), _WRAP, entry.words).height()
        return QSize(width - 4, words + QFontMetrics(_small(option.font)).height() + 2 * _PADDING + 2)

    def _room(self, width: int) -> QRect:
        return QRect(0, 0, width - 4 - _SIGN - 2 - _PADDING, 2000)

    def paint(
        self, painter: QPainter, option: QStyleOptionViewItem, index: QModelIndex | QPersistentModelIndex
    ) -> None:
        style = option.widget.style() if option.widget else QApplication.style()
        style.drawPrimitive(QStyle.PrimitiveElement.PE_PanelItemViewItem, option, painter, option.widget)
        entry = index.data(int(Qt.ItemDataRole.UserRole))
        theme = self._bench.theme
        painter.save()
        painter.translate(option.rect.left() + _SIGN / 2 + 2, option.rect.top() + _PADDING + 9)
        paint_badge(painter, entry.kind, 8.0, QColor(theme.severity[entry.kind.value]), QColor(theme.on_severity))
        painter.restore()
        left = option.rect.left() + _SIGN + 2
        room = QRect(left, option.rect.top() + _PADDING, option.rect.right() - left - _PADDING, option.rect.height())
        painter.setFont(option.font)
        painter.setPen(QColor(theme.ink))
        painter.drawText(room, _WRAP, entry.words)
        painter.setFont(_small(option.font))
        painter.setPen(QColor(theme.faint))
        low = room.adjusted(0, 0, 0, -2 * _PADDING)
        title = painter.fontMetrics().elidedText(entry.title, Qt.TextElideMode.ElideRight, low.width())
        painter.drawText(low, Qt.AlignmentFlag.AlignBottom | Qt.AlignmentFlag.AlignLeft, title)


_WRAP: Final = int(Qt.TextFlag.TextWordWrap) | int(Qt.AlignmentFlag.AlignLeft) | int(Qt.AlignmentFlag.AlignTop)


def _small(font: QFont) -> QFont:
    small = QFont(font)
    small.setPointSizeF(font.pointSizeF() * 0.88)
    return small
