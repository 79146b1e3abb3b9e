"""What stands on the proposal's pages, in mm of a landscape sheet: pictures, lists, prices, cautions, signatures."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from panelcad.drawing.appearance import Look
from panelcad.drawing.appearance_light import DAY, NIGHT, Hour, Lighting
from panelcad.drawing.appearance_panel import ground, side_by_side
from panelcad.drawing.box import box_outline, grown, middle, size
from panelcad.drawing.display import Across, Along, Bounds, Face, Group, Node, Path
from panelcad.drawing.extent import extent
from panelcad.drawing.inks import INKS, LARGE, PLAIN, TITLE, Ink, Inks
from panelcad.drawing.lettering import fitted, text_width, wrapped
from panelcad.drawing.paper import Paper
from panelcad.drawing.scaling import scaled
from panelcad.drawing.table import PITCH, Column, Row, run_over, table_height
from panelcad.geometry.point import Point
from panelcad.geometry.track import line
from panelcad.model.layout import layout
from panelcad.model.project import Option, Project
from panelcad.outputs.story import Story

EDGE: Final = 14.0
GAP: Final = 6.0
HEAD: Final = 18.0
FOOT: Final = 10.0
CHANGES: Final = "What each option changes"
MARK: Final = "Mark of this layout"
_BULLET: Final = 4.0
_MOST_UNDER_NIGHT: Final = 0.5
"""Of a page's height, what words may take from the picture by night."""
_NO_FAILURE: Final = "None leaves less than the flight needs."
_TITLE: Final = "A new instrument panel"
_MOST_OF_A_PAGE: Final = 0.66
"""Of the first page's height, what the table of options may take from the picture."""
_DARK_EDGE: Final = 8.0
"""Of dark ground around the panel, in mm of the panel."""
_HAIR: Final = 0.01
"""What rounding may take from a height, in mm."""
_INKS: Final[Inks] = INKS[Ink.COLOUR]


@dataclass(frozen=True)
class Body:
    """A page without its header and footer."""

    title: str
    nodes: tuple[Node, ...]


def room(paper: Paper) -> Bounds:
    """Where a page's content stands."""
    return EDGE, EDGE + FOOT, paper.width - EDGE, paper.height - EDGE - HEAD


def picture(project: Project, option: Option, box: Bounds, lighting: Lighting) -> Group:
    """The panel as large as the box allows, in its middle; in the dark on a dark ground that fills the box."""
    nodes = side_by_side(layout(project, option), Look(lighting=lighting))
    is_dark = lighting.hour is not Hour.DAY
    x1, y1, x2, y2 = grown(extent(nodes), _DARK_EDGE) if is_dark else extent(nodes)
    width, height = size(box)
    factor = min(width / (x2 - x1), height / (y2 - y1))
    centre = middle(box)
    origin = Point(centre.x - factor * (x1 + x2) / 2, centre.y - factor * (y1 + y2) / 2)
    drawn = scaled(nodes, factor, origin)
    return Group((ground(box, lighting), *drawn) if is_dark else drawn, clip=box_outline(box))


def overview(project: Project, stories: tuple[Story, ...], paper: Paper) -> list[Body]:
    """What the proposal is about: the panel as found, and the options with their prices, over more pages if need be."""
    x1, y1, x2, y2 = room(paper)
    width = x2 - x1
    columns = (Column("Option", 0.18 * width), Column("What it is", 0.6 * width), Column("Price", 0.22 * width))
    rows = [_offer(told) for told in stories if not told.is_as_found]
    split = y1 + min(_MOST_OF_A_PAGE * (y2 - y1), table_height(columns, rows) + _HAIR + GAP)
    boxes = ((x1, y1, x2, top) for top in (split - GAP, *(y2,) * len(rows)))
    table, *more = run_over(columns, rows, boxes, _INKS) if rows else ((),)
    caption = _INKS.text("The panel as found", (x1, y2), PLAIN, across=Across.TOP, face=Face.BOLD)
    shown = picture(project, project.as_found, (x1, split, x2, y2 - PITCH), DAY)
    return [Body(_TITLE, (caption, shown, *table)), *(Body(_TITLE, nodes) for nodes in more)]


def _offer(told: Story) -> Row:
    price = f"{told.price}. {told.open_errors}." if told.open_errors else told.price
    return Row((told.option.name, told.option.summary, price))


def option_page(project: Project, told: Story, paper: Paper) -> Body:
    """One option: its picture by day large, what it adds and takes out and what it costs."""
    x1, y1, x2, y2 = room(paper)
    split = y1 + 0.46 * (y2 - y1)
    third = (x2 - x1 - 2 * GAP) / 3
    columns = [(x1 + i * (third + GAP), y1, x1 + i * (third + GAP) + third, split - GAP) for i in range(3)]
    small = f"and small parts: {len(told.small_added)} switches, breakers, lamps, jacks or blanks"
    return Body(
        told.option.name,
        (
            picture(project, told.option, (x1, split, x2, y2), DAY),
            _INKS.text(told.open_errors, (x1, split - 1.2), across=Across.TOP, face=Face.BOLD, colour=_INKS.alarm),
            *_listed("It adds", told.adds, small if told.small_added else "", columns[0]),
            *_listed("It takes out", told.takes_out, "", columns[1]),
            *_figures(told, columns[2]),
        ),
    )


def open_pages(project: Project, told: Story, paper: Paper) -> list[Body]:
    """The option at night, then each open error, each failure that leaves too little, and what it means in words."""
    x1, y1, x2, y2 = room(paper)
    columns = (Column("", 0.2 * (x2 - x1)), Column("In words", 0.8 * (x2 - x1)))
    rows = list(_what_to_know(told))
    split = y1 + min(_MOST_UNDER_NIGHT * (y2 - y1), table_height(columns, rows) + _HAIR + GAP)
    boxes = ((x1, y1, x2, top) for top in (split - GAP, *(y2,) * len(rows)))
    table, *more = run_over(columns, rows, boxes, _INKS)
    title = f"{told.option.name}: by night, and what to know"
    night = picture(project, told.option, (x1, split, x2, y2), NIGHT)
    return [Body(title, (night, *table)), *(Body(f"{told.option.name}: what to know", nodes) for nodes in more)]


def _what_to_know(told: Story) -> Iterator[Row]:
    for error in told.fit_errors:
        yield Row(("Error: the fit", error))
    for error in told.plan_errors:
        yield Row(("Error: equipment", error))
    if not told.open_errors:
        yield Row(("Errors", "None is open."))
    for failure in told.failures:
        yield Row(("Single failure", failure))
    if not told.failures:
        yield Row(
            ("Single failures", _NO_FAILURE if told.failures_known else "Not known: the kind of flight is not stated.")
        )
    for words in told.says:
        yield Row(("What it means", words))


def _listed(title: str, names: tuple[str, ...], small: str, box: Bounds) -> Iterator[Node]:
    """The names, wrapped, as many as there is room for; how many more there are; the small parts."""
    x1, y1, x2, y2 = box
    yield _INKS.text(title, (x1, y2), LARGE, across=Across.TOP, face=Face.BOLD)
    y = y2 - 6.5
    for i, words in _as_many_as_fit(names, small, x2 - x1, max(1, int((y - y1) / PITCH))):
        yield _INKS.text(f"· {words}" if i == 0 else f"  {words}", (x1, y), across=Across.TOP)
        y -= PITCH


def _as_many_as_fit(names: tuple[str, ...], small: str, width: float, most: int) -> list[tuple[int, str]]:
    """Lines of text, each with its number within its name."""
    blocks = [_numbered(name, width) for name in names]
    ending = _numbered(small, width) if small else []
    if sum(map(len, blocks)) + len(ending) > most:
        room_for, count = most - len(ending) - 2, 0
        while count < len(blocks) and sum(map(len, blocks[: count + 1])) <= room_for:
            count += 1
        ending = [*_numbered(f"and {len(blocks) - count} more: see the page ‘{CHANGES}’", width), *ending]
        blocks = blocks[:count]
    lines = [line for block in blocks for line in block] + ending
    return lines or [(0, "nothing")]


def _numbered(text: str, width: float) -> list[tuple[int, str]]:
    return list(enumerate(wrapped(text, width - _BULLET, PLAIN)))


def _figures(told: Story, box: Bounds) -> Iterator[Node]:
    """Price, weight, load, and the mark of the layout that was priced."""
    x1, _, x2, y2 = box
    rows = [*(told.price_lines or (("Price", told.price),)), *_shown_figures(told), (MARK, told.fingerprint)]
    yield _INKS.text("Price and figures", (x1, y2), LARGE, across=Across.TOP, face=Face.BOLD)
    y = y2 - 6.5
    for name, value in rows:
        bold = Face.BOLD if name in {"Total", "Price"} else Face.REGULAR
        lines = wrapped(value, x2 - x1 - text_width(f"{name}  ", PLAIN, bold), PLAIN, bold)
        yield _INKS.text(name, (x1, y), across=Across.TOP, face=bold)
        for words in lines:
            yield _INKS.text(words, (x2, y), PLAIN, Along.RIGHT, Across.TOP, face=bold)
            y -= PITCH


def _shown_figures(told: Story) -> list[tuple[str, str]]:
    shown = {"Change of empty weight", "New empty weight", "Useful load", "Electrical load", "Battery alone lasts"}
    return [figure for figure in told.figures if figure[0] in shown]


def header(project: Project, title: str, paper: Paper) -> tuple[Node, ...]:
    """The page's title, and what aircraft it is about."""
    top = paper.height - EDGE
    about = " · ".join(
        part for part in (project.aircraft.registration, project.aircraft.type_name, project.shop) if part
    )
    return (
        _INKS.text(
            fitted(title, paper.width - 2 * EDGE, TITLE, Face.BOLD),
            (EDGE, top),
            TITLE,
            across=Across.TOP,
            face=Face.BOLD,
        ),
        _INKS.text(
            fitted(about, paper.width - 2 * EDGE, PLAIN), (EDGE, top - 8.5), across=Across.TOP, colour=_INKS.note
        ),
        Path((line(Point(EDGE, top - 13.5), Point(paper.width - EDGE, top - 13.5)),), pen=_INKS.narrow),
    )


def footer(text: str, number: str, paper: Paper) -> tuple[Node, ...]:
    width = paper.width - 2 * EDGE - 30.0
    return (
        _INKS.text(fitted(text, width, PLAIN), (EDGE, EDGE), colour=_INKS.alarm),
        _INKS.text(number, (paper.width - EDGE, EDGE), PLAIN, Along.RIGHT),
    )
