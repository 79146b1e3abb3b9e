"""What can be done about the finding that is chosen: go there, do what would cure it, accept it, read why."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QVBoxLayout, QWidget

from panelcad.desktop.workbench import Workbench
from panelcad.editing.acceptances import withdraw_acceptance
from panelcad.editing.move import move_by
from panelcad.model.finding import Finding


class FindingDetail(QWidget):
    """`dealt_with` when a finding was cured or accepted, `taken_back` when an acceptance was.

    'Take back' stands in a line of its own: the click that accepts the next finding never undoes the last one.
    """

    dealt_with = Signal()
    taken_back = Signal()

    def __init__(self, bench: Workbench) -> None:
        super().__init__()
        self._bench = bench
        self._finding: Finding | None = None
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(4)
        row = QHBoxLayout()
        row.setSpacing(4)
        self.cure = self._button("&Do it", "Make the move that cures it", self._do_cure)
        self.word = self._button("A&ccept…", "", self._accept)
        self.back = self._button("Take &back", "The acceptance", self._withdraw)
        self.why = self._button("&Why?", "What the rule measures, its limits and their sources", self._explain)
        for button in (self.cure, self.word, self.why):
            row.addWidget(button)
        column.addLayout(row)
        column.addWidget(self.back)
        self.show_finding(None, is_accepted=False)

    def _button(self, words: str, hint: str, run: object) -> QPushButton:
        button = QPushButton(words)
        button.setToolTip(hint)
        button.clicked.connect(run)
        return button

    def show_finding(self, finding: Finding | None, *, is_accepted: bool) -> None:
        self._finding = finding
        self.setVisible(finding is not None)
        if finding is None:
            return
        cure = finding.cure
        self.cure.setEnabled(cure is not None and (cure.dx != 0.0 or cure.dy != 0.0))
        self.word.setEnabled(finding.acceptable and not is_accepted)
        self.back.setVisible(is_accepted)
        self.word.setToolTip("" if finding.acceptable else "This can never be right, so nobody may accept it")

    def _do_cure(self) -> None:
        cure = self._finding.cure if self._finding is not None else None
        if cure is None:
            return
        what = f"Move {self._bench.name_of(cure.item)}"
        if self._bench.edit(what, lambda project, option: move_by(project, option, (cure.item,), cure.dx, cure.dy)):
            self.dealt_with.emit()

    def _withdraw(self) -> None:
        identity = self._finding.identity if self._finding is not None else ""
        self._bench.edit(
            "Take an acceptance back", lambda project, option: withdraw_acceptance(project, option, identity)
        )
        self.taken_back.emit()

    def _accept(self) -> None:
        finding = self._finding
        if finding is None:
            return
        from panelcad.desktop.dialogs.acceptance import accept_finding  # noqa: PLC0415 - a dialog loads when opened

        if accept_finding(self._bench, finding, self.window()):
            self.dealt_with.emit()

    def _explain(self) -> None:
        from panelcad.desktop.dialogs.explanation import explain  # noqa: PLC0415

        if self._finding is not None:
            explain(self._bench, self._finding, self.window())
