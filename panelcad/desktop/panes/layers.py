"""Layers of the picture, switched on and off; what is off is neither seen nor picked.

Words that are left out at first are remembered once they are on. All else is on at the next start: what is hidden and
forgotten would not be missed.
"""

from PySide6.QtWidgets import QCheckBox, QPushButton, QVBoxLayout, QWidget

from panelcad.desktop.stage import LEFT_OUT_AT_FIRST
from panelcad.desktop.workbench import Workbench
from panelcad.drawing.layers import Layer


class LayersPane(QWidget):
    def __init__(self, bench: Workbench) -> None:
        super().__init__()
        self._bench = bench
        self.boxes: dict[Layer, QCheckBox] = {}
        column = QVBoxLayout(self)
        column.setContentsMargins(12, 10, 12, 12)
        for layer in Layer:
            box = QCheckBox(layer.value.capitalize())
            box.setChecked(layer not in bench.stage.hidden_layers)
            box.toggled.connect(lambda is_on, layer=layer: self._switch(layer, is_on=is_on))
            self.boxes[layer] = box
            column.addWidget(box)
        self.everything = QPushButton("Show everything")
        self.everything.clicked.connect(self._show_everything)
        column.addWidget(self.everything)
        column.addStretch(1)
        bench.stage.shown.connect(self._offer)
        self._offer()

    def _offer(self) -> None:
        """Only the layers that the view has are offered."""
        there = {item.picture.layer for item in self._bench.stage.scene.groups}
        if self._bench.stage.view.names is not None:
            there.add(Layer.NAMES)
        for layer, box in self.boxes.items():
            box.setHidden(layer not in there)

    def _switch(self, layer: Layer, *, is_on: bool) -> None:
        stage = self._bench.stage
        stage.hide_layers(stage.hidden_layers - {layer} if is_on else stage.hidden_layers | {layer})
        if layer in LEFT_OUT_AT_FIRST:
            self._bench.settings.ask_for(LEFT_OUT_AT_FIRST - stage.hidden_layers)

    def _show_everything(self) -> None:
        for box in self.boxes.values():
            box.setChecked(True)
