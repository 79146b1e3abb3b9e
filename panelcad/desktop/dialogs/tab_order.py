"""Tab goes through the fields from above, and to the buttons last."""

from itertools import pairwise

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QAbstractSpinBox, QComboBox, QWidget


def fields_first(form: QWidget, *buttons: QWidget) -> None:
    """Put the fields of a form before these buttons; the first field that can be filled in gets the focus."""
    fields = [widget for widget in form.findChildren(QWidget) if _takes_tab(widget, form)]
    for before, after in pairwise((*fields, *buttons)):
        QWidget.setTabOrder(before, after)
    first = next((field for field in fields if not field.isHidden()), None)
    if first is not None:
        first.setFocus(Qt.FocusReason.TabFocusReason)


def _takes_tab(widget: QWidget, form: QWidget) -> bool:
    """The line inside a box, and the list that drops from it, belong to the box."""
    inside = isinstance(widget.parent(), QComboBox | QAbstractSpinBox) or widget.window() is not form.window()
    return bool(widget.focusPolicy() & Qt.FocusPolicy.TabFocus) and not inside
