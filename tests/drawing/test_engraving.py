from panelcad.drawing.sheets.engraving import engraving_pages
from panelcad.model.cutout import Bezel
from panelcad.model.plate import Engraving
from panelcad.model.shape import Rectangle
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
