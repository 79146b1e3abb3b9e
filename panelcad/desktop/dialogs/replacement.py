"""Another cutout in the place of each thing that is selected."""

from PySide6.QtWidgets import QWidget

from panelcad.desktop.dialogs.cutout_choice import CutoutChoice
from panelcad.desktop.dialogs.edit_dialog import EditDialog
from panelcad.desktop.help.topics import Dialog
from panelcad.desktop.workbench import Workbench
from panelcad.editing.swap import swap
from panelcad.errors import EditRefused
from panelcad.model.cutout import Cutout
from panelcad.model.project import Project
from panelcad.model.shape import Circle
from panelcad.units import LengthUnit, format_fraction, format_number


def replace_in_place(bench: Workbench, parent: QWidget) -> None:
    """All that is selected, as one step; what fits the openings that are there is offered first."""
    parts = _replaceable(bench)
    what = bench.name_of(parts[0]) if len(parts) == 1 else f"{len(parts)} things"
    dialog = EditDialog(bench, f"Replace {what}", "Replace", parent, at=Dialog.REPLACE)
    present = _present(bench, parts[0])
    choice = CutoutChoice("Replace with", sorted(bench.catalogue.cutouts.values(), key=lambda one: _fit(one, present)))
    choice.choose(present.name if present is not None else "")
    dialog.form.row("&With", choice)
    size = dialog.form.words("")
    dialog.form.words("Each keeps its place, name and group; metal that is cut already is enlarged.", "faint")
    choice.currentTextChanged.connect(lambda _: dialog.preview())
    document = bench.document
    start, option_id = document.project, document.option_id

    def replaced() -> Project:
        cutout = choice.cutout
        if cutout is None:
            raise EditRefused(f"The library has no '{choice.currentText()}'; choose a cutout of the list.")
        size.setText(_other_size(cutout, present, bench.unit))
        project = start
        for part in parts:
            project = swap(project, option_id, part, cutout)
        return project

    if dialog.ask(replaced):
        bench.told.emit(f"{len(parts)} thing{'s' if len(parts) > 1 else ''} replaced")


def _replaceable(bench: Workbench) -> tuple[str, ...]:
    """The items and cuts that are selected; the current thing where none is either."""
    option = bench.document.option
    known = {item.id for item in option.items} | {cut.id for plate in option.plates for cut in plate.cuts}
    return tuple(one for one in bench.selection.ids if one in known) or (bench.selection.current,)


def _present(bench: Workbench, part: str) -> Cutout | None:
    """The cutout that is there, None where a cut was made to measure."""
    document = bench.document
    fitted = {item.id: item.cutout for item in document.option.items}
    cut = {cut.id: cut.cutout for plate in document.option.plates for cut in plate.cuts}
    name = (cut | fitted).get(part)
    return document.project.cutout(name) if name is not None else None


def _fit(cutout: Cutout, present: Cutout | None) -> int:
    """0 for what fits opening and screw holes, 1 for what fits the opening, 2 for everything else."""
    if present is None or _openings(cutout) != _openings(present):
        return 2
    return 0 if cutout.holes == present.holes else 1


def _openings(cutout: Cutout) -> tuple[object, ...]:
    return tuple((opening.shape, opening.x, opening.y) for opening in cutout.openings)


def _other_size(cutout: Cutout, present: Cutout | None, unit: LengthUnit) -> str:
    if present is None or not (cutout.openings and present.openings) or _openings(cutout) == _openings(present):
        return ""
    return f"Opening {_size(cutout, unit)} in place of {_size(present, unit)}."


def _size(cutout: Cutout, unit: LengthUnit) -> str:
    """How large the first opening is: its diameter, or its width and height."""
    shape = cutout.openings[0].shape
    if isinstance(shape, Circle):
        return f"{_figure(shape.diameter, unit)} {unit.value}"
    x1, y1, x2, y2 = shape.contour().bounds
    return f"{_figure(x2 - x1, unit)} × {_figure(y2 - y1, unit)} {unit.value}"


def _figure(mm: float, unit: LengthUnit) -> str:
    fraction = format_fraction(mm) if unit is LengthUnit.INCH else "."
    return format_number(mm, unit) if "." in fraction else fraction
