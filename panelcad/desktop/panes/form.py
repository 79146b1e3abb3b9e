"""Rows of a form that fit a narrow pane: a word at the left, a field at the right, headings between."""

from typing import Final

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFormLayout, QFrame, QLabel, QSizePolicy, QVBoxLayout, QWidget

from panelcad.desktop.elided import ElidedLabel

_NAME_WIDEST_PX: Final = 320


class Form(QWidget):
    def __init__(self) -> None:
        super().__init__()
        self.column = QVBoxLayout(self)
        self.column.setContentsMargins(12, 10, 12, 12)
        self.column.setSpacing(8)
        self._rows = self._fresh_rows()

    def _fresh_rows(self) -> QFormLayout:
        rows = QFormLayout()
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setHorizontalSpacing(10)
        rows.setVerticalSpacing(6)
        rows.setLabelAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        rows.setRowWrapPolicy(QFormLayout.RowWrapPolicy.WrapLongRows)
        rows.setFieldGrowthPolicy(QFormLayout.FieldGrowthPolicy.AllNonFixedFieldsGrow)
        self.column.addLayout(rows)
        return rows

    def row(self, word: str, field: QWidget) -> None:
        """`&` before a letter of the word makes it the key to the field, or to the one that a holder stands for."""
        label = QLabel(word)
        label.setProperty("role", "faint")
        label.setBuddy(field.focusProxy() or field)
        if not field.accessibleName():
            field.setAccessibleName(word.replace("&", ""))
        label.setMinimumHeight(min(field.sizeHint().height(), field.maximumHeight()))
        self._rows.addRow(label, field)

    def label_row(self, label: QLabel, field: QWidget) -> None:
        """A row whose word may change."""
        label.setBuddy(field.focusProxy() or field)
        label.setMinimumHeight(field.sizeHint().height())
        self._rows.addRow(label, field)

    def set_row_shown(self, field: QWidget, *, is_shown: bool) -> None:
        """The row of this field with its word, or not."""
        for rows in self.findChildren(QFormLayout):
            if rows.indexOf(field) >= 0:
                rows.setRowVisible(field, is_shown)

    def name_row(self, name: str, field: QWidget) -> None:
        """A row under a name that people gave: beside its field however long, ending in dots where there is no room."""
        label = ElidedLabel(name)
        label.setProperty("role", "faint")
        label.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        label.setMinimumHeight(field.sizeHint().height())
        label.setMaximumWidth(_NAME_WIDEST_PX)
        field.setAccessibleName(name)
        self._rows.setRowWrapPolicy(QFormLayout.RowWrapPolicy.DontWrapRows)
        self._rows.addRow(label, field)

    def heading(self, words: str) -> QLabel:
        label = self.words(words, "heading")
        self._rows = self._fresh_rows()
        return label

    def line(self) -> None:
        rule = QFrame()
        rule.setProperty("role", "rule")
        self.column.addWidget(rule)
        self._rows = self._fresh_rows()

    def words(self, text: str, role: str = "") -> QLabel:
        label = QLabel(text)
        label.setWordWrap(True)
        label.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
        label.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        if role:
            label.setProperty("role", role)
        self.column.addWidget(label)
        self._rows = self._fresh_rows()
        return label

    def add(self, widget: QWidget) -> None:
        self.column.addWidget(widget)
        self._rows = self._fresh_rows()

    def line_up(self) -> None:
        """The fields of all rows begin at one line."""
        labels = []
        for rows in self.findChildren(QFormLayout):
            items = (rows.itemAt(i, QFormLayout.ItemRole.LabelRole) for i in range(rows.rowCount()))
            labels += [label for item in items if item is not None and isinstance(label := item.widget(), QLabel)]
        widest = max(label.sizeHint().width() for label in labels)
        for label in labels:
            label.setMinimumWidth(widest)
            label.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)

    def end(self) -> None:
        self.column.addStretch(1)
