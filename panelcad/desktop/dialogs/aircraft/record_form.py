"""Fields one below the other for one record."""

from collections.abc import Mapping
from typing import Any

from PySide6.QtWidgets import QComboBox, QLineEdit, QWidget

from panelcad.desktop.choice_box import ChoiceBox
from panelcad.desktop.dialogs.aircraft.field import Field, Kind, read_again, write
from panelcad.desktop.panes.form import Form
from panelcad.units import LengthUnit


class RecordForm(Form):
    def __init__(self, fields: tuple[Field, ...], unit: LengthUnit) -> None:
        super().__init__()
        self._unit = unit
        self._fields = fields
        self._shown: dict[str, Any] = {}
        self.editors: dict[str, QWidget] = {}
        for field in fields:
            editor = self._editor(field)
            editor.setAccessibleName(field.title)
            self.editors[field.key] = editor
            self.row(field.headed(unit), editor)

    def _editor(self, field: Field) -> QWidget:
        if field.kind is not Kind.CHOICE:
            return QLineEdit()
        made = ChoiceBox()
        for value, words in field.choices:
            made.addItem(words, value)
        return made

    def show_values(self, values: Mapping[str, Any]) -> None:
        self._shown = dict(values)
        for field in self._fields:
            value = values.get(field.key)
            editor = self.editors[field.key]
            if isinstance(editor, QComboBox):
                editor.setCurrentIndex(max(0, [choice for choice, _ in field.choices].index(value)))
            elif isinstance(editor, QLineEdit):
                editor.setText(write(field, value, self._unit))

    def values(self) -> dict[str, Any]:
        """What was typed, in mm, kg or plain. Raises `UnreadableQuantity`."""
        found: dict[str, Any] = {}
        for field in self._fields:
            editor = self.editors[field.key]
            if isinstance(editor, QComboBox):
                found[field.key] = field.choices[editor.currentIndex()][0]
            elif isinstance(editor, QLineEdit):
                found[field.key] = read_again(field, editor.text(), self._shown.get(field.key), self._unit)
        return found
