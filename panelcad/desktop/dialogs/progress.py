"""A small window that says what is being done while it lasts."""

from PySide6.QtWidgets import QApplication, QProgressDialog, QWidget


class Progress:
    """Says what is being written."""

    def __init__(self, parent: QWidget, title: str = "Releasing", first: str = "Checking the option") -> None:
        self._first = first
        self._dialog = QProgressDialog(first, "", 0, 0, parent)
        self._dialog.setWindowTitle(title)
        self._dialog.setCancelButton(None)
        self._dialog.setMinimumDuration(400)

    def __enter__(self) -> "Progress":
        self.tell(self._first)
        return self

    def tell(self, words: str) -> None:
        self._dialog.setLabelText(words)
        self._dialog.setValue(0)
        QApplication.processEvents()

    def __exit__(self, *error: object) -> None:
        self._dialog.close()
        self._dialog.deleteLater()
