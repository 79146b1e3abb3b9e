"""Rows of a dialog that choose an outline by its measures."""

from PySide6.QtWidgets import QLabel

from panelcad.desktop.choice_box import ChoiceBox
from panelcad.desktop.dialogs.edit_dialog import EditDialog
from panelcad.desktop.dialogs.entries import LengthEntry
from panelcad.editing.outline import outline_of
from panelcad.editing.templates import TEMPLATES, Template, measured
from panelcad.units import rounded

_SIDES = 0.7
"""How high the sides of a curved top begin, as a share of its middle."""


class TemplateEntry:
    """A chooser of templates and a field for each measure of the chosen one.

    It begins with the template and measures that the outline has, else with the size of what is there.
    """

    def __init__(self, dialog: EditDialog) -> None:
        self._dialog = dialog
        stage = dialog.bench.stage
        outline = stage.layout().plate(stage.plate_id).plate.outline
        x1, y1, x2, y2 = outline.contour().bounds
        present = {"width": x2 - x1, "height": y2 - y1, "middle_height": y2 - y1, "side_height": _SIDES * (y2 - y1)}
        known = measured(outline_of(outline))
        self._chooser = ChoiceBox()
        self._chooser.setAccessibleName("Template")
        for template in TEMPLATES:
            self._chooser.addItem(template.title, template)
        dialog.form.row("&Template", self._chooser)
        self._entries: dict[tuple[str, str], LengthEntry] = {}
        self._labels: dict[tuple[str, str], QLabel] = {}
        unit = dialog.bench.unit
        for template in TEMPLATES:
            for measure in template.measures:
                start = present.get(measure.key, measure.start(unit))
                if known is not None and known[0] is template:
                    start = known[1][measure.key]
                entry = LengthEntry(measure.title, rounded(start), unit)
                entry.edited.connect(dialog.preview)
                label = QLabel(f"{measure.title}, {unit.value}")
                label.setProperty("role", "faint")
                dialog.form.label_row(label, entry)
                self._entries[template.key, measure.key] = entry
                self._labels[template.key, measure.key] = label
        if known is not None:
            self._chooser.setCurrentIndex(TEMPLATES.index(known[0]))
        self._chooser.activated.connect(lambda _: self._take())
        self._show()

    @property
    def template(self) -> Template:
        return TEMPLATES[self._chooser.currentIndex()]

    def values(self) -> dict[str, float]:
        """Each measure in mm. Raises `UnreadableQuantity`."""
        template = self.template
        return {measure.key: self._entries[template.key, measure.key].mm for measure in template.measures}

    def _take(self) -> None:
        self._show()
        self._dialog.adjustSize()
        self._dialog.preview()

    def _show(self) -> None:
        for (template, measure), entry in self._entries.items():
            is_meant = template == self.template.key
            entry.setVisible(is_meant)
            self._labels[template, measure].setVisible(is_meant)
