"""Lock, revise and verify as a person does it in the window."""

import ezdxf
import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFileDialog, QMessageBox, QPushButton

from panelcad.desktop.dialogs.release import ReleaseQuestion, shown_section
from panelcad.desktop.dialogs.revision import RevisionQuestion
from panelcad.desktop.dialogs.verifying import Verification, VerifyQuestion, show_verification
from panelcad.drawing.inks import Ink
from panelcad.errors import PanelcadError
from panelcad.geometry.across import Across
from panelcad.outputs.release import release
from tests.desktop.next_dialog import in_dialog


@pytest.fixture
def released(window, tmp_path):
    """The window after its option was released as revision A; the folder's files."""
    document = window.bench.document
    done = release(document.project, document.option_id, tmp_path / "papers", "2026-05-01")
    document.record_release(done.project)
    return done


def test_a_released_option_does_not_move_until_a_revision_is_opened(window, hands, released, qtbot):
    before = window.bench.document.project
    hands.drag((0.0, 50.0), (20.0, 50.0))
    assert window.bench.document.project is before

    def reason(dialog):
        assert not dialog.verb.isEnabled()
        dialog.reason.setPlainText("it met a rib")
        qtbot.mouseClick(dialog.verb, Qt.MouseButton.LeftButton)

    status = window.statusBar()
    assert status.revision.text() == "revision A, locked"
    in_dialog(reason, RevisionQuestion)
    window.menus.actions["file.revision"].trigger()
    assert window.bench.document.project.opened_revisions[-1].reason == "it met a rib"
    assert not window.menus.actions["file.revision"].isEnabled()
    assert status.revision.text() == "revision B open"
    hands.drag((0.0, 50.0), (20.0, 50.0))
    assert window.bench.document.project is not before
    assert window.bench.document.done


def test_an_option_that_is_not_released_has_no_revision_to_open(window):
    assert not window.menus.actions["file.revision"].isEnabled()


def test_a_cutting_file_is_verified_with_its_differences_to_read(window, released, qtbot):
    dxf = released.files[0]
    document = ezdxf.readfile(dxf)
    document.modelspace().query("CIRCLE")[0].translate(0.5, 0.0, 0.0)
    document.saveas(dxf)

    seen = []
    in_dialog(seen.append, Verification)
    show_verification(window.parts, str(dxf))

    assert "moved: " in seen[0].words.toPlainText()
    assert "revision A of 2026-05-01" in seen[0].words.toPlainText()


@pytest.fixture
def verified(window, qtbot):
    """Types what is to be verified into the dialog; what the answer says."""

    def type_and_verify(text: str) -> str:
        def fill_in(question):
            assert not question.verb.isEnabled()
            qtbot.keyClicks(question.paper.text, text)
            qtbot.keyClick(question.paper.text, Qt.Key.Key_Return)

        seen = []
        in_dialog(fill_in, VerifyQuestion)
        in_dialog(seen.append, Verification)
        window.menus.actions["file.verify"].trigger()
        return seen[0].words.toPlainText()

    return type_and_verify


def test_papers_a_folder_and_a_code_are_verified_in_the_window(released, verified):
    drawing = next(file for file in released.files if file.name.endswith("drawing.pdf"))
    assert "revision A of 2026-05-01; the option is still so" in verified(str(drawing))
    assert "every file is as it was released" in verified(str(released.folder))
    assert "revision A of 2026-05-01; the option is still so" in verified(f"PANELCAD {released.stamp.fingerprint} A")
    drawing.write_text("other")
    told = verified(str(released.folder))
    assert f"{drawing}: missing, or not as it was released" in told
    assert "Released from: option New (new), revision A of 2026-05-01; the option is still so" in told


def test_a_file_or_a_folder_is_looked_for(window, released, monkeypatch, qtbot):
    question = VerifyQuestion(window, released.folder)
    monkeypatch.setattr(QFileDialog, "getOpenFileName", lambda *_: (str(released.files[0]), ""))
    monkeypatch.setattr(QFileDialog, "getExistingDirectory", lambda *_: str(released.folder))
    looks = {each.text(): each for each in question.paper.findChildren(QPushButton)}
    qtbot.mouseClick(looks["&File…"], Qt.MouseButton.LeftButton)
    assert question.paper.what == str(released.files[0])
    qtbot.mouseClick(looks["F&older…"], Qt.MouseButton.LeftButton)
    assert question.paper.what == str(released.folder)


def test_what_cannot_be_verified_is_told(window, tmp_path):
    told = []
    in_dialog(lambda box: told.append(box.text()), QMessageBox)
    show_verification(window.parts, str(tmp_path / "none.pdf"))
    assert "none.pdf: it cannot be read" in told[0]


def test_the_release_question_chooses_where_the_sections_of_the_drawing_run(window, tmp_path):
    document, bench = window.bench.document, window.bench
    assert shown_section(bench) == ""
    bench.section.run_at(-35.5)
    question = ReleaseQuestion(window, document.project, document.option, tmp_path, "TS")
    assert shown_section(bench) == f"{bench.stage.plate_id}:x=-35.5mm"
    question.drawing.sections.setText("x = -35.5 mm; y = 20 mm")
    question.drawing.largest.setCurrentText("A3")
    question.drawing.ink.setCurrentText("black")
    options = question.release_options().drawing
    question.drawing.sections.setText("x = far")
    with pytest.raises(PanelcadError, match="cannot be read"):
        question.drawing.options(document.project, document.option)
    assert "cannot be read" in question.problem.text()
    assert not question.verb.isEnabled()
    question.deleteLater()

    assert [(each.line.across, each.line.at) for each in options.sections] == [
        (Across.VERTICAL, -35.5),
        (Across.HORIZONTAL, 20.0),
    ]
    assert (options.largest.name, options.ink) == ("A3", Ink.BLACK)
