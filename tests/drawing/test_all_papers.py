from itertools import combinations

import pytest
import shapely

from panelcad.drawing.display import Face, Path, Text, walk
from panelcad.drawing.drawing_plates import worked_plates
from panelcad.drawing.inks import Ink
from panelcad.drawing.lettering import text_corners
from panelcad.drawing.numbering import sort_key
from panelcad.drawing.outline_edges import arcs, edges
from panelcad.drawing.page import above_title_block
from panelcad.drawing.paper import STANDARD_SCALES, named_paper
from panelcad.drawing.schedule import holes
from panelcad.drawing.sheet import Sheet
from panelcad.drawing.sheets.front import front_page, fronts
from panelcad.drawing.tiles import PRINTERS
from panelcad.geometry.contour import Rounded, rectangle
from panelcad.geometry.gap import contains
from panelcad.geometry.point import Point
from panelcad.geometry.track import line
from panelcad.model.layout import FeatureKind
from panelcad.outputs.drawing import DrawingOptions, drawing_sheets, drawn_subject
from panelcad.outputs.inspection import inspection_sheets
from panelcad.outputs.template import TemplateOptions, template_pages
from tests.drawing import papers


@pytest.mark.parametrize(("name", "option"), papers.ALL_OPTIONS)
def test_no_two_texts_overlap_and_none_leaves_its_sheet(name, option):
    subject = papers.sample(name, option)
    for sheet in (*papers.drawing(name, option), *inspection_sheets(subject)):
        assert papers.overlapping(sheet) == [], sheet.title
        assert papers.outside(sheet, 3.0) == [], sheet.title


@pytest.mark.parametrize(("name", "option"), papers.ALL_OPTIONS)
def test_no_edge_and_no_line_runs_through_a_text(name, option):
    for sheet in (*papers.drawing(name, option), *inspection_sheets(papers.sample(name, option))):
        assert papers.crossed(sheet) == set(), sheet.title


@pytest.mark.parametrize(("name", "option"), papers.ALL_OPTIONS)
def test_no_number_stands_in_an_opening_of_another_cut(name, option):
    """The number of a cut's hole, 12.2, may stand in that cut's own opening, 12, where all else is full."""
    subject = papers.sample(name, option)
    for plate in worked_plates(subject):
        inside = set(_in_openings(_chosen_front(subject, plate)))
        assert {number for number, opening in inside if number.partition(".")[0] != opening} == set()
        assert name == "twin" or inside == set()


@pytest.mark.parametrize(("name", "option"), papers.ALL_OPTIONS)
def test_no_two_leaders_cross(name, option):
    """Save one pair in the twin's rows of breakers, where any other place would cover an edge or an engraved word."""
    subject = papers.sample(name, option)
    for plate in worked_plates(subject):
        labels = [label for label in _chosen_front(subject, plate).labels if label.needs_leader]
        leaders = [(label.wish.text, shapely.LineString(label.leader)) for label in labels]
        pairs = {(a, b) for (a, one), (b, other) in combinations(leaders, 2) if one.crosses(other)}
        assert pairs <= ({("40", "41")} if name == "twin" and plate.plate.id == "panel" else set())


def _chosen_front(subject, plate):
    page = front_page(subject, plate)
    return next(each for each in fronts(subject, plate) if each.paper == page.paper)


def _in_openings(front):
    """Each number with the opening, not its own, that its middle stands in."""
    openings = [hole for hole in front.holes if hole.feature.kind is FeatureKind.OPENING]
    for label in front.labels:
        for hole in openings:
            stands_in = contains(front.seat.contour(hole.feature.contour), label.middle)
            if (
                stands_in
                and label.wish.text != hole.number
                and label.wish.text in front.subject.numbers.features.values()
            ):
                yield label.wish.text, hole.number


@pytest.mark.parametrize(("name", "option"), papers.ALL_OPTIONS)
def test_the_sheet_is_the_smallest_for_its_scale_and_the_scale_the_largest_for_its_sheet(name, option):
    subject = papers.sample(name, option)
    for plate in worked_plates(subject):
        page = front_page(subject, plate)
        scales = {each.paper: each.scale for each in fronts(subject, plate)}
        assert page.scale == str(scales[page.paper])
        assert page.paper == next(paper for paper, scale in scales.items() if str(scale) == page.scale)
        larger = [scale for scale in STANDARD_SCALES[1:] if scale.factor > scales[page.paper].factor]
        left, low, right, high = above_title_block(page.paper)
        x1, y1, x2, y2 = plate.outline.bounds
        assert not any(
            (x2 - x1) * s.factor <= right - left - 50 and (y2 - y1) * s.factor <= high - low - 50 for s in larger
        )


def test_a_stroke_through_a_text_is_seen_unless_a_fill_hides_it():
    inks = papers.sample("tourer", "glass").inks
    words = inks.text("7.1", (50.0, 50.0))
    stroke = Path((line(Point(40.0, 51.0), Point(60.0, 51.0)),), pen=inks.narrow)
    patch = Path((rectangle(Point(53.0, 51.0), 12.0, 6.0),), fill=inks.palette.background)
    assert papers.crossed(Sheet(100, 100, (stroke, words), "")) == {"7.1"}
    assert papers.crossed(Sheet(100, 100, (words, stroke), "")) == {"7.1"}
    assert papers.crossed(Sheet(100, 100, (stroke, patch, words), "")) == set()
    assert papers.crossed(Sheet(100, 100, (patch, stroke, words), "")) == {"7.1"}


@pytest.mark.parametrize(("name", "option"), papers.ALL_OPTIONS)
def test_radii_and_vertices_of_the_outline_stand_on_the_front(name, option):
    subject = papers.sample(name, option)
    fronts = [sheet for sheet in papers.drawing(name, option) if "Panel front" in sheet.title]
    for plate, sheet in zip(worked_plates(subject), fronts, strict=True):
        written = {text.text for text in papers.texts(sheet.nodes)}
        found = edges(plate.outline)
        missing = {f"V{edge.number}" for edge in found} - written
        assert len(missing) <= 0.25 * len(found), (sheet.title, missing)
        radii = {f"R{subject.number(arc.radius)}" for _, arc in arcs(found)}
        bracketed = {f"({radius})" for radius in radii}
        assert len(written & (radii | bracketed)) >= 0.5 * len(radii), sheet.title
        assert any("listed after the holes in the hole schedule." in words for words in written), sheet.title


@pytest.mark.parametrize(("name", "option"), papers.ALL_OPTIONS)
def test_every_hole_s_position_is_on_the_view_or_the_sheet_says_where_it_is(name, option):
    subject = papers.sample(name, option)
    fronts = [sheet for sheet in papers.drawing(name, option) if "Panel front" in sheet.title]
    for plate, sheet in zip(worked_plates(subject), fronts, strict=True):
        written = {text.text.strip("()") for text in papers.texts(sheet.nodes)}
        listed = holes(subject, plate)
        bare = [h.number for h in listed if not {_value(subject, h.centre.x), _value(subject, h.centre.y)} <= written]
        assert not any("." not in number for number in bare), sheet.title
        assert not bare or any("are in the hole schedule" in words for words in written), sheet.title


def _value(subject, mm: float) -> str:
    return subject.number(mm) if round(mm, 6) else "0"


@pytest.mark.parametrize(("name", "option"), papers.ALL_OPTIONS)
def test_no_text_of_the_template_is_cut_or_covered(name, option):
    subject = papers.sample(name, option)
    printer = PRINTERS["A4"]
    for plate in subject.option.plates:
        for sheet in template_pages(subject, plate.id, TemplateOptions(printer)):
            assert papers.overlapping(sheet) == [], sheet.title
            assert papers.outside(sheet, printer.margin - 1.0) == [], sheet.title


@pytest.mark.parametrize(("name", "option"), papers.ALL_OPTIONS)
def test_every_hole_has_its_number_on_the_front(name, option):
    subject = papers.sample(name, option)
    fronts = [sheet for sheet in papers.drawing(name, option) if "Panel front" in sheet.title]
    written = {text.text for sheet in fronts for text in papers.texts(sheet.nodes)}
    wanted = {subject.numbers.features[f.id] for plate in worked_plates(subject) for f in plate.features}
    assert wanted <= written


@pytest.mark.parametrize(("name", "option"), [("trainer", "day-night"), ("twin", "refit")])
def test_no_heading_of_a_column_is_broken_within_a_word(name, option):
    sheets = (*papers.drawing(name, option), *inspection_sheets(papers.sample(name, option)))
    bold = {text.text for sheet in sheets for text in papers.texts(sheet.nodes) if text.face is Face.BOLD}
    assert {"Tolerance", "What for", "State", "Clearance", "Required", "Measured", "Nominal", "Equipment"} <= bold
    for sheet in sheets:
        assert not {"e", "d", "n", "s"} & {text.text for text in papers.texts(sheet.nodes)}, sheet.title


def test_the_sheets_count_themselves():
    sheets = papers.drawing("tourer", "glass")
    for number, sheet in enumerate(sheets, 1):
        assert f"{number} / {len(sheets)}" in {text.text for text in papers.texts(sheet.nodes)}


@pytest.mark.parametrize(("name", "option"), papers.ALL_OPTIONS)
def test_letters_and_lines_have_the_sizes_of_the_standards(name, option):
    """Heights of ISO 3098-1 and line widths of ISO 128-2; the part's own lettering has the height it will have."""
    for sheet in papers.drawing(name, option):
        nodes = [node for node in walk(sheet.nodes) if isinstance(node, Path) and node.pen]
        assert {round(node.pen.width, 6) for node in nodes} <= {0.13, 0.18, 0.25, 0.35, 0.5, 0.7}
        engraved = {e.text for plate in papers.sample(name, option).option.plates for e in plate.engravings}
        heights = {text.height for text in papers.texts(sheet.nodes) if text.text not in engraved}
        assert heights <= {1.8, 2.5, 3.5, 5.0, 7.0}


def test_in_black_and_white_nothing_is_coloured():
    glass = papers.sample("tourer", "glass")
    for sheet in drawing_sheets(papers.shown(glass.project, glass.option, Ink.BLACK)):
        for node in walk(sheet.nodes):
            colours = [node.colour] if isinstance(node, Text) else []
            if isinstance(node, Path):
                colours = [part for part in (node.fill, node.pen and node.pen.colour) if part]
            assert all(colour.red == colour.green == colour.blue for colour in colours)


def test_on_the_largest_sheet_that_can_be_printed_all_that_has_room_is_drawn_and_the_rest_is_told():
    glass = papers.sample("tourer", "glass")
    options = DrawingOptions(largest=named_paper("A3"), report=glass.report)
    sheets = drawing_sheets(drawn_subject(glass.project, glass.option, options))
    assert {(sheet.width, sheet.height) for sheet in sheets} == {(420.0, 297.0)}
    written = [text.text for text in papers.texts(sheets[0].nodes)]
    wanted = {glass.numbers.features[feature.id] for feature in worked_plates(glass)[0].features}
    missing = sorted(wanted - set(written), key=sort_key)
    told = " ".join(words for words in written if " " in words)
    assert missing
    assert f"{len(missing)} texts had no room: {', '.join(missing)}; the hole schedule gives their places." in told
    assert "listed after the holes in the hole schedule." in told
    listed = {text.text for sheet in sheets if "Hole schedule" in sheet.title for text in papers.texts(sheet.nodes)}
    assert wanted <= listed
    for sheet in sheets:
        assert papers.overlapping(sheet) == [], sheet.title


@pytest.mark.parametrize(("name", "option"), papers.ALL_OPTIONS)
def test_no_number_on_the_front_covers_a_small_hole(name, option):
    engraved = {e.text for plate in papers.sample(name, option).option.plates for e in plate.engravings}
    for sheet in papers.drawing(name, option):
        if "Panel front" not in sheet.title:
            continue
        numbers = [text for text in papers.texts(sheet.nodes) if text.text not in engraved]
        circles = [
            shapely.Point(outline.centre).buffer(outline.radius)
            for node in walk(sheet.nodes)
            if isinstance(node, Path) and len(node.outlines) == 1
            for outline in node.outlines
            if isinstance(outline, Rounded) and outline.is_circle and outline.radius < 4.0
        ]
        boxes = [shapely.Polygon(text_corners(text)) for text in numbers]
        pairs = shapely.STRtree(circles).query(boxes, predicate="intersects").T
        covering = [numbers[a].text for a, b in pairs if boxes[a].intersection(circles[b]).area > 0.1]
        assert covering == [], sheet.title
