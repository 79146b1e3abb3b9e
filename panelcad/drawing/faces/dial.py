"""A round dial: a scale from values to clock angles, its marks, numbers, bands and pointers."""

from bisect import bisect_right
from collections.abc import Callable, Iterable
from dataclasses import dataclass

from panelcad.drawing.display import Colour, Face, Group, Node, Path, Text
from panelcad.drawing.faces.frame import Frame
from panelcad.drawing.faces.inks import BLACK, DIAL, LEGEND, SHADOW, WHITE, ink
from panelcad.drawing.faces.marks import band, clock, disc, shape, strokes, word
from panelcad.drawing.faces.parts import bezel, round_glass, window
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point
from panelcad.geometry.track import line


@dataclass(frozen=True)
class Scale:
    """Pairs of value and clock angle in rising order of value; straight between them, held at the ends."""

    pairs: tuple[tuple[float, float], ...]

    def angle(self, value: float) -> float:
        """The clock angle in degrees of a value."""
        values = [pair[0] for pair in self.pairs]
        i = min(max(bisect_right(values, value), 1), len(values) - 1)
        (v1, a1), (v2, a2) = self.pairs[i - 1], self.pairs[i]
        share = (min(max(value, values[0]), values[-1]) - v1) / (v2 - v1)
        return a1 + share * (a2 - a1)


@dataclass(frozen=True)
class Dial:
    """Radii below are shares of the dial's own."""

    centre: Point
    radius: float
    scale: Scale

    def at(self, value: float, share: float) -> Point:
        return clock(self.centre, share * self.radius, self.scale.angle(value))

    def ticks(self, values: Iterable[float], outer: float, inner: float, width: float, colour: Colour = WHITE) -> Node:
        """Radial marks; the width is a share of the radius too."""
        tracks = [line(self.at(value, outer), self.at(value, inner)) for value in values]
        return strokes(tracks, colour, width * self.radius)

    def numbers(
        self,
        values: Iterable[float],
        share: float,
        height: float,
        text: Callable[[float], str] = lambda value: f"{value:g}",
    ) -> tuple[Text, ...]:
        """Upright numbers, bold, on a circle."""
        return tuple(word(text(v), self.at(v, share), height * self.radius, WHITE, Face.BOLD) for v in values)

    def band(self, low: float, high: float, outer: float, inner: float, colour: Colour) -> Path:
        angles = (self.scale.angle(low), self.scale.angle(high))
        return band(self.centre, outer * self.radius, inner * self.radius, angles, colour)

    def title(self, text: str, y: float, height: float, colour: Colour = WHITE) -> Text:
        """Words across the dial at a share of the radius above its centre."""
        return word(text, self.centre.moved(0.0, y * self.radius), height * self.radius, colour)

    def pointer(self, value: float, form: "PointerForm", colour: Colour = WHITE) -> Group:
        return pointer(self.centre, self.radius, self.scale.angle(value), form, colour)


@dataclass(frozen=True)
class PointerForm:
    """A pointer's tip, broadest place and tail, and half its breadth there and at the root, as shares of the radius."""

    tip: float = 0.86
    waist: float = 0.7
    half: float = 0.035
    root: float = 0.018
    tail: float = 0.22
    hub: float = 0.1


def pointer(centre: Point, radius: float, angle: float, form: PointerForm, colour: Colour = WHITE) -> Group:
    """A pointer with its shadow and hub."""
    f = form
    outline = (
        (0.0, f.tip),
        (f.half, f.waist),
        (f.root, 0.0),
        (f.root * 1.6, -f.tail),
        (-f.root * 1.6, -f.tail),
        (-f.root, 0.0),
        (-f.half, f.waist),
    )
    turn = Placement(centre.x, centre.y, -angle)
    points = [turn.point(Point(x * radius, y * radius)) for x, y in outline]
    fall = 0.03 * radius
    shadows = [
        shape([p.moved(fall * k, -1.3 * fall * k) for p in points], SHADOW._replace(opacity=70)) for k in (0.7, 1.0)
    ]
    hub = disc(centre, f.hub * radius, ink("#24262a"))
    return Group((*shadows, Group((shape(points, colour),), layer=LEGEND), hub, *_pin(centre, f.hub * radius)))


def _pin(centre: Point, radius: float) -> tuple[Node, ...]:
    return (
        disc(centre.moved(-0.12 * radius, 0.12 * radius), 0.8 * radius, ink("#3c3f44")),
        disc(centre, 0.68 * radius, BLACK),
    )


def gauge(
    frame: Frame, marks: tuple[Node, ...], hands: tuple[Node, ...] = (), front: tuple[Node, ...] = ()
) -> tuple[Node, ...]:
    """A whole round instrument: bezel, window, glowing marks, hands, glass, and what stands in front of the glass."""
    radius = frame.window_radius
    return (
        *bezel(frame),
        *window(frame.centre, radius, DIAL),
        Group(marks, layer=LEGEND),
        *hands,
        round_glass(frame.centre, radius),
        *front,
    )
