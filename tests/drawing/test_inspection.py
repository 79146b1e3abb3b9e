import csv
import io

from panelcad.drawing.inspection import characteristics
from panelcad.model.hole import Countersink, HoleForm, HoleGroup, HoleKind, Spot
from panelcad.model.plate import AttachScrew, CutState, Engraving
from panelcad.model.shape import Rectangle
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
    assert by_what["E1", "reads, letters 3.00 high"].words == "PITOT HEAT"


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
        assert all(each.is_reference == is_there and (each.tolerance is None) == is_there for each in edges)
        rows = csv.DictReader(io.StringIO(inspection_csv(subject), newline=""))
        assert {row["reference"] for row in rows if row["feature"] == "outline"} == {"yes" if is_there else "no"}


def test_numbers_and_order_of_lettering_are_those_of_the_placards_sheet():
    words = [Engraving(id=f"e{x}", text=f"W{x}", x=x, y=0, height=3.0) for x in (90, -50, 10)]
    project = builders.project(builders.sheet(engravings=tuple(words), state="new"))
    subject = papers.shown(project, project.options[0])
    found = [(each.feature, each.words) for each in characteristics(subject, subject.laid.plates[0])]
    assert [pair for pair in found if pair[0].startswith("E")] == [("E1", "W-50"), ("E2", "W10"), ("E3", "W90")]


def test_the_csv_says_the_same_in_the_project_s_unit_with_empty_columns_to_fill_in():
    subject = shown(LengthUnit.INCH)
    rows = list(csv.DictReader(io.StringIO(inspection_csv(subject), newline="")))
    assert tuple(rows[0]) == COLUMNS
    assert len(rows) == len(listed(subject))
    first = next(row for row in rows if (row["feature"], row["what"]) == ("1", "diameter"))
    assert (first["nominal"], first["tolerance"], first["unit"]) == ("3.125", "0.005", "in")
    assert (first["measured"], first["pass"]) == ("", "")
    assert first["fingerprint"] == subject.stamp.fingerprint


def test_the_sheets_have_all_characteristics_in_order():
    subject = shown()
    written = [text.text for sheet in inspection_sheets(subject) for text in papers.texts(sheet.nodes)]
    count = len(listed(subject))
    numbers = [int(words) for words in written if words.isdigit()]
    assert set(range(1, count + 1)) <= set(numbers)
    assert {"Measured", "Pass"} <= set(written)
