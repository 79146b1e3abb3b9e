"""The full-size paper template of a plate, as a PDF for any printer."""

from dataclasses import dataclass
from pathlib import Path
from typing import Final

from panelcad.drawing.sheet import Sheet
from panelcad.drawing.subject import Subject
from panelcad.drawing.template import OVERLAP, template_sheets
from panelcad.drawing.tiles import PRINTERS, Printer
from panelcad.errors import UnknownName
from panelcad.model.project import Option, Project
from panelcad.outputs.drawing import DrawingOptions, drawn_subject, properties
from panelcad.outputs.pdf import write_pdf
from panelcad.units import LengthUnit

_USUAL: Final = {LengthUnit.MM: "A4", LengthUnit.INCH: "Letter"}
_PLAIN: Final = DrawingOptions()


@dataclass(frozen=True)
class TemplateOptions:
    """`printer` None is the usual office paper with the project's unit; `drawing` as for the drawing."""

    printer: Printer | None = None
    overlap: float = OVERLAP
    drawing: DrawingOptions = _PLAIN


_DEFAULTS: Final = TemplateOptions()


def template_options(paper: str) -> TemplateOptions:
    """The options for a printer's paper by its name; for an empty name the usual paper. Raises `UnknownName`."""
    if not paper:
        return _DEFAULTS
    by_name = {name.lower(): printer for name, printer in PRINTERS.items()}
    if paper.lower() not in by_name:
        raise UnknownName("paper", paper, tuple(PRINTERS))
    return TemplateOptions(printer=by_name[paper.lower()])


def export_template(
    project: Project, option: Option, plate_id: str, path: Path | str, options: TemplateOptions = _DEFAULTS
) -> None:
    """Write the template of one plate. Raises `UnknownName` for a plate the option does not have."""
    shown = drawn_subject(project, option, options.drawing)
    write_pdf(path, template_pages(shown, plate_id, options), properties(shown, "Full-size template"))


def template_pages(shown: Subject, plate_id: str, options: TemplateOptions = _DEFAULTS) -> list[Sheet]:
    printer = options.printer or PRINTERS[_USUAL[shown.unit]]
    return template_sheets(shown, shown.laid.plate(plate_id), printer, options.overlap)
