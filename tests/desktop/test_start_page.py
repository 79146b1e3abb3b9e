"""The first screen: new and open first, then what one worked on lately, then the samples."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QPushButton

from panelcad.store.project_file import load, save


@pytest.fixture
def page(window):
    window.show_start_page()
    QApplication.processEvents()
    return window.start_page


def buttons(page) -> list[QPushButton]:
    """From above, each row from the left."""
    found = [one for one in page.findChildren(QPushButton) if one.isVisible()]
    return sorted(found, key=lambda one: (one.y(), one.x()))


def test_what_one_worked_on_lately_comes_before_the_samples(page, panel_file) -> None:
    words = [button.text() for button in buttons(page)]
    assert words[:3] == ["New panel…", "Open a project…", panel_file.name]
    assert words[3:] == ["Touring four-seater", "Two-seat trainer", "Light twin", "Your first panel in ten minutes"]


def test_a_file_opened_lately_opens_by_a_click(page, window, panel_file) -> None:
    QTest.mouseClick(buttons(page)[2], Qt.MouseButton.LeftButton)
    assert window.shows_panel
    assert window.bench.document.path == panel_file


def test_long_names_make_the_page_no_wider(window, panel_file) -> None:
    long = panel_file.parent / ("a customer with a long name " * 4)
    long.mkdir()
    file = long / f"{'panel of a customer ' * 6}.panel.json"
    save(load(panel_file), file)
    window.settings.used_file(file)
    window.resize(960, 540)
    window.show_start_page()
    QApplication.processEvents()
    page = window.start_page
    assert page.widget().width() <= page.viewport().width()
    assert buttons(page)[2].toolTip() == str(file)
