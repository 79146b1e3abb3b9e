"""Arrangements as the trade knows them: a stack of rack units, a row of switches or breakers, the basic T."""

from typing import Final

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QAbstractItemView, QListWidget, QListWidgetItem, QPushButton, QSpinBox, QWidget

from panelcad.desktop.dialogs.cutout_choice import CutoutChoice
from panelcad.desktop.dialogs.edit_dialog import EditDialog
from panelcad.desktop.dialogs.entries import LengthEntry
from panelcad.desktop.dialogs.place_entry import PlaceEntry
from panelcad.desktop.help.topics import Dialog
from panelcad.desktop.tools.put import Found, free_place
from panelcad.desktop.workbench import Workbench
from panelcad.editing.basic_t import REQUIRED, Seat, pilots_line, place_basic_t
from panelcad.editing.made import Made
from panelcad.editing.row import Row, place_row
from panelcad.editing.stack import place_stack
from panelcad.errors import EditRefused, PanelcadError
from panelcad.geometry.point import Point
from panelcad.model.cutout import Cutout
from panelcad.units import LengthUnit

_SEATS: Final = {
    Seat.AIRSPEED: ("Airspeed", "airspeed indicator"),
    Seat.ATTITUDE: ("Attitude", "attitude indicator"),
    Seat.ALTITUDE: ("Altitude", "altimeter"),
    Seat.TURN: ("Turn", "turn coordinator"),
    Seat.DIRECTION: ("Direction", "directional gyro"),
    Seat.VERTICAL_SPEED: ("Vertical speed", "vertical speed"),
}
"""What each seat is called, and the words that find an instrument for it."""

_BELOW_THE_TOP: Final = 50.8
_HALF_A_ROW: Final = 44.45
"""Half the pitch of two rows of 3-1/8 in instruments: so far the upper row stands above the middle."""


def _middle(bench: Workbench) -> Point:
    """The middle of the sheet, on the pilot's centre line where one is entered."""
    laid = bench.stage.layout().plate(bench.stage.plate_id)
    x1, y1, x2, y2 = laid.outline.bounds
    pilot = pilots_line(bench.document.project, laid.plate)
    return Point((x1 + x2) / 2 if pilot is None else pilot, (y1 + y2) / 2)


def basic_t(bench: Workbench, parent: QWidget) -> None:
    """Six round instruments: the four that the regulation places, and the lower corners."""
    dialog = EditDialog(bench, "Place the basic T", "Place", parent, at=Dialog.BASIC_T)
    choices = {seat: _seat(bench, dialog, seat) for seat in _SEATS}
    gap = LengthEntry("Gap between bezels", bench.document.project.profile.web_advised / 2, bench.unit)
    middle = _middle(bench)
    where = PlaceEntry(dialog, middle.moved(0.0, _HALF_A_ROW))
    dialog.form.row(f"&Gap, {bench.unit.value}", gap)
    gap.edited.connect(dialog.preview)
    dialog.form.words(
        "Airspeed, attitude, altitude and direction stand as 14 CFR 23.1321(d) asked before 2017; turn and vertical "
        "speed at the lower corners are common practice. x and y are the attitude indicator's.",
        "faint",
    )
    document = bench.document

    def place() -> Made:
        found = {seat: choice.cutout for seat, choice in choices.items()}
        cutouts: dict[Seat, Cutout] = {seat: cutout for seat, cutout in found.items() if cutout is not None}
        plate = bench.stage.plate_id
        return _said(bench, place_basic_t(document.project, document.option_id, plate, cutouts, where.at, gap.mm))

    dialog.ask(place)


def _said(bench: Workbench, made: Made) -> Made:
    """The same, each item known as equipment where its cutout says which."""
    return Made(bench.said(made.project, made.ids), made.ids)


def _seat(bench: Workbench, dialog: EditDialog, seat: Seat) -> CutoutChoice:
    title, words = _SEATS[seat]
    choice = CutoutChoice(title, bench.catalogue.cutouts.values(), "" if seat in REQUIRED else "none")
    found = [cutout for cutout in bench.catalogue.search(words) if "3-1-8" in cutout.family]
    choice.choose(found[0].name if found else "")
    choice.currentTextChanged.connect(lambda _: dialog.preview())
    dialog.form.row(title, choice)
    return choice


def row_of(bench: Workbench, parent: QWidget) -> None:
    """A row of switches, breakers or anything else, with the least pitch that leaves nothing to find."""
    dialog = EditDialog(bench, "Place a row", "Place", parent, at=Dialog.ROW)
    choice = CutoutChoice("Cutout", bench.catalogue.cutouts.values())
    found = bench.catalogue.search("toggle switch")
    choice.choose(found[0].name if found else "")
    count = QSpinBox()
    count.setRange(2, 100)
    count.setValue(6)
    pitch = LengthEntry("Pitch", 0.0, bench.unit)
    dialog.form.row("&Cutout", choice)
    dialog.form.row("&How many", count)
    dialog.form.row(f"&Pitch, {bench.unit.value}", pitch)
    where = PlaceEntry(dialog, _middle(bench))
    dialog.form.words("x and y are the first one's; a negative pitch goes left.", "faint")
    begun = dialog.form.words("", "faint")
    for entry in where.figures:
        entry.edited.connect(begun.hide)

    def propose() -> None:
        """A pitch and a place for what is chosen; what was typed stays."""
        cutout = choice.cutout
        if cutout is None:
            return
        if not pitch.is_typed:
            pitch.show_mm(_pitch_of(bench, cutout))
        if not (pitch.is_typed or where.is_typed):
            start = _free_start(bench, cutout, count.value(), pitch.mm)
            where.show(start.at)
            begun.setText(start.words)
            begun.setVisible(bool(start.words))

    propose()
    for signal in (choice.currentTextChanged, count.valueChanged):
        signal.connect(lambda *_: propose())
    for signal in (choice.currentTextChanged, count.valueChanged, pitch.edited):
        signal.connect(lambda *_: dialog.preview())
    document = bench.document

    def place() -> Made:
        row = Row(where.at, count.value(), pitch.mm)
        plate = bench.stage.plate_id
        return _said(bench, place_row(document.project, document.option_id, plate, _chosen(choice), row))

    dialog.ask(place)


def _pitch_of(bench: Workbench, cutout: Cutout) -> float:
    """The least pitch for it, or 1 in or 25 mm for what does not get on with its like at any."""
    from panelcad.checks.pitch import least_pitch  # noqa: PLC0415 - checks load shapely, which waits until it is asked

    project = bench.document.project
    plate = bench.document.option.plate(bench.stage.plate_id)
    return least_pitch(project, plate, cutout) or (25.4 if bench.unit is LengthUnit.INCH else 25.0)


def _free_start(bench: Workbench, cutout: Cutout, count: int, pitch: float) -> Found:
    """Where a row is free, as near as can be to where the pointer was last."""
    document, plate_id = bench.document, bench.stage.plate_id
    try:
        trial = place_row(document.project, document.option_id, plate_id, cutout, Row(Point(0.0, 0.0), count, pitch))
    except PanelcadError:
        return Found(_middle(bench), "")
    return free_place(bench, trial)


def _chosen(choice: CutoutChoice) -> Cutout:
    cutout = choice.cutout
    if cutout is None:
        raise EditRefused(f"The library has no '{choice.currentText()}'; choose a cutout of the list.")
    return cutout


class _Units(QListWidget):
    """The units of a stack from above; drag them into another order."""

    def __init__(self) -> None:
        super().__init__()
        self.setAccessibleName("Units from above")
        self.setDragDropMode(QAbstractItemView.DragDropMode.InternalMove)
        self.setMaximumHeight(150)

    def put(self, cutout: Cutout) -> None:
        entry = QListWidgetItem(cutout.title)
        entry.setData(Qt.ItemDataRole.UserRole, cutout)
        self.addItem(entry)

    @property
    def cutouts(self) -> list[Cutout]:
        return [self.item(i).data(Qt.ItemDataRole.UserRole) for i in range(self.count())]


def stack_of(bench: Workbench, parent: QWidget) -> None:
    """Rack units one above the other in one opening, which follows when one is taken out or changed."""
    dialog = EditDialog(bench, "Place a stack", "Place", parent, at=Dialog.STACK)
    racks = [cutout for cutout in bench.catalogue.cutouts.values() if cutout.rack is not None]
    choice, units = CutoutChoice("Rack unit", racks, keeps_enter=True), _Units()
    add, take = QPushButton("&Add below"), QPushButton("&Take out")
    for button in (add, take):
        button.setAutoDefault(False)
    dialog.form.row("Rack &unit", choice)
    dialog.form.row("", add)
    dialog.form.row("From above", units)
    dialog.form.row("", take)
    laid = bench.stage.layout().plate(bench.stage.plate_id)
    x1, _, x2, top = laid.outline.bounds
    where = PlaceEntry(dialog, Point((x1 + x2) / 2, top - _BELOW_THE_TOP), "&y of the upper edge")
    dialog.form.words("Enter adds the unit that is named below the others. x is the stack's middle.", "faint")
    document = bench.document

    def put() -> None:
        choice.take_first()
        try:
            units.put(_chosen(choice))
        except EditRefused as refusal:
            dialog.problem.setText(str(refusal))
        else:
            dialog.preview()
        choice.type_over()

    def take_out() -> None:
        units.takeItem(units.currentRow())
        dialog.preview()

    add.clicked.connect(put)
    choice.entered.connect(put)
    take.clicked.connect(take_out)
    units.model().rowsMoved.connect(lambda *_: dialog.preview())

    def place() -> Made:
        plate = bench.stage.plate_id
        made = place_stack(document.project, document.option_id, plate, units.cutouts, *where.at)
        return _said(bench, made)

    dialog.ask(place)
