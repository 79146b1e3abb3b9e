"""How cutting files are written: version, unit, face, origin, and what the shop's machine wants."""

from collections.abc import Iterable
from typing import Final

from PySide6.QtWidgets import QCheckBox, QComboBox

from panelcad.desktop.panes.form import Form
from panelcad.outputs.dxf_options import CornerRelief, DxfOptions, DxfVersion, FaceUp, LeadIns, Origin, SmallHoles
from panelcad.units import LengthUnit

_VERSIONS: Final = {
    DxfVersion.R2010: "R2010, usual",
    DxfVersion.R12: "R12, for old controls",
    DxfVersion.R2000: "R2000",
    DxfVersion.R2018: "R2018",
}
_UNITS: Final = {LengthUnit.INCH: "inches", LengthUnit.MM: "millimetres"}
_FACES: Final = {FaceUp.FRONT: "front face up", FaceUp.BACK: "back face up, mirrored"}
_ORIGINS: Final = {Origin.DATUM: "at the datum", Origin.LOWER_LEFT: "at the sheet's lower left corner"}


class CuttingChoices:
    """Rows of a form, and the options they say."""

    def __init__(self, form: Form, unit: LengthUnit) -> None:
        form.heading("Cutting files")
        self.version = _chooser("DXF version", _VERSIONS.values())
        self.unit = _chooser("Unit of the cutting files", _UNITS.values())
        self.unit.setCurrentIndex(list(_UNITS).index(unit))
        self.face = _chooser("Face", _FACES.values())
        self.origin = _chooser("Origin", _ORIGINS.values())
        self.relief = QCheckBox("Relieve inside corners too tight for the cutter")
        self.lead_ins = QCheckBox("Lead-in points")
        self.marks = QCheckBox("Centre marks for holes below the smallest cut")
        form.row("&Version", self.version)
        form.row("&Unit", self.unit)
        form.row("F&ace", self.face)
        form.row("&Origin", self.origin)
        for box in (self.relief, self.lead_ins, self.marks):
            form.add(box)

    @property
    def options(self) -> DxfOptions:
        return DxfOptions(
            version=list(_VERSIONS)[self.version.currentIndex()],
            unit=list(_UNITS)[self.unit.currentIndex()],
            face_up=list(_FACES)[self.face.currentIndex()],
            origin=list(_ORIGINS)[self.origin.currentIndex()],
            corner_relief=CornerRelief.ROUND if self.relief.isChecked() else CornerRelief.NONE,
            lead_ins=LeadIns.POINTS if self.lead_ins.isChecked() else LeadIns.NONE,
            small_holes=SmallHoles.CENTRE_MARKS if self.marks.isChecked() else SmallHoles.CIRCLES,
        )


def _chooser(name: str, words: Iterable[str]) -> QComboBox:
    box = QComboBox()
    box.setAccessibleName(name)
    box.addItems(list(words))
    return box
