"""A shop's own limits as a TOML file, and how they differ from the defaults.

    name = "Our shop"
    unit = "in"

    [limits]
    web_advised = 0.3
    edge_distance_plain = 2.5

What the file leaves out keeps its default.
"""

import json
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import Any, Final, NamedTuple

from pydantic import ValidationError

from panelcad.errors import UnusableInput
from panelcad.library.toml_file import read_toml
from panelcad.model.base import in_file_unit
from panelcad.model.faults import first_fault
from panelcad.model.profile import Profile, limit_source
from panelcad.units import MM_PER_INCH, LengthUnit, format_exact, format_length

_KIND: Final = "a shop's limits in TOML: name, unit and a table of limits"
_KEYS: Final = frozenset({"name", "unit", "limits"})


class Difference(NamedTuple):
    """A limit that is not the default: both values in mm or as plain numbers, None where not set."""

    name: str
    title: str
    default: float | None
    value: float | None

    def text(self, unit: LengthUnit) -> str:
        """Such as 'Web between neighbouring cuts, advised: 0.300 in instead of 0.250 in'."""
        value, default = (limit_text(self.name, each, unit) for each in (self.value, self.default))
        return f"{self.title}: {value} instead of {default}"


def read_profile(file: Path) -> Profile:
    """The profile in a TOML file. Raises `UnusableInput`."""
    raw = read_toml(file, _KIND)
    unknown = sorted(set(raw) - _KEYS)
    if unknown:
        raise UnusableInput(str(file), unknown[0], "this key is not known", "name, unit or a table [limits]")
    limits = raw.get("limits", {})
    if not isinstance(limits, dict):
        raise UnusableInput(str(file), "limits", "it is no table", "a table such as [limits]")
    try:
        unit = LengthUnit(raw.get("unit", ""))
    except ValueError:
        raise UnusableInput(str(file), "unit", f"'{raw.get('unit', '')}' is no unit", "in or mm") from None
    plain = {key: _number(value) for key, value in limits.items()}
    try:
        return Profile.model_validate(plain | {"name": raw.get("name", file.stem)}, context=in_file_unit(unit))
    except ValidationError as error:
        raise first_fault(error, str(file), "limits") from None


def profile_text(profile: Profile, unit: LengthUnit) -> str:
    """A TOML file of all limits for a shop to edit, each under its title and source; reads back as the same profile."""
    head = (f"name = {json.dumps(profile.name, ensure_ascii=False)}", f'unit = "{unit.value}"', "", "[limits]")
    return "\n".join((*head, *_lines(profile, unit), ""))


def differences(profile: Profile) -> tuple[Difference, ...]:
    """The limits in which a profile is not as the defaults, in the profile's order."""
    defaults = Profile()
    return tuple(
        Difference(name, title_of(name), getattr(defaults, name), getattr(profile, name))
        for name in limit_names()
        if getattr(profile, name) != getattr(defaults, name)
    )


def limit_names() -> tuple[str, ...]:
    return tuple(name for name in Profile.model_fields if name != "name")


def title_of(name: str) -> str:
    return Profile.model_fields[name].title or name


@cache
def length_limits() -> frozenset[str]:
    """The names of the limits that are lengths; the others are plain numbers."""
    values: dict[str, Any] = dict.fromkeys(limit_names(), MM_PER_INCH)
    probe = Profile.model_construct(**values)
    shown = probe.model_dump(context=in_file_unit(LengthUnit.INCH))
    return frozenset(name for name in limit_names() if shown[name] == 1.0)


def limit_text(name: str, value: float | None, unit: LengthUnit) -> str:
    """A limit's value for a reader: '0.250 in', '2', 'not set'."""
    if value is None:
        return "not set"
    return format_length(value, unit) if name in length_limits() else f"{round(value, 4):g}"


def _lines(profile: Profile, unit: LengthUnit) -> Iterator[str]:
    for name in limit_names():
        value = getattr(profile, name)
        yield f"# {title_of(name)}; {limit_source(name)}"
        if value is None:
            yield f"# {name} = not set"
        else:
            yield f"{name} = {format_exact(value, unit) if name in length_limits() else repr(float(value))}"


def _number(value: Any) -> Any:
    """TOML's whole numbers count as numbers too."""
    return float(value) if isinstance(value, int) and not isinstance(value, bool) else value
