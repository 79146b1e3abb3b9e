"""The proposal's last page: what must be read, which option is chosen, and who signs."""

from collections.abc import Iterator
from typing import Final

from panelcad.drawing.box import box_outline
from panelcad.drawing.cautions import BEFORE_CUTTING, BEFORE_FLIGHT
from panelcad.drawing.display import Across, Bounds, Face, Node, Path
from panelcad.drawing.inks import INKS, LARGE, PLAIN, Ink, Inks
from panelcad.drawing.lettering import fitted, wrapped
from panelcad.drawing.paper import Paper
from panelcad.drawing.table import PITCH
from panelcad.geometry.contour import Contour
from panelcad.geometry.point import Point
from panelcad.geometry.track import line
from panelcad.model.project import AS_FOUND, Project
from panelcad.outputs.proposal_pages import GAP, MARK, Body, room
from panelcad.outputs.story import Story

_INKS: Final[Inks] = INKS[Ink.COLOUR]
_WHAT_A_MARK_IS: Final = (
    "The mark of a layout changes with every change of its geometry: it proves that what is cut is what was chosen."
)


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
        mark = f"{told.price} · {MARK.lower()} {told.fingerprint}"
        yield _barred(x1, y) if told.open_errors else Path((_box(x1, y),), pen=_INKS.narrow)
        yield _INKS.text(fitted(told.option.name, room_for, PLAIN), (x1 + 7.0, y - 0.6), across=Across.TOP)
        y -= 0.6 + PITCH
        yield _INKS.text(fitted(mark, room_for, PLAIN), (x1 + 7.0, y), across=Across.TOP, colour=_INKS.note)
        for words in _refusal(told, room_for):
            y -= PITCH
            yield _INKS.text(words, (x1 + 7.0, y), across=Across.TOP, face=Face.BOLD, colour=_INKS.alarm)
        y -= 2.0 * PITCH
    for words in wrapped(_WHAT_A_MARK_IS, x2 - x1, PLAIN):
        yield _INKS.text(words, (x1, y), across=Across.TOP, colour=_INKS.note)
        y -= PITCH


def _barred(x: float, top: float) -> Path:
    """A bar in place of a box: nothing to be ticked."""
    return Path((line(Point(x, top - 2.0), Point(x + 4.0, top - 2.0)),), pen=_INKS.pen(1.0, colour=_INKS.alarm))


def _box(x: float, top: float) -> Contour:
    return box_outline((x, top - 4.0, x + 4.0, top))


def _refusal(told: Story, width: float) -> list[str]:
    """What stands against choosing the option."""
    if not told.open_errors:
        return []
    return wrapped(f"{told.open_errors}. Not to be chosen before its errors are mended.", width, PLAIN, Face.BOLD)


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
