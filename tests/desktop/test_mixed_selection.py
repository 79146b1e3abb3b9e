"""Whatever is selected together, every action does its work or says why in the words of the trade."""

import pytest
from PySide6.QtCore import Qt

from panelcad.editing.marks import add_dimension, add_note
from panelcad.model.hole import HoleForm
from panelcad.model.markup import Along, DrawingNote, Hook
from panelcad.model.plate import AttachScrew, Engraving

ACTIONS = (
    "arrange.turn-left",
    "arrange.between-x",
    "arrange.between-y",
    "arrange.align-left",
    "arrange.align-y",
    "arrange.spread-x",
    "arrange.gaps-x",
    "arrange.to-middle",
    "arrange.to-pilot",
    "arrange.mirror-x",
    "arrange.mirror-y",
    "arrange.mirror-pilot",
    "arrange.group",
    "arrange.lock",
    "edit.copy",
    "edit.cut",
    "edit.duplicate",
    "edit.delete",
    "edit.select-kind",
    "view.selection",
)


@pytest.fixture
def mixed(hands):
    """Three instruments, a dimension, a note, a line of lettering and a screw, all selected."""
    bench = hands.window.bench

    def furnished(project, option_id):
        option = project.option(option_id)
        words = Engraving(id="words", text="FLAPS", x=-100.0, y=-100.0, height=4.0)
        screw = AttachScrew(id="screw", x=-280.0, y=140.0, form=HoleForm(diameter=4.3, fastener=4.17))
        plate = option.plates[0].revised(engravings=(words,), attach_screws=(screw,))
        project = project.with_option(option.revised(plates=(plate,)))
        ends = Hook(part="one"), Hook(part="two")
        project = add_dimension(project, option_id, "main", *ends, Along.ACROSS, 60.0)[0]
        return add_note(project, option_id, DrawingNote(id="note", plate="main", text="Old screws", x=100.0, y=-100.0))[
            0
        ]

    assert bench.edit("Furnish", furnished)
    return hands


def choose(hands, *ids: str) -> None:
    hands.window.bench.selection.set(ids)


@pytest.mark.parametrize(
    "ids", [("dimension-1",), ("note",), ("words",), ("screw",), ("one", "dimension-1", "note"), ()]
)
def test_every_action_does_its_work_or_says_why(mixed, ids) -> None:
    told = []
    document = mixed.window.bench.document
    mixed.window.bench.told.connect(told.append)
    furnished = document.project
    for action in ACTIONS:
        choose(mixed, *(ids or ("one", "two", "three", "dimension-1", "note", "words", "screw")))
        mixed.action(action)
        while document.project is not furnished:
            mixed.action("edit.undo")
    assert not [words for words in told if "'dimension-1'" in words or "'note'" in words]


def test_all_but_the_dimension_moves_and_the_dimension_follows(mixed) -> None:
    choose(mixed, "one", "two", "dimension-1", "note")
    mixed.drag((0, 50), (10, 30), held=Qt.KeyboardModifier.AltModifier)
    option = mixed.window.bench.document.option
    assert (mixed.item("one").x, mixed.item("one").y) == pytest.approx((-190, 30), abs=1.0)
    assert (option.drawing_notes[0].x, option.drawing_notes[0].y) == pytest.approx((110, -120), abs=1.0)
    assert option.dimensions[0].offset == 60.0


def test_a_dimension_without_what_it_measures_is_not_cut_and_it_is_said(mixed) -> None:
    choose(mixed, "note", "dimension-1")
    mixed.action("edit.cut")
    assert "left out: 1 dimension to what is not copied too" in mixed.window.statusBar().words.text()
    assert [mark.id for mark in mixed.window.bench.document.option.marks()] == ["dimension-1"]
