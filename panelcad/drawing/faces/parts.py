"""Things that stand out: bezels, screws, knobs, glass. Light comes from the upper left."""

from panelcad.drawing.display import Colour, Fill, Group, LinearGradient, Node, Path, Pen, RadialGradient, Stop
from panelcad.drawing.faces.frame import Frame, ScrewSpot
from panelcad.drawing.faces.inks import BLACK, DARK, GLASS, GLINT, LEGEND, SHADOW, STEEL, WHITE, ink
from panelcad.drawing.faces.marks import clock, disc, downward, grown, ring, shape, strokes, word
from panelcad.geometry.contour import Contour, circle
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point
from panelcad.geometry.track import line

KEY = ink("#2b2d31")
_BEZEL_TOP, _BEZEL_LOW = ink("#3a3d41"), ink("#1b1c1f")


def slanted(contour: Contour, light: Colour, dark: Colour) -> LinearGradient:
    """A fill that is light at the upper left and dark at the lower right of a contour."""
    x1, y1, x2, y2 = contour.bounds
    return LinearGradient(Point(x1, y2), Point(x2, y1), (Stop(0.0, light), Stop(1.0, dark)))


def soft_shadow(contour: Contour, depth: float, strength: int = 17) -> tuple[Path, ...]:
    """Stacked translucent shapes that look like the shadow of something `depth` mm above."""
    falls = Placement(0.42 * depth, -0.62 * depth)
    fallen = falls.contour(contour)
    shares = (0.55, 0.36, 0.2, 0.06, -0.08)
    return tuple(Path((grown(fallen, share * depth),), SHADOW._replace(opacity=strength)) for share in shares)


def raised(contour: Contour, light: Colour = _BEZEL_TOP, dark: Colour = _BEZEL_LOW) -> tuple[Node, ...]:
    """A moulded body seen from the front: a chamfer that catches the light, and a flat face."""
    _, y1, _, y2 = contour.bounds
    chamfer = min(0.9, (y2 - y1) * 0.06)
    return (
        Path((contour,), slanted(contour, _mixed(light, WHITE, 0.28), _mixed(dark, BLACK, 0.55))),
        Path((grown(contour, -chamfer),), downward(y2, y1, light, dark)),
    )


def _mixed(a: Colour, b: Colour, share: float) -> Colour:
    return Colour(*(round(x + (y - x) * share) for x, y in zip(a, b, strict=True)))


def bezel(frame: Frame) -> tuple[Node, ...]:
    """The plain black bezel with the screws that hold it."""
    return (*raised(frame.outline), *(node for spot in frame.screws for node in screw(spot)))


def screw(spot: ScrewSpot, colour: Colour = STEEL) -> tuple[Node, ...]:
    """A cross-recessed screw head with the rim of its countersink around it."""
    r = spot.head / 2
    dark = _mixed(colour, BLACK, 0.55)
    head = RadialGradient(spot.at.moved(-0.35 * r, 0.4 * r), 1.5 * r, (Stop(0.0, colour), Stop(1.0, dark)))
    turn = 20.0 + 37.0 * ((spot.at.x * 0.7 + spot.at.y * 1.3) % 1.6)
    slots = [line(clock(spot.at, 0.52 * r, turn + a), clock(spot.at, 0.52 * r, turn + a + 180)) for a in (0, 90)]
    return (
        disc(spot.at, 1.12 * r, SHADOW._replace(opacity=110)),
        disc(spot.at, r, head),
        strokes(slots, ink("#1d1e20"), 0.24 * r),
    )


def window(centre: Point, radius: float, dial: Fill) -> tuple[Node, ...]:
    """The sunken round window of a gauge: a bevelled rim, then the dial with the rim's shadow on it."""
    rim = LinearGradient(
        centre.moved(-radius, radius), centre.moved(radius, -radius), (Stop(0.0, DARK), Stop(1.0, ink("#5b5f65")))
    )
    shade = SHADOW._replace(opacity=38)
    return (
        disc(centre, radius * 1.065, rim),
        disc(centre, radius, dial),
        *(
            Path(
                (circle(centre, 2 * radius), circle(centre.moved(0.02 * d * radius, -0.03 * d * radius), 2 * reach)),
                shade,
            )
            for d, reach in ((0.45, radius * 0.985), (0.9, radius * 0.97), (1.5, radius * 0.953))
        ),
    )


def round_glass(centre: Point, radius: float) -> Group:
    """A faint reflection on the upper half of a round glass."""
    clip = circle(centre, 2 * radius)
    spots = ((0.0, 1.05, 0.92, 9), (-0.1, 1.15, 0.92, 8), (-0.25, 1.3, 0.95, 7))
    sheen = tuple(
        disc(centre.moved(dx * radius, dy * radius), reach * radius, GLINT._replace(opacity=opacity))
        for dx, dy, reach, opacity in spots
    )
    return Group(sheen, layer=GLASS, clip=clip)


def box_glass(contour: Contour) -> Group:
    """A faint slanting reflection on a flat screen."""
    x1, y1, x2, y2 = contour.bounds
    w = x2 - x1

    def slope(top: float, low: float, opacity: int) -> Path:
        corners = (Point(x1, y2), Point(x1 + top * w, y2), Point(x1 + low * w, y1), Point(x1, y1))
        return shape(corners, GLINT._replace(opacity=opacity))

    sheen = (slope(0.62, 0.28, 7), slope(0.55, 0.21, 6), slope(0.2, -0.1, 6))
    return Group(sheen, layer=GLASS, clip=contour)


def knob(centre: Point, radius: float, mark: Colour | None = WHITE) -> tuple[Node, ...]:
    """A knurled knob with a mark on its top."""
    skirt = circle(centre, 2 * radius)
    knurls = [line(clock(centre, 0.86 * radius, a), clock(centre, 0.985 * radius, a)) for a in range(0, 360, 12)]
    cap = RadialGradient(
        centre.moved(-0.3 * radius, 0.35 * radius), 1.1 * radius, (Stop(0.0, ink("#54585e")), Stop(1.0, ink("#191a1c")))
    )
    nodes: list[Node] = [
        *soft_shadow(skirt, min(3.0, 0.7 * radius), 22),
        Path((skirt,), slanted(skirt, ink("#5c6066"), ink("#0c0d0e"))),
        strokes(knurls, ink("#0a0a0b"), 0.05 * radius),
        disc(centre, 0.78 * radius, cap),
        ring(centre, 0.78 * radius, 0.72 * radius, GLINT._replace(opacity=26)),
    ]
    if mark is not None:
        tip, root = clock(centre, 0.68 * radius, 0), clock(centre, 0.3 * radius, 0)
        nodes.append(Group((strokes((line(root, tip),), mark, 0.13 * radius),), layer=LEGEND))
    return tuple(nodes)


def double_knob(centre: Point, radius: float) -> tuple[Node, ...]:
    """A large knob with a smaller one on it."""
    return (*knob(centre, radius, None), *knob(centre, 0.6 * radius))


def cutout_knobs(frame: Frame) -> tuple[Node, ...]:
    """A double knob wherever the cutout has a knob."""
    return tuple(node for at, radius in frame.spots for node in double_knob(at, radius))


def key(contour: Contour, text: str, height: float, face: Colour = KEY) -> tuple[Node, ...]:
    """A push key with a legend that is lit from behind."""
    x1, y1, x2, y2 = contour.bounds
    centre = Point((x1 + x2) / 2, (y1 + y2) / 2)
    legend = Group((word(text, centre, height, WHITE),), layer=LEGEND) if text else Group(())
    edge = Path((contour,), None, Pen(ink("#050506"), 0.25))
    return (*raised(contour, _mixed(face, WHITE, 0.12), _mixed(face, BLACK, 0.3)), edge, legend)
