import csv
import io
import math

import pytest

from panelcad.drawing.inspection import CLOSING, LARGEST_GAUGE, characteristics, tolerance_words
from panelcad.drawing.schedule import holes
from panelcad.model.hole import Countersink, HoleForm, HoleGroup, HoleKind, Spot
from panelcad.model.plate import AttachScrew, CutState, Engraving
from panelcad.model.shape import Corner, Outline, Rectangle
from panelcad.outputs.dxf import cutting_plan
from panelcad.outputs.dxf_layers import Layer
from panelcad.outputs.dxf_options import DxfOptions, FaceUp
from panelcad.outputs.inspection import COLUMNS, inspection_csv, inspection_sheets
from panelcad.units import LengthUnit
from tests import builders
from tests.drawing import papers

SUNK = HoleForm(diameter=4.3, fastener=3.5, kind=HoleKind.COUNTERSUNK, countersink=Countersink(diameter=8))


def shown(unit: LengthUnit = LengthUnit.MM):
    plate = builders.sheet(
        cuts=(builders.cut("a", -100, 20), builders.cut("old", 100, 20, state=CutState.EXISTING)),
        attach_screws=(AttachScrew(id="s", x=280, y=130, form=SUNK),),
        engravings=(Engraving(id="e", text="PITOT HEAT", x=0, y=-60, height=3.0),),
        state="new",
    )
    project = builders.project(plate, unit=unit)
    return papers.shown(project, project.options[0])


def listed(subject) -> list[tuple[str, str]]:
    return [(each.feature, each.what) for each in characteristics(subject, subject.laid.plates[0])]


def test_the_sheet_comes_first_then_each_hole_then_what_is_looked_at_then_what_was_there():
    found = listed(shown())
    assert found[0] == ("sheet", "material")
    order = [found.index(each) for each in (("1", "diameter"), ("S1", "diameter"), ("both faces", "looked at"))]
    assert order == sorted(order)
    assert found[-3:] == [("2", "diameter"), ("2", "X"), ("2", "Y")]


def test_each_hole_has_its_size_and_its_place():
    by_what = {(each.feature, each.what): each for each in characteristics(shown(), shown().laid.plates[0])}
    assert by_what["1", "diameter"].nominal == 79.375
    assert (by_what["1", "X"].nominal, by_what["1", "Y"].nominal) == (-100, 20)
    assert by_what["1", "X"].tolerance == 0.127
    assert by_what["S1", "countersink diameter"].nominal == 8.0
    assert by_what["2", "X"].tolerance is None
    assert by_what["E1", "reads"].words == "PITOT HEAT"
    assert (by_what["E1", "letter height"].nominal, by_what["E1", "letter height"].is_reference) == (3.0, False)
    assert (by_what["E1", "middle Y"].nominal, by_what["E1", "middle Y"].is_reference) == (-60.0, True)


def test_a_keyed_hole_is_measured_by_its_circle_and_its_key():
    form = HoleForm(diameter=12, fastener=12, kind=HoleKind.KEYED, key_width=2.5, key_depth=1, key_angle=90)
    group = HoleGroup(form=form, spots=(Spot(x=0, y=0),), source=builders.SOURCE)
    keyed = builders.round_cutout(name="toggle", openings=(), holes=(group,))
    plate = builders.sheet(cuts=(builders.cut("t", 10, 20, cutout="toggle", rotation=90),), state="new")
    project = builders.project(plate, cutouts=(keyed,))
    subject = papers.shown(project, project.options[0])
    found = [
        (each.what, each.words) for each in characteristics(subject, subject.laid.plates[0]) if each.feature == "1.1"
    ]
    assert found == [
        ("circle diameter", "12.00"),
        ("key width", "2.50"),
        ("key depth beyond the circle", "1.00"),
        ("key", "toward −X"),
        ("circle's centre X", "10.00"),
        ("circle's centre Y", "20.00"),
    ]


def test_the_outline_of_a_plate_that_is_there_already_is_for_reference():
    for state, is_there in (("new", False), ("reworked", True)):
        project = builders.project(
            builders.sheet(outline=Rectangle(width=600, height=300, corner_radius=9), state=state)
        )
        subject = papers.shown(project, project.options[0])
        found = [each for each in characteristics(subject, subject.laid.plates[0]) if each.feature != "sheet"]
        edges = [each for each in found if each.feature == "outline" or each.feature.startswith("V")]
        assert {"overall width", "left edge X", "arc radius", "arc centre X"} <= {each.what for each in edges}
        assert all(each.was_there == is_there for each in edges)
        judged = {each.what for each in edges if not each.is_reference}
        assert judged == (set() if is_there else {each.what for each in edges} - {"arc centre X", "arc centre Y"})
        rows = csv.DictReader(io.StringIO(inspection_csv(subject), newline=""))
        assert {row["reference"] for row in rows if row["feature"] == "outline"} == {"yes" if is_there else "no"}


def test_what_is_looked_at_on_a_used_sheet_asks_for_no_grain_and_no_good_face():
    seen = {}
    for state in ("new", "reworked"):
        project = builders.project(builders.sheet(cuts=(builders.cut("a", 0, 0),), state=state))
        subject = papers.shown(project, project.options[0])
        found = characteristics(subject, subject.laid.plates[0])
        seen[state] = " ".join(each.words for each in found if each.what == "looked at")
    assert "grain and good face as noted" in seen["new"]
    assert "grain" not in seen["reworked"]
    assert "good face" not in seen["reworked"]
    assert "deburred" in seen["reworked"]


def test_numbers_and_order_of_lettering_are_those_of_the_placards_sheet():
    words = [Engraving(id=f"e{x}", text=f"W{x}", x=x, y=0, height=3.0) for x in (90, -50, 10)]
    project = builders.project(builders.sheet(engravings=tuple(words), state="new"))
    subject = papers.shown(project, project.options[0])
    found = [(each.feature, each.words) for each in characteristics(subject, subject.laid.plates[0])]
    lines = [pair for pair in found if pair[0].startswith("E") and pair[1].startswith("W")]
    assert lines == [("E1", "W-50"), ("E2", "W10"), ("E3", "W90")]


def test_the_csv_says_the_same_in_the_project_s_unit_with_empty_columns_to_fill_in():
    subject = shown(LengthUnit.INCH)
    rows = list(csv.DictReader(io.StringIO(inspection_csv(subject), newline="")))
    assert tuple(rows[0]) == COLUMNS
    assert len(rows) == len(listed(subject)) + len(CLOSING)
    first = next(row for row in rows if (row["feature"], row["what"]) == ("1", "diameter"))
    assert (first["nominal"], first["tolerance"], first["unit"]) == ("3.125", "0.005", "in")
    assert (first["measured"], first["pass"]) == ("", "")
    assert first["fingerprint"] == subject.stamp.fingerprint


def test_the_sheets_have_all_characteristics_in_order():
    subject = shown()
    written = [text.text for sheet in inspection_sheets(subject) for text in papers.texts(sheet.nodes)]
    assert {what for _, what in CLOSING} <= set(written)
    count = len(listed(subject))
    numbers = [int(words) for words in written if words.isdigit()]
    assert set(range(1, count + 1)) <= set(numbers)
    assert {"Measured", "Pass"} <= set(written)


def crowned() -> Outline:
    """A sheet 400 wide and 100 high at its sides, its top an arc of 500 through (0, 150), small arcs at its feet."""
    bulge = math.tan(math.asin(0.4) / 2)
    corners = ((-200.0, 10.0), (-190.0, 0.0), (190.0, 0.0), (200.0, 10.0), (200.0, 100.0), (-200.0, 100.0))
    bows = (math.tan(math.radians(22.5)), 0.0, math.tan(math.radians(22.5)), 0.0, bulge, 0.0)
    return Outline(corners=tuple(Corner(x=x, y=y, bulge=bow) for (x, y), bow in zip(corners, bows, strict=True)))


def test_a_large_arc_is_measured_by_points_on_it_a_small_one_by_a_gauge_and_no_centre_is_judged():
    project = builders.project(builders.sheet(outline=crowned(), state="new"))
    subject = papers.shown(project, project.options[0])
    (plate,) = subject.laid.plates
    found = characteristics(subject, plate)
    rise = 500.0 - math.sqrt(500.0**2 - 200.0**2)
    middle = next(each for each in found if each.what == "arc's middle: Y at X 0.00")

    assert middle.nominal == pytest.approx(100.0 + rise)
    assert not middle.is_reference
    for each in found:
        if each.what == "arc radius":
            assert each.nominal is not None
            assert each.is_reference == (each.nominal > LARGEST_GAUGE)
        if each.what.startswith("arc centre"):
            assert tolerance_words(subject, each) == "reference"
    assert ("profile, all round", "to the template within ±0.25 mm") in [(each.what, each.words) for each in found]


def test_the_thickness_is_told_alike_on_the_sheet_and_in_the_csv():
    subject = shown()
    written = [text.text for sheet in inspection_sheets(subject) for text in papers.texts(sheet.nodes)]
    rows = csv.DictReader(io.StringIO(inspection_csv(subject), newline=""))
    (thickness,) = [row for row in rows if row["what"] == "thickness"]
    assert thickness["tolerance"] == "as supplied"
    assert "as supplied" in written


def test_the_csv_names_aircraft_and_datum_and_how_to_find_it_on_the_part():
    subject = shown()
    rows = list(csv.DictReader(io.StringIO(inspection_csv(subject), newline="")))
    assert {row["aircraft"] for row in rows} == {subject.project.aircraft.registration}
    assert all("X 0 is half the width, 300.00 from the left and the right edge" in row["datum"] for row in rows)


def test_lettering_and_cuts_that_were_there_are_told_from_new_ones():
    """The old hole is 57.15 across and becomes 79.375; one line of lettering stays, one is new."""
    old = builders.sheet(
        cuts=(builders.cut("t", 0, 0, "small", state=CutState.EXISTING),),
        engravings=(Engraving(id="e", text="PITOT", x=0, y=-60, height=3.0),),
    )
    new = Engraving(id="n", text="NAV", x=50, y=-60, height=3.0)
    plate = old.revised(
        cuts=(builders.cut("t", 0, 0, state=CutState.ENLARGED),), engravings=(*old.engravings, new), state="reworked"
    )
    small = builders.round_cutout(57.15, "small")
    project = builders.project(plate, cutouts=(builders.round_cutout(), small))
    project = project.revised(as_found=project.as_found.revised(plates=(old,)))
    subject = papers.shown(project, project.options[0])
    (laid,) = subject.laid.plates
    found = characteristics(subject, laid)

    diameter = next(each for each in found if (each.feature, each.what) == ("1", "diameter"))
    assert diameter.purpose.endswith("enlarged from Ø57.15")
    assert (diameter.nominal, diameter.was_there) == (79.375, False)
    assert {each.feature: each.was_there for each in found if each.what == "reads"} == {"E1": True, "E2": False}
    assert [(hole.number, hole.state) for hole in holes(subject, laid)] == [("1", "enlarged")]
    plan = cutting_plan(project, project.options[0], laid.plate.id)
    radii = {(loop.layer, loop.contour.bounds[2]) for loop in plan.loops}
    assert {(Layer.REFERENCE, 57.15 / 2), (Layer.CUTOUT, 79.375 / 2)} <= radii
    assert {stroke.layer for stroke in plan.strokes if stroke.feature == "e"} == {Layer.REFERENCE}
    assert {stroke.layer for stroke in plan.strokes if stroke.feature == "n"} == {Layer.ENGRAVE}
    back = cutting_plan(project, project.options[0], laid.plate.id, DxfOptions(face_up=FaceUp.BACK))
    assert not [stroke for stroke in back.strokes if stroke.feature]


def test_what_a_gauge_or_the_template_tells_is_a_round_number_in_either_unit():
    told = {}
    for unit in LengthUnit:
        subject = shown(unit)
        found = characteristics(subject, subject.laid.plates[0])
        told[unit] = next(tolerance_words(subject, each) for each in found if each.what == "letter height")
    assert told == {LengthUnit.MM: "0.25", LengthUnit.INCH: "0.010"}
