"""A chart's display list on the screen, as large as the room allows."""

from PySide6.QtCore import QRectF, QSize
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from panelcad.drawing.charts.frame import Chart
from panelcad.outputs.qt_painter import Prepared, prepare


class ChartView(QWidget):
    """Paints one chart; nothing where there is none."""

    def __init__(self, name: str) -> None:
        super().__init__()
        self.setAccessibleName(name)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self._chart: Chart | None = None
        self._prepared: Prepared | None = None

    @property
    def chart(self) -> Chart | None:
        return self._chart

    def show_chart(self, chart: Chart | None) -> None:
        self._chart = chart
        self._prepared = prepare(chart.nodes) if chart is not None else None
        self.setAccessibleDescription(chart.title if chart is not None else "")
        self.update()

    def sizeHint(self) -> QSize:
        return QSize(420, 240)

    def minimumSizeHint(self) -> QSize:
        return QSize(220, 130)

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: ARG002
        if self._chart is None or self._prepared is None:
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        room = QRectF(self.rect()).adjusted(8, 8, -8, -8)
        scale = min(room.width() / self._chart.width, room.height() / self._chart.height)
        painter.translate(room.left(), room.top() + self._chart.height * scale)
        painter.scale(scale, -scale)
        self._prepared.replay(painter)
        painter.end()
