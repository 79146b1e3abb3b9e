import ezdxf
import pytest

import panelcad
from panelcad.errors import UnknownName, UnusableInput
from panelcad.geometry.contour import Rounded
from panelcad.geometry.gap import edge_gap
from panelcad.model.layout import layout
from panelcad.outputs.dxf_options import DxfOptions, DxfVersion
from panelcad.outputs.manifest import MANIFEST
from panelcad.outputs.release import cutting_draft, release
from panelcad.outputs.release_papers import ReleaseOptions
from panelcad.outputs.trial_piece import MARGIN, named_cuts, piece_around
from panelcad.outputs.verify import verify
from panelcad.outputs.verify_words import made_from, verify_text
from tests.builders import cut, project, sheet

TWO = (cut("clock", -100.0, 20.0, name="Clock"), cut("gauge", 150.0, 0.0, state="existing"))


def panel():
    return project(
        sheet(cuts=TWO, state="reworked"), sheet(id="low", name="Lower panel", cuts=(cut("lamp", 0.0, 0.0),))
    )


def labels(file):
    return [(text.dxf.text, text.dxf.height) for text in ezdxf.readfile(file).modelspace().query("TEXT")]


def test_a_draft_says_so_in_name_words_and_report_and_leaves_the_log(tmp_path):
    plain = panel()
    files, report = cutting_draft(plain, "new", tmp_path)
    assert [file.name for file in files] == [
        "test-1-new-draft-main.dxf",
        "test-1-new-draft-main-cutting-report.txt",
        "test-1-new-draft-low.dxf",
        "test-1-new-draft-low-cutting-report.txt",
        "test-1-new-draft-main-template.pdf",
        "test-1-new-draft-low-template.pdf",
    ]
    assert ("DRAFT - NOT RELEASED", 10.0) in labels(files[0])
    assert any(text.startswith("Draft: for a trial in scrap") for text, _ in labels(files[0]))
    assert "Draft: " in files[1].read_text(encoding="utf-8")
    assert report.project.releases == ()


def test_a_draft_of_a_released_option_is_one_too_and_a_release_is_none(tmp_path):
    done = release(panel(), "new", tmp_path / "out", "2026-05-01")
    files, _ = cutting_draft(done.project, "new", tmp_path / "drafts", ReleaseOptions(plates=("main",)))
    assert {"draft" in file.name for file in files} == {True}
    assert made_from(verify(done.project, files[0])).startswith("a draft, for a trial in scrap only")
    issued = next(file for file in done.files if file.suffix == ".dxf")
    assert not any("draft" in text.lower() for text, _ in labels(issued))
    assert made_from(verify(done.project, issued)).startswith("revision A of 2026-05-01")


def test_no_draft_is_put_beside_a_release(tmp_path):
    done = release(panel(), "new", tmp_path, "2026-05-01")
    before = sorted(done.folder.iterdir())
    with pytest.raises(UnusableInput, match="it holds a release"):
        cutting_draft(done.project, "new", done.folder)
    assert sorted(done.folder.iterdir()) == before
    assert MANIFEST in {file.name for file in before}


def test_a_script_writes_one_too(tmp_path):
    files = panelcad.draft(panel(), "new", tmp_path, around=("clock",), choices=("in",))
    assert [file.suffix for file in files] == [".dxf", ".txt"]
    assert "-draft-main-in-corner-trial-piece-clock" in files[0].name


def test_a_piece_holds_the_chosen_cuts_a_margin_inside_its_edge():
    plain = panel()
    laid = layout(plain, plain.option("new")).plate("main")
    piece = piece_around(laid, ("gauge",))
    (hole,) = piece.features
    assert isinstance(hole.contour, Rounded)
    assert edge_gap(hole.contour, piece.outline).distance == pytest.approx(MARGIN)
    assert piece_around(laid, ()) is laid
    assert piece_around(laid, ("gone",)) is laid


@pytest.mark.parametrize("version", [DxfVersion.R12, DxfVersion.R2010])
def test_an_existing_hole_is_cut_in_the_piece_and_the_file_verifies(tmp_path, version):
    plain = panel()
    options = ReleaseOptions(dxf=DxfOptions(version=version))
    files, _ = cutting_draft(plain, "new", tmp_path, options, ("gauge", "1"))
    assert [file.suffix for file in files] == [".dxf", ".txt"]
    assert "trial-piece-gauge-and-1-more" in files[0].name
    space = ezdxf.readfile(files[0]).modelspace()
    assert sorted(each.dxf.layer for each in space.query("CIRCLE")) == ["CUTOUT", "CUTOUT"]
    left = min(each.dxf.center.x - each.dxf.radius for each in space.query("CIRCLE"))
    assert left == pytest.approx(MARGIN)
    report = verify(plain, files[0])
    assert report.is_same
    assert report.compared == 3
    assert "a trial piece around gauge, clock" in verify_text(report)


def test_cuts_are_named_by_number_id_or_name_and_are_of_one_plate():
    plain = panel()
    option = plain.option("new")
    assert [named_cuts(plain, option, (name,))[1] for name in ("1", "clock", "CLOCK ")] == [("clock",)] * 3
    with pytest.raises(UnknownName, match="There is no cut 'horn'"):
        named_cuts(plain, option, ("horn",))
    with pytest.raises(UnusableInput, match="its cuts are in main, low"):
        named_cuts(plain, option, ("clock", "lamp"))
