"""What lives as long as an open project is kept out of Python's search for garbage, but never during a gesture."""

import gc

import pytest

from panelcad.desktop import collecting
from panelcad.desktop.collecting import Collecting, make_rare, set_aside
from panelcad.desktop.document import Document
from tests import builders


@pytest.fixture(autouse=True)
def pythons_own_way():
    before = gc.get_threshold()
    yield
    gc.set_threshold(*before)
    gc.unfreeze()


@pytest.fixture
def document(qapp, monkeypatch) -> Document:
    monkeypatch.setattr(collecting, "_SETTLED_MS", 1)
    gc.unfreeze()
    made = Document(builders.project())
    Collecting(made, made)
    return made


def test_what_an_open_project_consists_of_is_set_aside(qtbot, document) -> None:
    document.replace(builders.project(), None)
    qtbot.waitUntil(lambda: gc.get_freeze_count() > 0)


def test_nothing_is_set_aside_while_something_is_dragged(qtbot, document) -> None:
    document.replace(builders.project(), None)
    gesture = document.begin("Move")
    qtbot.wait(20)
    assert gc.get_freeze_count() == 0
    gesture.cancel()
    qtbot.waitUntil(lambda: gc.get_freeze_count() > 0)


def test_the_search_is_made_rare() -> None:
    before = gc.get_threshold()
    make_rare()
    assert gc.get_threshold()[0] > 10 * before[0]
    assert gc.get_threshold()[1:] == before[1:]


def test_what_is_garbage_by_then_is_not_kept() -> None:
    class Ring:
        count = 0

        def __init__(self) -> None:
            self.itself = self

        def __del__(self) -> None:
            Ring.count += 1

    Ring()
    set_aside()
    Ring()
    set_aside()
    assert Ring.count == 2
