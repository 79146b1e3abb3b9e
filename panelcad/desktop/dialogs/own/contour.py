"""A free contour from somebody's DXF: a button, and below it what was taken or why nothing was."""

from pathlib import Path

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QFileDialog, QLabel, QPushButton, QVBoxLayout, QWidget

from panelcad.editing.outline import crosses_itself
from panelcad.errors import PanelcadError, UnusableInput
from panelcad.model.shape import Shape
from panelcad.units import LengthUnit, format_length, format_number

_NAMES = {LengthUnit.INCH: "inches", LengthUnit.MM: "millimetres"}


class ContourFromDxf(QWidget):
    """`taken` with the shape about its own middle; a drawing without a unit is taken in the form's."""

    taken = Signal(object)

    def __init__(self, unit: LengthUnit) -> None:
        super().__init__()
        self._unit = unit
        self.button = QPushButton("Contour from a &DXF…")
        self.button.setAutoDefault(False)
        self.button.clicked.connect(self._ask)
        self.said = QLabel()
        self.said.setWordWrap(True)
        self.said.hide()
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self.button)
        column.addWidget(self.said)

    def _ask(self) -> None:
        name, _ = QFileDialog.getOpenFileName(self, "Contour from a DXF", "", "DXF drawings (*.dxf *.DXF)")
        if name:
            self.take(Path(name))

    def take(self, path: Path) -> None:
        """The largest contour of the drawing; what is wrong with it is said below the button."""
        try:
            shape, words = _largest(path, self._unit)
        except PanelcadError as refusal:
            self._say(str(refusal), "wrong")
            return
        self._say(words, "faint")
        self.taken.emit(shape)

    def _say(self, words: str, role: str) -> None:
        self.said.setText(words)
        self.said.setProperty("role", role)
        self.said.style().unpolish(self.said)
        self.said.style().polish(self.said)
        self.said.show()


def _largest(path: Path, unit: LengthUnit) -> tuple[Shape, str]:
    """The shape and what is to be known of it. Raises `UnusableInput`."""
    from panelcad.intake.dxf_file import unit_stated_in  # noqa: PLC0415 - loads where a drawing is taken in
    from panelcad.intake.dxf_outline import read_contours  # noqa: PLC0415

    contours = read_contours(path, unit)
    shape = max(contours, key=lambda each: each.shape.contour().area).shape
    if crosses_itself(shape):
        raise UnusableInput(str(path), "", "its largest contour crosses itself", "closed contours of lines and arcs")
    x1, y1, x2, y2 = shape.contour().bounds
    words = f"{path.name}: {format_number(x2 - x1, unit)} × {format_length(y2 - y1, unit)}"
    if len(contours) > 1:
        words += f", the largest of {len(contours)} contours; the others are not taken"
    if unit_stated_in(path) is None:
        words += f". The file names no unit; its figures are read as {_NAMES[unit]}"
    return shape, f"{words}."
