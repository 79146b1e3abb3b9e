"""PNG at any size, and pictures that look as they did when somebody approved them."""

import os
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

import numpy as np
import pytest
from PySide6.QtGui import QImage

from panelcad.drawing.appearance_light import DAY, NIGHT
from panelcad.errors import UnusableInput
from panelcad.outputs.png import png
from panelcad.outputs.preview import picture_of
from tests.drawing.panels import small_panel

APPROVED = Path(__file__).parent / "approved"
WIDTH = 280


def pixels(image: QImage) -> np.ndarray:
    """Red, green and blue of each pixel, 0 to 255; what is transparent counts as white."""
    flat = QImage(image.size(), QImage.Format.Format_RGB888)
    flat.fill(0xFFFFFF)
    from PySide6.QtGui import QPainter

    painter = QPainter(flat)
    painter.drawImage(0, 0, image)
    painter.end()
    rows = np.frombuffer(flat.constBits(), np.uint8).reshape(flat.height(), flat.bytesPerLine())
    return rows[:, : 3 * flat.width()].reshape(flat.height(), flat.width(), 3).astype(float)


def blocks(picture: np.ndarray, size: int = 4) -> np.ndarray:
    """Means over blocks, so that the rim of a line half a pixel off does not count."""
    high, wide = (n // size * size for n in picture.shape[:2])
    return picture[:high, :wide].reshape(high // size, size, wide // size, size, 3).mean(axis=(1, 3))


def _painted(lighting):
    project = small_panel()
    nodes, bounds = picture_of(project, project.options[0], lighting)
    return png(nodes, bounds, WIDTH)


@pytest.mark.parametrize(("name", "lighting"), [("day", DAY), ("night", NIGHT)])
def test_picture_is_the_approved_one(name, lighting, tmp_path):
    """To approve a change: look at the picture that the failure names, then put it in place of the approved one."""
    content = _painted(lighting)
    now = blocks(pixels(QImage.fromData(content)))
    approved = blocks(pixels(QImage(str(APPROVED / f"panel-{name}.png"))))
    made = tmp_path / f"panel-{name}.png"
    made.write_bytes(content)

    assert now.shape == approved.shape, made
    difference = np.abs(now - approved)
    assert difference.mean() < 2.5, made
    assert np.quantile(difference, 0.995) < 45, made


@pytest.mark.parametrize("width", [64, 1000])
def test_any_size(width):
    project = small_panel()
    nodes, bounds = picture_of(project, project.options[0])
    image = QImage.fromData(png(nodes, bounds, width))

    assert image.width() == width
    assert image.height() == pytest.approx(width * (bounds[3] - bounds[1]) / (bounds[2] - bounds[0]), abs=1)


@pytest.mark.parametrize("width", [0, -5, 20_001])
def test_impossible_sizes_get_a_sentence(width):
    with pytest.raises(UnusableInput, match="pixels"):
        png((), (0.0, 0.0, 100.0, 50.0), width)
