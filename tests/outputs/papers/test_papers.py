"""Papers as PDF read back by an independent reader (pdfplumber), and as CSV read back by the standard library."""

import csv
import io
from functools import cache
from pathlib import Path

import pdfplumber
import pytest

from panelcad.editing.acceptances import add_acceptance
from panelcad.library.samples import sample_file
from panelcad.outputs.papers.csv_file import csv_bytes
from panelcad.outputs.papers.document import Column, Document, Grid, Line
from panelcad.outputs.papers.load_analysis import load_analysis
from panelcad.outputs.papers.pdf_document import write_document_to
from panelcad.outputs.papers.write import option_papers, write_comparison, write_option_papers
from panelcad.planning.acceptance import accept
from panelcad.planning.compare import Comparison, compare
from panelcad.planning.judge import Judgement, Topic, judge
from panelcad.store.project_file import load
from panelcad.units import LengthUnit

DAY = "2026-03-01"


@cache
def comparison(name: str = "tourer") -> Comparison:
    project = load(sample_file(name))
    return compare(project, (project.as_found, project.options[-1]))


def last(name: str = "tourer") -> Judgement:
    return comparison(name).judgements[-1]


def pdf(paper: Document, unit: LengthUnit = LengthUnit.INCH) -> bytes:
    stream = io.BytesIO()
    write_document_to(stream, paper, unit)
    return stream.getvalue()


def text(content: bytes) -> str:
    with pdfplumber.open(io.BytesIO(content)) as read:
        return "\n".join(page.extract_text() for page in read.pages)


def test_each_paper_of_the_shop_says_whose_it_is_on_every_page() -> None:
    for paper in option_papers(last(), DAY):
        with pdfplumber.open(io.BytesIO(pdf(paper))) as read:
            for page in read.pages:
                words = page.extract_text()
                assert "approves nothing" in words
                assert paper.marking in words
                assert (round(page.width), round(page.height)) == (612, 792)


def test_beside_millimetres_the_paper_is_a4() -> None:
    with pdfplumber.open(io.BytesIO(pdf(option_papers(last("trainer"), DAY)[0], LengthUnit.MM))) as read:
        assert (round(read.pages[0].width), round(read.pages[0].height)) == (595, 842)


def test_the_load_paper_shows_the_overload_and_its_source() -> None:
    words = text(pdf(next(p for p in option_papers(last(), DAY) if p.name == "load-analysis")))
    assert "AC 43.13-1B" in words
    assert "80 %: 48 A" in words
    assert "not an electrical load" in words


def test_what_was_accepted_stays_on_the_paper_with_who_said_so_and_why() -> None:
    found = last()
    (first, *_) = found.findings[Topic.ELECTRICAL]
    word = accept(first, found.equipment, reason="the owner never flies at night", initials="KT", on="2026-01-31")
    project = add_acceptance(found.equipment.project, found.option.id, word)
    paper = load_analysis(judge(project, project.option(found.option.id)))
    (grid,) = [grid for grid in paper.grids if grid.name == "findings"]
    (line,) = [line for line in grid.lines if line.cells[0] == "accepted"]
    assert line.cells[1].endswith(" Accepted by KT on 2026-01-31: the owner never flies at night")
    assert "KT on 2026-01-31" in text(pdf(paper))


def test_the_revision_is_dated_and_has_the_new_figures() -> None:
    paper = next(p for p in option_papers(last(), DAY) if p.name == "weight-and-balance-revision")
    words = text(pdf(paper))
    assert f"Date: {DAY}" in words
    new = last().balance.change.new
    assert new is not None
    assert f"{new.kg / 0.45359237:.2f} lb" in words
    assert f"{new.moment / 0.45359237 / 25.4:.1f}" in words
    assert "moment lb·in" in words
    assert "superseded" in words
    assert "Signature" in words


def test_no_text_leaves_the_page_or_is_cut(tmp_path: Path) -> None:
    write_comparison(comparison(), tmp_path / "c.pdf")
    with pdfplumber.open(tmp_path / "c.pdf") as read:
        for page in read.pages:
            for word in page.extract_words():
                assert word["x0"] >= 0
                assert word["x1"] <= page.width + 0.5
                assert 0 <= word["top"] < word["bottom"] <= page.height
                assert "�" not in word["text"]


def test_the_owners_report_names_the_options_in_plain_words(tmp_path: Path) -> None:
    write_comparison(comparison(), tmp_path / "report.pdf")
    words = text((tmp_path / "report.pdf").read_bytes())
    assert "Options for your panel" in words
    assert last().option.name in words
    assert "What does it cost?" in words
    assert "If one thing fails" in words


def test_the_same_paper_is_the_same_bytes() -> None:
    paper = option_papers(last(), DAY)[0]
    assert pdf(paper) == pdf(paper)


def test_every_grid_becomes_a_csv_that_reads_back(tmp_path: Path) -> None:
    written = write_option_papers(last(), tmp_path / "new folder", DAY)
    assert all(path.exists() for path in written)
    papers = {p.name: p for p in option_papers(last(), DAY)}
    schedule = next(path for path in written if path.name.endswith("schedule-schedule.csv"))
    rows = list(csv.reader(io.StringIO(schedule.read_text(encoding="utf-8-sig"))))
    grid = papers["breaker-and-wire-schedule"].grids[0]
    assert rows[0][0].startswith("# ")
    assert papers["breaker-and-wire-schedule"].marking in rows[0][0]
    assert rows[1] == [column.title for column in grid.columns]
    assert rows[2:] == [list(line.cells) for line in grid.lines]
    weights = next(path for path in written if path.name.endswith("revision-revision.csv"))
    _, table = weights.read_text(encoding="utf-8-sig").split("\n", 1)
    lines = list(csv.DictReader(io.StringIO(table)))
    changes = [line for line in lines if line[""]]
    total = sum(float(line["moment lb·in"]) for line in (lines[0], *changes))
    assert float(lines[-1]["moment lb·in"]) == pytest.approx(total, abs=0.05 * len(lines))


@pytest.mark.parametrize(
    ("cell", "written"), [("=1+1", "'=1+1"), ("-5.2", "-5.2"), ("-x", "'-x"), ("@a", "'@a"), ("a", "a")]
)
def test_a_cell_is_never_taken_for_a_formula(cell: str, written: str) -> None:
    grid = Grid("g", (Column("c", 1),), (Line((cell,)),))
    document = Document("d", "D", "", "m", (grid,))
    assert list(csv.reader(io.StringIO(csv_bytes(document, grid).decode("utf-8-sig"))))[2] == [written]


def test_markup_in_a_name_is_printed_as_it_is() -> None:
    grid = Grid("g", (Column("a <b> & c", 1),), (Line(("<i>x</i>",)),))
    assert "<i>x</i>" in text(pdf(Document("d", "D & <E>", "", "m", (grid,))))
