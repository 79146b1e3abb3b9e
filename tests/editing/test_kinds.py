from panelcad.editing.kinds import all_on, same_kind
from panelcad.editing.marks import add_dimension, add_note
from panelcad.model.hole import HoleForm
from panelcad.model.markup import Along, DrawingNote, Hook
from panelcad.model.plate import AttachScrew, Engraving
from panelcad.model.project import Project
from tests import builders


def furnished() -> Project:
    """Two gauges of one family, a switch of another, two screws, a line of lettering, a note and a dimension."""
    form = HoleForm(diameter=4.3, fastener=4.17)
    plate = builders.sheet(
        cuts=(builders.cut("hole", 0.0, 0.0),),
        attach_screws=tuple(AttachScrew(id=name, x=x, y=140.0, form=form) for name, x in (("s1", -50.0), ("s2", 50.0))),
        engravings=(Engraving(id="words", text="FLAPS", x=0.0, y=-80.0, height=4.0),),
    )
    items = (
        builders.item("one", 0.0, 0.0, cut="hole"),
        builders.item("two", 100.0, 0.0),
        builders.item("switch", 200.0, 0.0, cutout="switch"),
    )
    cutouts = (builders.round_cutout(), builders.round_cutout(12.0, "switch", family="switches"))
    project = builders.project(plate, items=items, cutouts=cutouts)
    project = add_dimension(project, "new", "main", Hook(part="one"), Hook(part="two"), Along.ACROSS, 60.0)[0]
    return add_note(project, "new", DrawingNote(id="note", plate="main", text="x", x=0.0, y=0.0))[0]


def test_all_on_a_plate_is_all_of_it_and_each_thing_once() -> None:
    everything = all_on(furnished().option("new"), "main")
    assert everything == ("one", "two", "switch", "s1", "s2", "words", "note", "dimension-1")


def test_the_same_kind_is_the_same_family_or_the_same_sort() -> None:
    project = furnished()
    assert same_kind(project, "new", "main", ["two"]) == ("one", "two")
    assert same_kind(project, "new", "main", ["s2"]) == ("s1", "s2")
    assert same_kind(project, "new", "main", ["switch", "note"]) == ("switch", "note")
