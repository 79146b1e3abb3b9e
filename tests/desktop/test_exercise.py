"""The measure of the editor: a touring panel from an empty outline, by mouse and keys alone, in under ten minutes."""

import pytest
from PySide6.QtWidgets import QApplication

from panelcad.desktop.main_window import MainWindow
from panelcad.desktop.settings import Settings
from panelcad.desktop.theme import LIGHT, dress
from panelcad.model.finding import Severity
from panelcad.store.project_file import load
from tests.desktop.hands import Hands
from tests.desktop.klm import Operator

TEN_MINUTES = 600.0
INCH = 25.4


@pytest.fixture
def operator(qtbot):
    dress(QApplication.instance(), LIGHT)
    window = MainWindow(Settings())
    window.resize(1280, 800)
    window.show()
    qtbot.waitExposed(window)
    yield Operator(Hands(window))
    window.bench.document.saved_project = window.bench.document.project
    window.close()
    window.deleteLater()


def begin(op: Operator) -> None:
    op.think()

    def fill() -> None:
        op.keys("Ctrl+A")
        op.write("Tourer")
        op.keys("Tab")
        op.write("ZZ-EMPTY")
        op.keys("Return")

    op.in_dialog(lambda: op.keys("Ctrl+N"), fill)


def outline(op: Operator) -> None:
    """A curved top, 40 in wide, 8 in at the sides, 13 in in the middle."""
    op.think()

    def fill() -> None:
        op.keys("Down")
        for figure in ("40", "8", "13", "1 1/2"):
            op.keys("Tab")
            op.write(figure)
        op.keys("Return")

    op.in_dialog(lambda: op.keys("Ctrl+M"), fill)


def basic_t(op: Operator) -> None:
    op.think()

    def fill() -> None:
        op.keys("Tab", times=7)
        op.write("-11.4")
        op.keys("Tab")
        op.write("7.4")
        op.keys("Return")

    op.in_dialog(lambda: op.keys("Ctrl+T"), fill)


def stack(op: Operator) -> None:
    op.think()

    def fill() -> None:
        for words in ("Audio panel, rack", "Large navigator, rack", "COM radio, rack", "Transponder, rack"):
            op.think()
            op.write(words)
            op.keys("Return")
        op.keys("Tab", times=5)
        op.write("2")
        op.keys("Tab")
        op.write("11.3")
        op.keys("Return")

    op.in_dialog(lambda: op.keys("Ctrl+Shift+T"), fill)


def row(op: Operator, words: str, figures: tuple[str, ...]) -> None:
    op.think()

    def fill() -> None:
        op.write(words)
        for figure in figures:
            op.keys("Tab")
            op.write(figure)
        op.keys("Return")

    op.in_dialog(lambda: op.keys("Ctrl+Shift+R"), fill)


def from_library(op: Operator, words: str, *places: tuple[float, float]) -> None:
    """Search, take in hand, put down with a click each."""
    op.think()
    op.keys("Ctrl+F")
    op.write(words)
    op.keys("Return", times=2)
    for x, y in places:
        op.think()
        op.click(x * INCH, y * INCH)
    op.keys("Escape")


def save(op: Operator, path) -> None:
    op.think()

    def fill() -> None:
        op.keys("Ctrl+A")
        op.write(str(path))
        op.keys("Return")

    op.in_dialog(lambda: op.keys("Ctrl+S"), fill)


def test_a_touring_panel_takes_less_than_ten_minutes(operator, tmp_path) -> None:
    path = tmp_path / "tourer.panel.json"
    begin(operator)
    outline(operator)
    basic_t(operator)
    stack(operator)
    from_library(operator, "engine display portrait", (9.5, 7.5))
    row(operator, "Toggle switch", ("4", "1", "", "-15.5", "1.2"))
    row(operator, "Push-pull breaker, 7/16 in", ("5", "0.9", "", "8", "1.2"))
    from_library(operator, "charging outlet", (15.5, 5.5))
    save(operator, path)

    project = load(path)
    option = project.options[0]
    plate = option.plates[0]
    assert project == operator.hands.window.bench.document.project
    assert 14 <= len(plate.cuts) <= 20
    judge = operator.hands.window.bench.judge
    judge.check_now()
    said = [finding for finding in judge.report.findings if finding.severity is Severity.ERROR]
    assert not said, [(finding.problem, finding.items, finding.measured, finding.required) for finding in said]
    x1, y1, x2, y2 = plate.outline.contour().bounds
    left, bottom, right, top = operator.hands.view.seen()
    assert left < x1
    assert bottom < y1
    assert right > x2
    assert top > y2
    assert operator.seconds < TEN_MINUTES, f"{operator.seconds:.0f} s"
