import json
import sys
from pathlib import Path

import pytest

from panelcad import cli, load, save
from panelcad.editing.acceptances import add_acceptance
from panelcad.model.project import Project
from panelcad.planning.acceptance import accept
from panelcad.planning.judge import Topic, judge
from panelcad.version import __version__
from tests import builders
from tests.planning import kit


@pytest.fixture
def run(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]):
    """Run a command line; gives its exit code, what it printed and what it complained of."""

    def run_command(*words: object) -> tuple[int, str, str]:
        monkeypatch.setattr(sys, "argv", ["panelcad", *map(str, words)])
        with pytest.raises(SystemExit) as leaving:
            cli.main()
        printed = capsys.readouterr()
        return int(leaving.value.code or 0), printed.out, printed.err

    return run_command


@pytest.fixture
def clean() -> Project:
    return builders.project(builders.sheet(cuts=(builders.cut("c1", 0, 0),)))


@pytest.fixture
def faulty() -> Project:
    """Two holes with 0.625 mm between them."""
    return builders.project(builders.sheet(cuts=(builders.cut("c1", 0, 0), builders.cut("c2", 80, 0))))


def stored(project: Project, folder: Path) -> Path:
    file = folder / "Prüfstück 1.panel.json"
    save(project, file)
    return file


def test_a_clean_option_leaves_with_nothing(run, clean: Project, tmp_path: Path) -> None:
    code, printed, complained = run("check", stored(clean, tmp_path), "--option", "new")
    assert (code, complained) == (0, "")
    assert "0 errors · 0 warnings" in printed
    assert "approves nothing" in printed


def test_errors_leave_with_one_and_are_named(run, faulty: Project, tmp_path: Path) -> None:
    code, printed, _ = run("check", stored(faulty, tmp_path))
    assert code == 1
    assert "c1" in printed
    assert "mm" in printed


@pytest.fixture
def lacking() -> Project:
    """Metal that is right, and a remote transponder that nothing controls."""
    remote = kit.unit("remote", provides=("transponder",), needs=({"controller": "transponder"},))
    plate = builders.sheet(cuts=(builders.cut("c1", 0, 0),), state="new")
    project = kit.project(remote)
    return project.with_option(project.option("new").revised(plates=(plate,)))


def test_errors_of_equipment_are_told_and_leave_with_one(run, lacking: Project, tmp_path: Path) -> None:
    code, printed, _ = run("check", stored(lacking, tmp_path))
    assert code == 1
    assert "of equipment: Remote: nothing in the option gives it" in printed
    assert "0 errors · 0 warnings · 0 advice · 1 error of equipment" in printed
    code, printed, _ = run("check", stored(lacking, tmp_path), "--json")
    (report,) = json.loads(printed)
    (error,) = report["equipment_errors"]
    assert (code, report["errors"], error["rule"], error["severity"]) == (1, 0, "no-controller", "error")


def test_a_release_tells_errors_of_equipment_and_is_not_stopped(run, lacking: Project, tmp_path: Path) -> None:
    code, printed, _ = run("release", stored(lacking, tmp_path), "--option", "new", "--to", tmp_path / "out")
    assert code == 0
    assert printed.index("of equipment: Remote: nothing in the option gives it") < printed.index("manifest")


def test_the_json_has_its_documented_shape(run, faulty: Project, tmp_path: Path) -> None:
    code, printed, _ = run("check", stored(faulty, tmp_path), "--json")
    (report,) = json.loads(printed)
    assert code == 1
    assert report["shape"] == 1
    assert report["option"] == "new"
    assert report["errors"] >= 1
    documented = (Path(__file__).parent.parent / "docs" / "json.md").read_text(encoding="utf-8")
    for key in [*report, *report["findings"][0]]:
        assert f"`{key}`" in documented


@pytest.mark.parametrize(
    ("content", "told"),
    [
        ("", "not whole JSON"),
        ("{", "not whole JSON"),
        ("[1]", "no project"),
        ('{"format": 99}', "newer panelcad"),
        ('{"format": 1, "unit": "furlong"}', '"mm" or "in"'),
        ('{"format": 1, "unit": "mm"}', "is missing"),
        ("[" * 100_000, "not whole JSON"),
    ],
)
def test_an_unusable_file_leaves_with_two_and_one_sentence(run, tmp_path: Path, content: str, told: str) -> None:
    file = tmp_path / "bad.panel.json"
    file.write_text(content, encoding="utf-8")
    code, printed, complained = run("check", file)
    assert (code, printed) == (2, "")
    assert told in complained
    assert complained.count("\n") == 1


def test_a_missing_file_and_an_unknown_option(run, clean: Project, tmp_path: Path) -> None:
    code, _, complained = run("check", tmp_path / "nowhere.json")
    assert code == 2
    assert "cannot be read" in complained
    code, _, complained = run("check", stored(clean, tmp_path), "--option", "newer")
    assert code == 2
    assert "there is 'new'" in complained


def test_new_never_overwrites(run, clean: Project, tmp_path: Path) -> None:
    file = stored(clean, tmp_path)
    before = file.read_bytes()
    code, _, complained = run("new", file)
    assert code == 2
    assert "there already" in complained
    assert file.read_bytes() == before


@pytest.mark.parametrize("unit", ["mm", "in"])
def test_a_new_project_is_clean(run, tmp_path: Path, unit: str) -> None:
    file = tmp_path / "deep" / "new.panel.json"
    assert run("new", file, "--unit", unit)[0] == 0
    assert run("check", file)[0] == 0


def test_listing(run, clean: Project, tmp_path: Path) -> None:
    file = stored(clean, tmp_path)
    assert "Main panel" in run("list", file)[1]
    listed = json.loads(run("list", file, "--json")[1])
    assert [option["id"] for option in listed["options"]] == ["as-found", "new"]
    assert listed["options"][1]["plates"][0]["cuts"][0]["id"] == "c1"


def test_cutouts_are_found_by_words(run) -> None:
    assert "altimeter-3-1-8" in run("cutouts", "altimeter")[1]
    found = json.loads(run("cutouts", "altimeter", "--json")[1])
    assert any(cutout["name"] == "altimeter-3-1-8" for cutout in found["cutouts"])


def test_a_file_of_ones_own_that_cannot_be_used_is_told_and_left_out(
    run, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "bad.toml").write_text("family =", encoding="utf-8")
    monkeypatch.setattr("panelcad.library.catalogue.user_folder", lambda: tmp_path)
    code, said, complained = run("cutouts", "altimeter")
    assert code == 0
    assert "altimeter-3-1-8" in said
    assert "bad.toml: it is not whole TOML text" in complained


def test_rules_list_themselves_with_their_source(run) -> None:
    listed = json.loads(run("rules", "--json")[1])["rules"]
    assert {"web", "outline"} <= {rule["id"] for rule in listed}
    assert all(rule["source"] for rule in listed)
    assert "source:" in run("rules")[1]


def test_it_says_which_it_is(run) -> None:
    assert run("--version")[1] == f"panelcad {__version__}\n"


def test_a_folder_that_cannot_be_made_is_said_so(run, tmp_path: Path) -> None:
    (tmp_path / "file").write_text("", encoding="utf-8")
    code, _, complained = run("new", tmp_path / "file" / "new.panel.json")
    assert code == 2
    assert "cannot be made" in complained


def test_a_slip_in_a_command_is_helped(run) -> None:
    code, _, complained = run("chek")
    assert code == 2
    assert "'check'" in complained


def test_every_command_shows_an_example(run) -> None:
    for command in cli.command_names():
        assert "Example: panelcad" in run(command, "--help")[1]


def test_a_fault_of_the_program_has_its_own_exit_code(run, clean, tmp_path, monkeypatch) -> None:
    monkeypatch.setattr("panelcad.outputs.plain.listing_as_plain", lambda _: 1 / 0)
    code, _, complained = run("list", stored(clean, tmp_path), "--json")
    assert code == 3
    assert "ZeroDivisionError" in complained


def test_a_release_is_entered_in_the_project_and_issued_again_the_same(run, clean: Project, tmp_path: Path) -> None:
    file, papers = stored(clean, tmp_path), tmp_path / "papers"
    code, printed, complained = run("release", file, "--option", "new", "--to", papers)
    assert (code, complained) == (0, "")
    assert "revision A" in printed
    first = {path.name: path.read_bytes() for path in (papers / "test-1-new-A").iterdir()}
    assert {Path(name).suffix for name in first} >= {".dxf", ".pdf", ".sha256"}
    code, printed, _ = run("release", file, "--option", "new", "--to", papers)
    assert code == 0
    assert "the letter it was released under before" in printed
    assert {path.name: path.read_bytes() for path in (papers / "test-1-new-A").iterdir()} == first


def test_a_release_is_refused_while_errors_are_open_and_a_draft_is_pdf_only(
    run, faulty: Project, tmp_path: Path
) -> None:
    file, papers = stored(faulty, tmp_path), tmp_path / "papers"
    before = file.read_bytes()
    code, _, complained = run("release", file, "--option", "new", "--to", papers)
    assert code == 1
    assert "not released" in complained
    assert not papers.exists()
    code, printed, _ = run("release", file, "--option", "new", "--to", papers, "--draft")
    assert code == 0
    assert "not for cutting" in printed
    assert {path.suffix for path in papers.iterdir()} == {".pdf"}
    assert file.read_bytes() == before


def test_compare_sets_the_sample_options_side_by_side(run, tmp_path: Path) -> None:
    from panelcad.library.samples import sample_file

    report = tmp_path / "papers" / "report.pdf"
    code, told, _ = run("compare", sample_file("tourer"), "--option", "classic", "--option", "glass", "--to", report)
    assert code == 0
    assert "functions and redundancy" in told
    assert report.read_bytes().startswith(b"%PDF")


def test_compare_as_json_names_topics_options_and_differences(run) -> None:
    from panelcad.library.samples import sample_file

    code, told, _ = run("compare", sample_file("tourer"), "--json")
    plain = json.loads(told)
    assert code == 1
    assert next(option["option"] for option in plain["options"]) == "as-found"
    assert {row["topic"] for row in plain["rows"] if row["differs"]} >= {"electrical", "cost", "weight and balance"}


def test_plan_writes_an_options_papers(run, tmp_path: Path) -> None:
    from panelcad.library.samples import sample_file

    code, told, _ = run("plan", sample_file("tourer"), "--option", "ambitious", "--to", tmp_path / "out")
    assert code == 1
    assert "controller (DME)" in told
    names = {path.name for path in (tmp_path / "out").iterdir()}
    assert {"ambitious-load-analysis.pdf", "ambitious-equipment-list-equipment.csv"} <= names


def test_plan_of_an_option_without_equipment_says_what_is_not_known(run, clean: Project, tmp_path: Path) -> None:
    code, told, _ = run("plan", stored(clean, tmp_path), "--option", "new")
    assert code == 0
    assert "not known" in told
    assert "No electrical system is entered" in told


def test_plan_tells_what_was_accepted_and_whose_word_lapsed(run, tmp_path: Path) -> None:
    from panelcad.library.samples import sample_file

    project = load(sample_file("tourer"))
    found = judge(project, project.option("ambitious"))
    errors = [finding for finding in found.findings[Topic.ELECTRICAL] if finding.acceptable][:2]
    words = [accept(each, found.equipment, reason="on the ground", initials="KT", on="2026-01-31") for each in errors]
    project = add_acceptance(project, "ambitious", words[0])
    project = add_acceptance(project, "ambitious", words[1].revised(geometry="0000-0000-0000-0000"))
    file = stored(project, tmp_path)
    _, told, _ = run("plan", file, "--option", "ambitious")
    assert "accepted " in told
    assert "KT: on the ground" in told
    assert "lapsed " in told
    _, plain, _ = run("plan", file, "--option", "ambitious", "--json")
    judged = json.loads(plain)
    assert [each["reason"] for each in judged["accepted"]] == ["on the ground"]
    assert judged["lapsed"] == [errors[1].identity]
    assert errors[0].identity not in {each["identity"] for each in judged["findings"]}


def test_plan_names_the_options_there_are(run, clean: Project, tmp_path: Path) -> None:
    code, _, complaint = run("plan", stored(clean, tmp_path), "--option", "old")
    assert code == 2
    assert "There is no option 'old'" in complaint


def test_plan_into_a_file_is_one_sentence(run, clean: Project, tmp_path: Path) -> None:
    (tmp_path / "taken").write_text("a file")
    code, _, complaint = run("plan", stored(clean, tmp_path), "--option", "new", "--to", tmp_path / "taken" / "in")
    assert code == 2
    assert "it cannot be made" in complaint


def test_a_released_file_is_verified_and_a_changed_one_differs(run, clean: Project, tmp_path: Path) -> None:
    file = stored(clean, tmp_path)
    code, printed, _ = run("release", file, "--option", "new", "--to", tmp_path, "--dxf", "R12", "--dxf", "back")
    dxf = tmp_path / "test-1-new-A-r12-back" / "test-1-new-A-main-r12-back.dxf"
    assert (code, str(dxf) in printed) == (0, True)
    assert b"AC1009" in dxf.read_bytes()

    code, printed, _ = run("verify", file, dxf)
    assert (code, "revision A" in printed, "back face up" in printed) == (0, True, True)
    dxf.write_text(dxf.read_text().replace("CIRCLE", "POINT"))
    code, printed, _ = run("verify", file, dxf, "--json")
    assert (code, json.loads(printed)["differences"][0]["kind"]) == (1, "missing")


def test_papers_and_folders_are_verified_too(run, clean: Project, tmp_path: Path) -> None:
    file = stored(clean, tmp_path)
    run("release", file, "--option", "new", "--to", tmp_path)
    folder = tmp_path / "test-1-new-A"

    assert run("verify", file, folder)[0] == 0
    code, printed, _ = run("verify", file, folder / "test-1-new-A-drawing.pdf")
    assert (code, "revision A" in printed) == (0, True)
    (entry,) = load(file).releases
    code, printed, _ = run("verify", file, f"PANELCAD {entry.fingerprint} A")
    assert (code, printed.strip()) == (0, f"option New (new), revision A of {entry.on}; the option is still so")
    assert run("verify", file, "PANELCAD 0000-0000-0000-0000 A")[0] == 1
    (folder / "test-1-new-A-changes.txt").write_text("other")
    assert run("verify", file, folder)[0] == 1
    code, _, complained = run("verify", file, tmp_path / "none.dxf")
    assert (code, "cannot be read" in complained) == (2, True)


def test_a_released_option_is_revised_with_a_reason(run, clean: Project, tmp_path: Path) -> None:
    file = stored(clean, tmp_path)
    run("release", file, "--option", "new", "--to", tmp_path)

    code, printed, _ = run("revise", file, "--option", "new", "--reason", "one more gauge")
    assert (code, "Revision B" in printed) == (0, True)
    assert run("revise", file, "--option", "new", "--reason", "again")[0] == 2


def test_the_help_names_every_choice_for_a_cutting_file(run, clean: Project, tmp_path: Path) -> None:
    from panelcad.cli.papers import DXF_HELP
    from panelcad.outputs.dxf_choices import WORDS

    assert DXF_HELP.endswith(f": {', '.join(WORDS)}.")
    code, _, complained = run("release", stored(clean, tmp_path), "--option", "new", "--to", tmp_path, "--dxf", "R13")
    assert (code, "choice for a cutting file 'R13'" in complained) == (2, True)
    assert all(repr(word) in complained for word in WORDS)


def test_a_new_project_may_take_its_sheet_from_a_drawing(run, clean: Project, tmp_path: Path) -> None:
    from panelcad import export_dxf

    export_dxf(clean, "new", "main", tmp_path / "old.dxf")
    code, _, _ = run("new", tmp_path / "my.panel.json", "--unit", "mm", "--outline", tmp_path / "old.dxf")
    made = load(tmp_path / "my.panel.json")
    assert (code, made.as_found.plates[0].outline.contour().area) == (0, pytest.approx(600.0 * 300.0))
    assert [len(option.plates[0].cuts) for option in made.all_options] == [1, 1]


@pytest.mark.parametrize("choice", [("--paper", "A44"), ("--ink", "green"), ("--largest", "A9")])
def test_a_paper_or_an_ink_that_is_not_there_is_refused_before_anything_is_written(
    run, clean: Project, tmp_path: Path, choice: tuple[str, str]
) -> None:
    file, papers = stored(clean, tmp_path), tmp_path / "papers"
    code, _, complained = run("release", file, "--option", "new", "--to", papers, *choice)
    assert code == 2
    assert "There is no " in complained
    assert f"'{choice[1]}'" in complained
    assert not papers.exists()


def test_a_draft_may_be_in_black_and_on_the_paper_one_has(run, clean: Project, tmp_path: Path) -> None:
    file, papers = stored(clean, tmp_path), tmp_path / "papers"
    choice = ("--draft", "--paper", "a3", "--ink", "black", "--largest", "a3")
    assert run("release", file, "--option", "new", "--to", papers, *choice)[0] == 0
    assert any("template" in path.name for path in papers.iterdir())


def test_a_shops_limits_are_taken_and_told(run, clean: Project, tmp_path: Path) -> None:
    file, shop = stored(clean, tmp_path), tmp_path / "our shop.toml"
    shop.write_text('name = "Our shop"\nunit = "in"\n[limits]\nweb_advised = 0.5\n')

    code, printed, _ = run("limits", file, "--take", shop)

    assert code == 0
    assert "Our shop" in printed
    assert "12.70 mm instead of 6.35 mm" in printed
    listed = json.loads(run("limits", file, "--json")[1])
    assert (listed["limits"]["web_advised"], listed["differing"]) == (12.7, ["web_advised"])


def test_limits_are_written_to_a_new_file_and_never_over_one(run, clean: Project, tmp_path: Path) -> None:
    file, shop = stored(clean, tmp_path), tmp_path / "limits" / "all.toml"

    assert run("limits", file, "--write", shop)[0] == 0
    assert run("limits", file, "--take", shop)[0] == 0
    code, _, complained = run("limits", file, "--write", shop)
    assert code == 2
    assert "it is there already" in complained


def test_unusable_limits_leave_the_project_as_it_was(run, clean: Project, tmp_path: Path) -> None:
    file, shop = stored(clean, tmp_path), tmp_path / "shop.toml"
    before = file.read_bytes()
    shop.write_text('unit = "in"\n[limits]\nweb_advisd = 0.5\n')

    code, _, complained = run("limits", file, "--take", shop)

    assert code == 2
    assert "web_advised" in complained
    assert file.read_bytes() == before


def test_a_draft_cutting_file_is_written_errors_or_not_and_the_project_stays(
    run, faulty: Project, tmp_path: Path
) -> None:
    file, drafts = stored(faulty, tmp_path), tmp_path / "drafts"
    before = file.read_bytes()
    code, printed, complained = run("draft", file, "--option", "new", "--to", drafts, "--dxf", "R12", "--around", "c1")
    assert (code, complained) == (0, "")
    assert "draft: for a trial in scrap, not released" in printed
    assert "1 error is open" in printed
    assert [path.name for path in drafts.glob("*.dxf")] == ["test-1-new-draft-main-r12-corner-trial-piece-c1.dxf"]
    assert file.read_bytes() == before
