"""The view for the owner across the table: two options on the whole screen, a line that is moved between them.

Keys: left and right arrow move the line, L changes the light, F swaps the sides, Escape closes.
"""

from typing import Final

from PySide6.QtCore import QPoint, QRectF, Qt, Signal
from PySide6.QtGui import QCloseEvent, QColor, QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QPixmap, QResizeEvent
from PySide6.QtWidgets import QComboBox, QHBoxLayout, QLabel, QPushButton, QSlider, QVBoxLayout, QWidget

from panelcad.desktop.choice_box import ChoiceBox
from panelcad.desktop.help.ask import explained
from panelcad.desktop.help.topics import Dialog
from panelcad.desktop.owner_flaws import OwnerFlaws
from panelcad.drawing.appearance import Look
from panelcad.drawing.appearance_light import LIGHTS, ground_colour
from panelcad.drawing.appearance_panel import panel_view
from panelcad.drawing.display import Bounds, union
from panelcad.drawing.extent import extent
from panelcad.model.layout import layout
from panelcad.model.project import Option, Project
from panelcad.outputs.qt_painter import paint

_LIGHT_NAMES: Final = {"day": "Day", "dusk": "Dusk", "night": "Night", "night-red": "Night, red light"}
_MARGIN: Final = 12.0
_GAP: Final = 8
_STEPS: Final = 1000


class WipePicture(QWidget):
    """Two pictures of one size, one left and one right of a line. `wiped` tells the line's share of the width."""

    wiped = Signal(float)

    def __init__(self, project: Project, left: str, right: str) -> None:
        super().__init__()
        self._project = project
        self.left, self.right, self.light = left, right, "day"
        self.share = 0.5
        self._pixmaps: dict[tuple[str, str], QPixmap] = {}
        self._bounds = _frame(project)
        self.setMinimumSize(320, 180)
        self.setCursor(Qt.CursorShape.SplitHCursor)
        self.setAccessibleName("The two panels")

    def show_options(self, left: str, right: str, light: str) -> None:
        self.left, self.right, self.light = left, right, light
        self.update()

    def wipe_to(self, share: float) -> None:
        share = min(1.0, max(0.0, share))
        if share != self.share:
            self.share = share
            self.update()
            self.wiped.emit(share)

    def pixmap(self, option_id: str) -> QPixmap:
        """The option's picture in the light that is on, painted once for a size."""
        key = (option_id, self.light)
        if key not in self._pixmaps:
            self._pixmaps[key] = self._painted(self._project.option(option_id))
        return self._pixmaps[key]

    def _painted(self, option: Option) -> QPixmap:
        ratio = self.devicePixelRatioF()
        pixmap = QPixmap(self.size() * ratio)
        pixmap.setDevicePixelRatio(ratio)
        pixmap.fill(QColor(ground_colour(LIGHTS[self.light]).text))
        x1, y1, x2, y2 = self._bounds
        scale = min(self.width() / (x2 - x1), self.height() / (y2 - y1))
        painter = QPainter(pixmap)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.translate(self.width() / 2, self.height() / 2)
        painter.scale(scale, -scale)
        painter.translate(-(x1 + x2) / 2, -(y1 + y2) / 2)
        paint(painter, panel_view(layout(self._project, option), Look(lighting=LIGHTS[self.light])))
        painter.end()
        return pixmap

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: ARG002
        line = round(self.share * self.width())
        painter = QPainter(self)
        painter.setClipRect(0, 0, line, self.height())
        painter.drawPixmap(QPoint(0, 0), self.pixmap(self.left))
        painter.setClipRect(line, 0, self.width() - line, self.height())
        painter.drawPixmap(QPoint(0, 0), self.pixmap(self.right))
        painter.setClipping(False)
        if 0 < line < self.width():
            painter.fillRect(QRectF(line - 2, 0, 4, self.height()), QColor(0, 0, 0, 120))
            painter.fillRect(QRectF(line - 1, 0, 2, self.height()), QColor("#ffffff"))
        painter.end()

    def resizeEvent(self, event: QResizeEvent) -> None:
        self._pixmaps.clear()
        super().resizeEvent(event)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        self.wipe_to(event.position().x() / self.width())

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        if event.buttons() & Qt.MouseButton.LeftButton:
            self.wipe_to(event.position().x() / self.width())


def _frame(project: Project) -> Bounds:
    """One frame around every option, so that nothing jumps when another is shown."""
    boxes = [extent(panel_view(layout(project, option))) for option in project.all_options]
    x1, y1, x2, y2 = union(boxes)
    return x1 - _MARGIN, y1 - _MARGIN, x2 + _MARGIN, y2 + _MARGIN


class OwnerView(QWidget):
    """The whole screen; Escape closes it."""

    def __init__(self, project: Project, left: str, right: str, parent: QWidget | None = None) -> None:
        super().__init__(parent, Qt.WindowType.Window)
        self.setWindowTitle(f"{project.aircraft.registration}: the new panel")
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.picture = WipePicture(project, left, right)
        self.left = _option_box("Left", project, left)
        self.right = _option_box("Right", project, right)
        self.light = ChoiceBox()
        self.light.setAccessibleName("Light")
        for name, title in _LIGHT_NAMES.items():
            self.light.addItem(title, name)
        self.slider = QSlider(Qt.Orientation.Horizontal)
        self.slider.setRange(0, _STEPS)
        self.slider.setValue(_STEPS // 2)
        self.slider.setAccessibleName("Line between the left and the right panel")
        self.left_flaw, self.right_flaw = QLabel(), QLabel()
        self._flaws = OwnerFlaws(project)
        self._lay_out()
        self._connect()
        self._tell_flaws()
        explained(self, Dialog.OWNER_VIEW)
        self.slider.setFocus()

    def _lay_out(self) -> None:
        row = QHBoxLayout()
        close = QPushButton("&Close")
        close.clicked.connect(self.close)
        row.setSpacing(_GAP)
        for title, field in (("&Left", self.left), ("&Right", self.right), ("L&ight", self.light)):
            label = QLabel(title)
            label.setBuddy(field)
            row.addWidget(label)
            row.addWidget(field)
            row.addSpacing(2 * _GAP)
        row.addWidget(self.slider, 1)
        row.addSpacing(_GAP)
        row.addWidget(close)
        row.setContentsMargins(12, 6, 12, 6)
        words = QLabel(_CAUTION)
        words.setContentsMargins(12, 0, 12, 6)
        words.setWordWrap(True)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.picture, 1)
        column.addLayout(self._flaw_row())
        column.addLayout(row)
        column.addWidget(words)

    def _flaw_row(self) -> QHBoxLayout:
        """Below each side of the picture what stands against the option that is shown there."""
        row = QHBoxLayout()
        row.setContentsMargins(12, 6, 12, 0)
        for label, side in ((self.left_flaw, "left"), (self.right_flaw, "right")):
            label.setAccessibleName(f"Open errors of the {side} panel")
            label.setStyleSheet("font-weight: bold; color: #b3261e; background: #ffffff; padding: 2px 8px;")
            label.hide()
        row.addWidget(self.left_flaw)
        row.addStretch(1)
        row.addWidget(self.right_flaw)
        return row

    def _tell_flaws(self) -> None:
        for label, field in ((self.left_flaw, self.left), (self.right_flaw, self.right)):
            words = self._flaws.of(field.currentData())
            label.setText(words)
            label.setVisible(bool(words))

    def closeEvent(self, event: QCloseEvent) -> None:
        self.hide()
        self._flaws.stop()
        super().closeEvent(event)

    def _connect(self) -> None:
        self._flaws.found.connect(self._tell_flaws)
        for field in (self.left, self.right, self.light):
            field.currentIndexChanged.connect(self._show)
        self.slider.valueChanged.connect(lambda value: self.picture.wipe_to(value / _STEPS))
        self.picture.wiped.connect(lambda share: self.slider.setValue(round(share * _STEPS)))

    def _show(self) -> None:
        self.picture.show_options(self.left.currentData(), self.right.currentData(), self.light.currentData())
        self._tell_flaws()

    def swap(self) -> None:
        left, right = self.left.currentIndex(), self.right.currentIndex()
        self.left.setCurrentIndex(right)
        self.right.setCurrentIndex(left)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        step = {int(Qt.Key.Key_Left): -0.05, int(Qt.Key.Key_Right): 0.05}.get(event.key())
        if event.key() == Qt.Key.Key_Escape:
            self.close()
        elif event.key() == Qt.Key.Key_L:
            self.light.setCurrentIndex((self.light.currentIndex() + 1) % self.light.count())
        elif event.key() == Qt.Key.Key_F:
            self.swap()
        elif step is not None:
            self.picture.wipe_to(self.picture.share + step)
        else:
            super().keyPressEvent(event)


_CAUTION: Final = (
    "Generic instruments; a planning aid that approves nothing. The left and right arrow keys move the line, L changes"
    " the light, F swaps the sides, Escape closes."
)


def _option_box(name: str, project: Project, chosen: str) -> QComboBox:
    box = ChoiceBox()
    box.setAccessibleName(f"{name} panel")
    for option in project.all_options:
        box.addItem(option.name, option.id)
    box.setCurrentIndex(max(0, box.findData(chosen)))
    return box
