"""What the checks found: a list with a filter; a click goes to the place."""

from dataclasses import dataclass
from typing import Final

from PySide6.QtCore import QAbstractListModel, QModelIndex, QPersistentModelIndex, QPoint, Qt
from PySide6.QtWidgets import QLabel, QListView, QVBoxLayout, QWidget

from panelcad.desktop.canvas.badge import MarkKind
from panelcad.desktop.choice_box import ChoiceBox
from panelcad.desktop.judge import CHECKING
from panelcad.desktop.panes.equipment_errors import EquipmentErrors
from panelcad.desktop.panes.finding_detail import FindingDetail
from panelcad.desktop.panes.finding_filters import FILTERS
from panelcad.desktop.panes.finding_row import FindingRow
from panelcad.desktop.panes.list_with_words import ListWithWords
from panelcad.desktop.panes.unknowns import Unknowns
from panelcad.desktop.workbench import Workbench
from panelcad.model.finding import Finding

Index = QModelIndex | QPersistentModelIndex
_TOP_LEFT: Final = QPoint(4, 4)
ENTRY_ROLE: Final = int(Qt.ItemDataRole.UserRole)


@dataclass(frozen=True)
class Entry:
    """A finding as the list shows it."""

    finding: Finding
    kind: MarkKind
    words: str
    title: str


class FindingModel(QAbstractListModel):
    def __init__(self) -> None:
        super().__init__()
        self.entries: list[Entry] = []

    def offer(self, entries: list[Entry]) -> None:
        """Keep the rows where only their words changed, so that nothing jumps while something is dragged."""
        same = [e.finding.identity for e in entries] == [e.finding.identity for e in self.entries]
        if same:
            changed = [row for row, (now, was) in enumerate(zip(entries, self.entries, strict=True)) if now != was]
            self.entries = entries
            for row in changed:
                self.dataChanged.emit(self.index(row), self.index(row))
            return
        self.beginResetModel()
        self.entries = entries
        self.endResetModel()

    def rowCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008 - Qt's own default
        return 0 if parent.isValid() else len(self.entries)

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        entry = self.entries[index.row()]
        if role == Qt.ItemDataRole.DisplayRole:
            return entry.words
        if role == Qt.ItemDataRole.AccessibleTextRole:
            return f"{entry.kind.value}: {entry.words}"
        if role == ENTRY_ROLE:
            return entry
        return entry.finding.source if role == Qt.ItemDataRole.ToolTipRole else None


@dataclass(frozen=True)
class _InSight:
    """A finding in the list, how far its upper edge is below the list's in pixels, and how far one scrolled."""

    identity: str
    top: int
    scrolled: int


class FindingsPane(QWidget):
    def __init__(self, bench: Workbench) -> None:
        super().__init__()
        self._bench = bench
        self.filter = ChoiceBox()
        self.filter.setAccessibleName("Which findings")
        for each in FILTERS:
            self.filter.addItem(each.words)
        self._settled: set[str] = set()
        """What was found after the last edit; what a gesture under way would bring is not counted."""
        self.model = FindingModel()
        self.list = ListWithWords()
        self.list.setModel(self.model)
        self.list.setItemDelegate(FindingRow(bench, self.list))
        self.list.setAccessibleName("Findings")
        self.list.setWordWrap(True)
        self.list.setSelectionMode(QListView.SelectionMode.ExtendedSelection)
        self.list.setResizeMode(QListView.ResizeMode.Adjust)
        self.list.setVerticalScrollMode(QListView.ScrollMode.ScrollPerPixel)
        self.list.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.count = QLabel()
        self.count.setProperty("role", "faint")
        self.count.setWordWrap(True)
        column = self._column = QVBoxLayout(self)
        column.setContentsMargins(8, 8, 8, 8)
        column.setSpacing(6)
        column.addWidget(self.filter)
        column.addWidget(self.list, 1)
        column.addWidget(self.count)
        self.unknown = Unknowns(bench)
        column.addWidget(self.unknown)
        self.of_equipment = EquipmentErrors(bench)
        column.addWidget(self.of_equipment)
        self.unknown.opened.connect(lambda is_open: self._make_way(opened=is_open))
        self.detail = FindingDetail(bench)
        column.addWidget(self.detail)
        self._connect()
        self.refresh()
        self.setFocusProxy(self.list)

    def _connect(self) -> None:
        bench = self._bench
        self.list.selectionModel().currentChanged.connect(self._show_detail)
        self.list.selectionModel().selectionChanged.connect(self._show_detail)
        self.filter.activated.connect(self.refresh)
        bench.selection.changed.connect(self._follow_selection)
        self.list.clicked.connect(self._go_to)
        self.list.activated.connect(self._go_to)
        self.detail.dealt_with.connect(self._go_on)
        self.detail.taken_back.connect(self.list.setFocus)
        bench.judge.reported.connect(self.refresh)
        bench.judge.waited.connect(lambda: self._say(CHECKING))
        bench.document.replaced.connect(self.refresh)
        bench.finding_chosen.connect(self._follow)
        bench.finding_marked.connect(self._follow)
        for signal in (bench.finding_chosen, bench.finding_marked):
            signal.connect(lambda _: self.unknown.close_list())

    def _follow_selection(self) -> None:
        if FILTERS[self.filter.currentIndex()].only_selected:
            self.refresh()

    def refresh(self) -> None:
        report = self._bench.judge.report
        if report is None:
            self.model.offer([])
            self._say("")
            self.list.say("")
            self.unknown.show_of(None)
            self._show_detail()
            return
        found = [(finding, MarkKind(finding.severity.value)) for finding in report.findings]
        found += [(accepted.finding, MarkKind.ACCEPTED) for accepted in report.accepted]
        wanted = FILTERS[self.filter.currentIndex()]
        selected = self._bench.stage.whole(self._bench.selection.ids)
        shown = [self._entry(finding, kind) for finding, kind in found if wanted.lets_pass(finding, kind, selected)]
        in_sight = self._first_in_sight()
        self.model.offer(shown)
        self._say(self._summary(len(shown), len(found)))
        self.list.say("" if found else "Nothing found on the panel.")
        self.unknown.show_of(report)
        self.list.setAutoScroll(False)
        self._follow(self._bench.stage.current_finding)
        self.list.setAutoScroll(True)
        self._show_detail()
        self._keep_in_sight(in_sight)
        if report.project is self._bench.document.project:
            self._bring_into_sight()

    def _first_in_sight(self) -> _InSight:
        """The first whose upper edge is seen: the words of one, and so its height, may become others."""
        scrolled, first = self.list.verticalScrollBar().value(), self.list.indexAt(_TOP_LEFT)
        below = self.model.index(first.row() + 1) if self.list.visualRect(first).top() < 0 else first
        index = (
            below if below.isValid() and self.list.visualRect(below).top() < self.list.viewport().height() else first
        )
        if not index.isValid():
            return _InSight("", 0, scrolled)
        return _InSight(self.model.entries[index.row()].finding.identity, self.list.visualRect(index).top(), scrolled)

    def _keep_in_sight(self, before: _InSight) -> None:
        """What was at the top is there again, whatever came or went above it; the scroll bar where it is gone."""
        row = self._row_of(before.identity)
        self.list.doItemsLayout()
        bar = self.list.verticalScrollBar()
        if row is None:
            bar.setValue(before.scrolled)
        else:
            bar.setValue(bar.value() + self.list.visualRect(self.model.index(row)).top() - before.top)

    def _bring_into_sight(self) -> None:
        """After an edit, scroll to the gravest error that was not there before it, unless somebody is in the list."""
        known, self._settled = self._settled, {entry.finding.identity for entry in self.model.entries}
        errors = (e.finding.identity for e in self.model.entries if e.kind is MarkKind.ERROR)
        row = self._row_of(next((identity for identity in errors if identity not in known), ""))
        if row is not None and not self.list.hasFocus():
            self.list.scrollTo(self.model.index(row), QListView.ScrollHint.PositionAtTop)

    def _entry(self, finding: Finding, kind: MarkKind) -> Entry:
        from panelcad.checks.registry import all_rules  # noqa: PLC0415 - the rules load with the first check
        from panelcad.checks.wording import sentence  # noqa: PLC0415

        report = self._bench.judge.report
        if report is None:
            raise RuntimeError("nothing was judged")
        title = next((rule.title for rule in all_rules() if rule.id == finding.rule), finding.rule)
        return Entry(finding, kind, sentence(finding, report.project, report.option), title)

    def _summary(self, shown: int, found: int) -> str:
        report = self._bench.judge.report
        broken = report.not_judged if report is not None else ()
        words = "" if shown == found else f"{shown} of {found} shown."
        if broken:
            words += " Not judged: " + ", ".join(sorted({one.rule for one in broken})) + "."
        return words.strip()

    def _make_way(self, *, opened: bool) -> None:
        """What is not known is read in the place of what was found."""
        for part in (self.filter, self.list):
            part.setHidden(opened)
        self._column.setStretchFactor(self.unknown, int(opened))
        self.setFocusProxy(self.unknown.list if opened else self.list)
        self._show_detail()

    def _say(self, words: str) -> None:
        self.count.setText(words)
        self.count.setVisible(bool(words))

    def _go_to(self, index: Index) -> None:
        """To the place; what it is about is selected, unless the selection is what the list is about."""
        finding = self.model.entries[index.row()].finding
        self._bench.finding_chosen.emit(finding.identity)
        if not FILTERS[self.filter.currentIndex()].only_selected:
            self._bench.select_parts(finding.items)

    @property
    def chosen(self) -> Finding | None:
        """The finding that is chosen in the list."""
        entry = self._entry_chosen()
        return entry.finding if entry is not None else None

    def _entry_chosen(self) -> Entry | None:
        row = self.list.currentIndex().row()
        return self.model.entries[row] if 0 <= row < len(self.model.entries) else None

    def _show_detail(self, *_: object) -> None:
        entry = self._entry_chosen() if not self.list.isHidden() else None
        accepted = entry is not None and entry.kind is MarkKind.ACCEPTED
        rows = sorted(index.row() for index in self.list.selectionModel().selectedIndexes())
        chosen = [self.model.entries[row] for row in rows if row < len(self.model.entries)]
        together = tuple(one.finding for one in chosen if one.kind is not MarkKind.ACCEPTED)
        finding = entry.finding if entry is not None else None
        self.detail.show_finding(finding, is_accepted=accepted, chosen=together if len(chosen) > 1 else ())

    def _go_on(self) -> None:
        """To the finding after the one that was dealt with; the keyboard stays in the list."""
        self.list.setFocus()
        row = self.list.currentIndex().row()
        others = [*self.model.entries[row + 1 :], *reversed(self.model.entries[:row])]
        following = next((entry for entry in others if entry.kind is not MarkKind.ACCEPTED), None)
        if following is not None:
            self._bench.stage.look_at_finding(following.finding.identity)
            self._follow(following.finding.identity)

    def _follow(self, identity: str) -> None:
        """Choose the row of this finding, if it is shown."""
        row = self._row_of(identity)
        if row is not None and self.list.currentIndex().row() != row:
            self.list.setCurrentIndex(self.model.index(row))

    def _row_of(self, identity: str) -> int | None:
        rows = enumerate(self.model.entries)
        return next((row for row, entry in rows if entry.finding.identity == identity), None)
