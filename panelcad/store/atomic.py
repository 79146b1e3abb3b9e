"""Write a file so that, whatever happens, its place holds the old file or the new one, whole."""

import contextlib
import glob
import os
import tempfile
from collections.abc import Iterator
from pathlib import Path
from typing import BinaryIO, Final

_UNFINISHED: Final = ".part"
_ABANDONED_AFTER: Final = 3600.0
"""Seconds after which an unfinished file belongs to nobody any more."""


@contextlib.contextmanager
def atomic_writer(path: Path) -> Iterator[BinaryIO]:
    """A stream to a file beside `path` that takes its place when the block ends without an error."""
    target = path.resolve()
    handle, beside = tempfile.mkstemp(dir=target.parent, prefix=f".{target.name}.", suffix=_UNFINISHED)
    try:
        with os.fdopen(handle, "wb") as stream:
            yield stream
            stream.flush()
            os.fsync(stream.fileno())
        _keep_mode(target, Path(beside))
        Path(beside).replace(target)
    except BaseException:
        Path(beside).unlink(missing_ok=True)
        raise
    _flush_folder(target.parent)
    _sweep(target)


def write_atomically(path: Path, content: bytes) -> None:
    with atomic_writer(path) as stream:
        stream.write(content)


@contextlib.contextmanager
def files_together(folder: Path) -> Iterator[Path]:
    """A folder inside `folder`, whose files take their places in it when the block ends without an error."""
    with tempfile.TemporaryDirectory(dir=folder, prefix=".", suffix=_UNFINISHED) as beside:
        yield Path(beside)
        for file in sorted(Path(beside).iterdir()):
            file.replace(folder / file.name)


def _keep_mode(target: Path, beside: Path) -> None:
    """The old file's permissions, or those a new file would get."""
    if target.exists():
        beside.chmod(target.stat().st_mode & 0o777)
        return
    mask = os.umask(0)
    os.umask(mask)
    beside.chmod(0o666 & ~mask)


def _sweep(target: Path) -> None:
    """Take away what writers of this file that were killed left beside it; a writer at work is younger than that."""
    now = target.stat().st_mtime
    for left in target.parent.glob(f".{glob.escape(target.name)}.*{_UNFINISHED}"):
        with contextlib.suppress(OSError):  # another writer may have swept it away first
            if now - left.stat().st_mtime > _ABANDONED_AFTER:
                left.unlink()


def _flush_folder(folder: Path) -> None:
    """Make the renaming itself last through a power cut, where the system can."""
    if os.name != "posix":
        return
    handle = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)
