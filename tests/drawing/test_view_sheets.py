from dataclasses import replace

import pytest

from panelcad.drawing.drawing_set import drawing_pages
from panelcad.drawing.sheet import Sheet
from panelcad.drawing.sheets.behind import behind_page, clearance_pages, has_all_clearances
from panelcad.drawing.sheets.section import section_pages
from panelcad.drawing.sheets.section_lines import chosen_lines, usual_lines
from panelcad.errors import PanelcadError
from panelcad.geometry.across import Across
from panelcad.model.cutout import Body, BodyKind
from panelcad.model.shape import Circle, Rectangle
from panelcad.model.surroundings import DepthLimit, Obstacle, ObstacleKind, Surroundings, Volume
from panelcad.outputs.section_choices import chosen_sections, section_word
from panelcad.units import LengthUnit
from tests import builders
from tests.drawing import papers

SHEET = Rectangle(width=600, height=300)


def shown():
    case = Body(kind=BodyKind.CASE, shape=Circle(diameter=78), far=150.0, source=builders.SOURCE)
    deep = Body(kind=BodyKind.CASE, shape=Circle(diameter=50), far=220.0, source=builders.SOURCE)
    cutouts = (builders.round_cutout(bodies=(case,)), builders.round_cutout(55.0, "deep", bodies=(deep,)))
    cuts = (builders.cut("a", -60, 20), builders.cut("b", 16, 20, cutout="deep"))
    items = (builders.item("gauge", -60, 20, cut="a"), builders.item("radio", 16, 20, cutout="deep", cut="b"))
    tube = Volume(shape=Rectangle(width=20, height=250), x=60, y=0, near=40, far=60)
    around = Surroundings(
        obstacles=(Obstacle(id="tube", name="Cross tube", kind=ObstacleKind.TUBE, plate="main", volume=tube),),
        depth_limits=(DepthLimit(id="wall", name="Firewall", plate="main", shape=SHEET, x=0, y=0, at_origin=235.0),),
    )
    plate = builders.sheet(cuts=cuts, state="new")
    project = builders.project(plate, items=items, cutouts=cutouts, surroundings=around)
    return papers.shown(project, project.options[0])


def words(page) -> list[str]:
    return [text.text for text in papers.texts(page.nodes)]


def test_the_view_from_behind_has_the_numbers_of_the_front_and_the_tightest_clearances():
    subject = shown()
    written = words(behind_page(subject, subject.laid.plates[0]))
    assert {"1", "2", "Cross tube", "Firewall", "A", "B"} <= set(written)
    assert "mirrored" in " ".join(written)
    between_cases = 76 - 39 - 25
    to_tube = 60 - 10 - (16 + 25)
    assert {f"{between_cases:.2f}", f"{to_tube:.2f}"} <= set(written)


def test_what_is_on_the_right_for_the_pilot_is_on_the_left_for_the_mechanic():
    subject = shown()
    page = behind_page(subject, subject.laid.plates[0])
    at = {text.text: text.at.x for text in papers.texts(page.nodes) if text.text in {"1", "2"} and text.at.y > 100}
    assert at["2"] < at["1"]


def test_all_clearances_are_listed_with_what_is_required():
    subject = shown()
    (page,) = clearance_pages(subject, subject.laid.plates[0])
    written = words(page)
    at = written.index("Firewall")
    assert written[at - 2 : at + 3] == ["2", "case", "Firewall", "15.00", "6.35"]


def test_the_sections_run_through_what_reaches_deepest_and_tell_how_deep():
    subject = shown()
    plate = subject.laid.plates[0]
    assert [line.at for line in usual_lines(plate)] == [16, 20]
    written = words(*section_pages(subject, plate))
    assert "A–A   X = 16.00 mm" in written
    assert "B–B   Y = 20.00 mm" in written
    assert {"220.00", "150.00", "0", "1", "2", "Firewall"} <= set(written)


def test_a_bare_sheet_has_its_views_too():
    project = builders.project()
    subject = papers.shown(project, project.options[0])
    plate = subject.laid.plates[0]
    assert [page.title for page in (behind_page(subject, plate), *section_pages(subject, plate))] == ["Main panel"] * 2


def asked_for(*words: str):
    subject = shown()
    return replace(subject, sections=chosen_sections(words, subject.project, subject.option))


def test_a_section_that_was_asked_for_is_drawn_and_marked_with_the_usual_one_across_it():
    subject = asked_for("x = -60")
    plate = subject.laid.plates[0]
    assert [(line.across, line.at) for line in chosen_lines(subject, plate)] == [
        (Across.VERTICAL, -60), (Across.HORIZONTAL, 20),
    ]  # fmt: skip
    (page,) = section_pages(subject, plate)
    assert {"A–A   X = -60.00 mm", "B–B   Y = 20.00 mm", "150.00"} <= set(words(page))
    assert {"A", "B"} <= set(words(behind_page(subject, plate)))


def test_more_sections_take_more_sheets_two_on_each():
    subject = asked_for("x=-60", "main:x=16", "y=0.5in")
    first, second = section_pages(subject, subject.laid.plates[0])
    assert {"A–A   X = -60.00 mm", "B–B   X = 16.00 mm"} <= set(words(first))
    assert "C–C   Y = 12.70 mm" in words(second)
    for page in (first, second):
        sheet = Sheet(page.paper.width, page.paper.height, page.nodes, "")
        assert papers.overlapping(sheet) == []
        assert papers.crossed(sheet) == set()


@pytest.mark.parametrize(
    ("word", "fault"),
    [("z=3", "is not read"), ("x=abc", "cannot be read"), ("x=4000", "it misses Main panel"), ("tail:x=0", "'tail'")],
)
def test_a_section_that_cannot_be_drawn_is_refused_in_one_sentence(word, fault):
    with pytest.raises(PanelcadError, match=fault):
        asked_for(word)


def test_the_words_of_a_section_ask_for_it_again():
    (section,) = asked_for("y=0.5in").sections
    assert section_word(section, LengthUnit.MM) == "main:y=12.7mm"
    assert asked_for(section_word(section, LengthUnit.INCH)).sections == (section,)


def test_a_section_through_a_plate_that_is_not_issued_is_refused_in_one_sentence():
    """Words with a line off the sheet are refused too; here the line is good and the plate is not drawn."""
    plates = (builders.sheet(state="new"), builders.sheet(id="sub", name="Sub-panel", state="new"))
    kept = builders.sheet(id="old", name="Old panel", state="kept")
    project = builders.project(*plates, kept)
    option = project.options[0]
    for word, issued in (("main:x=3in", ("sub",)), ("old:x=0", ())):
        with pytest.raises(PanelcadError, match="is not drawn"):
            chosen_sections((word,), project, option, issued)
    (section,) = chosen_sections(("x=3in",), project, option, ("Sub-panel",))
    assert section.plate == "sub"


def test_a_few_clearances_need_no_list_beside_the_view_and_many_do():
    subject = shown()
    (plate,) = subject.laid.plates
    page = behind_page(subject, plate)
    assert has_all_clearances(subject, plate, page.paper)
    assert "Clearances behind" not in [each.document for each in drawing_pages(subject)]
    cuts = tuple(builders.cut(f"c{i}", i * 10.0 - 100, 0) for i in range(20))
    items = tuple(builders.item(f"i{i}", i * 10.0 - 100, 0, cut=f"c{i}") for i in range(20))
    crowded = builders.project(builders.sheet(cuts=cuts, state="new"), items=items, cutouts=subject.project.cutouts)
    many = papers.shown(crowded, crowded.options[0])
    assert not has_all_clearances(many, many.laid.plates[0], page.paper)
