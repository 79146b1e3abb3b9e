from panelcad.checks.run import check
from panelcad.checks.wording import fault
from panelcad.checks.wording import words as words_of
from panelcad.drawing.cautions import BEFORE_CUTTING, BEFORE_FLIGHT
from panelcad.drawing.sheets.findings import note_pages
from panelcad.model.finding import Acceptance
from panelcad.model.hole import Countersink, HoleForm, HoleKind
from panelcad.model.plate import AttachScrew, Bend, Engraving
from panelcad.model.project import Project
from panelcad.model.release import Release
from tests import builders
from tests.drawing import papers


def crowded() -> Project:
    """Two openings a little too near to each other for advice, which may be accepted."""
    return builders.project(builders.sheet(cuts=(builders.cut("a", -42, 0), builders.cut("b", 42, 0)), state="new"))


def written(project: Project) -> str:
    subject = papers.shown(project, project.options[0])
    return " ".join(text.text for page in note_pages(subject) for text in papers.texts(page.nodes))


def test_the_notes_say_what_the_shop_must_do_and_fill_in():
    words = written(crowded())
    for wanted in ("2024-T3, 2.00 mm", "Deburr both faces", "Grain", "Good face",
                   "Coat as shown to the owner: powder coat, colour #4a4e53", "Mask bonding pads and earth points",
                   "general tolerance ±0.127 mm"):  # fmt: skip
        assert wanted in words


def test_notes_on_lettering_and_hardware_stand_there_only_where_they_apply():
    bare = written(crowded())
    for word in ("ngraving", "ountersinks", "utplate", "nserts"):
        assert word not in bare
    sunk = HoleForm(diameter=4.3, fastener=3.5, kind=HoleKind.COUNTERSUNK, countersink=Countersink(diameter=8))
    plate = builders.sheet(
        attach_screws=(AttachScrew(id="s", x=280, y=130, form=sunk),),
        engravings=(Engraving(id="e", text="PITOT", x=0, y=0, height=3.0),),
        state="new",
    )
    words = written(builders.project(plate))
    assert "Countersinks as in the hole schedule" in words
    assert "before engraving [__] after engraving" in words
    assert "Engraving filled, colour as shown to the owner: #f2f2ee" in words


def test_a_new_sheet_is_told_how_to_lie_and_a_used_one_how_to_be_set_up():
    new, used = builders.sheet(state="new"), builders.sheet(state="reworked")
    of_new, of_used = written(builders.project(new)), written(builders.project(used))
    assert "structural sheet, new, make one." in of_new
    assert "structural sheet, reworked." in of_used
    assert "Grain along" in of_new
    assert "keep its film on" in of_new
    for word in ("Grain", "film"):
        assert word not in of_used
    assert "measure the values in brackets on it before cutting" in of_used
    assert "measure the values in brackets" not in of_new


def test_of_a_new_and_a_used_sheet_together_each_note_says_whose_it_is():
    used = builders.sheet(state="reworked")
    words = written(builders.project(used, used.revised(id="sub", name="Sub-panel", state="new")))
    assert "Grain along the panel's width (Sub-panel) unless" in words
    assert f"The sheet is there already ({used.name}):" in words


def test_engraving_says_where_the_tool_runs_and_how_wide_it_cuts_where_that_is_known():
    plate = builders.sheet(engravings=(Engraving(id="e", text="PITOT", x=0, y=0, height=3.0),), state="new")
    project = builders.project(plate)
    assert "the tool along the middle of each stroke" in written(project)
    assert "Width and depth of the stroke: ____" in written(project)
    known = project.revised(profile=project.profile.revised(engraving_tool=0.4))
    assert "Strokes 0.40 mm wide; depth: ____" in written(known)


def test_no_note_of_a_finding_says_to_move_or_change_something():
    """Beside a dimension 'Move it 6.5 mm left' would be an order; what is wrong, and by how much, is told."""
    project = crowded()
    option = project.options[0]
    cured = [finding for finding in check(project, option).findings if finding.cure is not None]
    assert cured
    for finding in cured:
        accepted = Acceptance(
            finding=finding.identity, reason="Tried", initials="AB", on="2026-05-01", measured=finding.measured
        )
        for shown in (project, project.with_option(option.revised(acceptances=(accepted,)))):
            assert fault(finding, project, option) in written(shown)
            assert words_of(finding, project, option).cure not in written(shown)


def test_open_findings_are_listed_and_accepted_ones_bear_their_reason():
    project = crowded()
    (finding, *_) = check(project, project.options[0]).findings
    assert "OPEN FINDINGS" in written(project)
    assert finding.problem in written(project)
    word = Acceptance(
        finding=finding.identity, reason="Stiffener fitted", initials="AB", on="2026-05-01", measured=finding.measured
    )
    accepted = project.with_option(project.options[0].revised(acceptances=(word,)))
    words = written(accepted)
    assert "ACCEPTED FINDINGS " in words
    assert "Reason: Stiffener fitted" in words
    assert "AB, 2026-05-01" in words


def test_the_revisions_and_what_changed_are_told():
    release = Release(
        option="new", revision="A", on="2026-05-01", fingerprint="X", by="AB", changes=("hole 7 moved by 2 mm",)
    )
    assert "A: hole 7 moved by 2 mm" in written(crowded().revised(releases=(release,)))


def test_the_first_sheet_has_every_caution():
    from panelcad.drawing.sheets.front import front_page

    subject = papers.shown(crowded(), crowded().options[0])
    page = front_page(subject, subject.laid.plates[0])
    words = " ".join(text.text for text in papers.texts(page.nodes))
    for line in (*BEFORE_CUTTING, *BEFORE_FLIGHT):
        assert line in words


def test_bends_are_numbered_on_the_front_and_described_in_the_notes():
    from panelcad.drawing.sheets.front import front_page

    bend = Bend(x1=-300, y1=-140, x2=300, y2=-140, angle=90, inside_radius=3.0, direction="away from the pilot")
    project = builders.project(builders.sheet(bends=(bend,), is_flat_pattern=True, state="new"))
    words = written(project)
    assert "Bend B1 of Main panel, from X -300.00 Y -140.00 to X 300.00 Y -140.00: 90°, inside radius 3.00," in words
    subject = papers.shown(project, project.options[0])
    assert "B1" in {text.text for text in papers.texts(front_page(subject, subject.laid.plates[0]).nodes)}
