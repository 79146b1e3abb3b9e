"""Write a file so that, whatever happens, its place holds the old file or the new one, whole."""

import contextlib
import os
import tempfile
from collections.abc import Iterator
from pathlib import Path
from typing import BinaryIO


@contextlib.contextmanager
def atomic_writer(path: Path) -> Iterator[BinaryIO]:
    """A stream to a file beside `path` that takes its place when the block ends without an error."""
    target = path.resolve()
    handle, beside = tempfile.mkstemp(dir=target.parent, prefix=f".{target.name}.", suffix=".part")
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


def write_atomically(path: Path, content: bytes) -> None:
    with atomic_writer(path) as stream:
        stream.write(content)


def _keep_mode(target: Path, beside: Path) -> None:
    """The old file's permissions, or those a new file would get."""
    if target.exists():
        beside.chmod(target.stat().st_mode & 0o777)
        return
    mask = os.umask(0)
    os.umask(mask)
    beside.chmod(0o666 & ~mask)


def _flush_folder(folder: Path) -> None:
    """Make the renaming itself last through a power cut, where the system can."""
    if os.name != "posix":
        return
    handle = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)
