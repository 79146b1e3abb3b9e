from io import BytesIO

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from panelcad.drawing.tiles import PRINTERS, Printer, tiling
from panelcad.errors import UnusableInput
from panelcad.geometry.contour import Rounded
from panelcad.model.cutout import Body, BodyKind
from panelcad.model.hole import BoltCircle, Countersink, HoleForm, HoleGroup, HoleKind, Nutplate
from panelcad.model.layout import Feature, PlateLayout
from panelcad.model.plate import AttachScrew, Engraving, PlateState
from panelcad.model.project import Project
from panelcad.model.shape import Circle, KeyedCircle, Rectangle, Slot
from panelcad.outputs.drawing import DrawingOptions, drawing_sheets, export_drawing
from panelcad.outputs.inspection import export_inspection, export_inspection_csv
from panelcad.outputs.template import TemplateOptions, export_template, template_pages
from panelcad.units import LengthUnit
from tests import builders
from tests.drawing import papers
from tests.outputs.pdf_reading import MM, boxes, closed_shapes, nearest, pages, pdf_bytes

ON_PAPER = 0.1
"""To so many mm on paper a drawing must be at its stated scale."""
SAMPLES = [("tourer", "glass"), ("trainer", "day-night")]


def measurable(plate: PlateLayout) -> list[Feature]:
    """Holes whose box a reader that looks at ends of curves measures right: circles, and rectangles along the axes."""
    return [*round_holes(plate), *(feature for feature in plate.features if _is_upright_rectangle(feature.contour))]


def _is_upright_rectangle(contour) -> bool:
    if not isinstance(contour, Rounded) or len(contour.core) != 4:
        return False
    a, b, c, _ = contour.core
    return 0.0 in {round(a.x - b.x, 6), round(a.y - b.y, 6)} and 0.0 in {round(b.x - c.x, 6), round(b.y - c.y, 6)}


def round_holes(plate: PlateLayout) -> list[Feature]:
    return [f for f in plate.features if isinstance(f.contour, Rounded) and f.contour.is_circle]


def stated_scale(words: str) -> float:
    paper, real = words.split(":")
    return int(paper) / int(real)


def front_of(subject, sheet):
    """The plate on the first sheet, and the scale that its title block states."""
    scales = [
        text.text for text in papers.texts(sheet.nodes) if text.text.replace(":", "").isdigit() and ":" in text.text
    ]
    plate = next(p for p in subject.laid.plates if p.plate.state is not PlateState.KEPT)
    return plate, stated_scale(scales[-1])


def assert_true_to_scale(subject, sheet) -> None:
    plate, scale = front_of(subject, sheet)
    (page,) = pages(pdf_bytes([sheet]))
    found = closed_shapes(page)
    x1, y1, x2, y2 = plate.outline.bounds
    width, height = (x2 - x1) * scale, (y2 - y1) * scale
    outline = min(found, key=lambda box: abs(box.size[0] - width) + abs(box.size[1] - height))
    assert outline.size == pytest.approx((width, height), abs=ON_PAPER)
    for hole in measurable(plate):
        a, b, c, d = hole.contour.bounds
        centre = (outline.x1 + ((a + c) / 2 - x1) * scale, outline.y1 + ((b + d) / 2 - y1) * scale)
        assert nearest(found, centre, ((c - a) * scale, (d - b) * scale)) <= ON_PAPER, hole.id


@pytest.mark.parametrize(("name", "option"), SAMPLES)
def test_the_front_measured_by_a_pdf_reader_is_at_its_stated_scale(name, option):
    assert_true_to_scale(papers.sample(name, option), papers.drawing(name, option)[0])


def tiles_measured(subject, printer: Printer):
    """Each page of a template with what it shows: its shapes, its lines, and the way from the plate to the page."""
    plate = subject.laid.plates[0]
    sheets = template_pages(subject, plate.plate.id, TemplateOptions(printer))
    cut = tiling(plate.outline.bounds, printer, TemplateOptions().overlap)
    windows = {tile.name: tile.window for tile in cut.tiles()}
    for sheet, page in zip(sheets, pages(pdf_bytes(sheets)), strict=True):
        yield page, windows.get(sheet.title.rpartition(" ")[2]), cut.printer


@pytest.mark.parametrize(("name", "option", "printer"), [("tourer", "glass", "Letter"), ("trainer", "day-night", "A3")])
def test_the_template_is_full_size_and_its_bars_are_exact(name, option, printer):
    subject = papers.sample(name, option)
    holes = round_holes(subject.laid.plates[0])
    seen = set()
    for page, window, paper in tiles_measured(subject, PRINTERS[printer]):
        lengths = [round(box.size[0], 3) for box in boxes(page.lines)]
        assert 100.0 in lengths
        assert 101.6 in lengths
        if window is None:
            continue
        foot = paper.height - paper.margin - (window[3] - window[1])
        found = closed_shapes(page)
        for hole in holes:
            x1, y1, x2, y2 = hole.contour.bounds
            if window[0] <= x1 and window[1] <= y1 and x2 <= window[2] and y2 <= window[3]:
                centre = (hole.centre.x - window[0] + paper.margin, hole.centre.y - window[1] + foot)
                assert nearest(found, centre, (x2 - x1, y2 - y1)) <= 0.01, hole.id
                seen.add(hole.id)
    small = {hole.id for hole in holes if hole.contour.radius < 5.0}
    assert small <= seen


def test_the_reader_finds_no_letter_outside_its_page_nor_outside_a_template_window():
    subject = papers.sample("tourer", "glass")
    for page, _, paper in tiles_measured(subject, PRINTERS["Letter"]):
        edge = paper.margin - 0.5
        for char in page.chars:
            assert edge <= char["x0"] * MM
            assert char["x1"] * MM <= paper.width - edge
            assert edge - 1.0 <= char["y0"] * MM
            assert char["y1"] * MM <= paper.height - edge + 1.5


def test_text_can_be_searched_and_sheets_are_bookmarked(tmp_path):
    from pypdfium2 import PdfDocument

    subject = papers.sample("tourer", "glass")
    path = tmp_path / "drawing.pdf"
    export_drawing(subject.project, subject.option, path, DrawingOptions(report=subject.report))
    document = PdfDocument(path.read_bytes())
    words = document[0].get_textpage().get_text_bounded()
    for wanted in (
        subject.stamp.fingerprint,
        "BEFORE CUTTING",
        "BEFORE FLIGHT",
        subject.project.title,
        "NOT FOR CUTTING",
    ):
        assert wanted in words
    titles = [entry.get_title() for entry in document.get_toc()]
    assert len(titles) == len(document)
    assert any("Hole schedule" in title for title in titles)
    assert subject.project.title in document.get_metadata_value("Title")
    assert subject.stamp.fingerprint in document.get_metadata_value("Keywords")


@pytest.mark.parametrize("page_number", [0, 1])
def test_a_telephone_reads_the_fingerprint_from_the_qr_code(page_number):
    import zxingcpp
    from pypdfium2 import PdfDocument

    subject = papers.sample("tourer", "glass")
    sheet = papers.drawing("tourer", "glass")[page_number]
    page = PdfDocument(pdf_bytes([sheet]))[0]
    right, foot = (sheet.width - 200) / MM, (sheet.height - 80) / MM
    picture = page.render(scale=3, crop=(right, 0, 0, foot)).to_pil()
    (code,) = zxingcpp.read_barcodes(picture)
    assert subject.stamp.fingerprint in code.text


def test_papers_made_twice_are_the_same_to_the_byte(tmp_path):
    subject = papers.sample("trainer", "day-night")
    made = []
    for name in ("first", "second"):
        drawing, template = tmp_path / f"{name}.pdf", tmp_path / f"{name}-template.pdf"
        export_drawing(subject.project, subject.option, drawing, DrawingOptions(report=subject.report))
        options = TemplateOptions(drawing=DrawingOptions(report=subject.report))
        export_template(subject.project, subject.option, subject.option.plates[0].id, template, options)
        made.append((drawing.read_bytes(), template.read_bytes()))
    assert made[0] == made[1]


SCREW = HoleForm(diameter=4.3, fastener=3.5)
SUNK = HoleForm(diameter=4.3, fastener=3.5, kind=HoleKind.COUNTERSUNK, countersink=Countersink(diameter=8.0))
NUTPLATE = HoleForm(
    diameter=4.8,
    fastener=4.0,
    kind=HoleKind.NUTPLATE,
    nutplate=Nutplate(rivet_diameter=2.5, rivet_spacing=17.5, flange_length=25.0, flange_width=8.0),
)
SHAPES = {
    "round": lambda size: Circle(diameter=size),
    "rectangle": lambda size: Rectangle(width=size, height=0.7 * size, corner_radius=2.0),
    "slot": lambda size: Slot(length=size, width=0.4 * size),
    "keyed": lambda size: KeyedCircle(diameter=0.8 * size, key_width=3.0, key_depth=1.5),
}
TURNS = st.sampled_from([0.0, 90.0, 30.0])
CELL = st.tuples(st.sampled_from(sorted(SHAPES)), st.floats(14, 48), st.floats(-8, 8), st.floats(-4, 4), TURNS)
WORDS = st.text(st.characters(codec="latin-1", categories=["L", "N"]), min_size=1, max_size=12)


def panel(unit: LengthUnit, width: float, height: float, cells, lettering: list[str]) -> Project:
    """A legal panel: in each cell of a grid a cut with screws, a case behind and lettering above; corner screws."""
    cutouts, cuts, items, engravings = [], [], [], []
    for number, (kind, size, dx, dy, turn) in enumerate(cells):
        name, (column, row) = f"cutout-{number}", (number % 6, number // 6)
        ring = BoltCircle(diameter=size + 20, count=4, first_angle=45)
        holes = HoleGroup(form=SUNK if number % 3 else SCREW, bolt_circle=ring, source=builders.SOURCE)
        case = Body(kind=BodyKind.CASE, shape=Circle(diameter=size), far=60.0 + size, source=builders.SOURCE)
        shape = builders.opening(SHAPES[kind](size))
        cutouts.append(builders.round_cutout(name=name, openings=(shape,), holes=(holes,), bodies=(case,)))
        x, y = (column - 2.5) * width / 6.5 + dx, (row - 1) * height / 3.4 + dy
        cuts.append(builders.cut(f"c{number}", x, y, cutout=name, rotation=turn))
        items.append(builders.item(f"i{number}", x, y, cutout=name, cut=f"c{number}", rotation=turn))
        if number < len(lettering):
            text = Engraving(id=f"e{number}", text=lettering[number], x=x, y=y + size / 2 + 18, height=3.0)
            engravings.append(text)
    corners = [(sx * (width / 2 - 16), sy * (height / 2 - 16)) for sx in (-1, 1) for sy in (-1, 1)]
    attach = tuple(AttachScrew(id=f"s{i}", x=x, y=y, form=NUTPLATE) for i, (x, y) in enumerate(corners))
    plate = builders.sheet(
        width, height, cuts=tuple(cuts), attach_screws=attach, engravings=tuple(engravings), state="new"
    )
    return builders.project(plate, items=tuple(items), cutouts=tuple(cutouts), unit=unit)


@given(
    unit=st.sampled_from(LengthUnit),
    width=st.floats(620, 1200),
    height=st.floats(300, 500),
    cells=st.lists(CELL, max_size=18),
    lettering=st.lists(WORDS, max_size=6),
)
@settings(max_examples=6, deadline=None, suppress_health_check=[HealthCheck.too_slow])
def test_any_legal_panel_gives_a_readable_drawing_at_its_scale(unit, width, height, cells, lettering):
    built = panel(unit, width, height, cells, lettering)
    subject = papers.shown(built, built.options[0])
    sheets = drawing_sheets(subject)
    assert_true_to_scale(subject, sheets[0])
    for sheet in sheets:
        assert papers.overlapping(sheet) == [], sheet.title
        assert papers.outside(sheet, 3.0) == []
    for sheet in template_pages(subject, "main"):
        assert papers.overlapping(sheet) == []


@pytest.mark.parametrize("write", [export_drawing, export_inspection, export_inspection_csv])
def test_a_place_that_cannot_be_written_to_is_named_in_one_sentence(tmp_path, write):
    subject = papers.sample("trainer", "day-night")
    path = tmp_path / "missing" / "paper"
    with pytest.raises(UnusableInput, match="it cannot be written") as refused:
        write(subject.project, subject.option, path, DrawingOptions(report=subject.report))
    assert str(path) in str(refused.value)


def test_a_released_drawing_bears_its_revision_and_date_and_no_draft_mark():
    from panelcad.model.revision import Stamp

    sample = papers.sample("trainer", "day-night")
    mark = Stamp(sample.stamp.fingerprint, "B", "2026-05-01")
    from panelcad.outputs.drawing import drawn_subject

    released = drawn_subject(sample.project, sample.option, DrawingOptions(stamp=mark, report=sample.report))
    sheet = drawing_sheets(released)[0]
    words = pages(pdf_bytes([sheet]))[0].extract_text()
    assert "2026-05-01" in words
    assert "NOT FOR CUTTING" not in words


def test_the_date_in_the_properties_is_the_release_s(tmp_path):
    import pdfplumber

    from panelcad.model.revision import Stamp

    sample = papers.sample("trainer", "day-night")
    options = DrawingOptions(stamp=Stamp(sample.stamp.fingerprint, "B", "2026-05-01"), report=sample.report)
    path = tmp_path / "b.pdf"
    export_drawing(sample.project, sample.option, path, options)
    assert pdfplumber.open(BytesIO(path.read_bytes())).metadata["CreationDate"].startswith("D:20260501")


def test_scripts_write_template_and_inspection_too(tmp_path):
    import panelcad
    from panelcad.errors import UnknownName

    project = panel(LengthUnit.MM, 620.0, 300.0, [], [])
    panelcad.export_template(project, "new", "main", tmp_path / "template.pdf", "a3")
    panelcad.export_drawing(project, "new", tmp_path / "drawing.pdf", sections=["x=40"], largest="A3", ink="black")
    words = "".join(page.extract_text() for page in pages((tmp_path / "drawing.pdf").read_bytes()))
    assert "A–A X = 40.00 mm" in words
    panelcad.export_inspection(project, "new", tmp_path / "inspection.csv")
    panelcad.export_inspection(project, "new", tmp_path / "inspection.pdf")
    assert (tmp_path / "template.pdf").read_bytes().startswith(b"%PDF")
    assert (tmp_path / "inspection.csv").read_text().startswith("characteristic,")
    assert (tmp_path / "inspection.pdf").read_bytes().startswith(b"%PDF")
    with pytest.raises(UnknownName, match="no paper 'A44'"):
        panelcad.export_template(project, "new", "main", tmp_path / "t.pdf", "A44")
