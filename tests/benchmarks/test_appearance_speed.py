"""Repainting the appearance view of the largest sample on 1920 × 1080, after the first time, against plain pixmaps.

The other side paints as many pixmaps of the same sizes in the same places with QPainter and nothing else.
"""

import os

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from time import process_time

import pytest
from PySide6.QtCore import QRectF
from PySide6.QtGui import QColor, QImage, QPainter, QPixmap

from panelcad.desktop.canvas.scene import PanelScene
from panelcad.desktop.canvas.view import PanelView
from panelcad.desktop.theme import LIGHT
from panelcad.drawing.appearance import Look, appearance_view
from panelcad.library.samples import sample_file
from panelcad.model.layout import layout
from panelcad.store.project_file import load

FRAME = 1 / 60
MOST = 4.0
SIZE = (1920, 1080)


@pytest.fixture
def view(qapp):
    project = load(sample_file("tourer"))
    laid = layout(project, project.options[0])
    scene = PanelScene(LIGHT)
    scene.keeps_pixmaps = True
    scene.show(appearance_view(laid, laid.option.plates[0].id, Look()))
    shown = PanelView(scene, LIGHT)
    shown.resize(*SIZE)
    shown.show()
    shown.show_all()
    yield shown
    shown.close()


def _repainted(view: PanelView) -> None:
    view.viewport().repaint()


def _seconds(work, rounds: int) -> float:
    """The quickest of some rounds."""
    times = []
    for _ in range(rounds):
        start = process_time()
        work()
        times.append(process_time() - start)
    return min(times)


def _pixmaps(view: PanelView) -> list[tuple[QRectF, QPixmap]]:
    """For each item a pixmap as large as it is on the screen, filled with one translucent colour."""
    found = []
    for item in view.panel_scene.groups:
        place = QRectF(view.mapFromScene(item.box).boundingRect())
        pixmap = QPixmap(max(1, round(place.width())), max(1, round(place.height())))
        pixmap.fill(QColor(80, 90, 100, 200))
        found.append((place, pixmap))
    return found


def test_repaint_takes_about_as_long_as_plain_pixmaps(view, benchmark):
    rounds = 30 if benchmark.enabled else 2
    _repainted(view)
    pixmaps = _pixmaps(view)
    canvas = QImage(*SIZE, QImage.Format.Format_ARGB32_Premultiplied)

    def plain() -> None:
        painter = QPainter(canvas)
        painter.fillRect(canvas.rect(), QColor(200, 200, 200))
        for place, pixmap in pixmaps:
            painter.drawPixmap(place.topLeft(), pixmap)
        painter.end()

    other, ours = _seconds(plain, rounds), _seconds(lambda: _repainted(view), rounds)
    benchmark.pedantic(lambda: _repainted(view), rounds=1)
    benchmark.extra_info["ms"] = round(ours * 1000, 2)
    benchmark.extra_info["ratio to plain pixmaps"] = round(ours / other, 2)

    assert len(pixmaps) > 60
    if not benchmark.enabled:
        pytest.skip("speed is measured with --benchmark-enable")
    print(f"\n{len(pixmaps)} items: {ours * 1000:.1f} ms, {ours / other:.2f} times plain pixmaps")  # noqa: T201
    assert ours <= FRAME
    assert ours / other <= MOST


def test_drag_repaints_within_a_frame(view, benchmark):
    """One instrument among all is moved by a millimetre, and the canvas repaints."""
    _repainted(view)
    moved = {"n": 0}

    def step() -> None:
        moved["n"] += 1
        view.panel_scene.shift({"altimeter"}, moved["n"] % 40, 0.0)
        _repainted(view)

    seconds = _seconds(step, 30 if benchmark.enabled else 2)
    benchmark.pedantic(step, rounds=1)
    benchmark.extra_info["ms"] = round(seconds * 1000, 2)

    assert moved["n"] >= 2
    if not benchmark.enabled:
        pytest.skip("speed is measured with --benchmark-enable")
    assert seconds <= FRAME
