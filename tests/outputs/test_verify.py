"""Cutting files held against the project: ours in every way of writing, and edited as a machinist would."""

from dataclasses import replace

import ezdxf
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from panelcad.editing.revision import open_revision
from panelcad.errors import UnknownName, UnusableInput
from panelcad.model.plate import Engraving
from panelcad.model.profile import Profile
from panelcad.model.project import Project
from panelcad.model.shape import Rectangle
from panelcad.outputs.dxf import cutting_plan, export_dxf
from panelcad.outputs.dxf_layers import CUT_THROUGH, Layer
from panelcad.outputs.dxf_options import Content, CornerRelief, DxfOptions, FaceUp, LeadIns, Origin, SmallHoles
from panelcad.outputs.release import release
from panelcad.outputs.verify import VerifyOptions, verify
from panelcad.outputs.verify_words import made_from, notes, of_whole_file, sentences, verify_text
from panelcad.units import LengthUnit
from tests.builders import cut, opening, project, round_cutout, sheet
from tests.outputs.panels import panels
from tests.outputs.test_dxf_readers import EVERY_WAY

WINDOW = opening(Rectangle(width=50.0, height=30.0, corner_radius=3.0))
TEXT = Engraving(id="t", text="MASTER", x=0.0, y=-100.0, height=4.0)


def panel(x: float = -100.0, **fields) -> Project:
    cuts = (cut("gauge", x, 0.0), cut("window", 100.0, 0.0, None, openings=(WINDOW,)))
    return project(sheet(cuts=cuts, state="new", engravings=(TEXT,)), **fields)


def written(made: Project, tmp_path, options=None):
    file = tmp_path / "panel.dxf"
    export_dxf(made, made.option("new"), "main", file, options or DxfOptions())
    return file


def edited(made: Project, tmp_path, edit, options=None):
    """What somebody's program makes of our file, and what verifying says."""
    file = written(made, tmp_path, options)
    document = ezdxf.readfile(file)
    edit(document.modelspace())
    document.saveas(file)
    return verify(made, file)


COMPARED = CUT_THROUGH | {Layer.CENTRE_MARK, Layer.ENGRAVE}
extras = st.builds(
    dict,
    content=st.sets(st.sampled_from(Content), min_size=1).map(frozenset),
    corner_relief=st.sampled_from(CornerRelief),
    small_holes=st.sampled_from(SmallHoles),
    lead_ins=st.sampled_from(LeadIns),
    cutter=st.sampled_from([None, 0.8, 3.175]),
)


@settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(panels(), st.sampled_from(EVERY_WAY), st.sampled_from([0.0, 0.05]), extras)
def test_our_own_file_is_the_same_in_every_way_of_writing(tmp_path, plan, options, finish, chosen):
    plan = plan.revised(profile=Profile(finish_thickness=finish, smallest_cut=4.5))
    options = replace(options, **chosen)
    whole = cutting_plan(plan, plan.option("new"), "main", options)
    if not {part.layer for part in whole.parts} & COMPARED:
        with pytest.raises(UnusableInput, match="nothing is left to write"):
            written(plan, tmp_path, options)
        return
    report = verify(plan, written(plan, tmp_path, options))

    assert sentences(report) == ()
    assert report.is_same
    assert not [note for note in notes(report) if "doubled" in note]


def test_a_moved_hole_is_told_in_the_plates_axes(tmp_path):
    def edit(space):
        space.query("CIRCLE")[0].translate(0.2, -0.1, 0)

    assert sentences(edited(panel(), tmp_path, edit)) == ("moved: hole 1 (gauge: opening) by x 0.200, y -0.100 mm",)
    mirrored = edited(panel(), tmp_path, edit, DxfOptions(face_up=FaceUp.BACK, origin=Origin.LOWER_LEFT))
    assert sentences(mirrored) == ("moved: hole 1 (gauge: opening) by x -0.200, y -0.100 mm",)


def test_a_grown_hole_says_from_what_to_what_and_its_finished_size(tmp_path):
    def edit(space):
        space.query("CIRCLE")[0].dxf.radius += 0.25

    assert sentences(edited(panel(), tmp_path, edit)) == (
        "grew: hole 1 (gauge: opening) by 0.500 mm, from 79.375 mm to 79.875 mm",
    )
    coated = panel(profile=Profile(finish_thickness=0.1))
    assert sentences(edited(coated, tmp_path, edit)) == (
        "grew: hole 1 (gauge: opening) by 0.500 mm, from 79.575 mm (finished 79.375 mm) to 80.075 mm",
    )


def test_missing_and_new_holes_are_told(tmp_path):
    def edit(space):
        circle = space.query("CIRCLE")[0]
        space.add_circle((0, 100), 4.0, dxfattribs={"layer": "DRILL"})
        space.delete_entity(circle)

    assert sentences(edited(panel(), tmp_path, edit)) == (
        "missing: hole 1 (gauge: opening), 79.375 mm at x -100.00, y 0.00 mm",
        "new: on layer DRILL, 8.000 mm at x 0.00, y 100.00 mm",
    )


def test_a_corner_made_sharp_is_a_change_of_shape(tmp_path):
    """The corner of a 3 mm fillet made sharp lies 3 (root 2 - 1) = 1.243 mm off the arc."""

    def edit(space):
        window = space.query('LWPOLYLINE[layer=="CUTOUT"]')[0]
        window.set_points([(75, -15), (125, -15), (125, 15), (75, 15)], format="xy")

    assert sentences(edited(panel(), tmp_path, edit)) == (
        "reshaped: hole 2 (window: opening) strays by up to 1.243 mm, most at x 125.00, y 15.00 mm",
    )


def test_a_corner_of_the_outline_that_moved_is_named_with_its_number(tmp_path):
    """Of a sheet 600 x 300 the corner at the upper right moves a millimetre inward along its upper edge."""

    def edit(space):
        outline = space.query('LWPOLYLINE[layer=="OUTLINE"]')[0]
        outline.set_points(
            [(x - 1.0 if (x, y) == (300.0, 150.0) else x, y) for x, y in outline.get_points("xy")], format="xy"
        )

    (told,) = sentences(edited(panel(), tmp_path, edit))
    assert told.startswith("reshaped: the outline strays by up to ")
    assert told.endswith(": V3 moved 1.000 mm left")


def test_open_ends_unreadable_curves_and_lost_lettering_are_told(tmp_path):
    def edit(space):
        space.add_line((0, 50), (10, 50), dxfattribs={"layer": "CUTOUT"})
        space.add_polyline3d([(0, 0, 0), (1, 2, 3), (3, 3, 0)], dxfattribs={"layer": "CUTOUT"})
        for stroke in space.query('LWPOLYLINE[layer=="ENGRAVE"]'):
            space.delete_entity(stroke)

    told = sentences(edited(panel(), tmp_path, edit))

    assert told[0] == "open: a chain on layer CUTOUT does not close at x 0.00, y 50.00 mm"
    assert told[1] == "unreadable: a 3D POLYLINE on layer CUTOUT is neither line nor arc"
    assert told[2] == "engraving E1 'MASTER': 5 of 10 strokes missing or changed"


def test_a_doubled_cut_is_a_note_and_makes_no_other_part(tmp_path):
    def edit(space):
        space.add_entity(space.query('LWPOLYLINE[layer=="CUTOUT"]')[0].copy())

    report = edited(panel(), tmp_path, edit)

    assert report.is_same
    assert notes(report) == ("note: doubled: hole 2 (window: opening) on layer CUTOUT, which would be cut twice",)


def test_arcs_exploded_into_lines_and_arcs_are_still_the_same(tmp_path):
    def edit(space):
        for polyline in space.query('LWPOLYLINE[layer=="CUTOUT"]'):
            polyline.explode()

    report = edited(panel(), tmp_path, edit)
    assert report.is_same
    assert notes(report) == (
        "note: pieces: 1 contours are loose lines and arcs, joined where ends lie within 0.0100 mm",
    )


def test_a_file_without_words_is_held_against_the_plate_it_fits(tmp_path):
    def edit(space):
        for text in space.query("TEXT"):
            space.delete_entity(text)

    report = edited(panel(), tmp_path, edit, DxfOptions(face_up=FaceUp.BACK, origin=Origin.LOWER_LEFT))

    assert report.is_same
    assert report.option.id == "new"
    assert made_from(report) == "not stated in the file"


def test_an_older_revision_is_recognised_and_its_differences_told(tmp_path):
    first = release(panel(), "new", tmp_path, "2026-05-01")
    opened = open_revision(first.project, "new", "it met a rib", "2026-06-01")
    option = opened.option("new")
    (plate,) = option.plates
    moved = plate.revised(cuts=(cut("gauge", -110.0, 0.0), *plate.cuts[1:]))
    now = opened.with_option(option.revised(plates=(moved,)))
    report = verify(now, first.files[0])

    assert made_from(report) == "revision A of 2026-05-01; the option has changed since"
    assert sentences(report) == ("moved: hole 1 (gauge: opening) by x 10.000, y 0.000 mm",)
    assert (
        made_from(verify(first.project, first.files[0])) == "revision A of 2026-05-01; the option is still as released"
    )


def test_a_stranger_to_the_log_is_named(tmp_path):
    report = verify(panel(-90.0), written(panel(), tmp_path))

    assert "which this project's release log does not know" in made_from(report)
    assert made_from(verify(panel(), written(panel(), tmp_path))) == "the option as it stands, which is not released"


def test_the_text_names_file_plate_sizes_and_verdict(tmp_path):
    text = verify_text(verify(panel(), written(panel(), tmp_path)))

    assert "plate Main panel (main)" in text
    assert "finished sizes, which are the cut sizes" in text
    assert text.endswith("The same: 3 contours and 1 line of lettering agree within 0.0100 mm.\n")


def test_an_unknown_option_and_a_file_without_cuts_are_refused(tmp_path):
    made = panel()
    with pytest.raises(UnknownName, match="no option 'old'"):
        verify(made, written(made, tmp_path), VerifyOptions(option="old"))
    document = ezdxf.new(units=4)
    document.saveas(tmp_path / "empty.dxf")
    with pytest.raises(UnusableInput, match="no closed contour on a layer that is cut"):
        verify(made, tmp_path / "empty.dxf")


def test_a_thousand_holes_are_matched_one_by_one(tmp_path):
    cuts = tuple(cut(f"h{i}", (i % 50) * 5.0 - 125, (i // 50) * 5.0 - 50, "small") for i in range(1000))
    made = project(sheet(cuts=cuts, state="new"), cutouts=(round_cutout(3.0, "small"),))

    def edit(space):
        space.query("CIRCLE")[7].translate(0.5, 0, 0)

    assert len(sentences(edited(made, tmp_path, edit))) == 1


@pytest.mark.parametrize(
    ("was", "now", "words"),
    [
        (LengthUnit.INCH, "4", "scaled by 1/25.4 (inches read as millimetres?)"),
        (LengthUnit.MM, "1", "scaled by 25.4 (millimetres read as inches?)"),
    ],
)
def test_a_mix_up_of_units_is_recognised(tmp_path, was, now, words):
    file = written(panel(), tmp_path, DxfOptions(unit=was))
    code = "1" if was is LengthUnit.INCH else "4"
    text = file.read_text().replace(f"$INSUNITS\n 70\n{code}\n", f"$INSUNITS\n 70\n{now}\n")
    file.write_text(text)
    report = verify(panel(), file)

    assert not report.is_same
    assert (of_whole_file(report), sentences(report)) == ((words,), ())
