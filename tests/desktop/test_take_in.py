import ezdxf
import pytest

from panelcad.desktop.dialogs.take_in import take_in_file


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
    answers = iter(["&inches", "&Outline only"])
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
