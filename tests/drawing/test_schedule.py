import pytest

from panelcad.drawing.describe import hole_text, shape_text
from panelcad.drawing.drawing_plates import worked_plates
from panelcad.drawing.schedule import holes, sort_key
from panelcad.drawing.sheets.equipment import equipment_pages, number_key
from panelcad.drawing.sheets.schedule import schedule_pages
from panelcad.model.hole import Countersink, Face, HoleForm, HoleKind
from panelcad.model.plate import AttachScrew, CutState, Frame
from panelcad.model.profile import Profile
from panelcad.model.project import Item
from panelcad.model.shape import Circle, KeyedCircle, Rectangle, Slot, Trapezoid
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
        (KeyedCircle(diameter=12, key_width=3, key_depth=1), LengthUnit.MM, "Ø12.00, key 3.00 wide, 1.00 deep"),
        (Trapezoid(width=30, height=12, side_angle=10, corner_radius=2), LengthUnit.MM,
         "30.00 × 12.00 tapered, sides 10°, R2.00"),
    ],
)  # fmt: skip
def test_a_shape_is_described_as_people_measure_it(shape, unit, words):
    assert shape_text(shape, unit) == words


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
    assert written[at - 1 : at + 6] == ["1", "-100.50", "20.00", "Ø79.38", "±0.13", "a: opening", "cut"]
    assert "S1" in written
    assert "Cut at" not in written


def test_what_is_in_the_metal_already_has_no_tolerance():
    by_number = {hole.number: hole for hole in holes(shown(), shown().laid.plates[0])}
    assert [by_number[number].state for number in ("1", "2", "S1")] == ["cut", "there", "there"]


def test_with_a_finish_the_schedule_gives_cut_sizes_too():
    written = rows(shown(finish_thickness=0.1))
    assert "Cut at" in written
    assert "Ø79.58" in written


def test_a_plate_that_stands_elsewhere_says_where_its_own_datum_is():
    assert any("own origin, which is at X 10.00, Y 0.00, Z 25.00" in words for words in rows(shown()))


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
