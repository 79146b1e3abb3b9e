"""Finds words on widgets that are cut off: that have less room than they need and no dots to say so."""

from collections.abc import Iterator

from PySide6.QtCore import QPoint, QRect, QSize
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractScrollArea,
    QCheckBox,
    QComboBox,
    QLabel,
    QPushButton,
    QRadioButton,
    QTabBar,
    QToolButton,
    QWidget,
)

from panelcad.desktop.choice_box import ChoiceBox
from panelcad.desktop.elided import ElidedLabel

SLACK = 1


def clipped(root: QWidget) -> Iterator[str]:
    """A sentence for each visible widget whose words do not fit."""
    for widget in root.findChildren(QWidget):
        if widget.isVisible():
            fault = _fault(widget)
            if fault:
                yield f"{type(widget).__name__} '{_words(widget)[:60]}': {fault}"


def _words(widget: QWidget) -> str:
    text = getattr(widget, "text", None)
    return text() if callable(text) else widget.accessibleName()


def _fault(widget: QWidget) -> str:
    if isinstance(widget, QLabel):
        return _label(widget)
    if isinstance(widget, QPushButton | QCheckBox | QRadioButton | QToolButton):
        return _button(widget)
    if isinstance(widget, QComboBox) and not isinstance(widget, ChoiceBox) and not widget.isEditable():
        return "a plain box, which does not shorten its words"
    if isinstance(widget, QTabBar):
        return _tabs(widget)
    return ""


def _label(label: QLabel) -> str:
    if isinstance(label, ElidedLabel) or not label.text() or label.text().startswith("<"):
        return _outside(label) if label.text() else ""
    if label.wordWrap():
        needed = QSize(label.width(), label.heightForWidth(label.width()))
        longest = max(label.fontMetrics().horizontalAdvance(word) for word in label.text().split() or [""])
        needed = QSize(max(longest, 0), needed.height())
    else:
        needed = label.sizeHint()
    return _less(label, needed) or _outside(label)


def _button(button: QAbstractButton) -> str:
    return (_less(button, button.sizeHint()) if button.text() else "") or _outside(button)


def _tabs(bar: QTabBar) -> str:
    for i in range(bar.count()):
        needed = bar.fontMetrics().horizontalAdvance(bar.tabText(i).replace("&", ""))
        if bar.tabRect(i).width() < needed:
            return f"tab '{bar.tabText(i)}' needs {needed} and has {bar.tabRect(i).width()}"
    return ""


def _less(widget: QWidget, needed: QSize) -> str:
    if needed.width() > widget.width() + SLACK:
        return f"needs a width of {needed.width()} and has {widget.width()}"
    if needed.height() > widget.height() + SLACK:
        return f"needs a height of {needed.height()} and has {widget.height()}"
    return ""


def _outside(widget: QWidget) -> str:
    """What stands in a scroll area may be scrolled up and down, but not to the side."""
    # parent(), not parentWidget(): that one makes PySide take the parent for a child of the widget.
    box = QRect(QPoint(0, 0), widget.size())
    parent, scrolls = widget.parent(), False
    while parent is not None and not widget.isWindow():
        here = QRect(widget.mapTo(parent, QPoint(0, 0)), box.size())
        area = parent.parent()
        if isinstance(area, QAbstractScrollArea) and parent is area.viewport():
            scrolls = True
        room = parent.rect()
        if here.left() < room.left() - SLACK or here.right() > room.right() + SLACK:
            return f"stands {here.left()}..{here.right()} across in {room.width()} of {type(parent).__name__}"
        if not scrolls and (here.top() < room.top() - SLACK or here.bottom() > room.bottom() + SLACK):
            return f"stands {here.top()}..{here.bottom()} down in {room.height()} of {type(parent).__name__}"
        if parent.isWindow():
            break
        parent = parent.parent()
    return ""
