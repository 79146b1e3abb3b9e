"""Arranging what is selected, by the actions' own keys."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QCheckBox, QLabel, QSpinBox

from panelcad.desktop.dialogs.edit_dialog import EditDialog
from panelcad.desktop.dialogs.entries import LengthEntry
from panelcad.editing.marks import add_dimension, add_note
from panelcad.editing.options import copy_option
from panelcad.editing.stack import place_stack
from panelcad.editing.swap import swap
from panelcad.library.catalogue import packaged_catalogue
from panelcad.model.markup import Along, DrawingNote, Hold, Hook
from panelcad.model.plate import CutState, PlateState
from panelcad.store.project_file import save
from tests import builders
from tests.desktop.next_dialog import in_dialog

CTRL, SHIFT = Qt.KeyboardModifier.ControlModifier, Qt.KeyboardModifier.ShiftModifier


def places(hands) -> dict[str, tuple[float, float]]:
    return {item.id: (item.x, item.y) for item in hands.window.bench.document.option.items}


def key(hands, key, held=CTRL) -> None:
    QTest.keyClick(hands.window, key, held)


def test_select_all_and_align_on_the_first(hands) -> None:
    hands.click(-200, 50)
    hands.click(200, -50, held=SHIFT)
    hands.action("arrange.align-y")
    assert places(hands)["three"] == (200, 50)
    assert [step.title for step in hands.window.bench.document.done] == ["Align centres on a level line"]


def test_equal_gaps(hands) -> None:
    hands.drag((0, 50), (60, 50), held=Qt.KeyboardModifier.AltModifier)
    key(hands, Qt.Key.Key_A)
    hands.action("arrange.align-y")
    key(hands, Qt.Key.Key_E)
    assert places(hands)["two"][0] == pytest.approx(0.0)


def test_duplicate_stands_beside_and_is_selected(hands) -> None:
    hands.click(0, 50)
    key(hands, Qt.Key.Key_D)
    made = set(places(hands)) - {"one", "two", "three"}
    assert len(made) == 1
    # A bezel is 84 mm wide, the advised web 6.35 mm.
    assert places(hands)[made.pop()] == pytest.approx((90.35, 50))
    assert len(hands.window.bench.selection) == 1


def test_copy_and_paste_between_options(hands) -> None:
    document = hands.window.bench.document
    hands.click(0, 50)
    key(hands, Qt.Key.Key_C)
    made = copy_option(document.project, "new", "Second")
    document.apply("Copy the option", made.project)
    document.look_at(made.option_id)
    hands.click(0, 50)
    key(hands, Qt.Key.Key_Delete, Qt.KeyboardModifier.NoModifier)
    assert len(document.option.items) == 2
    key(hands, Qt.Key.Key_V)
    assert len(document.option.items) == 3
    assert (document.option.items[-1].x, document.option.items[-1].y) == (0.0, 50.0)


def test_copy_and_paste_between_projects_carries_the_cutout(hands, tmp_path) -> None:
    hands.click(0, 50)
    key(hands, Qt.Key.Key_C)
    other = tmp_path / "other.panel.json"
    save(builders.project(builders.sheet(state="new"), cutouts=()), other)
    hands.window.open(other)
    key(hands, Qt.Key.Key_V)
    project = hands.window.bench.document.project
    assert [cutout.name for cutout in project.cutouts] == ["round"]
    assert places(hands) == {"two": (0.0, 50.0)}
    hands.window.bench.document.mark_saved(other, project)


def test_a_second_paste_does_not_lie_on_the_first(hands) -> None:
    hands.click(0, 50)
    key(hands, Qt.Key.Key_C)
    key(hands, Qt.Key.Key_V)
    key(hands, Qt.Key.Key_V)
    assert len(set(places(hands).values())) == 5


def test_a_foreign_clipboard_is_told(hands) -> None:
    QApplication.clipboard().setText("a letter home")
    key(hands, Qt.Key.Key_V)
    assert "nothing that belongs" in hands.window.statusBar().words.text()
    assert len(places(hands)) == 3


def test_cut_takes_away_and_paste_brings_back(hands) -> None:
    hands.click(0, 50)
    key(hands, Qt.Key.Key_X)
    assert len(places(hands)) == 2
    key(hands, Qt.Key.Key_V)
    assert (0.0, 50.0) in places(hands).values()


def test_a_group_is_picked_and_moved_as_one(hands) -> None:
    hands.drag((-260, 120), (100, 0))
    hands.action("arrange.group")
    hands.click(100, 130)
    hands.drag((0, 50), (0, 80), held=Qt.KeyboardModifier.AltModifier)
    assert hands.window.bench.selection_words() == "2 things"
    moved = places(hands)
    assert moved["one"][1] == pytest.approx(80, abs=1)
    assert moved["one"][1] == moved["two"][1]
    assert moved["three"] == (200, -50)


def test_what_is_locked_stays(hands) -> None:
    hands.click(0, 50)
    hands.action("arrange.lock")
    hands.drag((0, 50), (40, 80))
    assert places(hands)["two"] == (0, 50)
    assert "'two' is locked" in hands.window.statusBar().words.text()
    hands.click(0, 50)
    hands.action("arrange.unlock")
    hands.drag((0, 50), (40, 80), held=Qt.KeyboardModifier.AltModifier)
    assert places(hands)["two"] != (0, 50)


def test_turning_by_keys(hands) -> None:
    hands.click(0, 50)
    key(hands, Qt.Key.Key_L)
    assert hands.item("two").rotation == 90.0


def test_mirroring_keeps_the_faces(hands) -> None:
    hands.drag((-260, 120), (100, 0))
    hands.action("arrange.mirror-x")
    assert places(hands)["one"][0] == pytest.approx(0.0)
    assert places(hands)["two"][0] == pytest.approx(-200.0)


def test_a_grid_is_seen_while_it_is_filled_in(hands) -> None:
    hands.click(0, 50)
    scene = hands.window.bench.stage.scene

    def fill(dialog) -> None:
        columns, rows = dialog.findChildren(QSpinBox)
        columns.setValue(3)
        rows.setValue(2)
        across = next(f for f in dialog.findChildren(LengthEntry) if f.accessibleName() == "Pitch across")
        across.selectAll()
        QTest.keyClicks(across, "1 in * 2")
        assert len({item.owner for item in scene.groups if item.owner.startswith("two")}) > 2
        assert len(places(hands)) == 3
        QTest.keyClick(dialog, Qt.Key.Key_Return)

    in_dialog(fill)
    hands.action("arrange.repeat")
    assert len(places(hands)) == 8
    assert (50.8, 50.0) in places(hands).values()
    assert len(hands.window.bench.document.done) == 1


def test_a_grid_takes_notes_along_and_says_what_it_leaves_out(hands) -> None:
    bench, said = hands.window.bench, []
    note = DrawingNote(id="note", plate="main", text="Ream", x=0.0, y=120.0, to=Hook(part="two"))
    bench.edit("Note", lambda project, option: add_note(project, option, note)[0])
    edge, two = Hook(part="main", hold=Hold.TOP), Hook(part="two")
    bench.edit(
        "Dimension", lambda project, option: add_dimension(project, option, "main", edge, two, Along.UP, 60.0)[0]
    )
    hands.click(-30, 60)

    def fill(dialog) -> None:
        dialog.findChildren(QSpinBox)[1].setValue(2)
        said.extend(label.text() for label in dialog.findChildren(QLabel))
        said.append(dialog.findChild(QCheckBox).text())
        QTest.keyClick(dialog, Qt.Key.Key_Return)

    in_dialog(fill)
    hands.action("arrange.repeat")
    assert "Left out: 1 dimension to what is not copied too" in said
    assert "Labels and &notes that belong to them, 1" in said
    assert len(bench.document.option.drawing_notes) == 4
    assert len(bench.document.option.dimensions) == 1
    hands.window.bench.document.undo()
    in_dialog(lambda dialog: (dialog.findChild(QCheckBox).click(), QTest.keyClick(dialog, Qt.Key.Key_Return)))
    hands.click(-30, 60)
    hands.action("arrange.repeat")
    assert len(bench.document.option.drawing_notes) == 1


def test_calling_a_grid_off_leaves_nothing(hands) -> None:
    before = hands.window.bench.document.project
    hands.click(0, 50)
    in_dialog(lambda dialog: QTest.keyClick(dialog, Qt.Key.Key_Escape))
    hands.action("arrange.repeat")
    assert hands.window.bench.document.project is before
    assert not hands.window.bench.document.done


def test_a_pitch_of_nothing_is_refused_in_words(hands) -> None:
    hands.click(0, 50)

    def fill(dialog) -> None:
        across = next(f for f in dialog.findChildren(LengthEntry) if f.accessibleName() == "Pitch across")
        across.selectAll()
        QTest.keyClicks(across, "0")
        assert "pitch other than 0" in dialog.problem.text()
        assert not dialog.verb.isEnabled()
        QTest.keyClick(dialog, Qt.Key.Key_Escape)

    in_dialog(fill)
    hands.action("arrange.repeat")


def test_the_same_kind_is_selected(hands) -> None:
    hands.click(0, 50)
    hands.action("edit.select-kind")
    assert set(hands.window.bench.selection.ids) == {"one", "two", "three"}


def with_stack(hands) -> None:
    units = [packaged_catalogue().cutouts[name] for name in ("rack-1-30", "rack-1-65")]
    hands.window.bench.make("Stack", lambda project, option: place_stack(project, option, "main", units, 0.0, -20.0))


def test_a_rack_unit_put_down_over_a_stack_joins_it(hands) -> None:
    with_stack(hands)
    bench = hands.window.bench
    upper = hands.item("rack-1-30")
    bench.place_wanted.emit(packaged_catalogue().cutouts["rack-1-30"])
    hands.hover(upper.x + 30, upper.y - 4)
    assert "Into Stack, place 2 from above" in hands.window.statusBar().words.text()
    hands.click(upper.x + 30, upper.y - 4)
    hands.key(Qt.Key.Key_Escape)
    units = [item for item in bench.document.option.items if item.cut == "stack"]
    assert len(units) == 3
    assert len({round(item.x, 6) for item in units}) == 1
    assert bench.document.done[-1].title.startswith("Place")


def test_a_unit_goes_lower_and_higher_by_keys(hands) -> None:
    with_stack(hands)
    hands.window.bench.selection.set(["rack-1-30"])
    key(hands, Qt.Key.Key_Down)
    assert hands.item("rack-1-30").y < hands.item("rack-1-65").y
    key(hands, Qt.Key.Key_Up)
    assert hands.item("rack-1-30").y > hands.item("rack-1-65").y


def test_the_last_chosen_is_centred_between_the_first_two(hands) -> None:
    hands.window.bench.selection.set(["one", "three", "two"])
    hands.action("arrange.between-y")
    # Bezels of 84 mm: from 8 down to -8 the middle is 0.
    assert places(hands)["two"] == (0.0, 0.0)


def heights(hands) -> dict[str, float]:
    """How high the units of the stack stand."""
    return {item.id: item.y for item in hands.window.bench.document.option.items if item.cut == "stack"}


def test_a_unit_is_dragged_past_its_neighbour_as_one_entry(hands) -> None:
    with_stack(hands)
    before = heights(hands)
    unit, other = hands.item("rack-1-30"), hands.item("rack-1-65")
    hands.click(unit.x + 60, unit.y)
    hands.press(unit.x + 60, unit.y)
    hands.move(unit.x + 62, other.y + 6)
    assert "goes to place 1 of 2 from above" in hands.window.statusBar().words.text()
    hands.move(unit.x + 62, other.y - 6)
    assert "goes to place 2 of 2 from above" in hands.window.statusBar().words.text()
    assert heights(hands) == before
    shown = hands.window.bench.document.current_gesture.proposal.option("new")
    assert shown.item("rack-1-30").y < shown.item("rack-1-65").y
    hands.release(unit.x + 62, other.y - 6)
    after = heights(hands)
    assert after["rack-1-30"] < after["rack-1-65"]
    assert hands.item("rack-1-30").x == unit.x
    assert hands.window.bench.document.done[-1].title == f"Move {unit.name} in its stack"
    hands.action("edit.undo")
    assert heights(hands) == before


def test_escape_puts_the_order_back_and_the_own_place_is_no_change(hands) -> None:
    with_stack(hands)
    before, steps = heights(hands), len(hands.window.bench.document.done)
    unit, other = hands.item("rack-1-30"), hands.item("rack-1-65")
    hands.press(unit.x + 60, unit.y)
    hands.move(unit.x + 60, other.y - 6)
    hands.key(Qt.Key.Key_Escape)
    hands.release(unit.x + 60, other.y - 6)
    hands.drag((unit.x + 60, unit.y), (unit.x + 60, unit.y - 9))
    assert heights(hands) == before
    assert len(hands.window.bench.document.done) == steps


@pytest.mark.parametrize(
    ("held", "across", "down"),
    [
        (SHIFT, 0.0, 30.0),
        (Qt.KeyboardModifier.AltModifier, 0.0, 30.0),
        (Qt.KeyboardModifier.NoModifier, 45.0, 30.0),
        (Qt.KeyboardModifier.NoModifier, 0.0, 140.0),
    ],
)
def test_any_other_way_the_whole_stack_moves(hands, held, across: float, down: float) -> None:
    with_stack(hands)
    before, unit = heights(hands), hands.item("rack-1-30")
    hands.click(unit.x + 60, unit.y)
    hands.drag((unit.x + 60, unit.y), (unit.x + 60 + across, unit.y - down), held=held, steps=8)
    after = heights(hands)
    moved = {one: after[one] - before[one] for one in before}
    assert moved["rack-1-30"] == pytest.approx(moved["rack-1-65"])
    assert moved["rack-1-30"] == pytest.approx(-down, abs=9.0)
    assert hands.item("rack-1-65").x - unit.x == pytest.approx(across, abs=9.0)


def test_units_in_metal_that_is_kept_change_places_though_the_stack_cannot_move(hands) -> None:
    with_stack(hands)
    document = hands.window.bench.document
    option = document.option
    cuts = tuple(cut.revised(state=CutState.EXISTING) for cut in option.plates[0].cuts)
    kept = option.plates[0].revised(state=PlateState.KEPT, cuts=cuts)
    document.apply("Keep the plate", document.project.with_option(option.revised(plates=(kept,))))
    before = heights(hands)
    unit, other = hands.item("rack-1-30"), hands.item("rack-1-65")
    hands.click(unit.x + 60, unit.y)
    hands.drag((unit.x + 60, unit.y), (unit.x + 100, unit.y))
    assert heights(hands) == before
    hands.drag((unit.x + 60, unit.y), (unit.x + 60, other.y - 6))
    assert heights(hands)["rack-1-30"] < heights(hands)["rack-1-65"]


def test_the_properties_are_those_of_what_took_its_place(hands) -> None:
    hands.click(0, 50)
    pane = hands.window.docks.dock("properties").widget()
    before = [label.text() for label in pane.sheet.findChildren(QLabel)]
    cutout = packaged_catalogue().cutouts["rack-1-65"]
    hands.window.bench.edit("Replace", lambda project, option: swap(project, option, "two", cutout))
    after = [label.text() for label in pane.sheet.findChildren(QLabel)]
    assert cutout.title in after
    assert cutout.title not in before


def test_alt_and_the_letter_of_a_field_goes_to_the_field_and_enter_takes_what_was_typed(hands) -> None:
    hands.click(-200, 50)

    def type_pitch(dialog: EditDialog) -> None:
        for letter, text in ((Qt.Key.Key_R, "2"), (Qt.Key.Key_U, "-100 mm")):
            QTest.keyClick(dialog, letter, Qt.KeyboardModifier.AltModifier)
            QTest.keyClick(QApplication.focusWidget(), Qt.Key.Key_A, CTRL)
            QTest.keyClicks(QApplication.focusWidget(), text)
        QTest.keyClick(QApplication.focusWidget(), Qt.Key.Key_Return)

    in_dialog(type_pitch)
    hands.action("arrange.repeat")
    assert (-200, -50) in {(round(x), round(y)) for x, y in places(hands).values()}


def pitch_shown(dialog: EditDialog) -> float:
    (pitch,) = (f for f in dialog.findChildren(LengthEntry) if f.accessibleName() == "Pitch")
    return pitch.mm


def write_over(words: str) -> None:
    QTest.keyClick(QApplication.focusWidget(), Qt.Key.Key_A, CTRL)
    QTest.keyClicks(QApplication.focusWidget(), words)


def choose(part_of_title: str) -> None:
    write_over(part_of_title)
    QTest.keyClick(QApplication.focusWidget(), Qt.Key.Key_Return)


def test_the_pitch_of_a_row_follows_the_cutout_and_leaves_nothing_to_find_between_two(hands) -> None:
    pitches: list[float] = []

    def fill(dialog: EditDialog) -> None:
        for words in ("switch rocker", "push-pull"):
            choose(words)
            pitches.append(pitch_shown(dialog))
        QTest.keyClick(dialog, Qt.Key.Key_Return)

    in_dialog(fill)
    hands.action("place.row")
    assert pitches[0] > pitches[1] > 0.0
    made = set(hands.window.bench.selection.ids)
    hands.window.bench.judge.check_now()
    found = hands.window.bench.judge.report.findings
    assert [finding.rule for finding in found if len(made & set(finding.items)) > 1] == []


def test_a_pitch_that_was_typed_stays_when_another_cutout_is_chosen(hands) -> None:
    def fill(dialog: EditDialog) -> None:
        QTest.keyClick(dialog, Qt.Key.Key_P, Qt.KeyboardModifier.AltModifier)
        write_over("44")
        QTest.keyClick(dialog, Qt.Key.Key_C, Qt.KeyboardModifier.AltModifier)
        choose("rocker")
        assert pitch_shown(dialog) == 44.0
        QTest.keyClick(dialog, Qt.Key.Key_Escape)

    in_dialog(fill)
    hands.action("place.row")
