"""The invented aircraft that come with panelcad."""

from pathlib import Path
from typing import Final

from panelcad.errors import UnknownName
from panelcad.library.packaged import folder

_SUFFIX: Final = ".panel.json"


def sample_names() -> tuple[str, ...]:
    """The names of the samples, such as 'tourer'."""
    return tuple(sorted(file.name.removesuffix(_SUFFIX) for file in folder("sample_panels").glob(f"*{_SUFFIX}")))


def sample_file(name: str) -> Path:
    """The project file of a sample. Raises `UnknownName`."""
    names = sample_names()
    if name not in names:
        raise UnknownName("sample", name, names)
    return folder("sample_panels") / f"{name}{_SUFFIX}"
