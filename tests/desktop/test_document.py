from pathlib import Path

import pytest

from panelcad.desktop.document import Document
from tests import builders


@pytest.fixture
def document() -> Document:
    return Document(builders.project(), Path("panel.panel.json"))


def test_many_proposals_are_one_undo_step(document) -> None:
    before = document.project
    with document.gesture("Rename") as gesture:
        for i in range(5):
            gesture.propose(before.revised(title=f"Title {i}"))
    assert document.project.title == "Title 4"
    assert [step.title for step in document.done] == ["Rename"]
    document.undo()
    assert document.project is before
    assert document.is_saved


def test_redo_gives_the_very_project_back(document) -> None:
    changed = document.project.revised(title="Other")
    document.apply("Rename", changed)
    document.undo()
    document.redo()
    assert document.project is changed


def test_a_cancelled_gesture_leaves_nothing(document) -> None:
    before = document.project
    gesture = document.begin("Rename")
    gesture.propose(before.revised(title="Other"))
    gesture.cancel()
    assert document.project is before
    assert not document.done


def test_an_error_inside_a_gesture_cancels_it(document) -> None:
    before = document.project

    def fail_half_way() -> None:
        with document.gesture("Rename") as gesture:
            gesture.propose(before.revised(title="Other"))
            raise ZeroDivisionError

    with pytest.raises(ZeroDivisionError):
        fail_half_way()
    assert document.project is before
    assert not document.done


def test_proposals_are_shown_but_not_taken(document, qtbot) -> None:
    before = document.project
    gesture = document.begin("Rename")
    with qtbot.waitSignal(document.proposed):
        gesture.propose(before.revised(title="Other"))
    assert document.project is before
    gesture.finish()
    assert document.project.title == "Other"


def test_a_finished_gesture_takes_no_more_proposals(document) -> None:
    gesture = document.begin("Rename")
    gesture.finish()
    with pytest.raises(RuntimeError, match="is over"):
        gesture.propose(document.project)


def test_a_change_after_undo_forgets_what_was_undone(document) -> None:
    document.apply("One", document.project.revised(title="One"))
    document.undo()
    document.apply("Two", document.project.revised(title="Two"))
    document.redo()
    assert document.project.title == "Two"


def test_a_release_is_a_barrier(document) -> None:
    document.apply("One", document.project.revised(title="One"))
    released = document.project.revised(notes="released")
    document.record_release(released)
    document.undo()
    assert document.project is released


def test_a_release_of_what_was_never_saved_is_not_lost_without_a_question(document) -> None:
    begun = Document(document.project)
    assert begun.is_untouched
    begun.apply("One", begun.project.revised(title="One"))
    begun.record_release(begun.project.revised(notes="released"))
    assert not begun.is_untouched


def test_saving_moves_the_mark(document) -> None:
    document.apply("One", document.project.revised(title="One"))
    assert not document.is_saved
    document.mark_saved(Path("other.panel.json"), document.project)
    assert document.is_saved
    document.undo()
    assert not document.is_saved


def test_an_option_that_is_gone_shows_the_panel_as_found(document) -> None:
    assert document.option_id == "new"
    document.apply("Remove option", document.project.revised(options=()))
    assert document.option_id == "as-found"
