"""What stands on the proposal's pages, in mm of a landscape sheet: pictures, lists, prices, cautions, signatures."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from panelcad.drawing.appearance import Look
from panelcad.drawing.appearance_light import DAY, NIGHT, Lighting
from panelcad.drawing.appearance_panel import panel_view
from panelcad.drawing.box import box_outline, middle, size
from panelcad.drawing.cautions import BEFORE_CUTTING, BEFORE_FLIGHT
from panelcad.drawing.display import Across, Along, Bounds, Face, Group, Node, Path
from panelcad.drawing.extent import extent
from panelcad.drawing.inks import INKS, LARGE, PLAIN, TITLE, Ink, Inks
from panelcad.drawing.lettering import fitted, wrapped
from panelcad.drawing.paper import Paper
from panelcad.drawing.scaling import scaled
from panelcad.drawing.table import PITCH, Column, Row, run_over, table_height
from panelcad.geometry.point import Point
from panelcad.geometry.track import line
from panelcad.model.layout import layout
from panelcad.model.project import AS_FOUND, Option, Project
from panelcad.outputs.story import Story
from panelcad.planning.figures import counted

EDGE: Final = 14.0
GAP: Final = 6.0
HEAD: Final = 18.0
FOOT: Final = 10.0
_TITLE: Final = "A new instrument panel"
_MOST_OF_A_PAGE: Final = 0.66
"""Of the first page's height, what the table of options may take from the picture."""
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
    """The panel as large as the box allows, in its middle."""
    nodes = panel_view(layout(project, option), Look(lighting=lighting))
    x1, y1, x2, y2 = extent(nodes)
    width, height = size(box)
    factor = min(width / (x2 - x1), height / (y2 - y1))
    centre = middle(box)
    origin = Point(centre.x - factor * (x1 + x2) / 2, centre.y - factor * (y1 + y2) / 2)
    return Group(scaled(nodes, factor, origin), clip=box_outline(box))


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
    return Row((told.option.name, told.option.summary, " ".join((f"{told.price}.", *_open(told)))))


def option_page(project: Project, told: Story, paper: Paper) -> Body:
    """One option: its picture by day large, by night small, what it adds and what it costs."""
    x1, y1, x2, y2 = room(paper)
    split = y1 + 0.46 * (y2 - y1)
    third = (x2 - x1 - 2 * GAP) / 3
    columns = [(x1 + i * (third + GAP), y1, x1 + i * (third + GAP) + third, split - GAP) for i in range(3)]
    day = picture(project, told.option, (x1, split, x2, y2), DAY)
    night_top = columns[2][3]
    night_box = (columns[2][0], night_top - 0.36 * third, columns[2][2], night_top)
    prices = (columns[2][0], columns[2][1], columns[2][2], night_box[1] - 3.0)
    return Body(
        told.option.name,
        (
            day,
            _INKS.text(" ".join(_open(told)), (x1, split - 1.2), across=Across.TOP, face=Face.BOLD, colour=_INKS.alarm),
            *_listed("It adds", told.adds, told.small_added, columns[0]),
            *_listed("It takes out", told.takes_out, 0, columns[1]),
            picture(project, told.option, night_box, NIGHT),
            *_figures(told, prices),
        ),
    )


def _listed(title: str, names: tuple[str, ...], small: int, box: Bounds) -> Iterator[Node]:
    """The names in as many lines as there is room for; what does not fit is counted."""
    x1, y1, x2, y2 = box
    yield _INKS.text(title, (x1, y2), LARGE, across=Across.TOP, face=Face.BOLD)
    more = (f"and {small} switches, breakers, lamps, jacks or blanks",) if small else ()
    lines = [*names, *more] or ["nothing"]
    y = y2 - 6.5
    most = max(1, int((y - y1) / PITCH))
    if len(lines) > most:
        lines = [*lines[: most - 1], f"and {len(lines) - most + 1} more; the comparison has them all"]
    for words in lines:
        yield _INKS.text(fitted(f"· {words}", x2 - x1, PLAIN), (x1, y), across=Across.TOP)
        y -= PITCH


def _figures(told: Story, box: Bounds) -> Iterator[Node]:
    """Price, weight and load."""
    x1, _, x2, y2 = box
    rows = [*(told.price_lines or (("Price", told.price),)), *_shown_figures(told)]
    y = y2
    for name, value in rows:
        bold = Face.BOLD if name in {"Total", "Price"} else Face.REGULAR
        lines = wrapped(value, 0.68 * (x2 - x1), PLAIN, bold)
        yield _INKS.text(name, (x1, y), across=Across.TOP, face=bold)
        for words in lines:
            yield _INKS.text(words, (x2, y), PLAIN, Along.RIGHT, Across.TOP, face=bold)
            y -= PITCH


def _shown_figures(told: Story) -> list[tuple[str, str]]:
    return [figure for figure in told.figures if figure[0] in {"Empty weight", "Electrical load"}]


def decision_page(project: Project, stories: tuple[Story, ...], paper: Paper) -> Body:
    """What must be read, which option is chosen, and who signs."""
    x1, y1, x2, y2 = room(paper)
    half = (x2 - x1 - GAP) / 2
    nodes = [
        *_paragraphs("Please read", (*BEFORE_CUTTING[1:], *BEFORE_FLIGHT), (x1, y1, x1 + half, y2)),
        *_choices(stories, (x1 + half + GAP, y1, x2, y2)),
        *_signatures(project, (x1 + half + GAP, y1, x2, y1 + 52.0)),
    ]
    return Body("Cautions and decision", tuple(nodes))


def _paragraphs(title: str, texts: tuple[str, ...], box: Bounds) -> Iterator[Node]:
    x1, _, x2, y2 = box
    yield _INKS.text(title, (x1, y2), LARGE, across=Across.TOP, face=Face.BOLD)
    y = y2 - 7.0
    for text in texts:
        for i, words in enumerate(wrapped(text, x2 - x1 - 4.0, PLAIN)):
            yield _INKS.text(f"· {words}" if i == 0 else f"  {words}", (x1, y), across=Across.TOP)
            y -= PITCH
        y -= 1.2


def _choices(stories: tuple[Story, ...], box: Bounds) -> Iterator[Node]:
    x1, _, x2, y2 = box
    room_for = x2 - x1 - 8.0
    yield _INKS.text("I choose", (x1, y2), LARGE, across=Across.TOP, face=Face.BOLD)
    y = y2 - 8.0
    for told in (s for s in stories if s.option.id != AS_FOUND):
        mark = f"{told.price} · fingerprint {told.fingerprint}"
        yield Path((box_outline((x1, y - 4.0, x1 + 4.0, y)),), pen=_INKS.narrow)
        yield _INKS.text(fitted(told.option.name, room_for, PLAIN), (x1 + 7.0, y - 0.6), across=Across.TOP)
        y -= 0.6 + PITCH
        yield _INKS.text(fitted(mark, room_for, PLAIN), (x1 + 7.0, y), across=Across.TOP, colour=_INKS.note)
        for words in _open(told):
            y -= PITCH
            yield _INKS.text(words, (x1 + 7.0, y), across=Across.TOP, face=Face.BOLD, colour=_INKS.alarm)
        y -= 2.0 * PITCH


def _open(told: Story) -> Iterator[str]:
    """What stands against cutting and against building."""
    if told.cut_errors:
        yield f"{counted(told.cut_errors, 'error')} in the fit: not to be cut as drawn."
    if told.plan_errors:
        yield f"{counted(told.plan_errors, 'error')} in the plan: not ready."


def _signatures(project: Project, box: Bounds) -> Iterator[Node]:
    """Two lines to sign on, each with room for a name and a date."""
    x1, y1, x2, _ = box
    who = (("Owner", project.aircraft.owner), ("Shop", project.shop))
    for i, (role, name) in enumerate(who):
        y = y1 + 34.0 - 22.0 * i
        rule = (
            line(Point(x1, y), Point(x1 + 0.66 * (x2 - x1), y)),
            line(Point(x2 - 0.28 * (x2 - x1), y), Point(x2, y)),
        )
        yield Path(rule, pen=_INKS.narrow)
        yield _INKS.text(f"{role}{f': {name}' if name else ''}, signature", (x1, y - 1.2), across=Across.TOP)
        yield _INKS.text("Date", (x2 - 0.28 * (x2 - x1), y - 1.2), across=Across.TOP)


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
