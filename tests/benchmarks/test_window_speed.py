"""The window against bare Qt in the same run: start to the first painted window, and one step of a drag.

Start is measured in seconds of processor time of a fresh interpreter, the best of several, since a loaded machine makes
wall clocks useless. A drag step is moving, checking and repainting, run to the end; the same step of a bare
QGraphicsScene item is a move and a repaint.
"""

import os
import statistics
import subprocess
import sys
from pathlib import Path
from time import perf_counter

import pytest
from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QBrush, QColor
from PySide6.QtWidgets import QApplication, QGraphicsRectItem, QGraphicsScene, QGraphicsView

from panelcad.desktop.main_window import MainWindow
from panelcad.desktop.settings import Settings
from panelcad.model.cutout import Bezel
from panelcad.model.plate import PlateState
from panelcad.model.shape import Circle
from panelcad.store.project_file import save
from tests import builders
from tests.desktop.conftest import no_widget_is_left, own_settings  # noqa: F401 - fixtures
from tests.desktop.hands import Hands

ROOT = Path(__file__).parents[2]
BARE = """
import os, time
from PySide6.QtWidgets import QApplication, QMainWindow
class Window(QMainWindow):
    def paintEvent(self, event):
        print(time.process_time(), flush=True)
        os._exit(0)
app = QApplication([])
window = Window()
window.resize(1280, 800)
window.show()
app.exec()
"""
OURS = """
import os, time
from panelcad.desktop import start
from panelcad.desktop.main_window import MainWindow
def painted(self, event):
    print(time.process_time(), flush=True)
    os._exit(0)
MainWindow.paintEvent = painted
start.run([])
"""
STEPS = 200
FRAME_MS = 1000 / 60


def _start_seconds(code: str, home: Path) -> float:
    environment = dict(os.environ, QT_QPA_PLATFORM="offscreen", XDG_CONFIG_HOME=str(home), XDG_DATA_HOME=str(home))
    done = subprocess.run(
        [sys.executable, "-c", code], env=environment, cwd=ROOT, capture_output=True, text=True, check=True
    )
    return float(done.stdout.split()[-1])


def test_start_to_first_painted_window(benchmark, tmp_path) -> None:
    rounds = 5 if benchmark.enabled else 1
    bare = min(_start_seconds(BARE, tmp_path) for _ in range(rounds))
    ours = min(_start_seconds(OURS, tmp_path) for _ in range(rounds))
    benchmark.pedantic(lambda: None, rounds=1)
    benchmark.extra_info["ratio to a bare Qt window"] = round(ours / bare, 2)
    if benchmark.enabled:
        print(f"\n{ours * 1000:.0f} ms, {ours / bare:.1f} times a bare Qt window")  # noqa: T201 - the figure asked for
    else:
        pytest.skip("speed is measured with --benchmark-enable; both windows were painted")


def _panel(count: int, path: Path) -> None:
    """So many gauges in rows, 100 mm apart."""
    columns = 20
    spots = [(f"gauge-{i}", (i % columns) * 100.0 + 60.0, (i // columns) * 100.0 + 60.0) for i in range(count)]
    width, height = columns * 100.0 + 20.0, (count // columns + 1) * 100.0 + 20.0
    plate = builders.sheet(
        width * 2, height * 2, state=PlateState.NEW, cuts=tuple(builders.cut(f"{n}-cut", x, y) for n, x, y in spots)
    )
    items = tuple(builders.item(name, x, y, cut=f"{name}-cut") for name, x, y in spots)
    cutouts = (builders.round_cutout(bezel=Bezel(shape=Circle(diameter=84.0), source=builders.SOURCE)),)
    save(builders.project(plate, items=items, cutouts=cutouts), path)


@pytest.mark.usefixtures("own_settings")
@pytest.mark.parametrize("count", [60, 600])
def test_a_step_of_a_drag(benchmark, qtbot, tmp_path, count) -> None:
    window = MainWindow(Settings())
    window.resize(1280, 800)
    window.show()
    path = tmp_path / "many.panel.json"
    _panel(count, path)
    window.open(path)
    window.bench.judge.check_now()
    steps = STEPS if benchmark.enabled else 3
    picture, whole = _drag(window, steps)
    bare = _bare_drag(steps, count)
    benchmark.pedantic(lambda: None, rounds=1)
    words = (
        f"{count} items: picture {_figures(picture)}, with findings {_figures(whole)}, "
        f"{statistics.median(whole) / statistics.median(bare):.0f} times a bare item's step"
    )
    benchmark.extra_info["step"] = words
    window.bench.document.mark_saved(path, window.bench.document.project)
    window.close()
    window.deleteLater()
    if benchmark.enabled:
        print(f"\n{words}")  # noqa: T201 - the figures asked for
    else:
        pytest.skip("speed is measured with --benchmark-enable")


def _figures(times: list[float]) -> str:
    return f"median {statistics.median(times):.1f} ms, worst {max(times):.1f} ms"


def _drag(window: MainWindow, steps: int) -> tuple[list[float], list[float]]:
    """Milliseconds of each step until its picture is painted, and until its findings are shown."""
    hands = Hands(window)
    item = window.bench.document.option.items[0]
    hands.press(item.x, item.y)
    hands.move(item.x + 8, item.y)
    hands.move(item.x + 12, item.y)
    window.bench.judge.check_now()
    picture, whole = [], []
    for i in range(steps):
        start = perf_counter()
        hands.move(item.x + 12 + (i % 40) * 2.0, item.y + (i % 25) * 1.5)
        window.bench.view.viewport().repaint()
        picture.append((perf_counter() - start) * 1000)
        window.bench.judge.check_now()
        QApplication.processEvents()
        whole.append((perf_counter() - start) * 1000)
    hands.release(item.x, item.y)
    return picture, whole


def _bare_drag(steps: int, count: int) -> list[float]:
    scene = QGraphicsScene()
    for i in range(count):
        scene.addRect(QRectF((i % 20) * 100.0, (i // 20) * 100.0, 80.0, 80.0), brush=QBrush(QColor("#888888")))
    moving = QGraphicsRectItem(0, 0, 80, 80)
    scene.addItem(moving)
    view = QGraphicsView(scene)
    view.resize(1280, 800)
    view.show()
    times = []
    for i in range(steps):
        start = perf_counter()
        moving.setPos(QPointF((i % 40) * 2.0, (i % 25) * 1.5))
        view.viewport().repaint()
        QApplication.processEvents()
        times.append((perf_counter() - start) * 1000)
    view.close()
    return times
