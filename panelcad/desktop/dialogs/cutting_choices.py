"""How cutting files are written: version, unit, face, origin, what is left out, and what the shop's machine wants."""

from collections.abc import Iterable
from typing import Final

from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QComboBox, QLineEdit

from panelcad.desktop.choice_box import ChoiceBox
from panelcad.desktop.dialogs.ticks import Ticks
from panelcad.desktop.panes.form import Form
from panelcad.model.project import Project
from panelcad.outputs.dxf_choices import cutter_diameter
from panelcad.outputs.dxf_options import (
    Content,
    CornerRelief,
    DxfOptions,
    DxfVersion,
    FaceUp,
    LeadIns,
    Origin,
    SmallHoles,
)
from panelcad.units import LengthUnit

_VERSIONS: Final = {
    DxfVersion.R2010: "R2010, usual",
    DxfVersion.R12: "R12, for old controls; states no unit",
    DxfVersion.R2000: "R2000",
    DxfVersion.R2018: "R2018",
}
_UNITS: Final = {LengthUnit.INCH: "inches", LengthUnit.MM: "millimetres"}
_FACES: Final = {FaceUp.FRONT: "front face up", FaceUp.BACK: "back face up, mirrored"}
_ORIGINS: Final = {Origin.DATUM: "at the datum", Origin.LOWER_LEFT: "at the sheet's lower left corner"}

_BESIDES: Final = {
    "corner relief": "A round lobe through each inside corner too tight for the cutter",
    "lead-in points": "Points in the scrap where the cutter may plunge",
    "centre marks": "Marks in place of round holes below the profile's smallest cut",
}


class CuttingChoices(QObject):
    """Rows of a form, and the options they say; `changed` after each choice."""

    changed = Signal()

    def __init__(self, form: Form, project: Project) -> None:
        super().__init__(form)
        self._project = project
        form.heading("Cutting files")
        self.version = _chooser("DXF version", _VERSIONS.values())
        self.unit = _chooser("Unit of the cutting files", _UNITS.values())
        self.unit.setCurrentIndex(list(_UNITS).index(project.unit))
        self.face = _chooser("Face", _FACES.values())
        self.origin = _chooser("Origin", _ORIGINS.values())
        self.content = Ticks("What is in the files", {each.value: each.value for each in Content})
        self.cutter = QLineEdit(DxfOptions().cutter_text(project.profile, project.unit))
        self.cutter.setAccessibleName("Cutter, across")
        besides = Ticks("Besides", {word: word for word in _BESIDES}, are_ticked=False)
        for word, explained in _BESIDES.items():
            besides.boxes[word].setToolTip(explained)
        self.relief, self.lead_ins, self.marks = besides.boxes.values()
        form.row("&Version", self.version)
        form.row("&Unit", self.unit)
        form.row("F&ace", self.face)
        form.row("&Origin", self.origin)
        form.row("&What is in", self.content)
        form.row("&Cutter, across", self.cutter)
        form.row("B&esides", besides)
        for chooser in (self.version, self.unit, self.face, self.origin):
            chooser.currentIndexChanged.connect(self.changed)
        for ticks in (self.content, besides):
            ticks.changed.connect(self.changed)
        self.cutter.textEdited.connect(self.changed)

    @property
    def options(self) -> DxfOptions:
        """What is chosen. Raises `UnusableInput` for a cutter that is none."""
        unit, profile = self._project.unit, self._project.profile
        cutter = cutter_diameter(self.cutter.text(), unit)
        return DxfOptions(
            version=list(_VERSIONS)[self.version.currentIndex()],
            unit=list(_UNITS)[self.unit.currentIndex()],
            content=frozenset(map(Content, self.content.ticked)),
            face_up=list(_FACES)[self.face.currentIndex()],
            origin=list(_ORIGINS)[self.origin.currentIndex()],
            corner_relief=CornerRelief.ROUND if self.relief.isChecked() else CornerRelief.NONE,
            lead_ins=LeadIns.POINTS if self.lead_ins.isChecked() else LeadIns.NONE,
            small_holes=SmallHoles.CENTRE_MARKS if self.marks.isChecked() else SmallHoles.CIRCLES,
            cutter=None if cutter == profile.cutter_diameter else cutter,
        )


def _chooser(name: str, words: Iterable[str]) -> QComboBox:
    box = ChoiceBox()
    box.setAccessibleName(name)
    box.addItems(list(words))
    return box
