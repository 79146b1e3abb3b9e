import json
import os
import subprocess
import sys
import time
from pathlib import Path

import pytest

from panelcad.store.open_note import STALE_AFTER, Holder, claim, note_path, other_holder, release


@pytest.fixture
def file(tmp_path: Path) -> Path:
    path = tmp_path / "a b.panel.json"
    path.write_text("{}")
    return path


def left_by(file: Path, **fields: object) -> Path:
    note = note_path(file)
    plain = {"session": "theirs", "host": "another-machine", "process": 1}
    note.write_text(json.dumps(plain | fields))
    return note


def test_the_second_window_is_told_who_has_the_file(file: Path) -> None:
    assert claim(file, "first") is None
    holder = claim(file, "second")
    assert holder is not None
    assert (holder.session, holder.process) == ("first", os.getpid())
    assert claim(file, "first") is None
    release(file, "second")
    assert other_holder(file, "second") == holder
    release(file, "first")
    assert claim(file, "second") is None
    assert not list(file.parent.glob("*.part"))


def test_a_window_that_crashed_on_this_machine_holds_nothing_any_more(file: Path) -> None:
    script = f"from panelcad.store.open_note import claim; from pathlib import Path; claim(Path({str(file)!r}), 'dead')"
    subprocess.run([sys.executable, "-c", script], check=True)
    assert note_path(file).exists()
    assert claim(file, "mine") is None


def test_a_note_from_another_machine_counts_while_it_is_renewed(file: Path) -> None:
    note = left_by(file)
    assert other_holder(file, "mine") == Holder("theirs", "another-machine", 1)
    old = time.time() - STALE_AFTER - 5
    os.utime(note, (old, old))
    assert other_holder(file, "mine") is None


@pytest.mark.parametrize("content", [b"", b"{", b"[]", b"null", b'{"session": "x"}', b"\xff\xfe", b"[" * 9000])
def test_a_damaged_note_is_no_note(file: Path, content: bytes) -> None:
    note_path(file).write_bytes(content)
    assert claim(file, "mine") is None


def test_where_no_note_can_be_left_nobody_is_warned(tmp_path: Path) -> None:
    assert claim(tmp_path / "gone" / "a.panel.json", "mine") is None
