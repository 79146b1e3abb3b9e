"""Where the sections of a plate run, and how they are marked on the view from behind."""

from collections.abc import Sequence

from panelcad.drawing.display import Across, Along, Bounds, Face, Node, Path
from panelcad.drawing.gaps import broken
from panelcad.drawing.inks import LARGE, Inks
from panelcad.drawing.sheets.view import Seat
from panelcad.drawing.style import Line
from panelcad.drawing.views.section import SectionLine
from panelcad.geometry.across import Across as Direction
from panelcad.geometry.point import Point
from panelcad.geometry.track import line
from panelcad.model.layout import PlacedItem, PlateLayout

OUT = 9.0
"""How far a section's line reaches beyond the view, with its letter."""


def chosen_lines(plate: PlateLayout) -> tuple[SectionLine, SectionLine]:
    """A–A upright and B–B level, both through the item that reaches deepest; through the middle where there is none."""
    deepest = max(plate.items, key=_depth, default=None)
    if deepest is None or not deepest.behind:
        x1, y1, x2, y2 = plate.outline.bounds
        return SectionLine(Direction.VERTICAL, (x1 + x2) / 2), SectionLine(Direction.HORIZONTAL, (y1 + y2) / 2)
    place = deepest.placement
    return SectionLine(Direction.VERTICAL, place.x), SectionLine(Direction.HORIZONTAL, place.y)


def _depth(placed: PlacedItem) -> tuple[float, str]:
    return max((body.far for body in placed.behind), default=0.0), placed.item.id


def section_marks(
    lines: tuple[SectionLine, SectionLine], seat: Seat, view: Bounds, inks: Inks, texts: Sequence[Bounds] = ()
) -> tuple[Node, ...]:
    """Both lines across a view from behind, broken at texts and thick at their ends, with their letters."""
    x1, y1, x2, y2 = view
    x, y = seat.point(Point(-lines[0].at, lines[1].at))
    upright = (Point(x, y1 - OUT + 4.0), Point(x, y2 + OUT - 4.0))
    level = (Point(x1 - OUT + 4.0, y), Point(x2 + OUT - 4.0, y))
    chain = Path(broken((line(*upright), line(*level)), texts), pen=inks.pen(line=Line.CHAIN))
    return (chain, *_mark("A", *upright, (0.0, 1.0), inks), *_mark("B", *level, (1.0, 0.0), inks))


def _mark(letter: str, low: Point, high: Point, way: tuple[float, float], inks: Inks) -> tuple[Node, ...]:
    dx, dy = way
    thick = (line(low, low.moved(dx * 3.5, dy * 3.5)), line(high.moved(-dx * 3.5, -dy * 3.5), high))
    spots = (low.moved(-dx * 3.0, -dy * 3.0), high.moved(dx * 3.0, dy * 3.0))
    return (
        Path(thick, pen=inks.pen(0.7)),
        *(inks.text(letter, spot, LARGE, Along.CENTRE, Across.MIDDLE, face=Face.BOLD) for spot in spots),
    )
