import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QFont, QFontMetrics
from PySide6.QtTest import QTest

from panelcad.model.project import Option
from panelcad.planning.judge import Topic
from panelcad.store.project_file import save
from tests import builders
from tests.desktop.next_dialog import in_dialog
from tests.planning import kit

SYSTEM = {"voltage": 14, "alternators": ({"id": "alternator", "name": "Alternator", "rating": 10.0},)}
RADIO = kit.unit("radio", provides=("COM",), draw_14={"continuous": 2.0}, mass=1.0, price="1000")
REMOTE = kit.unit("remote", provides=("transponder",), needs=({"controller": "transponder"},), mass=2.0, price="2000")
HEATER = kit.unit("heater", draw_14={"continuous": 9.0}, mass=3.0, price="300")


@pytest.fixture
def equipped(window, tmp_path):
    """The window with two options: one with a radio, one short of a controller that overloads the alternator."""
    project = kit.project(RADIO, REMOTE, HEATER, items=(kit.fit("radio"),), planning={"electrical": SYSTEM})
    plate = builders.sheet(width=150.0, height=120.0)
    small = project.option("new").revised(plates=(plate,))
    bad = Option(id="bad", name="Bad", plates=(plate,), items=(kit.fit("remote"), kit.fit("heater")))
    project = project.revised(options=(small, bad), as_found=project.as_found.revised(plates=(plate,)))
    path = tmp_path / "equipped.panel.json"
    save(project, path)
    window.open(path)
    return window


@pytest.fixture
def pane(equipped, qtbot):
    """The options pane, shown and compared."""
    equipped.docks.dock("options").show()
    made = equipped.docks.dock("options").widget()
    qtbot.waitUntil(lambda: made.model.rowCount() > 0, timeout=30_000)
    return made


def cell(pane, topic: Topic, title: str, option: int):
    lines = enumerate(pane.model.lines)
    row = next(i for i, line in lines if line.row and line.topic is topic and line.row.title == title)
    return pane.model.index(row, option + 1)


def rows(equipment):
    return [equipment.fitted.topLevelItem(i) for i in range(equipment.fitted.topLevelItemCount())]


def test_nothing_is_compared_while_nobody_looks(equipped) -> None:
    assert equipped.bench.comparer.comparison is None


def test_options_are_columns_judgements_rows_and_differences_emphasised(pane) -> None:
    header = [pane.model.headerData(i, Qt.Orientation.Horizontal) for i in range(1, 4)]
    assert header == ["As found", "New", "Bad"]
    assert len(pane.model.heading_rows()) == len(Topic)
    assert cell(pane, Topic.COST, "Total", 0).data(Qt.ItemDataRole.FontRole).bold()
    before = pane.model.rowCount()
    pane.shown.setCurrentIndex(1)
    pane.shown.activated.emit(1)
    assert pane.model.rowCount() < before
    assert all(line.row is None or line.row.differs or line.row.title == "Verdict" for line in pane.model.lines)


def test_a_cell_leads_to_its_reasons_and_a_double_click_to_its_option_and_the_item(pane, equipped) -> None:
    shown = equipped.bench.document.option_id
    index = cell(pane, Topic.BELONGING, "Verdict", 2)
    pane.table.scrollTo(index)
    QTest.mouseClick(pane.table.viewport(), Qt.MouseButton.LeftButton, pos=pane.table.visualRect(index).center())
    assert equipped.bench.document.option_id == shown != "bad"
    (entry,) = [pane.reasons.list.item(i) for i in range(pane.reasons.list.count())]
    assert "controller (transponder)" in entry.text()
    QTest.mouseDClick(pane.table.viewport(), Qt.MouseButton.LeftButton, pos=pane.table.visualRect(index).center())
    assert equipped.bench.document.option_id == "bad"
    (entry,) = [pane.reasons.list.item(i) for i in range(pane.reasons.list.count())]
    pane.reasons.list.itemClicked.emit(entry)
    assert equipped.bench.selection.ids == ("remote",)


def current(pane, rule: str):
    """The first entry with a finding of this rule, chosen."""
    entries = [pane.reasons.list.item(i) for i in range(pane.reasons.list.count())]
    entry = next(e for e in entries if e.data(Qt.ItemDataRole.UserRole).rule == rule)
    pane.reasons.list.setCurrentItem(entry)
    return entry


def test_a_finding_of_planning_is_accepted_with_a_reason_and_taken_back(pane, equipped, qtbot) -> None:
    document = equipped.bench.document
    QTest.mouseClick(
        pane.table.viewport(),
        Qt.MouseButton.LeftButton,
        pos=pane.table.visualRect(cell(pane, Topic.BELONGING, "Verdict", 2)).center(),
    )
    assert not pane.reasons.word.isEnabled()
    current(pane, "no-controller")

    def give(dialog) -> None:
        dialog.reason.setPlainText("a tablet tunes it")
        dialog.initials.setText("KT")
        QTest.mouseClick(dialog.verb, Qt.MouseButton.LeftButton)

    in_dialog(give)
    steps = len(document.done)
    QTest.mouseClick(pane.reasons.word, Qt.MouseButton.LeftButton)
    assert [word.reason for word in document.project.option("bad").acceptances] == ["a tablet tunes it"]
    assert document.option_id != "bad"
    assert len(document.done) == steps + 1
    qtbot.waitUntil(lambda: "KT: a tablet tunes it" in pane.reasons.list.item(0).text(), timeout=30_000)
    assert cell(pane, Topic.BELONGING, "Verdict", 2).data() == "nothing found"
    entry = current(pane, "no-controller")
    assert entry.data(Qt.ItemDataRole.AccessibleTextRole).startswith("accepted: ")
    QTest.mouseClick(pane.reasons.back, Qt.MouseButton.LeftButton)
    assert document.project.option("bad").acceptances == ()
    qtbot.waitUntil(lambda: cell(pane, Topic.BELONGING, "Verdict", 2).data() == "1 error", timeout=30_000)


def test_what_cannot_be_compared_is_said_in_one_sentence(pane, equipped, qtbot) -> None:
    project = equipped.bench.document.project
    planning = project.planning.revised(flight="day VFR", requirements=("mars-part-1",))
    equipped.bench.document.apply("Change the lists", project.revised(planning=planning))
    qtbot.waitUntil(lambda: "no list of required equipment 'mars-part-1'" in pane.told.text(), timeout=30_000)


def test_charts_show_the_option_on_the_canvas(pane, equipped) -> None:
    equipped.bench.document.look_at("bad")
    assert pane.charts["load"].chart.title.startswith("Bad")
    assert pane.charts["envelope"].chart is None
    assert not pane.charts["load"].grab().isNull()
    assert pane.charts["cost"].chart is not None


def test_a_copied_and_changed_option_shows_its_difference(pane, equipped, qtbot) -> None:
    equipped.bench.document.look_at("new")
    in_dialog(lambda dialog: dialog.accept())
    pane.copy.click()
    assert equipped.bench.document.option_id not in {"new", "bad", "as-found"}
    equipped.docks.dock("equipment").show()
    equipment = equipped.docks.dock("equipment").widget()
    equipment.fitted.setCurrentItem(rows(equipment)[0])
    equipment.take_out.click()
    qtbot.waitUntil(lambda: len(pane.model.names) == 4, timeout=30_000)
    qtbot.waitUntil(lambda: cell(pane, Topic.REDUNDANCY, "COM", 3).data() == "none", timeout=30_000)
    assert cell(pane, Topic.REDUNDANCY, "COM", 1).data() == "1"


def test_a_unit_waits_until_it_is_placed_and_both_parts_go_together(equipped) -> None:
    equipped.docks.dock("equipment").show()
    equipment = equipped.docks.dock("equipment").widget()
    document = equipped.bench.document
    document.look_at("new")
    before = document.option
    equipment.search.setText("digital clock")
    equipment.offered.setCurrentRow(0)
    equipment.put_in.click()
    assert (rows(equipment)[-1].text(1), document.option.items[-1].plate) == ("not placed yet", None)
    equipment.fitted.setCurrentItem(rows(equipment)[-1])
    equipment.place.click()
    assert document.option.items[-1].plate is not None
    assert rows(equipment)[-1].text(1) == "panel"
    equipment.fitted.setCurrentItem(rows(equipment)[-1])
    equipment.take_out.click()
    assert [step.title.split()[0] for step in document.done] == ["Put", "Place", "Take"]
    assert (document.option.items, document.option.plates) == (before.items, before.plates)


LONG = "Two navigators with an all-weather attitude reference and one transponder by the second door, not yet asked"
WORD = "Antikollisionslichtüberwachungsanzeige"


@pytest.mark.parametrize("width", [420, 700, 1300])
def test_a_long_name_of_an_option_goes_on_in_further_lines_and_is_never_clipped(pane, equipped, qtbot, width) -> None:
    document = equipped.bench.document
    named = [one.revised(name=name) for one, name in zip(document.project.options, (LONG, WORD), strict=True)]
    document.apply("Name the options", document.project.revised(options=tuple(named)))
    qtbot.waitUntil(lambda: pane.model.names[1:] == (LONG, WORD), timeout=30_000)
    header = pane.table.horizontalHeader()
    pane.table.resize(width, 240)
    for section in range(1, header.count()):
        lines, name = header.lines(section), pane.model.names[section - 1]
        bold = section - 1 == pane.model.current
        font = QFont(header.font())
        font.setBold(bold)
        metrics = QFontMetrics(font)
        assert max(metrics.horizontalAdvance(line) for line in lines) <= header.sectionSize(section), name
        assert len(lines) * metrics.lineSpacing() <= header.sizeHint().height()
        said = " ".join(lines).replace("…", "")
        assert name.replace(" ", "").startswith(said.replace(" ", ""))
        assert said.replace(" ", "") == name.replace(" ", "") or lines[-1].endswith("…")
        assert pane.model.headerData(section, Qt.Orientation.Horizontal, Qt.ItemDataRole.ToolTipRole) == name
    qtbot.waitUntil(lambda: header.height() == header.sizeHint().height())


def test_cells_are_gone_through_by_keys_and_each_leads_to_its_reasons_under_its_whole_name(pane, equipped) -> None:
    index = cell(pane, Topic.BELONGING, "Verdict", 1)
    pane.table.setFocus()
    pane.table.setCurrentIndex(index)
    QTest.keyClick(pane.table, Qt.Key.Key_Right)
    assert pane.reasons.heading.text().startswith("Bad: ")
    shown = pane.table.currentIndex().row(), pane.table.currentIndex().column()
    QTest.keyClick(pane.table, Qt.Key.Key_Return)
    assert equipped.bench.document.option_id == "bad"
    assert (pane.table.currentIndex().row(), pane.table.currentIndex().column()) == shown
    assert pane.table.hasFocus()
