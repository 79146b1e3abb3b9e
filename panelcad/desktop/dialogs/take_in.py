"""Taking in a DXF: the largest contour becomes the plate's outline, what lies inside it cuts, if that is wanted."""

from pathlib import Path

from PySide6.QtWidgets import QFileDialog

from panelcad.desktop.window_parts import Parts
from panelcad.editing.take_in import TakenOpening, TakenSheet, take_in_sheet
from panelcad.errors import PanelcadError
from panelcad.intake.dxf_file import unit_stated_in
from panelcad.intake.dxf_outline import TakenInPanel, read_panel
from panelcad.units import LengthUnit

_UNITS = {"&millimetres": LengthUnit.MM, "&inches": LengthUnit.INCH}


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
    both, outline, leave = "Outline and &openings", "&Outline only", "Cancel"
    count = len(read.openings)
    answer = both
    if count:
        question = f"'{file.name}' holds an outline and {count} contour{'s' if count > 1 else ''} inside it."
        detail = "The drawing's zero becomes the plate's datum. Openings become cuts; give them equipment afterwards."
        answer = parts.asking.choice("Take in a drawing", question, detail, both, outline, leave)
    if answer == leave:
        return
    openings = tuple(TakenOpening(each.shape, each.x, each.y) for each in read.openings) if answer == both else ()
    sheet = TakenSheet(read.outline, openings, file.name)
    bench = parts.bench
    plate_id = bench.stage.plate_id
    bench.edit("Take in a drawing", lambda project, option: take_in_sheet(project, option, plate_id, sheet))
