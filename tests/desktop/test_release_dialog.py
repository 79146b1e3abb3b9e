"""An option is released through the dialog, by mouse and keys: what is written, locked, saved and not undone."""

import ezdxf
import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QCheckBox, QMessageBox, QPushButton

from panelcad.desktop.dialogs.release import ReleaseQuestion
from panelcad.model.plate import PlateState
from panelcad.outputs.dxf_options import Content, CornerRelief, DxfOptions, DxfVersion, FaceUp, LeadIns, Origin
from panelcad.outputs.manifest import faults_of
from panelcad.outputs.verify import verify
from panelcad.store.project_file import load
from panelcad.units import LengthUnit
from tests import builders
from tests.desktop.next_dialog import in_dialog

CTRL, SHIFT, ALT = (
    Qt.KeyboardModifier.ControlModifier,
    Qt.KeyboardModifier.ShiftModifier,
    Qt.KeyboardModifier.AltModifier,
)


def when(kind, act) -> list:
    """When a window of this kind is in front, do this to it; the windows that were, and what a message said."""
    seen: list = []

    def look(front) -> None:
        seen.append(front)
        if isinstance(front, QMessageBox):
            seen.append(f"{front.text()} {front.informativeText()}")
        act(front)

    in_dialog(look, kind)
    return seen


def press(name):
    """Click the button of this name."""

    def act(box) -> None:
        wanted = next(each for each in box.findChildren(QPushButton) if each.text().replace("&", "") == name)
        QTest.mouseClick(wanted, Qt.MouseButton.LeftButton)

    return act


def typed(field, text) -> None:
    """Replace what a field says."""
    field.setFocus()
    QTest.keyClick(field, Qt.Key.Key_A, CTRL)
    QTest.keyClicks(field, text)


def choose(box, words) -> None:
    """Go down a list by keys until it says this."""
    box.setFocus()
    QTest.keyClick(box, Qt.Key.Key_Home)
    for _ in range(box.count()):
        if box.currentText() == words:
            return
        QTest.keyClick(box, Qt.Key.Key_Down)
    pytest.fail(f"the list has no '{words}'")


def tick(box: QCheckBox) -> None:
    """Click on the box's square."""
    QTest.mouseClick(box, Qt.MouseButton.LeftButton, pos=QPoint(8, box.height() // 2))


@pytest.fixture
def two_plates(window, panel_file):
    """The window's project with a second, new plate."""
    document = window.bench.document
    option = document.option
    plates = (*option.plates, builders.sheet(120.0, 80.0, id="side", name="Side & door", state=PlateState.NEW))
    document.replace(document.project.with_option(option.revised(plates=plates)), panel_file)
    return document


def test_a_release_by_keys_is_written_locked_saved_and_not_undone(hands, window, panel_file, tmp_path):
    document = window.bench.document
    hands.click(0, 50)
    hands.key(Qt.Key.Key_Right)
    hands.key(Qt.Key.Key_Right)
    QTest.keyClick(window, Qt.Key.Key_Z, CTRL)
    assert document.done
    assert document.undone
    geometry = document.option

    def fill_in(question: ReleaseQuestion) -> None:
        typed(question.by, "TS")
        typed(question.folder.text, str(tmp_path / "papers"))
        QTest.mouseClick(question.verb, Qt.MouseButton.LeftButton)

    asked, told = when(ReleaseQuestion, fill_in), when(QMessageBox, press("Close"))
    QTest.keyClick(window, Qt.Key.Key_R, CTRL)

    assert asked
    assert told[1].startswith("Revision A of ")
    folder = tmp_path / "papers" / f"test-1-{document.option_id}-A"
    assert faults_of(folder) == ()
    assert verify(document.project, folder / f"{folder.name}-main.dxf").is_same
    (entry,) = document.project.releases
    assert (entry.revision, entry.by) == ("A", "TS")
    assert load(panel_file) == document.project
    assert not window.isWindowModified()
    for held in (CTRL, CTRL | SHIFT):
        QTest.keyClick(window, Qt.Key.Key_Z, held)
        assert document.project.releases == (entry,)
        assert document.option == geometry
    hands.click(0, 50)
    hands.key(Qt.Key.Key_Right)
    assert document.option == geometry
    assert window.statusBar().revision.text() == "revision A, locked"


def test_the_dialogs_choices_are_those_of_the_file_that_is_written(window, tmp_path):
    said = []

    def fill_in(question: ReleaseQuestion) -> None:
        cutting = question.cutting
        typed(question.folder.text, str(tmp_path / "papers"))
        choose(cutting.version, "R12, for old controls; states no unit")
        choose(cutting.unit, "inches")
        choose(cutting.face, "back face up, mirrored")
        choose(cutting.origin, "at the sheet's lower left corner")
        typed(cutting.cutter, "1/8 in")
        for box in (cutting.relief, cutting.lead_ins, cutting.content.boxes["engraving"]):
            tick(box)
        said.append(question.named.text())
        assert question.release_options().dxf == DxfOptions(
            DxfVersion.R12,
            LengthUnit.INCH,
            frozenset(Content) - {Content.ENGRAVING},
            Origin.LOWER_LEFT,
            FaceUp.BACK,
            corner_relief=CornerRelief.ROUND,
            lead_ins=LeadIns.POINTS,
            cutter=3.175,
        )
        press("Release")(question)

    when(ReleaseQuestion, fill_in)
    told = when(QMessageBox, press("Close"))
    window.menus.actions["file.release"].trigger()

    kind = "-r12-in-back-corner-no-engraving-relief-lead-ins-cutter-3.175mm"
    assert said == [f"Files such as test-1-new-(revision)-main{kind}.dxf"]
    assert f"test-1-new-A-main{kind}.dxf" in told[1]
    file = tmp_path / "papers" / f"test-1-new-A{kind}" / f"test-1-new-A-main{kind}.dxf"
    assert ezdxf.readfile(file).dxfversion == "AC1009"
    assert verify(window.bench.document.project, file).is_same


def test_one_plate_of_two_is_released_as_a_part(window, two_plates, tmp_path):
    def fill_in(question: ReleaseQuestion) -> None:
        typed(question.folder.text, str(tmp_path / "papers"))
        assert [box.text() for box in question.plates.boxes.values()] == ["Main panel", "Side && door"]
        for box in question.plates.boxes.values():
            tick(box)
        assert not question.verb.isEnabled()
        assert question.problem.text() == "no plate is chosen; expected at least one."
        tick(question.plates.boxes["side"])
        assert question.named.text().endswith("part of the option: plate side only, without main")
        press("Release")(question)

    when(ReleaseQuestion, fill_in)
    told = when(QMessageBox, press("Close"))
    QTest.keyClick(window, Qt.Key.Key_R, CTRL)

    assert "test-1-new-A-part-side" in told[1]
    assert (tmp_path / "papers" / "test-1-new-A-part-side" / "test-1-new-A-side.dxf").is_file()
    assert not (tmp_path / "papers" / "test-1-new-A-part-side" / "test-1-new-A-main.dxf").exists()

    said = []

    def release_the_rest(question: ReleaseQuestion) -> None:
        said.append(question.log.text())
        typed(question.folder.text, str(tmp_path / "papers"))
        press("Release")(question)

    when(ReleaseQuestion, release_the_rest)
    when(QMessageBox, press("Close"))
    window.menus.actions["file.release"].trigger()
    assert said[0].startswith("Revision A of ")
    assert "side, in test-1-new-A-part-side\n  not issued yet: main" in said[0]
    assert [each.plates for each in load(two_plates.path).issues] == [("side",), ("main", "side")]


def test_a_section_through_a_plate_that_is_not_issued_is_refused_while_it_is_chosen(window, two_plates):
    def fill_in(question: ReleaseQuestion) -> None:
        typed(question.drawing.sections, "main:x=0")
        assert question.verb.isEnabled()
        tick(question.plates.boxes["main"])
        assert not question.verb.isEnabled()
        assert "Main panel is not drawn" in question.problem.text()
        QTest.keyClick(question, Qt.Key.Key_Escape)

    asked = when(ReleaseQuestion, fill_in)
    QTest.keyClick(window, Qt.Key.Key_R, CTRL)
    assert asked


def test_what_cannot_be_written_is_said_while_it_is_chosen(window):
    def fill_in(question: ReleaseQuestion) -> None:
        typed(question.cutting.cutter, "thick")
        assert not question.verb.isEnabled()
        assert "'thick' cannot be read" in question.problem.text()
        typed(question.cutting.cutter, "3")
        assert question.verb.isEnabled()
        for box in question.cutting.content.boxes.values():
            tick(box)
        assert not question.verb.isEnabled()
        assert "nothing is left in the cutting files" in question.problem.text()
        QTest.keyClick(question, Qt.Key.Key_Escape)

    asked = when(ReleaseQuestion, fill_in)
    QTest.keyClick(window, Qt.Key.Key_R, CTRL)
    assert asked
    assert window.bench.document.project.releases == ()


def test_a_refusal_offers_a_draft_and_locks_nothing(hands, window, tmp_path, monkeypatch):
    monkeypatch.setattr("panelcad.desktop.dialogs.release._show_folder", lambda _: None)
    hands.drag((0.0, 50.0), (-190.0, 50.0))

    def fill_in(question: ReleaseQuestion) -> None:
        typed(question.folder.text, str(tmp_path / "papers"))
        QTest.mouseClick(question.verb, Qt.MouseButton.LeftButton)

    when(ReleaseQuestion, fill_in)
    told = when(QMessageBox, press("Write a draft drawing"))
    QTest.keyClick(window, Qt.Key.Key_R, CTRL)

    assert "is not released" in told[1]
    assert {path.suffix for path in (tmp_path / "papers").iterdir()} == {".pdf"}
    assert window.bench.document.project.releases == ()
    assert window.bench.document.done


def test_enter_releases_from_the_button_alone(window):
    left: list[bool] = []

    def enter(question: ReleaseQuestion) -> None:
        for widget in (question, question.by, question.folder.text):
            QTest.keyClick(widget, Qt.Key.Key_Return)
        left.append(question.isVisible())
        assert not question.verb.isDefault()
        question.reject()

    when(ReleaseQuestion, enter)
    QTest.keyClick(window, Qt.Key.Key_R, CTRL)
    assert left == [True]
    assert window.bench.document.project.releases == ()
