"""Why a cell of the options table says what it says: the findings behind it, to go to or to accept."""

from typing import TYPE_CHECKING, Final

from PySide6.QtCore import Qt
from PySide6.QtGui import QColor, QIcon, QPainter, QPixmap
from PySide6.QtWidgets import QHBoxLayout, QLabel, QListWidget, QListWidgetItem, QPushButton, QVBoxLayout, QWidget

from panelcad.desktop.canvas.badge import MarkKind, paint_badge
from panelcad.desktop.workbench import Workbench
from panelcad.editing.acceptances import withdraw_acceptance

if TYPE_CHECKING:
    from panelcad.checks.report import Accepted
    from panelcad.model.finding import Finding
    from panelcad.planning.judge import Judgement, Topic

_FINDING: Final = int(Qt.ItemDataRole.UserRole)
_IS_ACCEPTED: Final = _FINDING + 1
_SIGN: Final = 16


class Reasons(QWidget):
    def __init__(self, bench: Workbench) -> None:
        super().__init__()
        self._bench = bench
        self._topic: Topic | None = None
        self._judgement: Judgement | None = None
        self.heading = QLabel("Click a cell to see why it says so.")
        self.heading.setWordWrap(True)
        self.heading.setProperty("role", "heading")
        self.list = QListWidget()
        self.list.setWordWrap(True)
        self.list.setAccessibleName("Reasons")
        self.list.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.list.itemClicked.connect(self._select)
        self.list.itemActivated.connect(self._select)
        self.list.currentItemChanged.connect(lambda *_: self._offer())
        self.word, self.back = QPushButton("Accept…"), QPushButton("Take back")
        self.back.setToolTip("The acceptance")
        self.word.clicked.connect(self._accept)
        self.back.clicked.connect(self._withdraw)
        buttons = QHBoxLayout()
        buttons.addWidget(self.word)
        buttons.addWidget(self.back)
        buttons.addStretch(1)
        column = QVBoxLayout(self)
        column.setContentsMargins(8, 8, 8, 8)
        column.addWidget(self.heading)
        column.addWidget(self.list, 1)
        column.addLayout(buttons)
        self._offer()

    def show_option(self, judgement: "Judgement | None") -> None:
        """Another option or a new comparison: the same topic, or everything that was found."""
        if judgement is None:
            self.list.clear()
            return
        if self._topic is None:
            heading = f"{judgement.option.name}: everything that was found"
            self._show(judgement, heading, judgement.all_findings, judgement.all_accepted)
        else:
            self.show_topic(judgement, self._topic)

    def show_all_topics(self, judgement: "Judgement | None") -> None:
        """Everything that was found, now or once it is judged."""
        self._topic = None
        self.show_option(judgement)

    def show_topic(self, judgement: "Judgement", topic: "Topic") -> None:
        self._topic = topic
        heading = f"{judgement.option.name}: {topic}"
        self._show(judgement, heading, judgement.findings[topic], judgement.accepted[topic])

    def _show(
        self,
        judgement: "Judgement",
        heading: str,
        findings: "tuple[Finding, ...]",
        accepted: "tuple[Accepted, ...]",
    ) -> None:
        from panelcad.planning.wording import cure_words, sentence  # noqa: PLC0415 - the window is painted first

        self._judgement = judgement
        self.heading.setText(heading)
        self.list.clear()
        project, option = judgement.equipment.project, judgement.option
        for finding in findings:
            words = f"{sentence(finding, project, option)} {cure_words(finding, project)}".strip()
            self._add(finding, MarkKind(finding.severity.value), words)
        for each in accepted:
            words = f"{sentence(each.finding, project, option)} Accepted by {each.acceptance.told}"
            self._add(each.finding, MarkKind.ACCEPTED, words)
        if not self.list.count():
            self.list.addItem("Nothing was found in what was entered.")
        self._offer()

    def _add(self, finding: "Finding", kind: MarkKind, words: str) -> None:
        entry = QListWidgetItem(self._sign(kind), words)
        entry.setData(int(Qt.ItemDataRole.AccessibleTextRole), f"{kind.value}: {words}")
        entry.setToolTip(finding.source)
        entry.setData(_FINDING, finding)
        entry.setData(_IS_ACCEPTED, kind is MarkKind.ACCEPTED)
        self.list.addItem(entry)

    def _offer(self) -> None:
        """What can be done with the current finding; the panel's own are accepted in the findings list."""
        entry = self.list.currentItem()
        finding = entry.data(_FINDING) if entry is not None else None
        is_accepted = finding is not None and bool(entry.data(_IS_ACCEPTED))
        self.back.setVisible(is_accepted)
        self.word.setVisible(not is_accepted)
        refused = self._why_not(finding)
        self.word.setEnabled(finding is not None and not refused)
        self.word.setToolTip(refused)

    def _why_not(self, finding: "Finding | None") -> str:
        """Why nobody may accept this here; '' where they may."""
        if finding is None:
            return ""
        from panelcad.planning.wording import is_of_the_panel  # noqa: PLC0415 - there are findings, so it is loaded

        if not finding.acceptable:
            return "This can never be right, so nobody may accept it"
        return "It is of the panel: accept it in the list of findings" if is_of_the_panel(finding) else ""

    def _accept(self) -> None:
        entry, judgement = self.list.currentItem(), self._judgement
        if entry is None or judgement is None:
            return
        from panelcad.desktop.dialogs.acceptance import accept_of_planning  # noqa: PLC0415 - loads when it is opened

        accept_of_planning(self._bench, judgement, entry.data(_FINDING), self.window())

    def _withdraw(self) -> None:
        entry, judgement = self.list.currentItem(), self._judgement
        if entry is None or judgement is None:
            return
        identity, option_id = entry.data(_FINDING).identity, judgement.option.id
        self._bench.edit(
            "Take an acceptance back", lambda project, _: withdraw_acceptance(project, option_id, identity)
        )

    def _sign(self, kind: MarkKind) -> QIcon:
        """The badge of the kind, sharp on every screen."""
        theme, ratio = self._bench.theme, self.devicePixelRatioF()
        picture = QPixmap(round(_SIGN * ratio), round(_SIGN * ratio))
        picture.setDevicePixelRatio(ratio)
        picture.fill(Qt.GlobalColor.transparent)
        painter = QPainter(picture)
        painter.translate(_SIGN / 2, _SIGN / 2)
        ground = QColor(theme.severity[kind.value])
        paint_badge(painter, kind, _SIGN / 2 - 1, ground, QColor(theme.on_severity))
        painter.end()
        return QIcon(picture)

    def _select(self, entry: QListWidgetItem) -> None:
        finding = entry.data(_FINDING)
        if finding is not None:
            there = {item.id for item in self._bench.document.option.items}
            self._bench.selection.set(item for item in finding.items if item in there)
