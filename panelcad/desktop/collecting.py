"""Python's search for garbage, kept out of the way of somebody who drags.

Python now and then looks through every object it knows for rings that nothing uses any more. With a large panel open
that takes as long as several pictures. What an open project and its window consist of lives long, so it is set aside
once it stands, and the search goes through what is made from then on, seldom.
"""

import gc
from typing import TYPE_CHECKING, Final

from PySide6.QtCore import QObject, Qt, QTimer
from PySide6.QtGui import QGuiApplication

if TYPE_CHECKING:
    from panelcad.desktop.document import Document

_YOUNG: Final = 50_000
"""How many new objects start a search among the young ones; Python's own 700 are a few steps of a drag."""
_SETTLED_MS: Final = 1000
"""By then the first check of a project that was opened is done."""


class Collecting(QObject):
    """Sets aside what lives long, a little after a project is opened, as long as `parent` lives: its window."""

    def __init__(self, document: "Document", parent: QObject) -> None:
        super().__init__(parent)
        self._document = document
        self._settled = QTimer(self, singleShot=True, interval=_SETTLED_MS)
        self._settled.timeout.connect(self._when_at_rest)
        document.replaced.connect(self._settled.start)

    def _when_at_rest(self) -> None:
        """Nobody who drags waits for it, in this window or in another."""
        if self._document.current_gesture is None and QGuiApplication.mouseButtons() == Qt.MouseButton.NoButton:
            set_aside()
        else:
            self._settled.start()


def make_rare() -> None:
    """Search seldom from now on."""
    gc.set_threshold(_YOUNG, *gc.get_threshold()[1:])


def set_aside() -> None:
    """Clear up once, also among what was set aside before, and look no more at what is left."""
    gc.unfreeze()
    gc.collect()
    gc.freeze()
