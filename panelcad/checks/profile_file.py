"""A shop's own limits as a TOML file, and how they differ from the defaults.

    name = "Our shop"
    unit = "in"

    [limits]
    web_advised = 0.3
    edge_distance_plain = 2.5

    [zones]
    "vertical speed" = "primary"

What the file leaves out keeps its default.
"""

import json
from collections.abc import Iterator
from difflib import get_close_matches
from functools import cache
from pathlib import Path
from typing import Any, Final, NamedTuple

from pydantic import ValidationError

from panelcad.errors import UnusableInput
from panelcad.library.toml_file import read_toml
from panelcad.model.base import in_file_unit
from panelcad.model.faults import first_fault
from panelcad.model.function import Function
from panelcad.model.profile import Profile, limit_source
from panelcad.model.view_zones import DEFAULT_ZONES, FunctionZone, ViewZone, default_zone, zone_source
from panelcad.units import MM_PER_INCH, LengthUnit, format_exact, format_length

_KIND: Final = "a shop's limits in TOML: name, unit and a table of limits"
_KEYS: Final = frozenset({"name", "unit", "limits", "zones"})


class ZoneDifference(NamedTuple):
    """A function that belongs in another zone of the pilot's view than by default."""

    function: Function
    zone: ViewZone

    @property
    def name(self) -> str:
        return f"zones.{self.function.value}"

    def text(self, _: LengthUnit) -> str:
        """Such as "Zone of the pilot's view for vertical speed: primary instead of important"."""
        default = default_zone(self.function).value
        return f"Zone of the pilot's view for {self.function.value}: {self.zone.value} instead of {default}"


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
        raise UnusableInput(str(file), unknown[0], "this key is not known", "name, unit or a table [limits] or [zones]")
    limits, zones = _table(raw, "limits", file), _table(raw, "zones", file)
    try:
        unit = LengthUnit(raw.get("unit", ""))
    except ValueError:
        raise UnusableInput(str(file), "unit", f"'{raw.get('unit', '')}' is no unit", "in or mm") from None
    plain = {key: _number(value) for key, value in limits.items()}
    if "zones" in plain:
        raise UnusableInput(str(file), "limits, zones", "it is no limit", "a table of its own, [zones]")
    plain |= {"name": raw.get("name", file.stem), "zones": [_zone(*each, file) for each in zones.items()]}
    try:
        return Profile.model_validate(plain, context=in_file_unit(unit))
    except ValidationError as error:
        raise first_fault(error, str(file), "limits") from None


def _table(raw: dict[str, Any], name: str, file: Path) -> dict[str, Any]:
    table = raw.get(name, {})
    if not isinstance(table, dict):
        raise UnusableInput(str(file), name, "it is no table", f"a table such as [{name}]")
    return table


def _zone(function: str, zone: Any, file: Path) -> FunctionZone:
    functions, zones = ([each.value for each in kind] for kind in (Function, ViewZone))
    if function not in functions:
        nearest = ", ".join(get_close_matches(function, functions) or functions)
        raise UnusableInput(str(file), f"zones, {function}", "no function bears this name", f"such as {nearest}")
    if zone not in zones:
        raise UnusableInput(str(file), f"zones, {function}", f"{zone!r} is no zone", f"one of {', '.join(zones)}")
    return FunctionZone(function=Function(function), zone=ViewZone(zone))


def profile_text(profile: Profile, unit: LengthUnit) -> str:
    """A TOML file of all limits for a shop to edit, each under its title and source; reads back as the same profile."""
    head = (f"name = {json.dumps(profile.name, ensure_ascii=False)}", f'unit = "{unit.value}"', "", "[limits]")
    return "\n".join((*head, *_lines(profile, unit), "", "[zones]", *_zone_lines(profile), ""))


def differences(profile: Profile) -> tuple[Difference | ZoneDifference, ...]:
    """The limits in which a profile is not as the defaults, in the profile's order, then the zones."""
    defaults = Profile()
    limits = (
        Difference(name, title_of(name), getattr(defaults, name), getattr(profile, name))
        for name in limit_names()
        if getattr(profile, name) != getattr(defaults, name)
    )
    return (*limits, *(ZoneDifference(each.function, each.zone) for each in profile.zones))


def limit_names() -> tuple[str, ...]:
    """Those that are one number each."""
    return tuple(name for name in Profile.model_fields if name not in {"name", "zones"})


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


def _zone_lines(profile: Profile) -> Iterator[str]:
    yield f"# Where a function belongs in the pilot's view: {', '.join(zone.value for zone in ViewZone)}"
    yield f"# ({ViewZone.ANYWHERE.value} for every function that is not told)"
    own = {each.function: each.zone for each in profile.zones}
    said = ""
    for function in dict.fromkeys((*DEFAULT_ZONES, *own)):
        source = f"# {zone_source(function)}"
        if source != said:
            yield source
        said = source
        yield f'"{function.value}" = "{own.get(function, default_zone(function)).value}"'


def _number(value: Any) -> Any:
    """TOML's whole numbers count as numbers too."""
    return float(value) if isinstance(value, int) and not isinstance(value, bool) else value
