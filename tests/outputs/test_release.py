import subprocess
from pathlib import Path

import ezdxf
import pdfplumber
import pytest

from panelcad.editing.blank import blank_project
from panelcad.editing.revision import open_revision
from panelcad.errors import ReleaseRefused, UnknownName, UnusableInput
from panelcad.model.plate import Bend
from panelcad.model.profile import Profile
from panelcad.model.project import Project
from panelcad.model.revision import release_lines
from panelcad.outputs.dxf_options import DxfOptions, DxfVersion, FaceUp
from panelcad.outputs.manifest import MANIFEST, faults_of
from panelcad.outputs.release import draft, release
from panelcad.outputs.release_papers import ReleaseOptions
from panelcad.store.project_file import from_bytes, to_bytes
from panelcad.units import LengthUnit
from tests.builders import cut, project, sheet

DAY = "2026-05-01"


def panel(x: float = 0.0, **plate: object) -> Project:
    return project(sheet(cuts=(cut("gauge", x, 0.0),), **{"state": "new"} | plate))


def moved(plain: Project, x: float) -> Project:
    option = plain.option("new")
    (plate,) = option.plates
    return plain.with_option(option.revised(plates=(plate.revised(cuts=(cut("gauge", x, 0.0),)),)))


def test_a_release_holds_every_paper_and_a_manifest(tmp_path):
    done = release(panel(), "new", tmp_path, DAY, ReleaseOptions(by="TS"))

    assert [file.name for file in done.files] == [
        "test-1-new-A-main.dxf",
        "test-1-new-A-main-cutting-report.txt",
        "test-1-new-A-drawing.pdf",
        "test-1-new-A-inspection.pdf",
        "test-1-new-A-main-template.pdf",
        "test-1-new-A-inspection.csv",
        "test-1-new-A-changes.txt",
        MANIFEST,
    ]
    assert sorted(file.name for file in (tmp_path / "test-1-new-A").iterdir()) == sorted(
        file.name for file in done.files
    )
    assert [(e.revision, e.on, e.by) for e in done.project.releases] == [("A", DAY, "TS")]
    assert faults_of(done.folder) == ()


def test_the_manifest_is_one_that_sha256sum_checks(tmp_path):
    done = release(panel(), "new", tmp_path, DAY)

    command = ["sha256sum", "--check", "--strict", MANIFEST]
    checked = subprocess.run(command, cwd=done.folder, capture_output=True, check=False)
    assert checked.returncode == 0, checked.stderr
    (done.folder / "test-1-new-A-changes.txt").write_text("altered")
    assert faults_of(done.folder) == ("test-1-new-A-changes.txt",)


def test_the_cutting_file_names_revision_and_fingerprint(tmp_path):
    done = release(panel(), "new", tmp_path, DAY)

    texts = [e.dxf.text for e in ezdxf.readfile(done.files[0]).modelspace().query("TEXT")]
    assert f"Revision: A of {DAY}" in texts
    assert f"Fingerprint: {done.stamp.fingerprint}" in texts


def test_names_begin_with_the_option_where_no_registration_was_entered(tmp_path):
    begun = blank_project(LengthUnit.MM)

    done = release(begun, "option-1", tmp_path, DAY)

    assert done.folder.name == "option-1-A"
    assert done.files[0].name == "option-1-A-panel.dxf"


def test_the_same_option_is_issued_again_under_its_letter_and_date(tmp_path):
    first = release(panel(), "new", tmp_path, DAY)
    before = {file.name: file.read_bytes() for file in first.files}
    again = release(first.project, "new", tmp_path / "copy", "2027-01-01")

    assert again.was_reissued
    assert again.project is first.project
    assert {file.name: file.read_bytes() for file in again.files} == before


def test_a_changed_option_needs_an_opened_revision_and_gets_the_next_letter(tmp_path):
    first = release(panel(), "new", tmp_path, DAY).project
    opened = open_revision(first, "new", "gauge hits a rib", "2026-06-01")
    second = release(moved(opened, 25.0), "new", tmp_path, "2026-06-02")

    assert second.stamp.revision == "B"
    assert second.changes == ("main: gauge/opening moved by x +25.00, y 0.00 mm",)
    assert "moved by x +25.00" in (second.folder / "test-1-new-B-changes.txt").read_text()
    assert from_bytes(to_bytes(second.project), "test") == second.project


def test_limits_changed_behind_a_locked_option_are_refused(tmp_path):
    first = release(panel(), "new", tmp_path, DAY).project
    looser = first.revised(profile=first.profile.revised(finish_thickness=0.05))

    with pytest.raises(ReleaseRefused, match=r"changed since revision A .* open a new revision"):
        release(looser, "new", tmp_path, "2026-06-01")


def test_an_earlier_release_is_never_overwritten(tmp_path):
    first = release(panel(), "new", tmp_path, DAY)
    before = first.files[0].read_bytes()

    with pytest.raises(ReleaseRefused, match="holds an earlier release whose test-1-new-A-"):
        release(panel(30.0), "new", tmp_path, DAY)
    assert first.files[0].read_bytes() == before
    assert [folder.name for folder in tmp_path.iterdir()] == ["test-1-new-A"]


def test_open_errors_refuse_a_release_but_not_a_draft(tmp_path):
    wrong = panel(295.0)

    with pytest.raises(ReleaseRefused, match=r"error.* open; put them right, or issue a draft"):
        release(wrong, "new", tmp_path, DAY)
    assert list(tmp_path.iterdir()) == []
    papers = ["test-1-new-draft-drawing.pdf", "test-1-new-draft-inspection.pdf", "test-1-new-draft-main-template.pdf"]
    assert [file.name for file in draft(wrong, "new", tmp_path)] == papers
    assert sorted(file.name for file in tmp_path.iterdir()) == papers


def test_a_bent_plate_needs_its_flat_pattern(tmp_path):
    bend = Bend(x1=-300, y1=-140, x2=300, y2=-140, angle=90, inside_radius=12.5, direction="away from the pilot")

    with pytest.raises(ReleaseRefused, match="'Main panel' is bent and its outline is not entered as a flat pattern"):
        release(panel(bends=(bend,)), "new", tmp_path, DAY)


def test_an_option_of_kept_plates_has_nothing_to_cut(tmp_path):
    with pytest.raises(ReleaseRefused, match="nothing is cut"):
        release(panel(state="kept"), "new", tmp_path, DAY)


def test_a_folder_that_cannot_be_written_is_named(tmp_path):
    (tmp_path / "file").write_text("in the way")

    with pytest.raises(UnusableInput, match=r"file.*cannot be written"):
        release(panel(), "new", tmp_path / "file", DAY)


def test_several_new_plates_are_nested_besides_where_the_stock_is_known(tmp_path):
    plates = (sheet(id="main", state="new"), sheet(200.0, 100.0, id="side", state="new"))
    made = project(*plates, profile=Profile(stock_width=1220.0, stock_height=620.0))
    names = [file.name for file in release(made, "new", tmp_path, DAY).files]

    assert {"test-1-new-A-stock-1.dxf", "test-1-new-A-stock-1-cutting-report.txt"} < set(names)
    assert {"test-1-new-A-main.dxf", "test-1-new-A-side.dxf"} < set(names)


def twin() -> Project:
    return project(
        sheet(id="main", state="new"),
        sheet(200.0, 100.0, id="side", name="Side plate", state="new"),
        sheet(100.0, 100.0, id="old", state="kept"),
    )


def test_some_plates_are_issued_as_a_part_of_the_option_on_every_paper(tmp_path):
    done = release(twin(), "new", tmp_path, DAY, ReleaseOptions(plates=("side PLATE",)))
    says = "plate side only, without main"

    assert done.folder.name == "test-1-new-A-part-side"
    assert [file.name for file in done.files] == [
        "test-1-new-A-side.dxf",
        "test-1-new-A-side-cutting-report.txt",
        "test-1-new-A-part-side-drawing.pdf",
        "test-1-new-A-part-side-inspection.pdf",
        "test-1-new-A-side-template.pdf",
        "test-1-new-A-part-side-inspection.csv",
        "test-1-new-A-part-side-changes.txt",
        MANIFEST,
    ]
    for file in done.files:
        if file.suffix in {".dxf", ".txt", ".sha256"}:
            assert says in file.read_text(), file.name
        if file.suffix == ".pdf":
            assert "side only" in text_of(file), file.name
    rows = (done.folder / "test-1-new-A-part-side-inspection.csv").read_text().splitlines()[1:]
    assert {row.split(",")[1] for row in rows} == {"side"}


def test_a_part_and_the_whole_lie_side_by_side_and_agree(tmp_path):
    part = release(twin(), "new", tmp_path, DAY, ReleaseOptions(plates=("side",)))
    whole = release(part.project, "new", tmp_path, "2027-01-01")

    assert whole.was_reissued
    assert whole.project.releases == part.project.releases
    assert whole.folder.name == "test-1-new-A"
    same = [file.name for file in part.files if file.suffix == ".dxf"]
    assert same == ["test-1-new-A-side.dxf"]
    assert (whole.folder / same[0]).read_bytes() == part.files[0].read_bytes()
    assert "Part of the option" not in (whole.folder / MANIFEST).read_text()
    assert faults_of(part.folder) == faults_of(whole.folder) == ()


def test_the_log_says_which_plates_were_issued_and_which_were_not_yet(tmp_path):
    part = release(twin(), "new", tmp_path, DAY, ReleaseOptions(plates=("side",), by="TS"))
    lines = list(release_lines(part.project, part.project.option("new")))
    assert lines == [
        f"Revision A of {DAY} by TS",
        f"  issued {DAY} TS: side, in test-1-new-A-part-side",
        "  not issued yet: main",
    ]

    again = release(part.project, "new", tmp_path, "2026-06-01", ReleaseOptions(plates=("side",), by="TS"))
    assert again.project is part.project
    rest = release(part.project, "new", tmp_path, "2026-06-02", ReleaseOptions(dxf=DxfOptions(version=DxfVersion.R12)))
    assert [(each.on, each.plates, each.folder) for each in rest.project.issues] == [
        (DAY, ("side",), "test-1-new-A-part-side"),
        ("2026-06-02", ("main", "side"), "test-1-new-A-r12"),
    ]
    assert "  not issued yet" not in "\n".join(release_lines(rest.project, rest.project.option("new")))
    assert from_bytes(to_bytes(rest.project), "again") == rest.project


def test_the_next_revisions_drawing_says_what_was_issued_of_the_one_before(tmp_path):
    first = release(panel(), "new", tmp_path, DAY)
    again = release(first.project, "new", tmp_path, DAY)
    assert "Issued" not in text_of(first.folder / "test-1-new-A-drawing.pdf")
    assert again.files[2].read_bytes() == first.files[2].read_bytes()
    opened = open_revision(first.project, "new", "moved", DAY)
    second = release(moved(opened, 10.0), "new", tmp_path, DAY)
    assert "A: first release. Issued: main." in text_of(second.folder / "test-1-new-B-drawing.pdf")


def test_an_unknown_plate_is_refused_with_all_there_are(tmp_path):
    with pytest.raises(UnknownName, match=r"no plate of option 'New' that is cut 'x'; there is 'main', 'side'\.$"):
        release(twin(), "new", tmp_path, DAY, ReleaseOptions(plates=("x",)))
    with pytest.raises(UnusableInput, match=r"it is kept, so nothing is cut in it; expected one of .* main, side"):
        release(twin(), "new", tmp_path, DAY, ReleaseOptions(plates=("old",)))
    assert list(tmp_path.iterdir()) == []


def test_another_kind_of_cutting_file_has_another_name_and_folder(tmp_path):
    plain = release(panel(), "new", tmp_path, DAY)
    options = DxfOptions(DxfVersion.R12, LengthUnit.INCH, face_up=FaceUp.BACK)
    other = release(plain.project, "new", tmp_path, DAY, ReleaseOptions(dxf=options))

    assert plain.files[0].name == "test-1-new-A-main.dxf"
    assert other.folder.name == "test-1-new-A-r12-in-back"
    assert other.files[0].name == "test-1-new-A-main-r12-in-back.dxf"
    assert "test-1-new-A-main-r12-in-back.dxf" in other.files[1].read_text()
    assert "- test-1-new-A-main-r12-in-back.dxf" in (other.folder / "test-1-new-A-r12-in-back-changes.txt").read_text()
    drawn = text_of(other.folder / "test-1-new-A-r12-in-back-drawing.pdf")
    assert "the cutting file is test-1-new-A-main-r12-in-back.dxf; numbers in inches; BACK FACE UP" in drawn
    assert "DXF R12 states no unit" in drawn
    assert faults_of(plain.folder) == faults_of(other.folder) == ()


def test_a_file_in_which_nothing_is_left_is_refused(tmp_path):
    nothing = ReleaseOptions(dxf=DxfOptions(content=frozenset()))

    with pytest.raises(UnusableInput, match="plate main: nothing is left to write"):
        release(panel(), "new", tmp_path, DAY, nothing)
    assert list(tmp_path.iterdir()) == []


def text_of(file: Path) -> str:
    """All words of a PDF in one line."""
    with pdfplumber.open(file) as pdf:
        return " ".join(" ".join((page.extract_text() or "").split()) for page in pdf.pages)
