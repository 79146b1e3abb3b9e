import ezdxf
import pytest

from panelcad.desktop.dialogs.take_in import take_in_file
from panelcad.editing.blank import blank_project
from panelcad.model.project import AS_FOUND
from panelcad.units import LengthUnit


@pytest.fixture
def drawing(tmp_path):
    """A sheet of 400 x 200 mm with one hole of 50 mm; the header states a unit, or none in R12."""

    def made(version: str):
        document = ezdxf.new(version, units=4 if version != "R12" else 0)
        space = document.modelspace()
        add = space.add_polyline2d if version == "R12" else space.add_lwpolyline
        add([(0, 0), (400, 0), (400, 200), (0, 200)], close=True)
        space.add_circle((100, 100), 25)
        file = tmp_path / "old.dxf"
        document.saveas(file)
        return file

    return made


def plate(window):
    return window.bench.document.option.plates[0]


def test_outline_and_openings_are_taken_in_as_one_step(window, drawing, monkeypatch):
    cuts = len(plate(window).cuts)
    monkeypatch.setattr(window.parts.asking, "choice", lambda *_: "Outline and &openings")
    take_in_file(window.parts, drawing("R2010"))

    assert plate(window).outline.contour().bounds == (0.0, 0.0, 400.0, 200.0)
    assert len(plate(window).cuts) == cuts + 1
    assert window.bench.document.done[-1].title == "Take in a drawing"


def test_a_unit_that_is_not_stated_is_asked_for(window, drawing, monkeypatch):
    answers = iter(["&inches", "Outline &only"])
    monkeypatch.setattr(window.parts.asking, "choice", lambda *_: next(answers))
    take_in_file(window.parts, drawing("R12"))

    assert plate(window).outline.contour().bounds == pytest.approx((0.0, 0.0, 400 * 25.4, 200 * 25.4))


def test_a_drawing_that_cannot_be_used_is_told_and_changes_nothing(window, tmp_path, monkeypatch):
    told = []
    monkeypatch.setattr(window.parts.asking, "tell", lambda _title, sentence: told.append(sentence))
    before = window.bench.document.project
    (tmp_path / "bad.dxf").write_text("hello")
    take_in_file(window.parts, tmp_path / "bad.dxf")

    assert "it is no DXF file" in told[0]
    assert window.bench.document.project is before


def asked(window, monkeypatch, answer):
    """Answers the question, and keeps the buttons that it had."""
    seen = []
    monkeypatch.setattr(window.parts.asking, "choice", lambda *words, **_: seen.append(words[3:]) or answer)
    return seen


def test_a_new_panel_takes_the_drawing_as_found_and_undo_takes_both_back(window, drawing, monkeypatch):
    document = window.bench.document
    window.parts.desk.new(blank_project(LengthUnit.MM))
    before = document.project
    seen = asked(window, monkeypatch, "&As found")
    take_in_file(window.parts, drawing("R2010"))

    assert seen == [("&As found", "A &new sheet", "Outline &only", "Cancel")]
    for option in document.project.all_options:
        assert option.plates[0].outline.contour().bounds == (0.0, 0.0, 400.0, 200.0)
        assert [cut.state.value for cut in option.plates[0].cuts] == ["existing"]
    document.undo()
    assert document.project is before


def test_a_drawing_taken_in_where_the_panel_as_found_is_looked_at_is_that_panel(window, drawing, monkeypatch):
    document = window.bench.document
    window.parts.desk.new(blank_project(LengthUnit.MM))
    document.look_at(AS_FOUND)
    seen = asked(window, monkeypatch, "Outline and &openings")
    take_in_file(window.parts, drawing("R2010"))

    assert seen == [("Outline and &openings", "Outline &only", "Cancel")]
    assert document.project.options[0].plates[0].cuts == document.project.as_found.plates[0].cuts != ()


def test_the_panel_as_found_that_stays_is_told(window, drawing, monkeypatch):
    told = []
    window.bench.told.connect(told.append)
    asked(window, monkeypatch, "Outline &only")
    take_in_file(window.parts, drawing("R2010"))

    assert told[-1].endswith("; the panel as found stays as it was")
