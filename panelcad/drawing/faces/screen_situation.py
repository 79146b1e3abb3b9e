"""The horizontal situation of a flight display: compass card, heading bug, course and its deviation."""

from panelcad.drawing.display import Face, Group, Node, Pen
from panelcad.drawing.faces.card import bug, card
from panelcad.drawing.faces.heading import aeroplane
from panelcad.drawing.faces.inks import BLACK, CYAN, MAGENTA, SHADOW, WHITE
from panelcad.drawing.faces.marks import Box, box, circle_line, clock, disc, frame_line, shape, stroke, word
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point
from panelcad.model.flight import Flight


def situation(centre: Point, r: float, flight: Flight) -> Group:
    """A full compass rose of radius `r`."""
    at = Placement(centre.x, centre.y)
    turned = Placement(centre.x, centre.y, flight.heading - flight.course)
    return Group(
        (
            disc(centre, 1.04 * r, SHADOW._replace(opacity=120)),
            card(centre, r, flight.heading, 0.13),
            Group((bug(0.98 * r, flight.heading_bug - flight.heading, CYAN),), placement=at),
            Group(_course(r, flight), placement=turned),
            aeroplane(centre, 0.15 * r),
            shape([clock(centre, s * r, a) for s, a in ((0.98, 0.0), (1.09, -4.0), (1.09, 4.0))], WHITE),
        )
    )


def _course(r: float, flight: Flight) -> tuple[Node, ...]:
    """The course arrow and its bar, drawn with the course at the top."""
    offset = flight.course_deviation * 0.4 * r
    wide = 0.035 * r
    head = [Point(0, 0.78 * r), Point(-0.08 * r, 0.62 * r), Point(0.08 * r, 0.62 * r)]
    dots = tuple(circle_line(Point(s * i * 0.2 * r, 0.0), 0.025 * r, WHITE, 0.012 * r) for i in (1, 2) for s in (-1, 1))
    return (
        *dots,
        shape(head, MAGENTA),
        stroke(Point(0, 0.64 * r), Point(0, 0.36 * r), MAGENTA, wide),
        stroke(Point(0, -0.36 * r), Point(0, -0.76 * r), MAGENTA, wide),
        stroke(Point(offset, 0.33 * r), Point(offset, -0.33 * r), MAGENTA, wide),
    )


def heading_box(at: Point, height: float, flight: Flight) -> tuple[Node, ...]:
    """The heading in figures, with a small mark below."""
    area = Box(at.x - 1.25 * height, at.y - 0.5 * height, 2.5 * height, height)
    text = f"{round(flight.heading) % 360 or 360:03d}°"
    return (
        box(area, BLACK),
        frame_line(area, Pen(WHITE, 0.06 * height)),
        word(text, area.centre, 0.58 * height, WHITE, Face.BOLD),
    )


def strip(area: Box, flight: Flight) -> Group:
    """The heading as a strip where there is no room for a rose."""
    per_degree = area.width / 70
    first = int(flight.heading - 35) // 5 * 5
    nodes: list[Node] = [box(area, SHADOW._replace(opacity=130))]
    for angle in range(first, first + 80, 5):
        x = area.centre.x + (angle - flight.heading) * per_degree
        long = 0.3 if angle % 10 == 0 else 0.18
        nodes.append(stroke(Point(x, area.top), Point(x, area.top - long * area.height), WHITE, 0.03 * area.height))
        if angle % 10 == 0 and abs(angle - flight.heading) < 30:
            spot = Point(x, area.y + 0.36 * area.height)
            nodes.append(word(_tens(angle % 360), spot, 0.34 * area.height, WHITE, Face.BOLD))
    tip = [Point(area.centre.x + s * 0.14 * area.height, area.top) for s in (-1, 1)]
    nodes.append(shape([*tip, Point(area.centre.x, area.top - 0.26 * area.height)], CYAN))
    return Group(tuple(nodes), clip=area.contour())


def _tens(angle: int) -> str:
    return {0: "N", 90: "E", 180: "S", 270: "W"}.get(angle, f"{angle // 10}")
