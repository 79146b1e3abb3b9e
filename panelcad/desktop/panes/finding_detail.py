"""What can be done about the finding that is chosen: go there, do what would cure it, accept it, read why."""

import math
from typing import Final

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QLabel, QPushButton, QVBoxLayout, QWidget

from panelcad.desktop.actions import Action
from panelcad.desktop.remedies import asked_by, where_asked
from panelcad.desktop.workbench import Workbench
from panelcad.drawing.display import Bounds, union
from panelcad.editing.acceptances import withdraw_acceptance
from panelcad.editing.labels_along import move_labelled
from panelcad.editing.spread_row import spread_row
from panelcad.model.finding import Cure, Finding
from panelcad.model.like_row import row_with
from panelcad.units import format_length

_FAR: Final = 25.4
"""A cure that moves something farther, in mm, says so (shop setting)."""


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
        self._chosen: tuple[Finding, ...] = ()
        self.told = QLabel()
        self.told.setWordWrap(True)
        self.told.setProperty("role", "faint")
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(4)
        row = QHBoxLayout()
        row.setSpacing(4)
        self.cure = self._button(
            "&Do it", "Make the move, set the pitch, or enter the figure that cures it", self._do_cure
        )
        self.word = self._button("A&ccept…", "", self._accept)
        self.back = self._button("Take &back", "The acceptance", self._withdraw)
        self.why = self._button("&Why?", "What the rule measures, its limits and their sources", self._explain)
        for button in (self.cure, self.word, self.why):
            row.addWidget(button)
        column.addLayout(row)
        column.addWidget(self.told)
        column.addWidget(self.back)
        self.show_finding(None, is_accepted=False)

    def _button(self, words: str, hint: str, run: object) -> QPushButton:
        button = QPushButton(words)
        button.setToolTip(hint)
        button.clicked.connect(run)
        return button

    def show_finding(self, finding: Finding | None, *, is_accepted: bool, chosen: tuple[Finding, ...] = ()) -> None:
        """The finding to deal with; `chosen` are all that are accepted together with it."""
        self._finding = finding
        self._chosen = tuple(each for each in chosen if each.acceptable)
        self.setVisible(finding is not None)
        if finding is None:
            return
        cure = finding.cure
        asks = asked_by(finding.rule)
        is_far = cure is not None and math.hypot(cure.dx, cure.dy) > _FAR
        self.cure.setEnabled(asks is not None or (cure is not None and not cure.advice))
        self.cure.setText("&Do it…" if asks is not None else "&Do it (far)" if is_far else "&Do it")
        together = len(self._chosen) > 1
        self.word.setText(f"A&ccept {len(self._chosen)}…" if together else "A&ccept…")
        self.word.setEnabled(together or (finding.acceptable and not is_accepted))
        self.told.setText(self._why_grey(finding))
        self.told.setVisible(bool(self.told.text()) and not is_accepted)
        self.back.setVisible(is_accepted)
        self.word.setToolTip("" if finding.acceptable else "This can never be right, so nobody may accept it")

    def _why_grey(self, finding: Finding) -> str:
        from panelcad.checks.cures import farthest_for, missing_of  # noqa: PLC0415 - the rules load with the first check
        from panelcad.checks.finding import Tried  # noqa: PLC0415 - as above

        asks = asked_by(finding.rule)
        if asks is not None:
            return where_asked(asks)
        report = self._bench.judge.report
        looked = report is not None and report.project is self._bench.document.project
        no_move = isinstance(finding, Tried) and finding.cure is None and looked
        farthest = format_length(farthest_for(missing_of(finding)), self._bench.unit, places=2)
        words = [f"No move of {farthest} or less cures it without harm."] if no_move else []
        if finding.cure is not None and finding.cure.advice:
            words = ["Do it makes single moves; what would cure this stands above."]
        elif finding.cure is None and not isinstance(finding, Tried):
            words = ["No move is known that cures it."]
        words += [] if finding.acceptable else ["It can never be right, so it cannot be accepted."]
        return " ".join(words)

    def _do_cure(self) -> None:
        finding = self._finding
        if finding is None:
            return
        asks, cure = asked_by(finding.rule), finding.cure
        if asks is not None:
            self._ask(asks)
        elif cure is None:
            return
        elif cure.pitch is not None:
            self._spread(finding, cure, cure.pitch)
        else:
            self._move(cure)

    def _ask(self, asks: Action) -> None:
        before = self._bench.document.project
        self._bench.action_wanted.emit(asks.id)
        if self._bench.document.project is not before:
            self.dealt_with.emit()

    def _spread(self, finding: Finding, cure: Cure, pitch: float) -> None:
        row = row_with(self._bench.document.option, finding.items)
        if row is None or row.ids != cure.row:
            return
        boxes = [self._box_of(one) for one in row.ids]
        if self._bench.edit("Spread the row", lambda project, option: spread_row(project, option, row, pitch)):
            self.dealt_with.emit()
            self._bench.selection.set(row.ids)
            self._show_all([*boxes, *(self._box_of(one) for one in row.ids)])
            self._bench.told.emit(f"Spread {len(row.ids)} to a pitch of {format_length(pitch, self._bench.unit)}")

    def _move(self, cure: Cure) -> None:
        name, was = self._bench.name_of(cure.item), self._box_of(cure.item)
        moved = self._bench.edit(
            f"Move {name}", lambda project, option: move_labelled(project, option, (cure.item,), cure.dx, cure.dy)
        )
        if moved:
            self.dealt_with.emit()
            self._show_all([was, self._box_of(cure.item)])
            self._tell(name, cure)

    def _box_of(self, item_id: str) -> Bounds | None:
        stage = self._bench.stage
        return stage.scene.box(stage.whole((item_id,)))

    def _show_all(self, boxes: list[Bounds | None]) -> None:
        """Where things stood and where they stand, brought into view where that is not in it."""
        known = [box for box in boxes if box is not None]
        if not known:
            return
        both, seen = union(known), self._bench.view.seen()
        if both[0] < seen[0] or both[1] < seen[1] or both[2] > seen[2] or both[3] > seen[3]:
            self._bench.view.show_box(both, self._bench.view.zoom)

    def _tell(self, name: str, cure: Cure) -> None:
        from panelcad.checks.wording import steps_of  # noqa: PLC0415 - the rules load with the first check

        self._bench.told.emit(f"Moved {name} {steps_of(cure, self._bench.unit)}")

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
        from panelcad.desktop.dialogs.acceptance import accept_findings  # noqa: PLC0415 - a dialog loads when opened

        if accept_findings(self._bench, self._chosen or (finding,), self.window()):
            self.dealt_with.emit()

    def _explain(self) -> None:
        from panelcad.desktop.dialogs.explanation import explain  # noqa: PLC0415

        if self._finding is not None:
            explain(self._bench, self._finding, self.window())
