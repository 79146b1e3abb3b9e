"""The buttons at the foot of a dialog: what it does, which Enter does too, and Cancel."""

from collections.abc import Callable

from PySide6.QtWidgets import QDialog, QDialogButtonBox


class Answers(QDialogButtonBox):
    """`verb` does what the dialog is for: it is accepted, or `act` is called."""

    def __init__(self, dialog: QDialog, verb: str, act: Callable[[], object] | None = None) -> None:
        super().__init__()
        self.verb = self.addButton(verb, QDialogButtonBox.ButtonRole.AcceptRole)
        self.verb.setDefault(True)
        self.cancel = self.addButton("Cancel", QDialogButtonBox.ButtonRole.RejectRole)
        self.accepted.connect(act or dialog.accept)
        self.rejected.connect(dialog.reject)
