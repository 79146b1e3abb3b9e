"""What can be done about the finding that is chosen: go there, do what would cure it, accept it, read why."""

from PySide6.QtWidgets import QHBoxLayout, QPushButton, QWidget

from panelcad.desktop.workbench import Workbench
from panelcad.editing.acceptances import withdraw_acceptance
from panelcad.editing.move import move_by
from panelcad.model.finding import Finding


class FindingDetail(QWidget):
    def __init__(self, bench: Workbench) -> None:
        super().__init__()
        self._bench = bench
        self._finding: Finding | None = None
        self._is_accepted = False
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(4)
        self.cure = self._button("&Do it", "Make the move that cures it", self._do_cure)
        self.word = self._button("A&ccept…", "", self._accept_or_withdraw)
        self.why = self._button("&Why?", "What the rule measures, its limits and their sources", self._explain)
        for button in (self.cure, self.word, self.why):
            row.addWidget(button)
        self.show_finding(None, is_accepted=False)

    def _button(self, words: str, hint: str, run: object) -> QPushButton:
        button = QPushButton(words)
        button.setToolTip(hint)
        button.clicked.connect(run)
        return button

    def show_finding(self, finding: Finding | None, *, is_accepted: bool) -> None:
        self._finding, self._is_accepted = finding, is_accepted
        self.setVisible(finding is not None)
        if finding is None:
            return
        cure = finding.cure
        self.cure.setEnabled(cure is not None and (cure.dx != 0.0 or cure.dy != 0.0))
        self.word.setText("Take &back" if is_accepted else "A&ccept…")
        self.word.setEnabled(is_accepted or finding.acceptable)
        refused = "This can never be right, so nobody may accept it"
        self.word.setToolTip("" if self.word.isEnabled() else refused)

    def _do_cure(self) -> None:
        cure = self._finding.cure if self._finding is not None else None
        if cure is None:
            return
        what = f"Move {self._bench.name_of(cure.item)}"
        self._bench.edit(what, lambda project, option: move_by(project, option, (cure.item,), cure.dx, cure.dy))

    def _accept_or_withdraw(self) -> None:
        finding = self._finding
        if finding is None:
            return
        if self._is_accepted:
            identity = finding.identity
            self._bench.edit(
                "Take an acceptance back", lambda project, option: withdraw_acceptance(project, option, identity)
            )
            return
        from panelcad.desktop.dialogs.acceptance import accept_finding  # noqa: PLC0415 - a dialog loads when opened

        accept_finding(self._bench, finding, self.window())

    def _explain(self) -> None:
        from panelcad.desktop.dialogs.explanation import explain  # noqa: PLC0415

        if self._finding is not None:
            explain(self._bench, self._finding, self.window())
