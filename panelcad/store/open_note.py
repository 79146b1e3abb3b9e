"""A note beside a project file that says in which window it is open, so that a second one is warned.

The note holds nobody up: it is a warning, and what is saved is guarded by content (`panelcad.store.on_disk`). A window
renews its note; one that crashed no longer does, and its note counts for nothing after a while, or at once where its
process is known to have ended.
"""

import json
import os
import socket
import tempfile
import time
from dataclasses import asdict, dataclass
from pathlib import Path
from typing import Final

from panelcad.store.atomic import write_atomically

RENEW_EVERY: Final = 30.0
"""Seconds between two renewals."""
STALE_AFTER: Final = 100.0
"""Seconds without a renewal after which a note counts as left behind: three missed renewals."""
_LONGEST: Final = 4096


@dataclass(frozen=True)
class Holder:
    """Who has a file open."""

    session: str
    host: str
    process: int


def this_window(session: str) -> Holder:
    return Holder(session, socket.gethostname(), os.getpid())


def note_path(path: Path) -> Path:
    target = path.resolve()
    return target.with_name(f".{target.name}.open")


def other_holder(path: Path, session: str) -> Holder | None:
    """Who else has the file open by a note that still counts; None where nobody has."""
    note = note_path(path)
    holder = _read(note)
    if holder is None or holder.session == session or _has_ended(holder) or _is_stale(note):
        return None
    return holder


def claim(path: Path, session: str) -> Holder | None:
    """Leave or renew this window's note, unless somebody else's still counts: then that holder is given back.

    A folder where no note can be left holds no warning either; the content still guards what is saved.
    """
    other = other_holder(path, session)
    if other is None:
        try:
            write_atomically(note_path(path), json.dumps(asdict(this_window(session))).encode())
        except OSError:
            return None
    return other


def release(path: Path, session: str) -> None:
    """Take this window's note away; another window's stays."""
    note = note_path(path)
    holder = _read(note)
    if holder is not None and holder.session == session:
        note.unlink(missing_ok=True)


def _read(note: Path) -> Holder | None:
    """The holder in a note; None where there is none, or where it is damaged."""
    try:
        raw = json.loads(note.read_bytes()[:_LONGEST])
        return Holder(str(raw["session"]), str(raw["host"]), int(raw["process"]))
    except (OSError, ValueError, LookupError, TypeError, RecursionError):
        return None


def _has_ended(holder: Holder) -> bool:
    """Whether the process is known to have ended; on other machines, and on Windows, nobody knows."""
    if holder.host != socket.gethostname() or os.name != "posix":
        return False
    try:
        os.kill(holder.process, 0)
    except ProcessLookupError:
        return True
    except (PermissionError, OverflowError):
        return False
    return False


def _is_stale(note: Path) -> bool:
    """By the clock of the folder itself: that of a file server may differ from this machine's."""
    try:
        return _now_in(note.parent) - note.stat().st_mtime > STALE_AFTER
    except FileNotFoundError:
        return True


def _now_in(folder: Path) -> float:
    try:
        with tempfile.TemporaryFile(dir=folder) as probe:
            probe.write(b".")
            probe.flush()
            return os.fstat(probe.fileno()).st_mtime
    except OSError:
        return time.time()
