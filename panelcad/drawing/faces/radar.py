"""Weather radar display: rain ahead in a sector with range arcs; green light, yellow moderate, red heavy."""

from panelcad.drawing.display import Colour, Face, Node, Path
from panelcad.drawing.faces.frame import Frame
from panelcad.drawing.faces.inks import CYAN, GREEN, RED, WHITE, YELLOW
from panelcad.drawing.faces.marks import Box, arc, clock, strokes, words_left, words_right
from panelcad.drawing.faces.parts import cutout_knobs
from panelcad.drawing.faces.unit import display_keys, lit_screen
from panelcad.geometry.contour import Vertex, closed_chain
from panelcad.geometry.point import Point
from panelcad.geometry.track import line
from panelcad.model.flight import Flight

_HALF_SECTOR = 50
_RAIN = (
    (GREEN, ((0.5, -34), (0.82, -40), (0.95, -22), (0.86, -6), (0.62, -12))),
    (YELLOW, ((0.6, -30), (0.8, -34), (0.87, -22), (0.72, -16))),
    (RED, ((0.68, -28), (0.78, -30), (0.8, -23), (0.71, -22))),
    (GREEN, ((0.3, 18), (0.5, 12), (0.66, 26), (0.48, 40))),
    (YELLOW, ((0.42, 22), (0.54, 20), (0.55, 30))),
)


def draw(frame: Frame, _flight: Flight) -> tuple[Node, ...]:
    area = Box.around(frame.outline)
    left, right = frame.between_knobs(4.0)
    low = area.y + 0.2 * area.height
    screen = Box(left, low, right - left, area.top - 0.06 * area.height - low)
    return (*lit_screen(frame, screen, _sector(screen)), *display_keys(frame, screen), *cutout_knobs(frame))


def _sector(screen: Box) -> tuple[Node, ...]:
    own = screen.at(0.5, 0.08)
    reach = min(0.84 * screen.height, 0.62 * screen.width)
    arcs = [arc(own, share * reach, -_HALF_SECTOR, _HALF_SECTOR) for share in (0.25, 0.5, 0.75, 1.0)]
    rays = [line(own, clock(own, reach, a)) for a in (-_HALF_SECTOR, 0, _HALF_SECTOR)]
    height = min(0.06 * screen.height, 3.0)
    return (
        *(_patch(own, reach, colour, corners) for colour, corners in _RAIN),
        strokes([*arcs, *rays], CYAN.faded(0.7), 0.006 * reach),
        words_left("WX", screen.at(0.03, 0.92), height, GREEN, Face.BOLD),
        words_right("40 NM", screen.at(0.97, 0.92), height, WHITE),
        *(words_left(f"{share * 40:.0f}", clock(own, share * reach, 4), 0.8 * height, CYAN) for share in (0.5, 1.0)),
    )


def _patch(own: Point, reach: float, colour: Colour, corners: tuple[tuple[float, float], ...]) -> Path:
    points = [clock(own, share * reach, angle) for share, angle in corners]
    return Path((closed_chain(tuple(Vertex(p.x, p.y, -0.25) for p in points)),), colour)
