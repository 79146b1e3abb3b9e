"""Papers reach the disk whole or not at all, and a place that cannot be written to is named in one sentence."""

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import BinaryIO

from panelcad.errors import UnusableInput
from panelcad.store.atomic import atomic_writer


@contextmanager
def paper_file(path: Path | str) -> Iterator[BinaryIO]:
    """A stream whose content takes the file's place when the block ends well. Raises `UnusableInput`."""
    file = Path(path)
    try:
        with atomic_writer(file) as stream:
            yield stream
    except OSError as error:
        problem = f"it cannot be written ({error.strerror or error})"
        raise UnusableInput(str(file), "", problem, "a folder one may write in") from error
