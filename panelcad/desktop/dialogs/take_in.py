"""Taking in a DXF: the largest contour becomes the plate's outline, what lies inside it cuts, if that is wanted."""

from enum import Enum, auto
from pathlib import Path
from typing import Final

from PySide6.QtWidgets import QFileDialog

from panelcad.desktop.window_parts import Parts
from panelcad.editing.found_outline import is_just_begun
from panelcad.editing.take_in import TakenOpening, TakenSheet, take_in_found, take_in_sheet
from panelcad.errors import PanelcadError
from panelcad.intake.dxf_file import unit_stated_in
from panelcad.intake.dxf_outline import TakenInPanel, read_panel
from panelcad.model.project import AS_FOUND, Project
from panelcad.units import LengthUnit


class _Wanted(Enum):
    """What becomes of the drawing's contours."""

    FOUND = auto()
    SHEET = auto()
    OUTLINE = auto()


_OF_A_SHEET: Final = {"Outline and &openings": _Wanted.SHEET, "Outline &only": _Wanted.OUTLINE}
_OF_A_PANEL: Final = {
    "&As found": _Wanted.FOUND,
    "A &new sheet": _Wanted.SHEET,
    "Outline &only": _Wanted.OUTLINE,
}
_DATUM: Final = "The drawing's zero becomes the plate's datum."
_OPENINGS: Final = f"{_DATUM} Openings become cuts; give them equipment afterwards."
_FOUND: Final = (
    "As found: the openings are cut already, in the panel as found and in this option. A new sheet: they are cut anew, "
    f"in this option only; the panel as found takes the outline. {_DATUM}"
)
_UNITS: Final = {"&millimetres": LengthUnit.MM, "&inches": LengthUnit.INCH}


def take_in_drawing(parts: Parts) -> None:
    """Ask for a DXF and make it the outline of the plate on the screen."""
    start = str(parts.desk.folder())
    name, _ = QFileDialog.getOpenFileName(parts.window, "Take in a drawing", start, "DXF drawings (*.dxf *.DXF)")
    if name:
        take_in_file(parts, Path(name))


def take_in_file(parts: Parts, file: Path) -> None:
    """Read the file; its unit is asked for where it states none."""
    try:
        unit = unit_stated_in(file) or _asked_unit(parts, file)
        if unit is not None:
            _take_in(parts, file, read_panel(file, unit))
    except PanelcadError as fault:
        parts.asking.tell("Nothing was taken in", str(fault))


def _asked_unit(parts: Parts, file: Path) -> LengthUnit | None:
    question = f"Which unit are the numbers in '{file.name}' in?"
    answer = parts.asking.choice("Take in a drawing", question, "The file does not say.", *_UNITS, "Cancel")
    return _UNITS.get(answer)


def _take_in(parts: Parts, file: Path, read: TakenInPanel) -> None:
    wanted = _asked_for(parts, file, read)
    if wanted is None:
        return
    openings = tuple(TakenOpening(each.shape, each.x, each.y) for each in read.openings)
    sheet = TakenSheet(read.outline, () if wanted is _Wanted.OUTLINE else openings, file.name)
    bench = parts.bench
    plate_id = bench.stage.plate_id

    def taken_in(project: Project, option_id: str) -> Project:
        if wanted is _Wanted.FOUND or option_id == AS_FOUND:
            return take_in_found(project, plate_id, sheet)
        return take_in_sheet(project, option_id, plate_id, sheet)

    before = bench.document.project.as_found
    if bench.edit("Take in a drawing", taken_in) and bench.document.project.as_found is before:
        bench.told.emit(f"Taken into '{bench.document.option.name}'; the panel as found stays as it was")


def _asked_for(parts: Parts, file: Path, read: TakenInPanel) -> _Wanted | None:
    """What is taken in; None for nothing. There is no question where the drawing is an outline alone."""
    count = len(read.openings)
    if not count:
        return _Wanted.OUTLINE
    document, plate_id = parts.bench.document, parts.bench.stage.plate_id
    question = f"'{file.name}' holds an outline and {count} contour{'s' if count > 1 else ''} inside it."
    detail, answers = _OPENINGS, _OF_A_SHEET
    if is_just_begun(document.project, document.option, plate_id):
        question, detail, answers = f"{question} Is it the panel that is in the aircraft?", _FOUND, _OF_A_PANEL
    return answers.get(parts.asking.choice("Take in a drawing", question, detail, *answers, "Cancel"))
