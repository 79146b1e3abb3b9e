"""The drawing of an option as one PDF: its sheets in order, bordered, numbered and bookmarked."""

from dataclasses import dataclass
from pathlib import Path
from typing import Final

from panelcad.checks.report import CheckReport
from panelcad.checks.run import check
from panelcad.drawing.drawing_set import drawing_pages
from panelcad.drawing.inks import Ink
from panelcad.drawing.page import bordered
from panelcad.drawing.paper import Paper, Series, drawing_papers
from panelcad.drawing.sheet import Sheet
from panelcad.drawing.subject import Look, PlateSection, Subject, subject
from panelcad.errors import UnknownName
from panelcad.model.project import Option, Project
from panelcad.model.revision import Stamp, stamp
from panelcad.outputs.pdf import Properties, write_pdf


@dataclass(frozen=True)
class DrawingOptions:
    """`series` None is usual with the project's unit; `stamp` None is what the release log says of the option."""

    series: Series | None = None
    largest: Paper | None = None
    """The largest sheet that can be printed; its series is then taken."""
    ink: Ink = Ink.COLOUR
    sections: tuple[PlateSection, ...] = ()
    """Those that were asked for; the usual ones run through what reaches deepest."""
    stamp: Stamp | None = None
    report: CheckReport | None = None
    """The findings where they are known already; else the option is checked."""
    plates: tuple[str, ...] = ()
    """The ids of the only plates to be shown; none for all that are worked on."""
    notes: tuple[str, ...] = ()
    """Sentences about the files that are issued with it."""


_DEFAULTS: Final = DrawingOptions()
_INKS: Final = {"colour": Ink.COLOUR, "black": Ink.BLACK}


def export_drawing(project: Project, option: Option, path: Path | str, options: DrawingOptions = _DEFAULTS) -> None:
    """Write the drawing set; an older file stays whole until the new one is complete."""
    shown = drawn_subject(project, option, options)
    write_pdf(path, drawing_sheets(shown), properties(shown, "Drawing"))


def drawing_options(ink: str, largest: str = "", sections: tuple[PlateSection, ...] = ()) -> DrawingOptions:
    """The options for an ink, 'colour' or 'black', and the largest sheet, such as 'A3', by their words.

    Raises `UnknownName`.
    """
    if ink.lower() not in _INKS:
        raise UnknownName("ink", ink, tuple(_INKS))
    sheets = {paper.name.lower(): paper for series in Series for paper in drawing_papers(series)}
    if largest and largest.lower() not in sheets:
        raise UnknownName("sheet", largest, tuple(paper.name for paper in sheets.values()))
    return DrawingOptions(ink=_INKS[ink.lower()], largest=sheets.get(largest.lower()), sections=sections)


def drawn_subject(project: Project, option: Option, options: DrawingOptions = _DEFAULTS) -> Subject:
    """The option checked, stamped and made ready for its papers."""
    report = options.report or check(project, option)
    look = Look(options.series, options.largest, options.plates, options.notes, options.sections)
    return subject(report, options.stamp or stamp(project, option), options.ink, look)


def drawing_sheets(shown: Subject) -> list[Sheet]:
    return bordered(shown, drawing_pages(shown))


def properties(shown: Subject, what: str) -> Properties:
    """The properties of a paper of this option; its date is the release's."""
    project, mark = shown.project, shown.stamp
    title = f"{what}: {project.title}, {shown.option.name}"
    keywords = (
        f"{project.aircraft.registration}, {shown.option.id}, revision {mark.revision or 'draft'}, {mark.fingerprint}"
    )
    title = f"{title}, {shown.part}" if shown.part else title
    about = Properties(title, project.drawn_by or project.shop, f"{what} of an instrument panel", keywords)
    return Properties(about.title, about.author, about.subject, about.keywords, mark.on) if mark.on else about
