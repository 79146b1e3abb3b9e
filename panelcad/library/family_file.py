"""Read one file of cutouts: TOML, a family a file, its unit stated once, the source of each dimension group by key."""

from dataclasses import dataclass
from pathlib import Path
from typing import Any

from pydantic import Field, ValidationError

from panelcad.errors import UnknownName, UnusableInput
from panelcad.library.toml_file import read_toml
from panelcad.model.base import Id, Name, Record, Text, in_file_unit
from panelcad.model.cutout import Cutout
from panelcad.model.faults import first_fault
from panelcad.model.source import Source
from panelcad.units import LengthUnit

Plain = dict[str, Any]


class _Head(Record):
    """What a file says about its family, and the cutouts still to be read."""

    family: Id
    title: Name
    unit: LengthUnit
    notes: Text = ""
    sources: dict[str, Source] = Field(min_length=1)
    common: Plain = Field(default_factory=dict)
    cutouts: tuple[Plain, ...] = Field(min_length=1)


@dataclass(frozen=True)
class Family:
    """One file's cutouts, in its order."""

    name: str
    title: str
    notes: str
    file: Path
    cutouts: tuple[Cutout, ...]


def read_family(file: Path) -> Family:
    """The family in a file. Raises `UnusableInput` with one sentence: file, place, problem, what is expected."""
    source = str(file)
    try:
        head = _Head.model_validate(read_toml(file, "a file of cutouts"))
    except ValidationError as error:
        raise first_fault(error, source) from None
    cutouts = tuple(_cutout(plain, head, source, f"cutouts {i}") for i, plain in enumerate(head.cutouts, 1))
    return Family(head.family, head.title, head.notes, file, cutouts)


def _cutout(plain: Plain, head: _Head, source: str, place: str) -> Cutout:
    """A cutout: what the file states for all, what this one states itself, and its sources by their keys."""
    named = f"{place} ('{plain['name']}')" if isinstance(plain.get("name"), str) else place
    own = {**head.common, **plain}
    for key in ("family", "unit"):
        if key in own:
            raise UnusableInput(source, f"{named}, {key}", "the file states it for all its cutouts", f"no key '{key}'")
    whole = {**own, "family": head.family, "unit": head.unit}
    try:
        return Cutout.model_validate(_with_sources(whole, head.sources), context=in_file_unit(head.unit))
    except UnknownName as error:
        raise UnusableInput(source, named, str(error).rstrip("."), "a key of the table 'sources'") from None
    except ValidationError as error:
        raise first_fault(error, source, named) from None


def _with_sources(value: Any, sources: dict[str, Source]) -> Any:
    """The same data with each key of a source replaced by the source. Raises `UnknownName`."""
    if isinstance(value, dict):
        return {key: _resolved(key, inner, sources) for key, inner in value.items()}
    return [_with_sources(inner, sources) for inner in value] if isinstance(value, list) else value


def _resolved(key: str, value: Any, sources: dict[str, Source]) -> Any:
    if key != "source" or not isinstance(value, str):
        return _with_sources(value, sources)
    if value not in sources:
        raise UnknownName("source", value, tuple(sources))
    return sources[value]
