import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from panelcad.drawing.describe import hole_text, shape_text
from panelcad.drawing.directions import bearing
from panelcad.drawing.drawing_plates import worked_plates
from panelcad.drawing.numbering import number_key, sort_key
from panelcad.drawing.schedule import holes
from panelcad.drawing.sheets.equipment import equipment_pages
from panelcad.drawing.sheets.schedule import schedule_pages
from panelcad.geometry.placement import Placement
from panelcad.model.hole import Countersink, Face, HoleForm, HoleKind
from panelcad.model.plate import AttachScrew, CutState, Frame
from panelcad.model.profile import Profile
from panelcad.model.project import Item
from panelcad.model.shape import Circle, KeyedCircle, KeyEnd, Rectangle, Slot, Trapezoid
from panelcad.units import LengthUnit
from tests import builders
from tests.drawing import papers

PLAIN = HoleForm(diameter=4.8, fastener=4.0)


@pytest.mark.parametrize(
    ("shape", "unit", "words"),
    [
        (Circle(diameter=79.375), LengthUnit.INCH, "Ø3.125"),
        (Rectangle(width=158.75, height=41.91), LengthUnit.INCH, "6.250 × 1.650"),
        (Rectangle(width=50, height=20, corner_radius=3), LengthUnit.MM, "50.00 × 20.00 R3.00"),
        (Slot(length=20, width=5), LengthUnit.MM, "20.00 × 5.00 slot"),
        (KeyedCircle(diameter=12, key_width=3, key_depth=1), LengthUnit.MM,
         "Ø12.00, key 3.00 wide, 1.00 deep toward +X, square"),
        (Trapezoid(width=30, height=12, side_angle=10, corner_radius=2), LengthUnit.MM,
         "30.00 × 12.00 tapered, sides 10°, R2.00, wider side toward +Y"),
    ],
)  # fmt: skip
def test_a_shape_is_described_as_people_measure_it(shape, unit, words):
    assert shape_text(shape, unit) == words


KEYED = KeyedCircle(diameter=12, key_width=3, key_depth=2, key_end=KeyEnd.ROUND)
FLAT = HoleForm(diameter=12, fastener=12, kind=HoleKind.FLATTED, key_depth=1.5, key_angle=0)


@pytest.mark.parametrize(
    ("at", "key", "flat", "sides"),
    [
        (Placement(), "toward +X", "toward +X", ""),
        (Placement(rotation=90), "toward +Y", "toward +Y", ", 50.00 along Y"),
        (Placement(rotation=180), "toward −X", "toward −X", ""),
        (Placement(rotation=270), "toward −Y", "toward −Y", ", 50.00 along Y"),
        (Placement(rotation=30), "toward 30° from +X", "toward 30° from +X", ", 50.00 along 30° from +X"),
        (Placement(rotation=210), "toward 210° from +X", "toward 210° from +X", ", 50.00 along 30° from +X"),
        (Placement(mirrored=True), "toward −X", "toward −X", ""),
        (Placement(rotation=90, mirrored=True), "toward −Y", "toward −Y", ", 50.00 along Y"),
    ],
)
def test_a_turned_or_mirrored_shape_says_which_way_it_lies_in_the_plate_s_own_axes(at, key, flat, sides):
    assert shape_text(KEYED, LengthUnit.MM, at) == f"Ø12.00, key 3.00 wide, 2.00 deep {key}, round end"
    assert hole_text(FLAT, LengthUnit.MM, at) == f"Ø12.00, 10.50 across the flat, flat {flat}"
    assert shape_text(Rectangle(width=50, height=20), LengthUnit.MM, at) == f"50.00 × 20.00{sides}"


@given(st.floats(0, 360), st.booleans())
def test_the_key_is_where_the_words_say(rotation, mirrored):
    """The farthest point of the contour from the circle's centre lies in the direction that is written."""
    at = Placement(rotation=rotation, mirrored=mirrored)
    tip = max((at.contour(KEYED.contour()).segments), key=lambda each: math.hypot(*each.at(0.5))).at(0.5)
    turn = (math.degrees(math.atan2(tip.y, tip.x)) - bearing(at) + 180) % 360 - 180
    assert abs(turn) < 1e-5


def test_a_hole_says_what_is_done_to_it():
    cone = Countersink(diameter=8, angle=100, face=Face.BACK)
    form = HoleForm(diameter=4.3, fastener=3.5, kind=HoleKind.COUNTERSUNK, countersink=cone)
    assert hole_text(form, LengthUnit.MM) == "Ø4.30 countersunk 100° to Ø8.00 at the back"
    tapped = HoleForm(diameter=2.85, fastener=3.5, kind=HoleKind.TAPPED, thread="#6-32")
    assert hole_text(tapped, LengthUnit.MM) == "Ø2.85 tapped #6-32"


def test_numbers_sort_as_people_count():
    assert sorted(["S2", "10", "7.2", "7", "P1", "7.10", "S10"], key=sort_key) == [
        "7", "7.2", "7.10", "10", "P1", "S2", "S10",
    ]  # fmt: skip
    assert sorted(["10", "7B", "7A", "7"], key=number_key) == ["7", "7A", "7B", "10"]


def shown(**profile: float):
    plate = builders.sheet(
        cuts=(builders.cut("a", -100.5, 20), builders.cut("b", 100, 20, state=CutState.EXISTING)),
        attach_screws=(AttachScrew(id="s", x=280, y=130, form=PLAIN),),
        frame=Frame(x=10.0, z=25.0),
    )
    items = (Item(id="remote", name="Remote box", notes="in the tail"), builders.item("gauge", -100.5, 20, cut="a"))
    project = builders.project(plate, items=items, profile=Profile(**profile))
    return papers.shown(project, project.options[0])


def rows(subject) -> list[str]:
    pages = [*schedule_pages(subject, subject.laid.plates[0])]
    return [text.text for page in pages for text in papers.texts(page.nodes)]


def test_the_schedule_gives_number_place_size_and_purpose():
    written = rows(shown())
    at = written.index("-100.50")
    assert written[at - 1 : at + 6] == ["1", "-100.50", "20.00", "Ø79.38", "±0.127", "a: opening", "cut"]
    assert "S1" in written
    assert "Cut at" not in written


def test_what_is_in_the_metal_already_has_no_tolerance():
    by_number = {hole.number: hole for hole in holes(shown(), shown().laid.plates[0])}
    assert [by_number[number].state for number in ("1", "2", "S1")] == ["cut", "existing", "existing"]


def test_with_a_finish_the_schedule_gives_cut_sizes_too():
    written = rows(shown(finish_thickness=0.1))
    assert "Cut at" in written
    assert "Ø79.58" in written


def test_the_outline_is_given_vertex_by_vertex_with_radius_and_centre_of_its_arcs():
    outline = Rectangle(width=600, height=300, corner_radius=20)
    project = builders.project(builders.sheet(outline=outline, state="new"))
    written = rows(papers.shown(project, project.options[0]))
    at = written.index("V1")
    assert written[at : at + 7] == ["V1", "-300.00", "-130.00", "arc R20.00 to V2", "±0.127",
                                    "edge; centre X -280.00, Y -130.00", "cut"]  # fmt: skip
    at = written.index("V2")
    assert written[at : at + 7] == ["V2", "-280.00", "-150.00", "straight to V3", "±0.127", "edge", "cut"]
    assert "V8" in written


def test_each_schedule_names_the_material_of_its_own_plate():
    plates = (builders.sheet(state="new"), builders.sheet(id="sub", name="Sub", thickness=3.2, state="new"))
    project = builders.project(*plates)
    subject = papers.shown(project, project.options[0])
    for plate, words in zip(subject.laid.plates, ("2.00 mm", "3.20 mm"), strict=True):
        assert all(page.material.endswith(words) for page in schedule_pages(subject, plate))


def test_a_plate_that_stands_elsewhere_says_where_its_own_datum_is():
    assert any("own origin, which is at X 10.00, Y 0.00, Z 25.00" in words for words in rows(shown()))


def test_the_schedule_says_how_exact_radii_are_as_the_inspection_has_them():
    outline = Rectangle(width=600, height=300, corner_radius=9)
    told = {}
    for unit in LengthUnit:
        for state in ("new", "reworked"):
            project = builders.project(builders.sheet(outline=outline, state=state), unit=unit)
            told[unit, state] = " ".join(rows(papers.shown(project, project.options[0])))
    assert "Radii of the outline are ±0.25 mm up to R25.00 mm;" in told[LengthUnit.MM, "new"]
    assert "Radii of the outline are ±0.010 in up to R0.984 in;" in told[LengthUnit.INCH, "new"]
    assert not any("Radii" in words for (_, state), words in told.items() if state == "reworked")
    assert "Radii" not in " ".join(rows(shown()))


def test_cuts_that_hold_no_item_are_named_so_that_their_numbers_are_not_missed():
    project = builders.project(
        builders.sheet(cuts=(builders.cut("a", -100, 20), builders.cut("box", 100, 20)), state="new"),
        items=(builders.item("gauge", -100, 20, cut="a"),),
    )
    written = [
        text.text
        for page in equipment_pages(papers.shown(project, project.options[0]))
        for text in papers.texts(page.nodes)
    ]
    assert "No item is fitted in: 2 (box)." in written


def test_the_equipment_list_has_the_numbers_of_the_panel():
    subject = shown()
    written = [text.text for page in equipment_pages(subject) for text in papers.texts(page.nodes)]
    at = written.index("gauge")
    assert written[at - 1 : at + 5] == ["1", "gauge", "Round", "front", "Main panel", "-100.50"]
    at = written.index("Remote box")
    assert written[at - 1] == "3"
    assert "in the tail" in written


def test_plates_that_are_kept_are_not_drawn_unless_all_are():
    kept = builders.sheet(id="kept", state="kept")
    project = builders.project(builders.sheet(), kept)
    assert [p.plate.id for p in worked_plates(papers.shown(project, project.options[0]))] == ["main"]
    assert [p.plate.id for p in worked_plates(papers.shown(project, project.as_found))] == ["main"]
