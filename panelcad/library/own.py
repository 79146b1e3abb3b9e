"""Cutouts the user made in the program: one file for inches and one for millimetres in the user's own folder.

The functions give a file's new content; whoever calls them writes it, atomically.
"""

from pathlib import Path
from typing import Any

from panelcad.errors import UnknownName, UnusableInput
from panelcad.library.catalogue import user_folder, whole_catalogue
from panelcad.library.family_file import read_family
from panelcad.model.base import in_file_unit
from panelcad.model.cutout import Cutout
from panelcad.model.source import Source
from panelcad.units import LengthUnit

_HEADER = (
    "# Written by panelcad, and written anew with each change: put cutouts written by hand into a file of their own.\n"
)
_WORDS = {LengthUnit.INCH: "inches", LengthUnit.MM: "millimetres"}


def own_file(unit: LengthUnit, folder: Path | None = None) -> Path:
    """The file that holds the user's cutouts measured in this unit; it need not exist yet."""
    return (folder or user_folder()) / f"own-{unit.value}.toml"


def own_cutouts(file: Path) -> tuple[Cutout, ...]:
    """The cutouts in a file of `own_file`, none where it does not exist. Raises `UnusableInput`."""
    return read_family(file).cutouts if file.exists() else ()


def with_own(cutout: Cutout, file: Path) -> bytes:
    """The content of `file` with this cutout added, or in place of the one of its name.

    Raises `UnusableInput` where the file cannot be read or the library has the name in another file.
    """
    taken = whole_catalogue(file.parent).cutouts.get(cutout.name)
    if taken is not None and taken.family != f"own-{cutout.unit.value}":
        problem = f"the library has this name in its family '{taken.family}'"
        raise UnusableInput("", f"cutout '{cutout.name}'", problem, "a name of its own")
    kept = {own.name: own for own in own_cutouts(file)}
    return _content({**kept, cutout.name: cutout}, cutout.unit)


def without_own(name: str, file: Path) -> bytes | None:
    """The content of `file` without the cutout of this name, None where nothing is left. Raises `UnknownName`."""
    kept = {own.name: own for own in own_cutouts(file)}
    if name not in kept:
        raise UnknownName("cutout of one's own", name, tuple(kept))
    gone = kept.pop(name)
    return _content(kept, gone.unit) if kept else None


def _content(cutouts: dict[str, Cutout], unit: LengthUnit) -> bytes:
    import tomli_w  # noqa: PLC0415 - only needed where a cutout is kept

    keys: dict[Source, str] = {}
    tables = [_table(cutout, unit, keys) for cutout in cutouts.values()]
    family = {
        "family": f"own-{unit.value}",
        "title": f"Our own, in {_WORDS[unit]}",
        "unit": unit.value,
        "sources": {key: source.model_dump(mode="json") for source, key in keys.items()},
        "cutouts": tables,
    }
    return (_HEADER + tomli_w.dumps(family)).encode()


def _table(cutout: Cutout, unit: LengthUnit, keys: dict[Source, str]) -> dict[str, Any]:
    plain = cutout.model_dump(mode="json", context=in_file_unit(unit), exclude={"family", "unit"}, exclude_none=True)
    table: dict[str, Any] = _tidy(plain, keys)
    return table


def _tidy(value: Any, keys: dict[Source, str]) -> Any:
    """The same data without what is empty, each source named by its key."""
    if isinstance(value, list):
        return [_tidy(inner, keys) for inner in value]
    if not isinstance(value, dict):
        return value
    tidy = {key: _tidy(inner, keys) for key, inner in value.items() if inner not in ("", [])}
    if isinstance(tidy.get("source"), dict):
        tidy["source"] = _key(Source.model_validate(tidy["source"]), keys)
    return tidy


def _key(source: Source, keys: dict[Source, str]) -> str:
    return keys.setdefault(source, f"source-{len(keys) + 1}")
