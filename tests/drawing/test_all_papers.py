import pytest

from panelcad.drawing.drawing_set import drawing_pages
from panelcad.drawing.page import bordered
from panelcad.drawing.tiles import PRINTERS
from panelcad.outputs.drawing import drawing_sheets
from panelcad.outputs.inspection import inspection_sheets
from panelcad.outputs.template import TemplateOptions, template_pages
from tests.drawing import papers


@pytest.mark.parametrize(("name", "option"), papers.ALL_OPTIONS)
def test_no_two_texts_overlap_and_none_leaves_its_sheet(name, option):
    subject = papers.sample(name, option)
    for sheet in (*drawing_sheets(subject), *inspection_sheets(subject)):
        assert papers.overlapping(sheet) == [], sheet.title
        assert papers.outside(sheet, 3.0) == [], sheet.title


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
    fronts = [page for page in drawing_pages(subject) if page.document == "Panel front"]
    written = {text.text for page in fronts for text in papers.texts(page.nodes)}
    drawn = [plate for plate in subject.laid.plates if plate.plate.name in {page.title for page in fronts}]
    wanted = {subject.numbers.features[feature.id] for plate in drawn for feature in plate.features}
    assert wanted <= written


def test_the_sheets_count_themselves():
    subject = papers.sample("tourer", "glass")
    sheets = bordered(subject, drawing_pages(subject))
    for number, sheet in enumerate(sheets, 1):
        assert f"{number} / {len(sheets)}" in {text.text for text in papers.texts(sheet.nodes)}
