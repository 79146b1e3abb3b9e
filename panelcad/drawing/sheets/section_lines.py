"""Where the sections of a plate run, and how they are marked on the view from behind."""

from collections.abc import Iterator, Sequence
from string import ascii_uppercase

from panelcad.drawing.display import Across, Along, Bounds, Face, Node, Path
from panelcad.drawing.gaps import broken
from panelcad.drawing.inks import LARGE, Inks
from panelcad.drawing.sheets.view import Seat
from panelcad.drawing.style import Line
from panelcad.drawing.subject import Subject
from panelcad.drawing.views.section import SectionLine
from panelcad.geometry.across import Across as Direction
from panelcad.geometry.point import Point
from panelcad.geometry.track import Track, line
from panelcad.model.layout import PlacedItem, PlateLayout

OUT = 9.0
"""How far a section's line reaches beyond the view, with its letter."""


def chosen_lines(subject: Subject, plate: PlateLayout) -> tuple[SectionLine, ...]:
    """The lines that people chose for a plate; without an upright or a level one among them, the usual one as well."""
    asked = tuple(each.line for each in subject.sections if each.plate == plate.plate.id)
    ways = {each.across for each in asked}
    return (*asked, *(each for each in usual_lines(plate) if each.across not in ways))


def lettered(lines: Sequence[SectionLine]) -> list[tuple[str, SectionLine]]:
    """Each with its letter: A, B and so on."""
    return list(zip(ascii_uppercase, lines, strict=False))


def usual_lines(plate: PlateLayout) -> tuple[SectionLine, SectionLine]:
    """One upright and one level, through the item that reaches deepest; through the middle where there is none."""
    deepest = max(plate.items, key=_depth, default=None)
    if deepest is None or not deepest.behind:
        x1, y1, x2, y2 = plate.outline.bounds
        return SectionLine(Direction.VERTICAL, (x1 + x2) / 2), SectionLine(Direction.HORIZONTAL, (y1 + y2) / 2)
    place = deepest.placement
    return SectionLine(Direction.VERTICAL, place.x), SectionLine(Direction.HORIZONTAL, place.y)


def _depth(placed: PlacedItem) -> tuple[float, str]:
    return max((body.far for body in placed.behind), default=0.0), placed.item.id


def section_marks(
    lines: Sequence[SectionLine], seat: Seat, view: Bounds, inks: Inks, texts: Sequence[Bounds] = ()
) -> Iterator[Node]:
    """The lines across a view from behind, broken at texts and thick at their ends, with their letters."""
    runs = [(letter, _run(each, seat, view)) for letter, each in lettered(lines)]
    chains: list[Track] = [line(low, high) for _, (low, high) in runs]
    yield Path(broken(chains, texts), pen=inks.pen(line=Line.CHAIN))
    for letter, (low, high) in runs:
        yield from _mark(letter, low, high, inks)


def _run(of: SectionLine, seat: Seat, view: Bounds) -> tuple[Point, Point]:
    """The ends of a section's line on a mirrored view, a little outside it."""
    x1, y1, x2, y2 = view
    x, y = seat.point(Point(-of.at, of.at))
    if of.across is Direction.VERTICAL:
        return Point(x, y1 - OUT + 4.0), Point(x, y2 + OUT - 4.0)
    return Point(x1 - OUT + 4.0, y), Point(x2 + OUT - 4.0, y)


def _mark(letter: str, low: Point, high: Point, inks: Inks) -> tuple[Node, ...]:
    thick = (line(low, low.towards(high, 3.5)), line(high, high.towards(low, 3.5)))
    spots = (low.towards(high, -3.0), high.towards(low, -3.0))
    return (
        Path(thick, pen=inks.pen(0.7)),
        *(inks.text(letter, spot, LARGE, Along.CENTRE, Across.MIDDLE, face=Face.BOLD) for spot in spots),
    )
