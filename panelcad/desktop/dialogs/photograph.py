"""A photograph of the plate as its surface: chosen, set straight and to scale by four places, seen on the canvas."""

from pathlib import Path

from PySide6.QtGui import QImageReader
from PySide6.QtWidgets import QFileDialog, QHBoxLayout, QSizePolicy, QWidget

from panelcad.desktop.dialogs.edit_dialog import EditDialog
from panelcad.desktop.dialogs.entries import LengthEntry
from panelcad.desktop.help.topics import Dialog
from panelcad.desktop.photo_board import PhotoBoard
from panelcad.desktop.window_parts import Parts
from panelcad.editing.look import look_changed
from panelcad.geometry.point import Point
from panelcad.intake.photograph import KnownPoint, rectified
from panelcad.model.project import Project

_KINDS = "Photographs (*.jpg *.jpeg *.png)"
_CORNERS = ("lower left", "lower right", "upper right", "upper left")


def plate_photograph(parts: Parts) -> None:
    """Ask for a photograph and for the places of four markers on it."""
    name, _ = QFileDialog.getOpenFileName(parts.window, "A photograph of the panel", str(parts.desk.folder()), _KINDS)
    if name:
        set_straight(parts, Path(name), parts.window)


def set_straight(parts: Parts, file: Path, parent: QWidget) -> None:
    """Let the person put the markers where the places in the fields are."""
    bench = parts.bench
    reader = QImageReader(str(file))
    reader.setAutoTransform(True)
    image = reader.read()
    if image.isNull():
        parts.asking.tell(
            "The photograph cannot be used", f"{file}: {reader.errorString()}; a PNG or JPEG is expected."
        )
        return
    project, option = bench.document.project, bench.document.option
    plate = bench.stage.layout().plate(bench.stage.plate_id)
    if not bench.stage.view.keeps_pixmaps:
        bench.stage.look_from("look-day")
    dialog = EditDialog(bench, "Photograph of the panel", "Set", parent, at=Dialog.PHOTOGRAPH)
    board = PhotoBoard(image)
    dialog.form.words(
        "Put each marker on a place you have measured, such as a corner of the sheet or the middle of a screw, and type"
        " where that place is. Four places far apart give the best fit."
    )
    dialog.form.add(board)
    dialog.form.column.setStretchFactor(board, 1)
    dialog.form.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
    dialog.resize(960, 760)
    fields = _fields(dialog, plate.outline.bounds)
    dialog.form.words("What stands before or behind the sheet is displaced a little: measure nothing from it.", "faint")
    board.moved.connect(dialog.preview)

    def changed() -> Project:
        places = (Point(x.mm, y.mm) for x, y in fields)
        known = [KnownPoint(pixel, place) for pixel, place in zip(board.pixels, places, strict=True)]
        return look_changed(project, option.id, photograph=rectified(file, plate.plate.id, plate.outline, known))

    dialog.ask(changed)


def take_away(parts: Parts) -> None:
    """The finish shows again."""
    parts.bench.edit("Take the photograph away", lambda project, option: look_changed(project, option, photograph=None))


def _fields(dialog: EditDialog, bounds: tuple[float, float, float, float]) -> list[tuple[LengthEntry, LengthEntry]]:
    x1, y1, x2, y2 = bounds
    corners = zip(_CORNERS, ((x1, y1), (x2, y1), (x2, y2), (x1, y2)), strict=True)
    return [_place(dialog, i, name, Point(x, y)) for i, (name, (x, y)) in enumerate(corners, 1)]


def _place(dialog: EditDialog, number: int, corner: str, at: Point) -> tuple[LengthEntry, LengthEntry]:
    """A row with the x and y of one marker."""
    unit = dialog.bench.unit
    entries = LengthEntry(f"Marker {number}, x", at.x, unit), LengthEntry(f"Marker {number}, y", at.y, unit)
    row = QWidget()
    side_by_side = QHBoxLayout(row)
    side_by_side.setContentsMargins(0, 0, 0, 0)
    for entry in entries:
        entry.edited.connect(dialog.preview)
        side_by_side.addWidget(entry)
    dialog.form.row(f"{number} {corner}, x and y, {unit.value}", row)
    return entries
