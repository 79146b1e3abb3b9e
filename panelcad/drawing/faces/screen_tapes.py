"""The tapes of a flight display: airspeed on the left, altitude and vertical speed on the right."""

from dataclasses import dataclass
from typing import Final

from panelcad.drawing.display import Colour, Face, Group, Node, Pen
from panelcad.drawing.faces.inks import BLACK, CYAN, GREEN, LIME, RED, SHADOW, WHITE, YELLOW
from panelcad.drawing.faces.marks import Box, box, frame_line, shape, strokes, word, words_left, words_right
from panelcad.geometry.point import Point
from panelcad.geometry.track import line
from panelcad.model.flight import Flight

VEIL: Final = SHADOW._replace(opacity=105)


@dataclass(frozen=True)
class Tape:
    """A strip of numbers that moves past a fixed readout; `span` is what it shows from bottom to top."""

    area: Box
    value: float
    span: float
    step: int
    numbered: int
    leftward: bool

    def y(self, value: float) -> float:
        return self.area.centre.y + (value - self.value) * self.area.height / self.span

    @property
    def edge(self) -> float:
        """Where its marks start: beside the attitude."""
        return self.area.right - 0.12 * self.area.width if self.leftward else self.area.x + 0.05 * self.area.width

    @property
    def _way(self) -> float:
        return self.area.width * (-1.0 if self.leftward else 1.0)

    def marks(self) -> tuple[Node, ...]:
        first = int((self.value - self.span / 2) // self.step) * self.step
        values = [v for v in range(first, int(self.value + self.span / 2) + self.step, self.step) if v >= 0]
        ticks = [line(Point(self.edge, self.y(v)), Point(self.edge + 0.13 * self._way, self.y(v))) for v in values]
        write = words_right if self.leftward else words_left
        height = (0.16 if self.leftward else 0.145) * self.area.width
        figures = [
            write(f"{v}", Point(self.edge + 0.2 * self._way, self.y(v)), height, WHITE)
            for v in values
            if v % self.numbered == 0
        ]
        return strokes(ticks, WHITE, 0.022 * self.area.width), *figures

    def readout(self, text: str) -> tuple[Node, ...]:
        """The value in a black box that points at the tape's edge."""
        w, c = self.area.width, self.area.centre
        high = 0.2 * w
        inner, outer = self.edge + 0.1 * self._way, self.edge + 0.86 * self._way
        corners = (
            Point(self.edge, c.y),
            Point(inner, c.y + 0.6 * high),
            Point(inner, c.y + high),
            Point(outer, c.y + high),
            Point(outer, c.y - high),
            Point(inner, c.y - high),
            Point(inner, c.y - 0.6 * high),
        )
        size = 0.21 * w if len(text) < 5 else 0.18 * w
        value = word(text, Point((inner + outer) / 2, c.y), size, WHITE, Face.BOLD)
        return shape(corners, BLACK, Pen(WHITE, 0.02 * w)), value


def airspeed_tape(area: Box, flight: Flight) -> Group:
    """Airspeed in knots with the ranges of 14 CFR 23.1545, rising upward."""
    speeds = flight.airspeeds
    tape = Tape(area, flight.airspeed, 70.0, 10, 20, leftward=True)

    def bar(low: float, high: float, colour: Colour, wide: float = 1.0) -> Node:
        strip = 0.09 * wide * area.width
        return box(Box(area.right - strip, tape.y(low), strip, tape.y(high) - tape.y(low)), colour)

    bars = (
        bar(speeds.vs1, speeds.vno, GREEN),
        bar(speeds.vs0, speeds.vfe, WHITE, 0.5),
        bar(speeds.vno, speeds.vne, YELLOW),
        bar(speeds.vne, speeds.vne + 80, RED),
    )
    value = tape.readout(f"{flight.airspeed:.0f}")
    return Group((box(area, VEIL), *bars, *tape.marks(), *value), clip=area.contour())


def altitude_tape(area: Box, flight: Flight) -> Group:
    """Altitude in feet, with the altitude that the pilot set."""
    tape = Tape(area, flight.altitude, 700.0, 100, 200, leftward=False)
    high = 0.16 * area.width
    mark = max(min(tape.y(flight.altitude_bug), area.top - high), area.y)
    tag = box(Box(area.x, mark, 0.09 * area.width, high), CYAN)
    value = tape.readout(f"{round(flight.altitude / 10) * 10}")
    return Group((box(area, VEIL), *tape.marks(), tag, *value), clip=area.contour())


def vertical_speed_strip(area: Box, flight: Flight) -> Group:
    """Vertical speed: a pointer on a short scale of ±2,000 feet a minute."""
    half = 0.46 * area.height

    def y(feet: float) -> float:
        return area.centre.y + max(-2000.0, min(2000.0, feet)) / 2000 * half

    left = area.x + 0.1 * area.width
    values = (-2000, -1000, 0, 1000, 2000)
    ticks = [line(Point(left, y(v)), Point(left + 0.22 * area.width, y(v))) for v in values]
    figures = [
        words_left(f"{abs(v) // 1000}", Point(left + 0.38 * area.width, y(v)), 0.28 * area.width, WHITE)
        for v in values
        if v
    ]
    tip = y(flight.vertical_speed)
    corners = (Point(left, tip), Point(area.right, tip + 0.32 * area.width), Point(area.right, tip - 0.32 * area.width))
    return Group(
        (box(area, VEIL), strokes(ticks, WHITE, 0.05 * area.width), *figures, shape(corners, LIME)), clip=area.contour()
    )


def tag(area: Box, text: str, colour: Colour) -> tuple[Node, ...]:
    """A value in a black field with a fine edge."""
    edge = frame_line(area, Pen(colour.faded(0.6), 0.03 * area.height))
    return box(area, BLACK), edge, word(text, area.centre, 0.52 * area.height, colour, Face.BOLD)
