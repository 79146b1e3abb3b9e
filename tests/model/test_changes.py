from panelcad.model.changes import change_sentence, changes_since, released_features, released_items
from panelcad.model.plate import Engraving
from panelcad.model.project import Project
from panelcad.model.release import Release
from panelcad.model.shape import Circle
from panelcad.units import LengthUnit
from tests.builders import cut, item, opening, project, sheet


def panel(*cuts, items=()) -> Project:
    return project(sheet(cuts=cuts), items=items)


def sentences(before: Project, after: Project, unit=LengthUnit.MM) -> list[str]:
    option = before.option("new")
    release = Release(
        option="new",
        revision="A",
        on="2026-05-01",
        fingerprint="",
        features=released_features(before, option),
        items=released_items(option),
    )
    return [change_sentence(change, unit) for change in changes_since(release, after, after.option("new"))]


def own(diameter):
    return {"cutout": None, "openings": (opening(Circle(diameter=diameter)),)}


def test_nothing_changed_gives_nothing():
    assert sentences(panel(cut("a", 0.0, 0.0)), panel(cut("a", 0.0, 0.0))) == []


def test_a_moved_cut_says_by_how_much_in_the_readers_unit():
    before, after = panel(cut("a", 0.0, 0.0)), panel(cut("a", 2.54, -25.4))

    assert sentences(before, after) == ["main: a/opening moved by x +2.54, y -25.40 mm"]
    assert sentences(before, after, LengthUnit.INCH) == ["main: a/opening moved by x +0.100, y -1.000 in"]


def test_a_cut_both_moved_and_resized_says_both():
    before, after = panel(cut("a", 0.0, 0.0, **own(10.0))), panel(cut("a", 1.0, 0.0, **own(12.0)))

    assert sentences(before, after) == [
        "main: a/opening moved by x +1.00, y 0.00 mm and changed from 10.00 x 10.00 mm to 12.00 x 12.00 mm"
    ]


def test_added_and_removed_cuts_and_equipment_are_named():
    before = panel(cut("a", 0.0, 0.0), items=(item("gauge", 0.0, 0.0, name="Round gauge"),))
    after = panel(cut("b", 100.0, 0.0), items=(item("clock", 100.0, 0.0, name="Clock"),))

    assert sentences(before, after) == [
        "main: b/opening added: 79.38 x 79.38 mm at x 100.00, y 0.00 mm",
        "main: a/opening removed: 79.38 x 79.38 mm at x 0.00, y 0.00 mm",
        "Clock fitted",
        "Round gauge taken out",
    ]


def test_a_changed_outline_is_a_change():
    before, after = project(sheet()), project(sheet(width=610.0))

    assert sentences(before, after) == ["main/outline changed from 600.00 x 300.00 mm to 610.00 x 300.00 mm"]


def test_lettering_that_moves_or_reads_otherwise_is_a_change():
    def labelled(text, x=0.0):
        return project(sheet(engravings=(Engraving(id="label", text=text, x=x, y=0.0, height=4.0),)))

    assert sentences(labelled("BAT"), labelled("BAT", 2.0)) == ["main/label moved by x +2.00, y 0.00 mm"]
    assert sentences(labelled("BAT"), labelled("MASTER")) == [
        "main/label is now lettering 'MASTER', was lettering 'BAT'"
    ]
    assert sentences(project(sheet()), labelled("BAT")) == [
        "main/label added: lettering 'BAT', 4.00 mm high at x 0.00, y 0.00 mm"
    ]
