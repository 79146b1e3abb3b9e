"""PNG, SVG, PDF and the page show the same picture, each read by a program that shares nothing with its painter."""

import os

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from io import BytesIO

import numpy as np
import pytest
from PySide6.QtGui import QImage

from panelcad.drawing.appearance_light import DAY, NIGHT
from panelcad.drawing.display import Colour, Face, Group, Text
from panelcad.drawing.sheet import Sheet
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point
from panelcad.outputs.page.build import write_owner_page
from panelcad.outputs.pdf import Properties, write_pdf_to
from panelcad.outputs.png import png
from panelcad.outputs.preview import picture_of
from panelcad.outputs.svg_painter import svg
from tests.drawing.panels import small_panel
from tests.outputs.browser import chromium, resize
from tests.outputs.test_png import blocks, pixels

WIDTH = 900
WHITE = Colour(255, 255, 255)
MEAN, WORST = 3.0, 50.0
"""Means over blocks of 4 × 4 pixels, of 255: what painters may differ by in smoothing edges."""


@pytest.fixture(scope="module", params=[DAY, NIGHT], ids=["day", "night"])
def picture(request):
    project = small_panel()
    nodes, _ = picture_of(project, project.options[0], request.param)
    bounds = (-300.0, -135.0, 300.0, 165.0)
    rimmed = Text("RIM 8", Point(-280.0, 130.0), 20.0, Colour(0, 0, 0), face=Face.BOLD, rim=Colour(255, 140, 0))
    nodes = (*nodes, Group((rimmed,)))
    return nodes, bounds, blocks(pixels(QImage.fromData(png(nodes, bounds, WIDTH, WHITE))))


def _same(one: np.ndarray, other: np.ndarray) -> None:
    high, wide = (min(a, b) for a, b in zip(one.shape[:2], other.shape[:2], strict=True))
    assert abs(one.shape[0] - other.shape[0]) <= 1
    difference = np.abs(one[:high, :wide] - other[:high, :wide])
    assert difference.mean() < MEAN
    assert np.quantile(difference, 0.995) < WORST


def test_svg_in_a_browser(picture, tmp_path):
    nodes, bounds, wanted = picture
    (tmp_path / "picture.html").write_text(
        f"<!doctype html><body style='margin:0;background:#fff'>{svg(nodes, bounds, 'Panel', WIDTH)}</body>",
        encoding="utf-8",
    )
    with chromium(tmp_path / "profile", WIDTH, 600) as driver:
        resize(driver, WIDTH, 600)
        driver.get((tmp_path / "picture.html").as_uri())
        seen = driver.find_element("tag name", "svg").screenshot_as_png

    _same(blocks(pixels(QImage.fromData(seen))), wanted)


def test_pdf_in_another_reader(picture):
    from pypdfium2 import PdfDocument

    nodes, (x1, y1, x2, y2), wanted = picture
    stream = BytesIO()
    placed = Group(nodes, placement=Placement(-x1, -y1))
    write_pdf_to(stream, [Sheet(x2 - x1, y2 - y1, (placed,), "Panel")], Properties("Panel"))
    page = PdfDocument(stream.getvalue())[0]
    seen = np.asarray(page.render(scale=WIDTH / page.get_width()).to_pil().convert("RGB")).astype(float)

    _same(blocks(seen), wanted)


def test_page_in_a_browser(tmp_path):
    """The page's picture by day and by night, on its own ground, without the line and the words that lie over it."""
    project = small_panel()
    option = project.options[0]
    write_owner_page(project, tmp_path / "page.html")
    with chromium(tmp_path / "profile", 1000, 900) as driver:
        resize(driver, 1000, 900)
        driver.get((tmp_path / "page.html").as_uri())
        driver.execute_script(
            "document.getElementById('wipe').value = 0; document.getElementById('left').value = 'new';"
        )
        driver.execute_script("document.getElementById('left').dispatchEvent(new Event('change'))")
        driver.execute_script(
            "for (const e of document.querySelectorAll('#edge, .stage .flaw')) e.style.display = 'none'"
        )
        x, y, wide, high = map(
            float, driver.find_element("css selector", ".panel svg").get_dom_attribute("viewBox").split()
        )
        for light, button in ((DAY, "day"), (NIGHT, "night")):
            driver.find_element("id", button).click()
            seen = QImage.fromData(driver.find_element("id", "stage").screenshot_as_png)
            nodes, _ = picture_of(project, option, light)
            ground = Colour.parse({"day": "#8d9297", "night": "#050506"}[button])
            wanted = png(nodes, (x, -y - high, x + wide, -y), seen.width(), ground)

            _same(blocks(pixels(seen)), blocks(pixels(QImage.fromData(wanted))))
