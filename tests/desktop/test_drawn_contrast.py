"""Words drawn on the canvas, held against the very ground they stand on: at least 4.5 : 1 (WCAG 2.2, 1.4.3).

The view is painted without its words; where a word's letters would be, the colour below is read. Views that imitate
what is seen, by day and by night, are pictures, which the criterion leaves out.
"""

from dataclasses import replace

import numpy as np
import pytest
from PySide6.QtGui import QColor, QImage, QPainter

from panelcad.desktop.theme import DARK, LIGHT
from panelcad.desktop.views import view_kind
from panelcad.drawing.display import Colour, Group, Text, walk
from panelcad.drawing.layers import Layer
from panelcad.drawing.views.section import SectionLine, section_view
from panelcad.geometry.across import Across
from panelcad.library.samples import sample_file
from panelcad.model.layout import layout
from panelcad.outputs.qt_painter import paint
from panelcad.store.project_file import load
from tests.desktop.test_theme import contrast

PIXELS_PER_MM = 3.0
BOX = (-700.0, -100.0, 700.0, 500.0)
CROSSED = 0.3
"""The part of its letters that lines may cross: a number is larger than a small hole, and stands over its edge."""


@pytest.fixture(scope="module")
def laid():
    project = load(sample_file("twin"))
    return layout(project, project.options[0])


def drawn(view: str, laid, theme) -> tuple[Group, ...]:
    if view == "section":
        return section_view(laid, laid.option.plates[0].id, SectionLine(Across.VERTICAL, 0.0), theme.view)
    groups = view_kind(view).draw(laid, laid.option.plates[0].id, theme)
    return tuple(group for group in groups if group.layer != Layer.HIDDEN)  # what lies under it is meant to be hidden


def only(node, keep, ids):
    """The node with what is kept of it; each text in a colour that is its number in `ids`, where there are any."""
    if isinstance(node, Group):
        nodes = (only(one, keep, ids) for one in node.nodes if isinstance(one, Group) or keep(one))
        return replace(node, nodes=tuple(nodes))
    return replace(node, colour=_numbered(ids[node])) if ids else node


def painted(groups, keep, ground: str, ids=None) -> np.ndarray:
    """The pixels of what is kept, as rows of (red, green, blue); without smooth edges where each is numbered."""
    x1, y1, x2, y2 = BOX
    size = round((x2 - x1) * PIXELS_PER_MM), round((y2 - y1) * PIXELS_PER_MM)
    image = QImage(*size, QImage.Format.Format_RGB32)
    image.fill(QColor(ground))
    painter = QPainter(image)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, not ids)
    painter.scale(PIXELS_PER_MM, -PIXELS_PER_MM)
    painter.translate(-x1, -y2)
    paint(painter, tuple(only(group, keep, ids) for group in groups))
    painter.end()
    return np.frombuffer(image.constBits(), np.uint8).reshape(image.height(), image.width(), 4)[..., 2::-1].copy()


def is_text(node) -> bool:
    return isinstance(node, Text)


def faint_words(groups, theme) -> list[str]:
    """A sentence for each text that does not stand out enough from what lies below it."""
    ids = {text: number for number, text in enumerate(dict.fromkeys(filter(is_text, walk(groups))), 1)}
    ground = theme.view.palette.background.text
    below = painted(groups, lambda node: not is_text(node), ground)
    numbers = painted(groups, is_text, "#000000", ids).astype(np.uint32) @ np.array([65536, 256, 1], np.uint32)
    faults = []
    for text, number in ids.items():
        grounds = below[numbers == number]
        if len(grounds):
            share = (ratios(np.array(_rgb(text.colour)), grounds) < 4.5).mean()
            faults += [f"'{text.text}' on {share:.0%} of its letters"] if share > CROSSED else []
    return faults


def ratios(ink: np.ndarray, grounds: np.ndarray) -> np.ndarray:
    """As `contrast` in the theme's tests, of one ink on many grounds."""
    a, b = luminance(ink), luminance(grounds)
    return (np.maximum(a, b) + 0.05) / (np.minimum(a, b) + 0.05)


def luminance(colours: np.ndarray) -> np.ndarray:
    parts = colours / 255.0
    linear = np.where(parts <= 0.04045, parts / 12.92, ((parts + 0.055) / 1.055) ** 2.4)
    return linear @ np.array([0.2126, 0.7152, 0.0722])


def _rgb(colour: Colour) -> tuple[int, int, int]:
    return colour.red, colour.green, colour.blue


def _numbered(number: int) -> Colour:
    return Colour(number >> 16, number >> 8 & 255, number & 255)


@pytest.mark.parametrize("theme", [LIGHT, DARK], ids=["light", "dark"])
@pytest.mark.parametrize("view", ["front", "behind", "pilot", "section"])
def test_words_on_the_canvas_stand_out_from_what_they_stand_on(qapp, laid, view, theme) -> None:
    assert faint_words(drawn(view, laid, theme), theme) == []


def test_words_too_faint_for_their_ground_are_found(qapp, laid) -> None:
    """The dark theme's words on the light theme's ground."""
    words = tuple(only(group, is_text, None) for group in drawn("front", laid, DARK))
    assert faint_words(words, LIGHT)


def test_the_ratio_is_that_of_the_theme() -> None:
    one = ratios(np.array((0x56, 0x61, 0x6D)), np.array([(0xF3, 0xF4, 0xF6)]))
    assert one[0] == pytest.approx(contrast("#56616d", "#f3f4f6"))
