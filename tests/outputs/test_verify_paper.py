import pytest

from panelcad.editing.revision import open_revision
from panelcad.errors import UnusableInput
from panelcad.model.fingerprint import option_fingerprint
from panelcad.outputs.release import draft, release
from panelcad.outputs.verify_paper import folder_faults, paper_revision, revision_of_text
from tests.builders import cut, project, sheet


def panel():
    return project(sheet(cuts=(cut("gauge", 0.0, 0.0),), state="new"))


def test_every_paper_of_a_release_says_which_revision_it_is_of(tmp_path):
    done = release(panel(), "new", tmp_path, "2026-05-01")

    for file in done.files:
        revision = paper_revision(done.project, file)
        assert revision.text == "option New (new), revision A of 2026-05-01; the option is still so", file.name


def test_an_older_paper_is_told_from_the_option_as_it_stands(tmp_path):
    done = release(panel(), "new", tmp_path, "2026-05-01")
    opened = open_revision(done.project, "new", "one gauge less", "2026-06-01")
    now = opened.with_option(opened.option("new").revised(plates=(sheet(state="new"),)))

    assert paper_revision(now, done.files[2]).text.endswith("revision A of 2026-05-01; the option has changed since")


def test_the_text_of_a_scanned_code_is_enough():
    made = panel()
    fingerprint = option_fingerprint(made, made.option("new"))
    revision = revision_of_text(made, f"PANELCAD {fingerprint} DRAFT")

    assert revision.text == "option New (new), not released; the option is still so"
    assert revision_of_text(made, "PANELCAD 0000-0000-0000-0000 A").option is None


def test_what_bears_no_fingerprint_is_refused(tmp_path):
    (tmp_path / "note.txt").write_text("hello")

    with pytest.raises(UnusableInput, match="bears no fingerprint"):
        paper_revision(panel(), tmp_path / "note.txt")
    with pytest.raises(UnusableInput, match="cannot be read"):
        paper_revision(panel(), tmp_path / "none.pdf")


def test_a_draft_is_not_released(tmp_path):
    for file in draft(panel(), "new", tmp_path):
        assert "not released" in paper_revision(panel(), file).text


def test_a_release_folder_is_held_against_its_manifest(tmp_path):
    done = release(panel(), "new", tmp_path, "2026-05-01")
    assert folder_faults(done.folder) == ()
    done.files[0].unlink()
    assert folder_faults(done.folder) == ("test-1-new-A-main.dxf",)
    with pytest.raises(UnusableInput, match=r"manifest\.sha256"):
        folder_faults(tmp_path)
