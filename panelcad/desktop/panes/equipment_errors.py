"""The line below the findings of the panel that counts the errors of its equipment and leads to them."""

from PySide6.QtWidgets import QPushButton

from panelcad.desktop.workbench import Workbench


class EquipmentErrors(QPushButton):
    def __init__(self, bench: Workbench) -> None:
        super().__init__()
        self._judge = bench.equipment_judge
        self.setProperty("quiet", True)
        self.clicked.connect(bench.reasons_wanted)
        self._judge.judged.connect(self.refresh)
        self.refresh()

    def refresh(self) -> None:
        words = self._judge.words
        self.setText(f"{words[:1].upper()}{words[1:]} – show")
        self.setToolTip(self._judge.fault or "What the option lacks or overloads; shown under Options side by side")
        self.setVisible(bool(words))
