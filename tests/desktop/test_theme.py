"""Contrast as WCAG 2.2 reckons it (success criterion 1.4.3, relative luminance): at least 4.5 : 1 for words."""

import pytest
from PySide6.QtCore import QPoint

from panelcad.desktop.theme import DARK, LIGHT

PAIRS = [
    ("ink", "ground"),
    ("ink", "raised"),
    ("ink", "field"),
    ("ink", "hovered"),
    ("ink", "chosen"),
    ("faint", "ground"),
    ("faint", "raised"),
    ("faint", "field"),
    ("faint", "hovered"),
    ("faint", "chosen"),
    ("accent", "raised"),
    ("accent", "ground"),
    ("accent", "hovered"),
    ("on_accent", "accent"),
    ("caution_ink", "caution_ground"),
    ("wrong", "ground"),
    ("wrong", "raised"),
    ("wrong", "field"),
    ("guide", "label_ground"),
]


def luminance(colour: str) -> float:
    parts = [int(colour[i : i + 2], 16) / 255 for i in (1, 3, 5)]
    linear = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in parts]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def contrast(a: str, b: str) -> float:
    light, dark = sorted((luminance(a), luminance(b)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def test_black_on_white_is_21_to_1() -> None:
    assert contrast("#000000", "#ffffff") == pytest.approx(21.0)


@pytest.mark.parametrize("theme", [LIGHT, DARK], ids=["light", "dark"])
@pytest.mark.parametrize(("ink", "ground"), PAIRS)
def test_words_stand_out_from_their_ground(theme, ink, ground) -> None:
    assert contrast(getattr(theme, ink), getattr(theme, ground)) >= 4.5


@pytest.mark.parametrize("theme", [LIGHT, DARK], ids=["light", "dark"])
@pytest.mark.parametrize("line", ["field_line", "selection", "guide", "wrong"])
def test_edges_of_fields_and_lines_over_the_canvas_stand_out(theme, line) -> None:
    """Success criterion 1.4.11: at least 3 : 1 for what is not words."""
    for ground in (theme.ground, theme.field, theme.view.palette.background.text):
        assert contrast(getattr(theme, line), ground) >= 3.0


@pytest.mark.parametrize("theme", [LIGHT, DARK], ids=["light", "dark"])
@pytest.mark.parametrize("severity", ["error", "warning", "advice", "accepted"])
def test_signs_stand_out(theme, severity) -> None:
    assert contrast(theme.severity[severity], theme.on_severity) >= 4.5
    assert contrast(theme.severity[severity], theme.view.palette.metal.text) >= 3.0


@pytest.mark.parametrize("size", [(1280, 800), (1000, 640)])
def test_nothing_of_the_tool_bar_is_hidden_in_a_small_window(window, qtbot, size) -> None:
    window.resize(*size)
    qtbot.wait(1)
    bar = window.menus.bar
    shown = [bar.widgetForAction(action) for action in bar.actions() if action.isVisible() and action.text()]
    right = bar.mapTo(window, QPoint(bar.width(), 0)).x()
    assert all(widget.mapTo(window, QPoint(widget.width(), 0)).x() <= right for widget in shown if widget.isVisible())
