"""The library: every cutout that comes with panelcad and those of the user's own folder."""

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache, cached_property
from pathlib import Path

from panelcad.errors import UnknownName, UnusableInput
from panelcad.library.family_file import Family, read_family
from panelcad.library.packaged import folder
from panelcad.library.search import Index
from panelcad.model.cutout import Cutout


@dataclass(frozen=True)
class Catalogue:
    """Cutouts by name and families by name, in reading order. `faults` tells of user's files that were left out."""

    cutouts: dict[str, Cutout]
    families: dict[str, Family]
    faults: tuple[UnusableInput, ...] = ()

    def cutout(self, name: str) -> Cutout:
        """The cutout of this name. Raises `UnknownName`."""
        if name not in self.cutouts:
            raise UnknownName("cutout", name, tuple(self.cutouts))
        return self.cutouts[name]

    def search(self, text: str) -> list[Cutout]:
        """The cutouts that suit every word of `text`, best first; all of them where it is blank."""
        return [self.cutouts[name] for name in self._index.search(text)]

    @cached_property
    def _index(self) -> Index:
        return Index(
            (cutout.name, cutout.title, " ".join((*cutout.words, self._family_title(cutout), cutout.name)))
            for cutout in self.cutouts.values()
        )

    def _family_title(self, cutout: Cutout) -> str:
        return self.families[cutout.family].title if cutout.family in self.families else cutout.family


def read_catalogue(*folders: Path) -> Catalogue:
    """The cutouts of these folders. Raises `UnusableInput` for the first file or name that cannot be used."""
    found = _read(Catalogue({}, {}), folders)
    if found.faults:
        raise found.faults[0]
    return found


@cache
def packaged_catalogue() -> Catalogue:
    """The cutouts that come with panelcad. Raises `UnusableInput` where the installation is damaged."""
    return read_catalogue(folder("cutouts"))


def user_folder() -> Path:
    """Where the user's own cutouts are kept; it need not exist yet."""
    from platformdirs import user_data_path  # noqa: PLC0415 - only needed where the user's own files are read

    return user_data_path("panelcad", appauthor=False) / "cutouts"


def whole_catalogue(own: Path | None = None) -> Catalogue:
    """The packaged cutouts and the user's own. Files of the user that cannot be used are left out and told."""
    return _read(packaged_catalogue(), (own or user_folder(),))


def _read(start: Catalogue, folders: Iterable[Path]) -> Catalogue:
    """`start` with what can be used of these folders; a file is taken whole or not at all."""
    result = start
    for file in (file for place in folders for file in sorted(place.glob("*.toml"))):
        try:
            result = _with_family(result, read_family(file))
        except UnusableInput as fault:
            result = Catalogue(result.cutouts, result.families, (*result.faults, fault))
    return result


def _with_family(catalogue: Catalogue, family: Family) -> Catalogue:
    taken = catalogue.families.get(family.name)
    if taken is not None:
        raise _clash(family, f"family '{family.name}'", taken.file)
    cutouts = dict(catalogue.cutouts)
    for i, cutout in enumerate(family.cutouts, 1):
        if cutout.name in cutouts:
            taken = catalogue.families.get(cutouts[cutout.name].family, family)
            raise _clash(family, f"cutouts {i}, name '{cutout.name}'", taken.file)
        cutouts[cutout.name] = cutout
    return Catalogue(cutouts, {**catalogue.families, family.name: family}, catalogue.faults)


def _clash(family: Family, place: str, taken: Path) -> UnusableInput:
    return UnusableInput(str(family.file), place, f"this name is used already in {taken}", "a name of its own")
