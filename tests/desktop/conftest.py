import os

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

import pytest
from PySide6.QtCore import QEvent, QSettings
from PySide6.QtWidgets import QApplication

from panelcad.desktop.dialogs.own.keep import keep_cutout
from panelcad.desktop.main_window import MainWindow
from panelcad.desktop.panes.library import CUTOUT_ROLE
from panelcad.desktop.settings import Settings
from panelcad.desktop.theme import LIGHT, dress
from panelcad.model.cutout import Bezel
from panelcad.model.plate import PlateState
from panelcad.model.shape import Circle
from panelcad.store.project_file import save
from tests import builders
from tests.desktop.hands import Hands
from tests.desktop.next_dialog import stop_waiting


@pytest.fixture(autouse=True)
def own_settings(tmp_path, monkeypatch, qapp):
    """Settings, recovery files and the user's library stay in the test's own folder."""
    for name in ("XDG_CONFIG_HOME", "XDG_DATA_HOME", "XDG_CACHE_HOME", "XDG_STATE_HOME"):
        monkeypatch.setenv(name, str(tmp_path / name.lower()))
    QSettings.setPath(QSettings.Format.IniFormat, QSettings.Scope.UserScope, str(tmp_path / "settings"))


@pytest.fixture(autouse=True)
def no_widget_is_left(qapp):
    """A test that leaves a window behind fails."""
    before = set(QApplication.topLevelWidgets())
    yield
    QApplication.processEvents()
    left = [widget for widget in QApplication.topLevelWidgets() if widget not in before and widget.isVisible()]
    for widget in left:
        widget.close()
    assert not left, f"left open: {left}"


@pytest.fixture(autouse=True)
def every_answer_was_asked_for(qapp):
    """A test that waits for a dialog which never opens fails."""
    yield
    never = stop_waiting()
    assert not never, f"never opened: {never}"


@pytest.fixture
def panel_file(tmp_path):
    """Three round instruments on a sheet of 600 × 300 mm, far from one another."""
    spots = (("one", -200.0, 50.0), ("two", 0.0, 50.0), ("three", 200.0, -50.0))
    plate = builders.sheet(state=PlateState.NEW, cuts=tuple(builders.cut(f"{name}-cut", x, y) for name, x, y in spots))
    items = tuple(builders.item(name, x, y, cut=f"{name}-cut") for name, x, y in spots)
    cutouts = (builders.round_cutout(bezel=Bezel(shape=Circle(diameter=84.0), source=builders.SOURCE)),)
    path = tmp_path / "panel.panel.json"
    save(builders.project(plate, items=items, cutouts=cutouts), path)
    return path


@pytest.fixture
def window(qtbot, panel_file, own_settings):
    """The window with the panel file open, 1280 × 800, without snapping to the grid."""
    settings = Settings()
    settings.shows_grid = False
    dress(QApplication.instance(), LIGHT)
    made = MainWindow(settings)
    made.resize(1280, 800)
    made.show()
    qtbot.waitExposed(made)
    made.open(panel_file)
    qtbot.waitUntil(lambda: made.bench.judge.report is not None)
    yield made
    made.bench.document.mark_saved(panel_file, made.bench.document.project)
    made.close()
    made.deleteLater()
    QApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)


@pytest.fixture
def hands(window):
    return Hands(window)


@pytest.fixture
def our_own(hands):
    """A cutout of our own, 'our-timer', is chosen in the library; the library's pane."""
    keep_cutout(builders.round_cutout(name="our-timer", family="own-mm"))
    hands.window.bench.read_catalogue_again()
    pane = hands.window.docks.dock("library").widget()
    rows = [pane.model.index(row) for row in range(pane.model.rowCount())]
    pane.list.setCurrentIndex(next(i for i in rows if i.data(CUTOUT_ROLE).name == "our-timer"))
    return pane
