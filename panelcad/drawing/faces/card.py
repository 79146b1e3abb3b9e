"""A compass card: marks each 5 and 10 degrees, numbers each 30, the four letters."""

from panelcad.drawing.display import Across, Along, Colour, Face, Group, Node, Text
from panelcad.drawing.faces.inks import WHITE
from panelcad.drawing.faces.marks import clock, strokes
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point
from panelcad.geometry.track import line

_LETTERS = {0: "N", 90: "E", 180: "S", 270: "W"}
_HERE = Point(0.0, 0.0)


def card(centre: Point, radius: float, heading: float, number: float = 0.15, colour: Colour = WHITE) -> Group:
    """The card with `heading` at the top; `number` is the height of its figures as a share of the radius."""
    tens = [line(clock(_HERE, radius, a), clock(_HERE, 0.87 * radius, a)) for a in range(0, 360, 10)]
    fives = [line(clock(_HERE, radius, a), clock(_HERE, 0.93 * radius, a)) for a in range(5, 360, 10)]
    nodes: tuple[Node, ...] = (
        strokes(tens, colour, 0.022 * radius),
        strokes(fives, colour, 0.014 * radius),
        *(_figure(a, radius, number, colour) for a in range(0, 360, 30)),
    )
    return Group(nodes, placement=Placement(centre.x, centre.y, heading))


def _figure(angle: int, radius: float, number: float, colour: Colour) -> Text:
    text = _LETTERS.get(angle, f"{angle // 10}")
    at = clock(_HERE, (0.84 - 0.62 * number) * radius, angle)
    return Text(text, at, number * radius, colour, Along.CENTRE, Across.MIDDLE, -float(angle), Face.BOLD)


def lubber(centre: Point, radius: float, colour: Colour) -> Node:
    """The line at the top against which the card is read."""
    return strokes((line(clock(centre, 1.06 * radius, 0), clock(centre, 0.9 * radius, 0)),), colour, 0.03 * radius)


def bug(radius: float, angle: float, colour: Colour) -> Node:
    """A heading bug on the card's rim at a clock angle of the dial, about the origin."""
    from panelcad.drawing.faces.marks import shape  # noqa: PLC0415

    corners = ((1.05, -6), (1.05, -2), (0.98, 0), (1.05, 2), (1.05, 6), (0.94, 6), (0.94, -6))
    return shape([clock(_HERE, share * radius, angle + a) for share, a in corners], colour)
