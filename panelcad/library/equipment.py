"""The library of generic units of equipment and the user's own: TOML, a family a file, beside the cutouts."""

from collections.abc import Collection
from dataclasses import dataclass
from functools import cache, cached_property
from pathlib import Path
from typing import Any

from pydantic import Field, ValidationError

from panelcad.errors import UnknownName, UnusableInput
from panelcad.library.packaged import folder
from panelcad.library.search import Index
from panelcad.library.toml_file import read_toml
from panelcad.model.base import Id, Name, Record, Text
from panelcad.model.equipment import EquipmentUnit
from panelcad.model.faults import first_fault
from panelcad.model.function import Function
from panelcad.model.quantity import Currency
from panelcad.model.source import Source


class _Head(Record):
    """What a file says about its family, and the units still to be read."""

    family: Id
    title: Name
    currency: Currency
    source: Source
    notes: Text = ""
    units: tuple[dict[str, Any], ...] = Field(min_length=1)


@dataclass(frozen=True)
class EquipmentLibrary:
    """Units by name and the titles of their families, in reading order."""

    units: dict[str, EquipmentUnit]
    families: dict[str, str]

    def unit(self, name: str) -> EquipmentUnit:
        """The unit of this name. Raises `UnknownName`."""
        if name not in self.units:
            raise UnknownName("unit of equipment", name, tuple(self.units))
        return self.units[name]

    def mounted_in(self, cutout: str) -> tuple[EquipmentUnit, ...]:
        """The units that are mounted in a cutout of this name."""
        return tuple(unit for unit in self.units.values() if unit.cutout == cutout)

    def giving(self, functions: Collection[Function]) -> tuple[EquipmentUnit, ...]:
        """Units of the panel that give at least half of these functions: those that give most of them, and least else,
        first.
        """
        given = {unit.name: len(set(unit.provides) & set(functions)) for unit in self.units.values() if unit.cutout}
        enough = [self.units[name] for name, count in given.items() if 0 < len(functions) <= 2 * count]
        return tuple(sorted(enough, key=lambda unit: (-given[unit.name], len(unit.provides), unit.title)))

    @cached_property
    def by_cutout(self) -> dict[str, EquipmentUnit]:
        """The unit of each cutout that one unit alone is mounted in."""
        return {each.cutout: each for each in self.units.values() if each.cutout and self._is_alone(each.cutout)}

    def _is_alone(self, cutout: str) -> bool:
        return len(self.mounted_in(cutout)) == 1

    def search(self, text: str) -> list[EquipmentUnit]:
        """The units that suit every word of `text`, best first; all of them where it is blank."""
        return [self.units[name] for name in self._index.search(text)]

    @cached_property
    def _index(self) -> Index:
        return Index((unit.name, unit.title, self._more(unit)) for unit in self.units.values())

    def _more(self, unit: EquipmentUnit) -> str:
        return " ".join((*unit.words, *unit.provides, *unit.supplies, self.families[unit.family], unit.name))


@cache
def packaged_equipment() -> EquipmentLibrary:
    """The units that come with panelcad. Raises `UnusableInput` where the installation is damaged."""
    return read_equipment(folder("cutouts") / "equipment")


def whole_equipment(own: Path | None = None) -> EquipmentLibrary:
    """The packaged units and the user's own, which stand in for packaged ones of their name. Raises `UnusableInput`."""
    from panelcad.library.catalogue import user_folder  # noqa: PLC0415 - only where the user's own files are read

    packaged, users = packaged_equipment(), read_equipment((own or user_folder()) / "equipment")
    return EquipmentLibrary({**packaged.units, **users.units}, {**packaged.families, **users.families})


def read_equipment(place: Path) -> EquipmentLibrary:
    """The units of a folder's TOML files. Raises `UnusableInput` with one sentence for the first that is unusable."""
    units: dict[str, EquipmentUnit] = {}
    families: dict[str, str] = {}
    for file in sorted(place.glob("*.toml")):
        head = _head(file)
        families[head.family] = head.title
        for i, plain in enumerate(head.units, 1):
            unit = _unit(plain, head, file, f"units {i}")
            if unit.name in units:
                raise UnusableInput(
                    str(file), f"units {i}, name '{unit.name}'", "this name is used already", "a name of its own"
                )
            units[unit.name] = unit
    return EquipmentLibrary(units, families)


def _head(file: Path) -> _Head:
    try:
        return _Head.model_validate(read_toml(file, "a file of equipment"))
    except ValidationError as error:
        raise first_fault(error, str(file)) from None


def _unit(plain: dict[str, Any], head: _Head, file: Path, place: str) -> EquipmentUnit:
    named = f"{place} ('{plain['name']}')" if isinstance(plain.get("name"), str) else place
    shared = {"source": head.source, "currency": head.currency, "family": head.family}
    try:
        return EquipmentUnit.model_validate({**shared, **plain})
    except ValidationError as error:
        raise first_fault(error, str(file), named) from None
