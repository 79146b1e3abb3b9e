"""Lettering of a cutting file held against the project: place and shape of every stroke, however it was edited."""

import json
from collections.abc import Callable
from pathlib import Path

import ezdxf
import pytest
from ezdxf.layouts import Modelspace
from ezdxf.math import Matrix44
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from panelcad.model.plate import Engraving
from panelcad.model.project import Project
from panelcad.outputs.dxf import export_dxf
from panelcad.outputs.dxf_options import Content, DxfOptions
from panelcad.outputs.verify import VerifyReport, verify
from panelcad.outputs.verify_plain import verify_as_plain
from panelcad.outputs.verify_words import notes, of_whole_file, sentences, verdict
from panelcad.store.project_file import load
from tests.builders import cut, project, sheet

WORDS = ("MASTER", "AVIONICS", "OFF", "OFF", "PITOT HEAT")
TRAINER = load(Path(__file__).parents[2] / "sample_panels" / "trainer.panel.json")


def lettered(words: tuple[str, ...] = WORDS, pitch: float = 40.0) -> Project:
    lines = tuple(
        Engraving(id=f"e{i}", text=text, x=-100.0 + i * pitch, y=-100.0, height=3.0) for i, text in enumerate(words)
    )
    return project(sheet(cuts=(cut("gauge", 0.0, 0.0),), state="new", engravings=lines))


def edited(made: Project, tmp_path: Path, edit: Callable[[Modelspace], None], **options) -> VerifyReport:
    file = tmp_path / "panel.dxf"
    export_dxf(made, made.option("new"), "main", file, DxfOptions(**options))
    document = ezdxf.readfile(file)
    edit(document.modelspace())
    document.saveas(file)
    return verify(made, file)


def strokes(space: Modelspace) -> list:
    return list(space.query('*[layer=="ENGRAVE"]'))


def in_word(space: Modelspace, number: int) -> list:
    """The strokes of the lettering whose middle is at -100 + 40 x number."""
    return [each for each in strokes(space) if abs(_x(each) + 100.0 - 40.0 * number) < 15.0]


def _x(stroke) -> float:
    return stroke.dxf.start.x if stroke.dxftype() == "LINE" else stroke.get_points("xy")[0][0]


def test_all_lettering_moved_together_is_told_as_a_whole(tmp_path: Path) -> None:
    def edit(space: Modelspace) -> None:
        for stroke in strokes(space):
            stroke.translate(5.08, 0, 0)

    report = edited(lettered(), tmp_path, edit)

    assert of_whole_file(report) == ()
    assert sentences(report) == ("lettering as a whole: shifted by x 5.080, y 0.000 mm",)
    assert not report.is_same
    assert verdict(report).startswith("Differs: 1 difference;")


def test_one_line_moved_is_told_with_its_number_and_its_words(tmp_path: Path) -> None:
    def edit(space: Modelspace) -> None:
        for stroke in in_word(space, 1):
            stroke.translate(-0.2, 0.05, 0)

    assert sentences(edited(lettered(), tmp_path, edit)) == (
        "engraving E2 'AVIONICS': moved 0.200 mm left and 0.050 mm up",
    )


def test_a_single_stroke_moved_by_a_millimetre_is_told(tmp_path: Path) -> None:
    def edit(space: Modelspace) -> None:
        in_word(space, 0)[0].translate(1.0, 0, 0)

    (told,) = sentences(edited(lettered(), tmp_path, edit))
    assert told.startswith("engraving E1 'MASTER': 1 of ")
    assert told.endswith(" strokes moved 1.000 mm right")


def test_words_that_changed_places_are_both_told(tmp_path: Path) -> None:
    def edit(space: Modelspace) -> None:
        first, second = in_word(space, 0), in_word(space, 1)
        for stroke in first:
            stroke.translate(40, 0, 0)
        for stroke in second:
            stroke.translate(-40, 0, 0)

    assert sentences(edited(lettered(), tmp_path, edit)) == (
        "engraving E1 'MASTER': moved 40.000 mm right",
        "engraving E2 'AVIONICS': moved 40.000 mm left",
    )


def test_other_words_missing_words_and_new_strokes_are_told(tmp_path: Path) -> None:
    def edit(space: Modelspace) -> None:
        for stroke in in_word(space, 4):
            space.delete_entity(stroke)
        space.add_line((0, 100), (12, 100), dxfattribs={"layer": "ENGRAVE"})

    assert sentences(edited(lettered(), tmp_path, edit)) == (
        "engraving E5 'PITOT HEAT': missing at x 60.00, y -100.00 mm",
        "new lettering: 12.00 mm of strokes at x 6.00, y 100.00 mm",
    )
    file = tmp_path / "other.dxf"
    other = lettered(("NAV", *WORDS[1:]))
    export_dxf(other, other.option("new"), "main", file)
    assert sentences(verify(lettered(), file)) == ("engraving E1 'MASTER': other strokes stand in its place",)


def test_lettering_mirrored_on_its_own_is_told(tmp_path: Path) -> None:
    def edit(space: Modelspace) -> None:
        for stroke in strokes(space):
            stroke.transform(Matrix44.scale(-1.0, 1.0, 1.0))

    assert sentences(edited(lettered(), tmp_path, edit)) == ("lettering as a whole: mirrored left to right",)


@pytest.mark.parametrize("content", [frozenset(Content), frozenset({Content.ENGRAVING})])
def test_strokes_taken_apart_or_drawn_twice_make_no_other_part(tmp_path: Path, content) -> None:
    def edit(space: Modelspace) -> None:
        for stroke in strokes(space):
            if stroke.dxftype() == "LWPOLYLINE":
                stroke.explode()

    def twice(space: Modelspace) -> None:
        for stroke in in_word(space, 0):
            space.add_entity(stroke.copy())

    assert edited(lettered(), tmp_path, edit, content=content).is_same
    report = edited(lettered(), tmp_path, twice, content=content)
    assert report.is_same
    assert [note for note in notes(report) if note.endswith("strokes of lettering, which would be engraved twice")]


@settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(st.integers(0, 4), st.floats(-8.0, 8.0), st.floats(-8.0, 8.0))
def test_any_line_that_moved_anywhere_is_found(tmp_path: Path, number: int, x: float, y: float) -> None:
    def edit(space: Modelspace) -> None:
        for stroke in in_word(space, number):
            stroke.translate(x, y, 0)

    report = edited(lettered(), tmp_path, edit)
    way = (x * x + y * y) ** 0.5
    if way > report.tolerance:
        (found,) = report.lettering.differences
        assert found.engraving == f"e{number}"
        assert found.moved == pytest.approx((x, y), abs=1e-6)
    elif way < report.tolerance / 2:
        assert report.is_same


def test_lettering_that_stands_on_the_sheet_is_not_to_be_engraved_again(tmp_path: Path) -> None:
    """Sixteen lines of the trainer were there, by its panel as found; only the other eleven are engraved."""
    file = tmp_path / "trainer.dxf"
    export_dxf(TRAINER, TRAINER.option("day-night"), "panel", file)
    report = verify(TRAINER, file)
    found, plate = (TRAINER.option(name).plates[0] for name in ("as-found", "day-night"))

    assert report.is_same
    assert report.lettering.count == len(plate.engravings) - len(found.engravings)
    document = ezdxf.readfile(file)
    for stroke in document.modelspace().query('*[layer=="REFERENCE"]'):
        if stroke.dxftype() in {"LINE", "LWPOLYLINE"} and not getattr(stroke, "closed", False):
            stroke.dxf.layer = "ENGRAVE"
    document.saveas(file)
    told = sentences(verify(TRAINER, file))
    assert sum(each.endswith("is on the sheet already, and would be engraved again") for each in told) == len(
        found.engravings
    )


def test_the_json_has_every_line_that_differs(tmp_path: Path) -> None:
    def edit(space: Modelspace) -> None:
        for stroke in in_word(space, 2):
            stroke.translate(0, 2.5, 0)

    plain = json.loads(json.dumps(verify_as_plain(edited(lettered(), tmp_path, edit))))
    assert plain["lettering"]["compared"] == len(WORDS)
    (told,) = plain["lettering"]["differences"]
    assert (told["kind"], told["engraving"]) == ("moved", "e2")
    assert told["moved"] == pytest.approx([0.0, 2.5])
