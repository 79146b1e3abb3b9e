"""Work beside the window begins once nothing was asked for a while, one piece at a time."""

import threading
from functools import partial

import pytest

from panelcad.desktop.after_rest import AfterRest


class Desk:
    def __init__(self) -> None:
        self.wanted = ["first", "second"]
        self.answers: list[str] = []
        self.threads: set[int] = set()
        self.beside = AfterRest("test", self.begin, self.take)

    def begin(self):
        return partial(self.work, self.wanted.pop(0)) if self.wanted else None

    def work(self, words: str) -> str:
        self.threads.add(threading.get_ident())
        return words

    def take(self, finished) -> None:
        self.answers.append(finished.result())
        self.beside.ask()


@pytest.fixture
def desk(qapp):
    made = Desk()
    yield made
    made.beside.stop()


def test_each_piece_of_work_is_done_once_away_from_the_window(desk, qtbot) -> None:
    for _ in range(3):
        desk.beside.ask()
    assert desk.answers == []
    qtbot.waitUntil(lambda: desk.answers == ["first", "second"])
    assert threading.get_ident() not in desk.threads


def test_nothing_begins_once_it_is_stopped(desk, qtbot) -> None:
    desk.beside.ask()
    desk.beside.stop()
    with qtbot.waitSignal(desk.beside._soon.timeout, timeout=600, raising=False) as begun:
        pass
    assert not begun.signal_triggered
    assert desk.answers == []
