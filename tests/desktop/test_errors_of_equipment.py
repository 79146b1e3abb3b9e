"""What an option lacks is counted where findings are, leads to its reasons, and is named before a release."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLabel, QMessageBox, QPushButton

from panelcad.desktop.dialogs.release import ReleaseQuestion
from panelcad.editing.remove import remove
from panelcad.model.plate import PlateState
from panelcad.model.project import Option
from panelcad.store.project_file import save
from tests import builders
from tests.desktop.next_dialog import in_dialog
from tests.planning import kit

REMOTE = kit.unit("remote", provides=("transponder",), needs=({"controller": "transponder"},))


@pytest.fixture
def lacking(window, qtbot, tmp_path):
    """The window with an option whose remote transponder has no controller, and one without equipment."""
    plate = builders.sheet(state=PlateState.NEW, cuts=(builders.cut("c1", 0, 0),))
    project = kit.project(REMOTE, items=(kit.fit("remote"),))
    options = (project.option("new").revised(plates=(plate,)), Option(id="bare", name="Bare", plates=(plate,)))
    path = tmp_path / "lacking.panel.json"
    save(project.revised(options=options), path)
    window.open(path)
    qtbot.waitUntil(lambda: "1 error of equipment" in window.statusBar().found.text())
    return window


def findings(window):
    return window.docks.dock("findings").widget()


def test_another_option_or_an_edit_that_mends_it_takes_the_count_away(lacking, qtbot) -> None:
    document, found = lacking.bench.document, lacking.statusBar().found
    assert findings(lacking).of_equipment.isVisible()
    document.look_at("bare")
    assert "of equipment" not in found.text()
    assert not findings(lacking).of_equipment.isVisible()
    document.look_at("new")
    qtbot.waitUntil(lambda: "1 error of equipment" in found.text())
    document.apply("Remove", remove(document.project, "new", ["remote"]))
    qtbot.waitUntil(lambda: "of equipment" not in found.text())
    document.undo()
    qtbot.waitUntil(lambda: "1 error of equipment" in found.text())


def test_the_line_below_the_findings_leads_to_the_reasons(lacking, qtbot) -> None:
    line = findings(lacking).of_equipment
    assert line.text() == "1 error of equipment – show"
    QTest.mouseClick(line, Qt.MouseButton.LeftButton)
    pane = lacking.docks.dock("options").widget()
    assert pane.isVisible()
    qtbot.waitUntil(lambda: pane.reasons.list.count() > 0, timeout=30_000)
    assert pane.tabs.currentWidget() is pane.reasons
    assert "gives it the controller (transponder)" in pane.reasons.list.item(0).text()


def test_the_line_leads_from_one_topic_back_to_everything(lacking, qtbot) -> None:
    pane = lacking.docks.dock("options").widget()
    lacking.docks.dock("options").show()
    qtbot.waitUntil(lambda: pane.model.rowCount() > 0, timeout=30_000)
    cost = next(i for i, line in enumerate(pane.model.lines) if line.row and line.topic.value == "cost")
    pane.table.setCurrentIndex(pane.model.index(cost, 1))
    assert pane.reasons.heading.text() == "As found: cost"
    findings(lacking).of_equipment.click()
    assert pane.reasons.heading.text() == "New: everything that was found"
    assert "gives it the controller (transponder)" in pane.reasons.list.item(0).text()


def test_the_release_names_them_first_and_is_not_stopped(lacking, tmp_path) -> None:
    said: list[str] = []

    def release(question: ReleaseQuestion) -> None:
        said.extend(label.text() for label in question.findChildren(QLabel))
        question.folder.text.setText(str(tmp_path / "papers"))
        QTest.mouseClick(question.verb, Qt.MouseButton.LeftButton)

    def close(box: QMessageBox) -> None:
        QTest.mouseClick(
            next(each for each in box.findChildren(QPushButton) if "Close" in each.text()), Qt.MouseButton.LeftButton
        )

    in_dialog(release, ReleaseQuestion)
    in_dialog(close, QMessageBox)
    QTest.keyClick(lacking, Qt.Key.Key_R, Qt.KeyboardModifier.ControlModifier)
    assert any(words.startswith("Open: 1 error of equipment.") for words in said)
    assert any(
        "Remote: nothing in the option gives it the controller (transponder) it needs" in words for words in said
    )
    assert len(lacking.bench.document.project.releases) == 1
