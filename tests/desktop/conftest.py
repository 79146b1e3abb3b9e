import os

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

import pytest
from PySide6.QtCore import QSettings
from PySide6.QtWidgets import QApplication


@pytest.fixture(autouse=True)
def own_settings(tmp_path, monkeypatch, qapp):
    """Settings, recovery files and the user's library stay in the test's own folder."""
    for name in ("XDG_CONFIG_HOME", "XDG_DATA_HOME", "XDG_CACHE_HOME", "XDG_STATE_HOME"):
        monkeypatch.setenv(name, str(tmp_path / name.lower()))
    QSettings.setDefaultFormat(QSettings.Format.IniFormat)
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
