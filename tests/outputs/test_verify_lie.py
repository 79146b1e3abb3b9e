"""Files that came back mirrored, turned, shifted, scaled, of something else, or with their layers thrown together."""

import math
from collections.abc import Callable
from pathlib import Path

import ezdxf
import pytest
from ezdxf.document import Drawing
from ezdxf.math import Matrix44, rational_bspline_from_arc
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from panelcad.library.samples import sample_file
from panelcad.outputs.dxf import export_dxf
from panelcad.outputs.dxf_nest import Stock
from panelcad.outputs.dxf_options import EVERYTHING, Content, DxfOptions, DxfVersion, FaceUp, Origin
from panelcad.outputs.dxf_stock import export_nested_dxf
from panelcad.outputs.verify import VerifyReport, verify
from panelcad.outputs.verify_words import notes, of_whole_file, sentences, verdict, verify_text
from panelcad.store.project_file import load
from panelcad.units import LengthUnit
from tests.builders import cut, project, round_cutout, sheet
from tests.outputs.panels import panels

TOURER, TRAINER, TWIN = (load(sample_file(name)) for name in ("tourer", "trainer", "twin"))
LETTERING = TOURER.option("glass").plate("panel").engravings
Edit = Callable[[Drawing], None]


def written(folder: Path, options: DxfOptions | None = None) -> Path:
    """The tourer's glass panel, 88 contours, in inches."""
    file = folder / "panel.dxf"
    export_dxf(TOURER, TOURER.option("glass"), "panel", file, options or DxfOptions())
    return file


def edited(folder: Path, *edits: Edit, options: DxfOptions | None = None) -> VerifyReport:
    """What verifying says of our file after somebody's edits."""
    file = written(folder, options)
    document = ezdxf.readfile(file)
    for edit in edits:
        edit(document)
    document.saveas(file)
    return verify(TOURER, file)


def transformed(matrix: Matrix44) -> Edit:
    def edit(document: Drawing) -> None:
        for entity in document.modelspace():
            entity.transform(matrix)

    return edit


def moved_hole(document: Drawing) -> None:
    """The second circle, 0.02 in to the right."""
    document.modelspace().query("CIRCLE")[5].translate(0.02, 0.0, 0.0)


def without_words(document: Drawing) -> None:
    space = document.modelspace()
    for text in list(space.query("TEXT")):
        space.delete_entity(text)


def on_layer_0(document: Drawing) -> None:
    for entity in document.modelspace():
        entity.dxf.layer = "0"


def exploded(document: Drawing) -> None:
    for polyline in list(document.modelspace().query("LWPOLYLINE")):
        polyline.explode()


SHIFTED, TURNED = Matrix44.translate(1.5, -2.0, 0.0), Matrix44.z_rotate(math.pi / 2)
LIES = {
    "mirrored left to right": [Matrix44.scale(-1.0, 1.0, 1.0)],
    "mirrored top to bottom, shifted by x 0.0000, y 14.0000 in": [
        Matrix44.scale(1.0, -1.0, 1.0),
        Matrix44.translate(0.0, 14.0, 0.0),
    ],
    "shifted by x 1.5000, y -2.0000 in": [SHIFTED],
    "turned by 90 degrees counter-clockwise": [TURNED],
    "turned by 90 degrees clockwise, shifted by x 1.5000, y -2.0000 in": [Matrix44.z_rotate(-math.pi / 2), SHIFTED],
    "turned by 180 degrees": [Matrix44.z_rotate(math.pi)],
    "mirrored left to right, turned by 90 degrees counter-clockwise": [Matrix44.scale(-1.0, 1.0, 1.0), TURNED],
    "scaled by 25.4 (millimetres read as inches?)": [Matrix44.scale(25.4, 25.4, 25.4)],
    "scaled by 1/25.4 (inches read as millimetres?)": [Matrix44.scale(1 / 25.4, 1 / 25.4, 1 / 25.4)],
    "scaled by 1000 (millimetres read as metres?)": [Matrix44.scale(1000.0, 1000.0, 1000.0)],
    "scaled by 1.001": [Matrix44.scale(1.001, 1.001, 1.001)],
}


@pytest.mark.parametrize("words", LIES)
def test_how_the_whole_file_lies_is_told_first_and_then_only_what_is_left(tmp_path: Path, words: str) -> None:
    lie = [transformed(matrix) for matrix in LIES[words]]
    report = edited(tmp_path, *lie)

    assert of_whole_file(report) == (words,)
    assert sentences(report) == ()
    assert not report.is_same
    assert verify_text(report).splitlines()[0] == words
    agree = f"88 contours and {len(LETTERING)} lines of lettering agree within 0.0004 in."
    assert verdict(report) == f"Differs: {words}. Apart from that the same: {agree}"
    report = edited(tmp_path, moved_hole, *lie)
    assert of_whole_file(report) == (words,)
    assert sentences(report) == ("moved: hole S1 (attach screw) by x 0.0200, y 0.0000 in",)


@settings(max_examples=15, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(
    panels().filter(lambda made: len(made.option("new").plates[0].cuts) >= 4),
    st.sampled_from([DxfOptions(), DxfOptions(face_up=FaceUp.BACK, origin=Origin.LOWER_LEFT, unit=LengthUnit.INCH)]),
    st.tuples(
        st.booleans(), st.sampled_from([0.0, 90.0, 180.0, 270.0]), st.integers(-500, 500), st.integers(-500, 500)
    ),
)
def test_a_random_panel_is_found_however_it_lies(tmp_path, made, options, lie):
    """Whatever the words for it, nothing but how the whole lies differs."""
    file = tmp_path / "panel.dxf"
    export_dxf(made, made.option("new"), "main", file, options)
    document = ezdxf.readfile(file)
    mirrored, turn, x, y = lie
    for matrix in (
        Matrix44.scale(-1.0 if mirrored else 1.0, 1.0, 1.0),
        Matrix44.z_rotate(math.radians(turn)),
        Matrix44.translate(x, y, 0.0),
    ):
        transformed(matrix)(document)
    document.saveas(file)
    report = verify(made, file)

    assert sentences(report) == ()
    assert report.holes_agreeing == report.holes


def test_a_file_of_another_project_is_one_sentence(tmp_path: Path) -> None:
    file = tmp_path / "panel.dxf"
    export_dxf(TRAINER, TRAINER.option("day-night"), "panel", file)
    report = verify(TOURER, file)

    assert of_whole_file(report) == (
        "not of this project: 0 of 87 holes agree; the file names project 'Two-seat trainer'",
    )
    assert sentences(report) == ()
    assert not report.is_same
    assert len(verify_text(report).splitlines()) < 12
    document = ezdxf.readfile(file)
    without_words(document)
    document.saveas(file)
    assert of_whole_file(verify(TOURER, file))[0].startswith("not of this project: ")


def test_a_part_of_a_file_says_so_first(tmp_path: Path) -> None:
    no_drills = DxfOptions(content=EVERYTHING - {Content.DRILLS})
    report = verify(TOURER, written(tmp_path, no_drills))

    assert report.is_same
    assert verify_text(report).splitlines()[0] == "part of the file only: 14 of 88 cuts; drills left out by choice"
    letters = DxfOptions(content=frozenset({Content.ENGRAVING}))
    assert verify(TOURER, written(tmp_path, letters)).is_same


def test_one_plate_of_several_is_a_part_of_the_option(tmp_path: Path) -> None:
    export_dxf(TWIN, TWIN.option("refit"), "sub-panel", tmp_path / "sub.dxf")

    report = verify(TWIN, tmp_path / "sub.dxf")
    assert (report.is_same, of_whole_file(report)) == (
        True,
        ("part of the option: plate sub-panel only, without panel",),
    )


@pytest.mark.parametrize("edits", [[], [exploded], [transformed(Matrix44.scale(-1.0, 1.0, 1.0))]])
def test_layers_thrown_together_are_matched_by_geometry_and_noted(tmp_path: Path, edits: list[Edit]) -> None:
    report = edited(tmp_path, on_layer_0, *edits)

    assert sentences(report) == ()
    assert notes(report)[0] == ("note: layers: 88 contours lie on layer 0, not on their own; matched by geometry alone")
    assert report.is_same == (exploded in edits or not edits)
    assert bool(report.joined) == (exploded in edits)


def test_layers_of_a_nested_file_thrown_together_keep_the_stock_out(tmp_path: Path) -> None:
    (file,) = export_nested_dxf(TWIN, TWIN.option("refit"), tmp_path, Stock(1220.0, 620.0))
    document = ezdxf.readfile(file)
    on_layer_0(document)
    document.saveas(file)

    assert verify(TWIN, file).is_same


def test_a_hole_on_another_layer_is_named(tmp_path: Path) -> None:
    def edit(document: Drawing) -> None:
        document.modelspace().query("CIRCLE")[5].dxf.layer = "EXISTING"

    report = edited(tmp_path, edit)
    assert notes(report) == ("note: layers: hole S1 (attach screw) on EXISTING, not DRILL",)


def test_splines_in_place_of_circles_are_followed(tmp_path: Path) -> None:
    """A rational spline is the circle itself; one through four points strays by far more than 0.01 mm."""

    def exact(document: Drawing) -> None:
        space = document.modelspace()
        for circle in list(space.query("CIRCLE"))[:10]:
            spline = space.add_spline(dxfattribs={"layer": circle.dxf.layer})
            spline.apply_construction_tool(rational_bspline_from_arc(circle.dxf.center, circle.dxf.radius, 0, 360))
            space.delete_entity(circle)

    def through_points(document: Drawing) -> None:
        space = document.modelspace()
        circle = space.query("CIRCLE")[5]
        x, y, radius = circle.dxf.center.x, circle.dxf.center.y, circle.dxf.radius
        points = [(x + radius * math.cos(i * math.pi / 2), y + radius * math.sin(i * math.pi / 2)) for i in range(5)]
        space.add_spline(points, dxfattribs={"layer": circle.dxf.layer})
        space.delete_entity(circle)

    report = edited(tmp_path, exact)
    assert report.is_same
    assert notes(report)[0].startswith("note: curves: 10 contours are splines or ellipses")
    assert sentences(edited(tmp_path, through_points))[0].startswith("reshaped: hole S1 (attach screw) strays by up to")


def unitless(file: Path) -> Path:
    file.write_text(file.read_text().replace("$INSUNITS", "$NO_UNIT"))
    return file


@pytest.mark.parametrize("unit", LengthUnit)
def test_a_missing_unit_is_noted_and_found_where_nothing_says_it(tmp_path: Path, unit: LengthUnit) -> None:
    words = "inches" if unit is LengthUnit.INCH else "millimetres"
    said = verify(TOURER, unitless(written(tmp_path, DxfOptions(unit=unit))))
    assert said.is_same
    assert notes(said) == ("note: unit: the file's header states none; taken from the words on the file",)
    assert f"Unit: {words}, as the words on the file say" in verify_text(said)

    edited(tmp_path, without_words, options=DxfOptions(unit=unit))
    silent = verify(TOURER, unitless(tmp_path / "panel.dxf"))
    assert silent.is_same
    assert notes(silent)[0].startswith(f"note: unit: the file states none; read in {words}, ")


def test_a_header_in_metres_is_told(tmp_path: Path) -> None:
    """DXF Reference, $INSUNITS: 1 is inches, 6 is metres."""
    file = written(tmp_path)
    file.write_text(file.read_text().replace("$INSUNITS\n 70\n1\n", "$INSUNITS\n 70\n6\n"))

    (note,) = notes(verify(TOURER, file))
    assert note.startswith("note: unit: the file's header says metres, which programs may believe")


def test_r12_has_no_unit_to_miss(tmp_path: Path) -> None:
    report = verify(TOURER, written(tmp_path, DxfOptions(DxfVersion.R12)))

    assert (report.is_same, notes(report)) == (True, ())
    assert "Unit: inches, as the words on the file say" in verify_text(report)


def test_a_thousand_holes_alike_are_found_shifted(tmp_path: Path) -> None:
    """Neither the sheet's edge nor any size tells them apart: only the places of some of them do."""
    cuts = tuple(cut(f"h{i}", (i % 50) * 5.0 - 125 + (i % 7) / 3, (i // 50) * 5.0 - 50, "small") for i in range(1000))
    made = project(sheet(cuts=cuts, state="new"), cutouts=(round_cutout(3.0, "small"),))
    file = tmp_path / "holes.dxf"
    export_dxf(made, made.option("new"), "main", file, DxfOptions(content=frozenset({Content.DRILLS})))
    document = ezdxf.readfile(file)
    transformed(Matrix44.translate(31.0, 17.0, 0.0))(document)
    document.saveas(file)

    assert of_whole_file(verify(made, file))[0] == "shifted by x 31.000, y 17.000 mm"
