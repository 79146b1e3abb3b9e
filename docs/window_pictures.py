"""Makes the pictures of the window: `python docs/window_pictures.py` from the clone's root, without a screen."""

import os
import sys
import tempfile
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from PySide6.QtCore import QSettings
from PySide6.QtWidgets import QApplication

from panelcad.desktop.main_window import MainWindow
from panelcad.desktop.settings import Settings
from panelcad.desktop.start import application
from panelcad.desktop.theme import ThemeChoice, dress, theme_for
from panelcad.desktop.views import VIEWS
from panelcad.library.samples import sample_file
from panelcad.store.project_file import load, save

FOLDER = Path(__file__).parent / "pictures"
SIZE = (1440, 900)
NAMES = {"look-day": "appearance"}


def main() -> None:
    with tempfile.TemporaryDirectory() as scratch:
        file = Path(scratch) / "tourer.panel.json"
        save(load(sample_file("tourer")), file)
        app = application()
        for choice in (ThemeChoice.LIGHT, ThemeChoice.DARK):
            QSettings.setPath(QSettings.Format.IniFormat, QSettings.Scope.UserScope, f"{scratch}/{choice.value}")
            take_pictures(app, file, choice)


def take_pictures(app: QApplication, file: Path, choice: ThemeChoice) -> None:
    settings = Settings()
    settings.theme = choice
    dress(app, theme_for(choice))
    window = MainWindow(settings)
    window.resize(*SIZE)
    window.show()
    settle(app)
    picture(window, f"start-{choice.value}")
    window.open(file)
    window.bench.document.look_at("glass")
    while window.bench.judge.report is None:
        settle(app)
    for view in VIEWS:
        if "-" in view.id and view.id not in NAMES:
            continue
        window.bench.stage.look_from(view.id)
        window.bench.view.show_all()
        settle(app)
        picture(window, f"{NAMES.get(view.id, view.id)}-{choice.value}")
    window.close()


def settle(app: QApplication) -> None:
    for _ in range(20):
        app.processEvents()


def picture(window: MainWindow, name: str) -> None:
    target = FOLDER / f"window-{name}.png"
    if not window.grab().save(str(target)):
        sys.exit(f"{target}: it cannot be written")


if __name__ == "__main__":
    main()
