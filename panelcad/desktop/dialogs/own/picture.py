"""The live picture of a cutout that is being described."""

from PySide6.QtCore import QSize
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from panelcad.desktop.theme import Theme
from panelcad.desktop.thumbnails import cutout_picture, thumbnail
from panelcad.model.cutout import Cutout

_SIZE = 260


class CutoutPicture(QWidget):
    def __init__(self, theme: Theme) -> None:
        super().__init__()
        self._theme = theme
        self._cutout: Cutout | None = None
        self.setMinimumSize(QSize(_SIZE, _SIZE))
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setAccessibleName("Picture of the cutout")

    def show_cutout(self, cutout: Cutout | None) -> None:
        """None clears it: what is described is no cutout yet."""
        self._cutout = cutout
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: ARG002
        if self._cutout is None:
            return
        side = min(self.width(), self.height())
        painter = QPainter(self)
        picture = thumbnail(cutout_picture(self._cutout, self._theme), QSize(side, side), self.devicePixelRatioF())
        painter.drawPixmap((self.width() - side) // 2, (self.height() - side) // 2, picture)
        painter.end()
