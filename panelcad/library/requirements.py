"""Lists of required equipment that come with panelcad, and those of the user's own folder: TOML, a list a file."""

from collections.abc import Iterable
from functools import cache
from pathlib import Path

from pydantic import ValidationError

from panelcad.errors import UnknownName, UnusableInput
from panelcad.library.packaged import folder
from panelcad.library.toml_file import read_toml
from panelcad.model.faults import first_fault
from panelcad.model.requirement import RequirementList


def read_requirements(file: Path) -> RequirementList:
    """The list in a file. Raises `UnusableInput` with one sentence: file, place, problem, what is expected."""
    try:
        return RequirementList.model_validate(read_toml(file, "a list of required equipment"))
    except ValidationError as error:
        raise first_fault(error, str(file)) from None


@cache
def packaged_requirements() -> dict[str, RequirementList]:
    """The lists that come with panelcad, by name. Raises `UnusableInput` where the installation is damaged."""
    return _read(folder("cutouts") / "requirements")


def whole_requirements(own: Path | None = None) -> dict[str, RequirementList]:
    """The packaged lists and the user's own, by name. Raises `UnusableInput`."""
    from panelcad.library.catalogue import user_folder  # noqa: PLC0415 - only where the user's own files are read

    return {**packaged_requirements(), **_read((own or user_folder()) / "requirements")}


def requirement_lists(names: Iterable[str], own: Path | None = None) -> tuple[RequirementList, ...]:
    """The lists of these names. Raises `UnknownName`."""
    known = whole_requirements(own)
    return tuple(_known(name, known) for name in names)


def _known(name: str, known: dict[str, RequirementList]) -> RequirementList:
    if name not in known:
        raise UnknownName("list of required equipment", name, tuple(known))
    return known[name]


def _read(place: Path) -> dict[str, RequirementList]:
    found: dict[str, RequirementList] = {}
    for file in sorted(place.glob("*.toml")):
        listed = read_requirements(file)
        if listed.name in found:
            raise UnusableInput(str(file), f"name '{listed.name}'", "this name is used already", "a name of its own")
        found[listed.name] = listed
    return found
