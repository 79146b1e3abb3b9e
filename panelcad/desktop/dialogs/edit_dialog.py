"""A dialog whose outcome is seen on the panel while it is filled in."""

from collections.abc import Callable

from PySide6.QtCore import QPoint
from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import QDialog, QLabel, QVBoxLayout, QWidget

from panelcad.desktop.dialogs.answers import Answers
from panelcad.desktop.dialogs.fitted import FittedDialog
from panelcad.desktop.dialogs.tab_order import fields_first
from panelcad.desktop.help.ask import explained
from panelcad.desktop.help.topics import Dialog
from panelcad.desktop.panes.form import Form
from panelcad.desktop.workbench import Workbench
from panelcad.editing.made import Made
from panelcad.editing.refusal import edit
from panelcad.errors import PanelcadError
from panelcad.model.project import Project

Outcome = Project | Made
_BESIDE = 16


class EditDialog(FittedDialog):
    """`change` gives the outcome of what the fields say now; it may raise a `PanelcadError`. `at` explains it.

    Enter does what `verb` says, so that the letters are left to the fields.
    """

    def __init__(self, bench: Workbench, title: str, verb: str, parent: QWidget, *, at: Dialog) -> None:
        super().__init__(parent)
        self.bench = bench
        self.form = Form()
        self._change: Callable[[], Outcome] | None = None
        self._made: tuple[str, ...] = ()
        self._gesture = bench.document.begin(title)
        self.setWindowTitle(title)
        self.setMinimumWidth(360)
        self.problem = QLabel()
        self.problem.setProperty("role", "wrong")
        self.problem.setWordWrap(True)
        buttons = self._buttons = Answers(self, verb)
        self.verb = buttons.verb
        column = self._column = QVBoxLayout(self)
        column.addWidget(self.scrolled(self.form), 1)
        column.addWidget(self.problem)
        column.addWidget(buttons)
        explained(self, at)

    def line_above_buttons(self) -> QLabel:
        """Where something is told that hinders nothing; it is seen however long the form is."""
        line = QLabel()
        line.setProperty("role", "wrong")
        line.setWordWrap(True)
        self._column.insertWidget(self._column.indexOf(self.problem), line)
        return line

    def ask(self, change: Callable[[], Outcome]) -> bool:
        """Let the person fill it in; whether the change was made. What was made is selected then."""
        self._change = edit(change)
        others = [button for button in self._buttons.buttons() if button not in {self.verb, self._buttons.cancel}]
        fields_first(self.form, self.verb, self._buttons.cancel, *others)
        self.preview()
        return self.exec() == QDialog.DialogCode.Accepted

    def showEvent(self, event: QShowEvent) -> None:
        """At the side of the canvas away from what is worked on, so that it is seen beside the dialog."""
        super().showEvent(event)
        view = self.bench.view
        room = view.rect().adjusted(_BESIDE, _BESIDE, -_BESIDE, -_BESIDE)
        at = room.topRight() - QPoint(self.frameGeometry().width(), 0) if self._works_at_the_left() else room.topLeft()
        self.move(view.mapToGlobal(at))
        self.fit()

    def _works_at_the_left(self) -> bool:
        """Whether what is made or selected is seen in the left half of the canvas."""
        stage = self.bench.stage
        box = stage.scene.box(stage.whole(self._made or self.bench.selection.ids))
        if box is None:
            return False
        x1, _, x2, _ = self.bench.view.seen()
        return box[0] + box[2] < x1 + x2

    def done(self, result: int) -> None:
        """The keyboard is on the canvas afterwards, where what was made is selected."""
        super().done(result)
        self.bench.view.setFocus()

    def preview(self) -> None:
        """Show the outcome of what the fields say, or why there is none."""
        if self._change is None or self._gesture.is_over:
            return
        try:
            outcome = self._change()
        except PanelcadError as refusal:
            self.problem.setText(str(refusal))
            self.verb.setEnabled(False)
            self.grow()
            return
        self.problem.clear()
        self.verb.setEnabled(True)
        project, self._made = (outcome.project, outcome.ids) if isinstance(outcome, Made) else (outcome, ())
        self._gesture.propose(project)
        self.bench.stage.preview(project)

    def accept(self) -> None:
        self._gesture.finish()
        if self._made:
            self.bench.select_parts(self._made)
        super().accept()

    def reject(self) -> None:
        self._gesture.cancel()
        super().reject()
