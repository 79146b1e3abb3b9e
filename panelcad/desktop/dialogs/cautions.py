"""All cautions, to be read at any time."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QDialogButtonBox, QFrame, QLabel, QVBoxLayout, QWidget

from panelcad.desktop.cautions import FULL
from panelcad.desktop.dialogs.fitted import FittedDialog
from panelcad.desktop.help.ask import explained
from panelcad.desktop.help.topics import Dialog


def show_cautions(parent: QWidget) -> None:
    dialog = FittedDialog(parent)
    dialog.setWindowTitle("Cautions")
    dialog.setMinimumWidth(560)
    column = QVBoxLayout(dialog)
    column.setSpacing(14)
    column.addWidget(caution_card())
    buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Close)
    buttons.rejected.connect(dialog.reject)
    column.addWidget(buttons)
    explained(dialog, Dialog.CAUTIONS)
    dialog.exec()


def caution_card() -> QFrame:
    """The cautions one below the other on a ground of their own."""
    card = QFrame()
    card.setProperty("role", "caution-card")
    column = QVBoxLayout(card)
    column.setContentsMargins(18, 14, 18, 14)
    column.setSpacing(7)
    heading = QLabel("Before metal is cut")
    heading.setProperty("role", "heading")
    column.addWidget(heading)
    for sentence in FULL:
        line = QLabel(sentence)
        line.setWordWrap(True)
        line.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        column.addWidget(line)
    return card
