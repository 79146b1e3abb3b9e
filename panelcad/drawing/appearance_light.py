"""Light on a picture: day, dusk and night change its colours, never its shapes.

Faces are drawn as by day. Layers say what a colour does in the dark: legends glow with the instrument lighting, screens
shine by themselves, reflections fade; all else takes the light there is.
"""

from collections.abc import Callable
from dataclasses import dataclass, replace
from enum import StrEnum
from functools import lru_cache
from typing import Final

from panelcad.drawing.display import (
    Colour,
    Fill,
    Group,
    LinearGradient,
    Node,
    Path,
    Picture,
    RadialGradient,
    Stop,
    Text,
)
from panelcad.drawing.faces.inks import GLASS, LEGEND, SCREEN
from panelcad.geometry.contour import rectangle
from panelcad.geometry.point import Point

Triple = tuple[float, float, float]


class Hour(StrEnum):
    DAY = "day"
    DUSK = "dusk"
    NIGHT = "night"


class Flood(StrEnum):
    """What lights the panel from above at night."""

    NONE = "none"
    WHITE = "white"
    RED = "red"


@dataclass(frozen=True)
class Lighting:
    """The time of day, the flood light, and how far instruments and screens are dimmed at night (1 is full)."""

    hour: Hour = Hour.DAY
    flood: Flood = Flood.WHITE
    instruments: float = 0.9
    screens: float = 0.8


DAY: Final = Lighting(Hour.DAY)
DUSK: Final = Lighting(Hour.DUSK)
NIGHT: Final = Lighting(Hour.NIGHT)
NIGHT_RED: Final = Lighting(Hour.NIGHT, Flood.RED)
LIGHTS: Final = {"day": DAY, "dusk": DUSK, "night": NIGHT, "night-red": NIGHT_RED}
"""By the names that files and views carry."""

_GROUND: Final = {Hour.DAY: Colour(141, 146, 151), Hour.DUSK: Colour(53, 53, 59), Hour.NIGHT: Colour(5, 5, 6)}

_AMBIENT: Final = {Hour.DAY: (1.0, 1.0, 1.0), Hour.DUSK: (0.46, 0.43, 0.5), Hour.NIGHT: (0.055, 0.06, 0.075)}
_FLOODS: Final = {Flood.NONE: (0.0, 0.0, 0.0), Flood.WHITE: (0.31, 0.29, 0.25), Flood.RED: (0.4, 0.05, 0.03)}
_GLOW: Final = {Flood.NONE: (1.0, 0.93, 0.8), Flood.WHITE: (1.0, 0.93, 0.8), Flood.RED: (1.0, 0.34, 0.24)}
_GLEAM: Final = {Hour.DAY: 1.0, Hour.DUSK: 0.6, Hour.NIGHT: 0.12}


def lit(nodes: tuple[Node, ...], lighting: Lighting) -> tuple[Node, ...]:
    """The same list in this light."""
    if lighting.hour is Hour.DAY:
        return nodes
    return tuple(_node(node, "", lighting) for node in nodes)


def ground_colour(lighting: Lighting) -> Colour:
    """What is seen around the panel in this light."""
    return _GROUND[lighting.hour]


def in_light(colour: Colour, layer: str, lighting: Lighting) -> Colour:
    """One colour of a layer in this light."""
    if layer == GLASS:
        return colour.faded(_GLEAM[lighting.hour])
    return _LAYERS.get(layer, _surface)(colour, lighting)


def _surface(colour: Colour, lighting: Lighting) -> Colour:
    return _times(colour, _ambient(lighting))


def _screen(colour: Colour, lighting: Lighting) -> Colour:
    level = {Hour.DAY: 1.0, Hour.DUSK: 0.9, Hour.NIGHT: lighting.screens}[lighting.hour]
    return _times(colour, (level, level, level))


def _legend(colour: Colour, lighting: Lighting) -> Colour:
    """Lit from behind: at dusk by half, at night wholly."""
    if lighting.hour is Hour.DAY:
        return colour
    glow = _times(colour, _scaled(_GLOW[lighting.flood], lighting.instruments))
    if lighting.hour is Hour.NIGHT:
        return glow
    r, g, b = (max(pair) for pair in zip(_surface(colour, lighting)[:3], glow[:3], strict=True))
    return Colour(r, g, b, colour.opacity)


_LAYERS: Final[dict[str, Callable[[Colour, Lighting], Colour]]] = {LEGEND: _legend, SCREEN: _screen}


def _ambient(lighting: Lighting) -> Triple:
    base = _AMBIENT[lighting.hour]
    if lighting.hour is not Hour.NIGHT:
        return base
    r, g, b = (a + f for a, f in zip(base, _FLOODS[lighting.flood], strict=True))
    return r, g, b


def _scaled(triple: Triple, by: float) -> Triple:
    r, g, b = triple
    return r * by, g * by, b * by


def _times(colour: Colour, share: Triple) -> Colour:
    r, g, b = (min(255, round(part * by)) for part, by in zip(colour[:3], share, strict=True))
    return Colour(r, g, b, colour.opacity)


def _node(node: Node, layer: str, lighting: Lighting) -> Node:
    if isinstance(node, Group):
        return _group(node, layer, lighting)
    if isinstance(node, Path):
        return _path(node, layer, lighting)
    if isinstance(node, Text):
        return replace(node, colour=in_light(node.colour, layer, lighting))
    return _picture(node, lighting)


def _picture(picture: Picture, lighting: Lighting) -> Group:
    """A picture cannot be drawn in other colours: a dark veil lies over it."""
    x1, y1, x2, y2 = picture.bounds
    over = rectangle(Point((x1 + x2) / 2, (y1 + y2) / 2), picture.width, picture.height)
    dark = 1.0 - sum(_ambient(lighting)) / 3
    return Group((picture, Path((over,), Colour(0, 0, 0, round(255 * dark)))))


_KEPT: Final = 20_000


def _group(group: Group, layer: str, lighting: Lighting) -> Group:
    """Groups that stay the same object from picture to picture are lit once."""
    return _remembered(_Same(group), layer, lighting)


@dataclass(frozen=True, eq=False)
class _Same:
    """Stands for one object: two are equal where they hold the very same group."""

    group: Group

    def __eq__(self, other: object) -> bool:
        return isinstance(other, _Same) and other.group is self.group

    def __hash__(self) -> int:
        return id(self.group)


@lru_cache(_KEPT)
def _remembered(same: _Same, layer: str, lighting: Lighting) -> Group:
    group = same.group
    inner = group.layer or layer
    return replace(group, nodes=tuple(_node(node, inner, lighting) for node in group.nodes))


def _path(path: Path, layer: str, lighting: Lighting) -> Path:
    fill = _fill(path.fill, layer, lighting) if path.fill is not None else None
    pen = replace(path.pen, colour=in_light(path.pen.colour, layer, lighting)) if path.pen is not None else None
    return Path(path.outlines, fill, pen)


def _fill(fill: Fill, layer: str, lighting: Lighting) -> Fill:
    if isinstance(fill, LinearGradient | RadialGradient):
        stops = tuple(Stop(stop.share, in_light(stop.colour, layer, lighting)) for stop in fill.stops)
        return replace(fill, stops=stops)
    return in_light(fill, layer, lighting)
