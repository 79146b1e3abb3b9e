"""Why a cell of the options table says what it says: the findings behind it; a click selects what they name."""

from typing import TYPE_CHECKING, Final

from PySide6.QtCore import Qt
from PySide6.QtGui import QColor, QIcon, QPainter, QPixmap
from PySide6.QtWidgets import QLabel, QListWidget, QListWidgetItem, QVBoxLayout, QWidget

from panelcad.desktop.canvas.badge import MarkKind, paint_badge
from panelcad.desktop.workbench import Workbench

if TYPE_CHECKING:
    from panelcad.model.finding import Finding
    from panelcad.planning.judge import Judgement, Topic

_FINDING: Final = int(Qt.ItemDataRole.UserRole)
_SIGN: Final = 16


class Reasons(QWidget):
    def __init__(self, bench: Workbench) -> None:
        super().__init__()
        self._bench = bench
        self._topic: Topic | None = None
        self.heading = QLabel("Click a cell to see why it says so.")
        self.heading.setWordWrap(True)
        self.heading.setProperty("role", "heading")
        self.list = QListWidget()
        self.list.setWordWrap(True)
        self.list.setAccessibleName("Reasons")
        self.list.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.list.itemClicked.connect(self._select)
        self.list.itemActivated.connect(self._select)
        column = QVBoxLayout(self)
        column.setContentsMargins(8, 8, 8, 8)
        column.addWidget(self.heading)
        column.addWidget(self.list, 1)

    def show_option(self, judgement: "Judgement | None") -> None:
        """Another option or a new comparison: the same topic, or everything that was found."""
        if judgement is None:
            self.list.clear()
            return
        if self._topic is None:
            self._show(judgement, f"{judgement.option.name}: everything that was found", judgement.all_findings)
        else:
            self.show_topic(judgement, self._topic)

    def show_topic(self, judgement: "Judgement", topic: "Topic") -> None:
        self._topic = topic
        self._show(judgement, f"{judgement.option.name}: {topic}", judgement.findings[topic])

    def _show(self, judgement: "Judgement", heading: str, findings: "tuple[Finding, ...]") -> None:
        from panelcad.planning.wording import cure_words, sentence  # noqa: PLC0415 - the window is painted first

        self.heading.setText(heading)
        self.list.clear()
        for finding in findings:
            project = judgement.equipment.project
            words = f"{sentence(finding, project, judgement.option)} {cure_words(finding, project)}".strip()
            entry = QListWidgetItem(self._sign(finding), words)
            entry.setData(int(Qt.ItemDataRole.AccessibleTextRole), f"{finding.severity.value}: {words}")
            entry.setToolTip(finding.source)
            entry.setData(_FINDING, finding)
            self.list.addItem(entry)
        if not findings:
            self.list.addItem("Nothing was found in what was entered.")

    def _sign(self, finding: "Finding") -> QIcon:
        """The badge of the finding's severity, sharp on every screen."""
        theme, ratio = self._bench.theme, self.devicePixelRatioF()
        picture = QPixmap(round(_SIGN * ratio), round(_SIGN * ratio))
        picture.setDevicePixelRatio(ratio)
        picture.fill(Qt.GlobalColor.transparent)
        painter = QPainter(picture)
        painter.translate(_SIGN / 2, _SIGN / 2)
        ground = QColor(theme.severity[finding.severity.value])
        paint_badge(painter, MarkKind(finding.severity.value), _SIGN / 2 - 1, ground, QColor(theme.on_severity))
        painter.end()
        return QIcon(picture)

    def _select(self, entry: QListWidgetItem) -> None:
        finding = entry.data(_FINDING)
        if finding is not None:
            there = {item.id for item in self._bench.document.option.items}
            self._bench.selection.set(item for item in finding.items if item in there)
