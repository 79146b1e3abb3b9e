"""Opens the window.

What takes long to import is imported when it is needed: Python's search for garbage is made rare before.
"""

import sys
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QApplication

from panelcad.desktop.collecting import Collecting, make_rare

if TYPE_CHECKING:
    from panelcad.desktop.main_window import MainWindow


def run(files: Sequence[Path | str] = ()) -> int:
    """The program's exit status, once its windows are closed. Each file opens in a window of its own."""
    make_rare()
    app = application()
    windows = [open_window(Path(file)) for file in files] or [open_window(None)]
    status = app.exec()
    windows.clear()
    return status


def application() -> QApplication:
    """The one Qt application, dressed in the chosen theme."""
    from panelcad.desktop.settings import Settings  # noqa: PLC0415 - see above
    from panelcad.desktop.theme import dress, theme_for  # noqa: PLC0415

    app = QApplication.instance()
    if not isinstance(app, QApplication):
        app = QApplication(sys.argv[:1])
    app.setApplicationName("panelcad")
    app.setApplicationDisplayName("panelcad")
    app.setDesktopFileName("panelcad")
    dress(app, theme_for(Settings().theme))
    return app


def open_window(file: Path | None) -> "MainWindow":
    """A window; the file is opened once it is painted."""
    from panelcad.desktop.main_window import MainWindow  # noqa: PLC0415 - see above
    from panelcad.desktop.settings import Settings  # noqa: PLC0415

    window = MainWindow(Settings())
    Collecting(window.bench.document, window)
    window.show()
    QTimer.singleShot(0, window, lambda: _begin(window, file))
    return window


def _begin(window: "MainWindow", file: Path | None) -> None:
    """Work that a crash left behind comes before what its file holds."""
    if not window.safekeeping.offer_recovered(file) and file is not None:
        window.open(file)
