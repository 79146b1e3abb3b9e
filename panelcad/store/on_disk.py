"""What a project file holds now against what was read from it: by content, never by date."""

import hashlib
from dataclasses import dataclass
from enum import Enum
from pathlib import Path

from panelcad.errors import ChangedOnDisk
from panelcad.model.project import Project
from panelcad.store.project_file import content_of, from_bytes, save, to_bytes


class DiskState(Enum):
    """What became of a file since it was last read or written here."""

    SAME = "the same"
    CHANGED = "changed by something else"
    GONE = "gone"


@dataclass(frozen=True)
class Seen:
    """A file's content as it was last read or written here. `stamp` spares reading it again while nothing moved."""

    digest: str
    stamp: tuple[int, int]


@dataclass(frozen=True)
class Opened:
    """A project, and the very content of the file that it was read from."""

    project: Project
    seen: Seen


def open_project(path: Path) -> Opened:
    """Read a project file and remember what it held. Raises `UnusableInput`."""
    stamp = _stamp(path)
    content = content_of(path)
    return Opened(from_bytes(content, str(path)), Seen(digest(content), stamp or (0, 0)))


def disk_state(path: Path, seen: Seen) -> DiskState:
    """Whether the file still holds what was seen. A file that was only touched or copied back is the same."""
    stamp = _stamp(path)
    if stamp is None:
        return DiskState.GONE
    if stamp == seen.stamp:
        return DiskState.SAME
    try:
        return DiskState.SAME if digest(path.read_bytes()) == seen.digest else DiskState.CHANGED
    except FileNotFoundError:
        return DiskState.GONE
    except OSError:
        return DiskState.CHANGED


def save_over(project: Project, path: Path, seen: Seen | None) -> Seen:
    """Write the project over the content that was seen; `None` says that whatever is there may be replaced.

    Raises `ChangedOnDisk` where the file holds something else by now, `UnusableInput` where it cannot be written.
    """
    if seen is not None and disk_state(path, seen) is DiskState.CHANGED:
        raise ChangedOnDisk(str(path))
    save(project, path)
    return Seen(digest(to_bytes(project)), _stamp(path) or (0, 0))


def digest(content: bytes) -> str:
    return hashlib.sha256(content).hexdigest()


def _stamp(path: Path) -> tuple[int, int] | None:
    """Size and time of change; None where there is no file."""
    try:
        found = path.stat()
    except OSError:
        return None
    return found.st_size, found.st_mtime_ns
