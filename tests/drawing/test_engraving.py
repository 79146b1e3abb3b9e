from panelcad.drawing.inspection import characteristics
from panelcad.drawing.sheets.engraving import engraving_pages
from panelcad.drawing.sheets.findings import note_pages
from panelcad.model.cutout import Bezel
from panelcad.model.found import dropped_lettering
from panelcad.model.plate import Engraving
from panelcad.model.shape import Rectangle
from panelcad.outputs.dxf import cutting_plan
from panelcad.outputs.dxf_report_text import report_text
from tests import builders
from tests.drawing import papers


def pages(*engravings: Engraving, items=()):
    bezel = Bezel(shape=Rectangle(width=50, height=12), thickness=0.8, source=builders.SOURCE)
    placard = builders.round_cutout(name="label", title="Placard 50 × 12", openings=(), bezel=bezel, family="placards")
    project = builders.project(builders.sheet(engravings=engravings, state="new"), items=items, cutouts=(placard,))
    subject = papers.shown(project, project.options[0])
    return engraving_pages(subject, subject.laid.plates[0])


def words(page) -> list[str]:
    return [text.text for text in papers.texts(page.nodes)]


def test_each_line_of_lettering_has_its_number_place_and_height():
    view, listed = pages(
        Engraving(id="low", text="PITOT HEAT", x=0, y=-60, height=3.0, rotation=90.0),
        Engraving(id="high", text="MASTER", x=-200, y=100, height=4.0),
    )
    written = words(listed)
    at = written.index("MASTER")
    assert written[at - 1 : at + 5] == ["E1", "MASTER", "-200.00", "100.00", "4.00", "0°"]
    at = written.index("PITOT HEAT")
    assert written[at - 1 : at + 5] == ["E2", "PITOT HEAT", "0.00", "-60.00", "3.00", "90°"]
    assert {"E1", "E2", "MASTER"} <= set(words(view))


def test_fitted_placards_are_listed_with_what_they_say():
    view, listed = pages(items=(builders.item("p1", 50, 60, cutout="label", name="NO SMOKING"),))
    written = words(listed)
    at = written.index("NO SMOKING (Placard 50 × 12)")
    assert written[at - 1 : at + 4] == ["1", "NO SMOKING (Placard 50 × 12)", "50.00", "60.00", "placard"]
    assert "1" in words(view)


def test_a_plate_without_words_has_no_such_sheet():
    assert pages() == []


def reworked(*stay: Engraving, cuts=(), state: str = "reworked"):
    """A sheet with PITOT and COM 1 on it, of which these lines stay or come."""
    old = builders.sheet(engravings=(PITOT, COM))
    project = builders.project(old.revised(engravings=stay, cuts=cuts, state=state))
    project = project.revised(as_found=project.as_found.revised(plates=(old.revised(state="kept"),)))
    return papers.shown(project, project.options[0])


PITOT = Engraving(id="p", text="PITOT", x=0, y=-60, height=3.0)
COM = Engraving(id="c", text="COM 1", x=-100, y=20, height=3.0, rotation=90.0)
GONE = "Old lettering to be removed: COM 1."


def test_old_lettering_that_an_option_drops_is_listed_as_to_be_removed():
    moved = PITOT.revised(x=0.5)
    subject = reworked(moved)
    (plate,) = subject.laid.plates
    assert [line.id for line in dropped_lettering(subject.project, plate)] == ["p", "c"]
    view, listed = engraving_pages(subject, plate)
    written = words(listed)
    at = written.index("COM 1")
    assert written[at - 1 : at + 6] == ["–", "COM 1", "-100.00", "20.00", "3.00", "90°", "remove"]
    assert "Old lettering to be removed: PITOT, COM 1." in " ".join(words(view))


def test_every_paper_says_which_old_lettering_goes():
    subject = reworked(PITOT)
    (plate,) = subject.laid.plates
    assert GONE in " ".join(text for page in note_pages(subject) for text in words(page))
    looked_at = [each for each in characteristics(subject, plate) if each.feature == "old lettering"]
    assert [(each.what, each.words, each.was_there) for each in looked_at] == [
        ("removed", "COM 1, at X -100.00 Y 20.00", False)
    ]
    told = "Old lettering: to be removed: COM 1"
    assert told in [label.text for label in cutting_plan(subject.project, subject.option, "main").labels]
    report = report_text(subject.project, subject.option, "main")
    assert "to be removed: COM 1" in report


def test_lettering_that_stays_or_goes_with_its_metal_is_not_to_be_removed():
    for subject in (
        reworked(PITOT, COM),
        reworked(PITOT, cuts=(builders.cut("big", -100, 20),)),
        reworked(state="new"),
    ):
        assert dropped_lettering(subject.project, subject.laid.plates[0]) == ()
    half = reworked(PITOT, cuts=(builders.cut("big", -138, 20),))
    assert [line.id for line in dropped_lettering(half.project, half.laid.plates[0])] == ["c"]
