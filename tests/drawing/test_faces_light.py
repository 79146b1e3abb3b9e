"""Light changes colours and nothing else; legends stay readable."""

import pytest

from panelcad.drawing.appearance import Look, appearance_view, unlit_view
from panelcad.drawing.appearance_light import DAY, DUSK, NIGHT, NIGHT_RED, Flood, Hour, Lighting, in_light, lit
from panelcad.drawing.display import Colour, Group, Path, Text, walk
from panelcad.drawing.faces.inks import DIAL, GLASS, LEGEND, SCREEN, WHITE
from panelcad.model.layout import layout
from tests.drawing.panels import small_panel

ENOUGH = 4.5
"""Contrast that WCAG 2.2 asks of small text (success criterion 1.4.3)."""


def _contrast(one: Colour, other: Colour) -> float:
    """WCAG 2.2, definition of contrast ratio."""
    a, b = sorted((_luminance(one), _luminance(other)), reverse=True)
    return (a + 0.05) / (b + 0.05)


def _luminance(colour: Colour) -> float:
    def part(value: int) -> float:
        share = value / 255
        return share / 12.92 if share <= 0.04045 else ((share + 0.055) / 1.055) ** 2.4

    return 0.2126 * part(colour.red) + 0.7152 * part(colour.green) + 0.0722 * part(colour.blue)


def _view(lighting: Lighting) -> tuple[Group, ...]:
    project = small_panel()
    return appearance_view(layout(project, project.options[0]), "main", Look(lighting=lighting))


def _outlines(groups: tuple[Group, ...]) -> list[object]:
    return [node.outlines for node in walk(groups) if isinstance(node, Path)]


@pytest.mark.parametrize("lighting", [DUSK, NIGHT, NIGHT_RED])
def test_light_moves_nothing(lighting):
    day, other = _view(DAY), _view(lighting)

    assert _outlines(other) == _outlines(day)
    assert [t.at for t in walk(other) if isinstance(t, Text)] == [t.at for t in walk(day) if isinstance(t, Text)]


def test_day_is_the_list_itself():
    project = small_panel()
    view = unlit_view(layout(project, project.options[0]), "main", Look())

    assert lit(view, DAY) is view


def test_the_darker_the_hour_the_darker_the_sheet():
    sheet = Colour(120, 120, 120)
    parts = [sum(in_light(sheet, "", light)[:3]) for light in (DAY, DUSK, NIGHT, Lighting(Hour.NIGHT, Flood.NONE))]

    assert parts == sorted(parts, reverse=True)
    assert len(set(parts)) == 4


def test_red_flood_is_red():
    r, g, b, _ = in_light(Colour(200, 200, 200), "", NIGHT_RED)

    assert r > 3 * g
    assert r > 3 * b


@pytest.mark.parametrize("lighting", [DAY, DUSK, NIGHT, NIGHT_RED])
def test_legends_are_readable_on_their_dials(lighting):
    assert _contrast(in_light(WHITE, LEGEND, lighting), in_light(DIAL, "", lighting)) >= ENOUGH


@pytest.mark.parametrize("lighting", [DAY, DUSK, NIGHT, NIGHT_RED])
def test_figures_on_screens_are_readable(lighting):
    """Every text on a screen against black, the darkest thing behind it, in every light."""
    texts = [(text, layer) for group in _view(DAY) for text, layer in _lettered(group, "") if layer == SCREEN]
    black = in_light(Colour(0, 0, 0), SCREEN, lighting)
    faint = [t.text for t, layer in texts if _contrast(in_light(t.colour, layer, lighting), black) < ENOUGH]

    assert len(texts) > 60
    assert faint == []


def _lettered(node: object, layer: str) -> list[tuple[Text, str]]:
    if isinstance(node, Text):
        return [(node, layer)]
    if isinstance(node, Group):
        return [pair for child in node.nodes for pair in _lettered(child, node.layer or layer)]
    return []


def test_reflections_go_in_the_dark():
    shine = Colour(255, 255, 255, 100)

    assert in_light(shine, GLASS, NIGHT).opacity < 20
