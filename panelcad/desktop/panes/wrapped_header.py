"""A header whose names go on in further lines, and end in dots only where even those are too few."""

from typing import Final

from PySide6.QtCore import QPointF, QRect, QSize, Qt
from PySide6.QtGui import QFont, QFontMetrics, QPainter, QTextLayout, QTextOption
from PySide6.QtWidgets import QHeaderView, QStyle, QStyleOptionHeader, QWidget

MOST_LINES: Final = 4
_AROUND: Final = 6
_NARROWEST: Final = 84


class WrappedHeader(QHeaderView):
    """A word wider than its column is broken; the tool tip and the screen reader tell every name whole."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(Qt.Orientation.Horizontal, parent)
        self.setSectionsClickable(True)
        self.setMinimumSectionSize(_NARROWEST)
        self.setDefaultAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
        self.sectionResized.connect(lambda *_: self.updateGeometry())

    def lines(self, section: int) -> list[str]:
        """The name of a column as it is shown."""
        room, font = self.sectionSize(section) - 2 * _AROUND, self._font(section)
        layout = QTextLayout(self._name(section), font)
        wrapping = QTextOption()
        wrapping.setWrapMode(QTextOption.WrapMode.WrapAtWordBoundaryOrAnywhere)
        layout.setTextOption(wrapping)
        ends: list[tuple[int, int]] = []
        layout.beginLayout()
        while (line := layout.createLine()).isValid():
            line.setLineWidth(max(room, 1))
            line.setPosition(QPointF(0.0, 0.0))
            ends.append((line.textStart(), line.textLength()))
        layout.endLayout()
        return self._shortened([self._name(section)[start : start + length] for start, length in ends], section)

    def _shortened(self, lines: list[str], section: int) -> list[str]:
        if len(lines) <= MOST_LINES:
            return [line.strip() for line in lines]
        room = self.sectionSize(section) - 2 * _AROUND
        rest = "".join(lines[MOST_LINES - 1 :])
        metrics = self._metrics(section)
        last = metrics.elidedText(rest, Qt.TextElideMode.ElideRight, room)
        return [*(line.strip() for line in lines[: MOST_LINES - 1]), last]

    def _name(self, section: int) -> str:
        return str(self.model().headerData(section, self.orientation()) or "")

    def _font(self, section: int) -> QFont:
        font = self.model().headerData(section, self.orientation(), Qt.ItemDataRole.FontRole)
        return font if isinstance(font, QFont) else self.font()

    def _metrics(self, section: int) -> QFontMetrics:
        return QFontMetrics(self._font(section), self)

    def sizeHint(self) -> QSize:
        """As high as the name with the most lines."""
        most = max((len(self.lines(section)) for section in range(self.count())), default=1)
        return QSize(super().sizeHint().width(), most * self.fontMetrics().lineSpacing() + 2 * _AROUND)

    def paintSection(self, painter: QPainter, rect: QRect, logicalIndex: int) -> None:  # noqa: N803 - Qt's own name
        option = QStyleOptionHeader()
        self.initStyleOption(option)
        self.initStyleOptionForIndex(option, logicalIndex)
        option.rect = rect
        option.text = ""
        painter.save()
        self.style().drawControl(QStyle.ControlElement.CE_Header, option, painter, self)
        painter.setFont(self._font(logicalIndex))
        painter.setPen(option.palette.buttonText().color())
        room = rect.adjusted(_AROUND, 0, -_AROUND, 0)
        words = "\n".join(self.lines(logicalIndex))
        painter.drawText(room, int(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter), words)
        painter.restore()
