"""What a cutout may be kept with, though it would be an error on a panel."""

from PySide6.QtWidgets import QLabel

from panelcad.model.cutout import Cutout
from panelcad.units import LengthUnit, format_length


class CaseNotice(QLabel):
    """Says by how much a case is too large for the opening that it goes through."""

    def __init__(self, unit: LengthUnit) -> None:
        super().__init__()
        self._unit = unit
        self.setProperty("role", "wrong")
        self.setWordWrap(True)

    def speak_of(self, cutout: Cutout | None) -> None:
        from panelcad.checks.fit import case_beyond_opening  # noqa: PLC0415 - the rules load with the first check

        beyond = case_beyond_opening(cutout) if cutout is not None else 0.0
        self.setVisible(beyond > 0.0)
        self.setText(
            f"The case reaches {format_length(beyond, self._unit)} beyond the opening; mounted at the front, it has to "
            "go through it."
        )
