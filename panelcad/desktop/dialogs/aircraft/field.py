"""What a field of the aircraft's data holds, and how its text is read and written; blank is not known."""

from collections.abc import Callable
from dataclasses import dataclass
from enum import Enum
from typing import Any, Final

from panelcad.errors import UnreadableQuantity
from panelcad.units import LengthUnit, format_exact, mass_unit, parse_length, parse_mass, parse_money


class Kind(Enum):
    WORDS = "words"
    LENGTH = "length"
    MASS = "mass"
    NUMBER = "number"
    COUNT = "count"
    MONEY = "money"
    NAMES = "names, comma between them"
    CHOICE = "choice"


@dataclass(frozen=True)
class Field:
    """`choices` are value and words; the value None stands for what is not known."""

    key: str
    title: str
    kind: Kind
    choices: tuple[tuple[Any, str], ...] = ()
    needed: str = ""
    """What is expected where it must not be blank."""

    def headed(self, unit: LengthUnit) -> str:
        """The title with the unit it is typed in."""
        units = {Kind.LENGTH: unit.value, Kind.MASS: mass_unit(unit).value}
        return f"{self.title}, {units[self.kind]}" if self.kind in units else self.title


def read(field: Field, text: str, unit: LengthUnit) -> Any:
    """The value of typed text in mm, kg or plain; None where it is blank. Raises `UnreadableQuantity`."""
    if not text.strip():
        if field.needed:
            raise UnreadableQuantity(text, f"{field.needed} for {field.title.lower()}")
        return None
    return _READERS[field.kind](text.strip(), unit)


def write(field: Field, value: Any, unit: LengthUnit) -> str:
    """The text of a value; blank for None."""
    return "" if value is None else _WRITERS[field.kind](value, unit)


def read_again(field: Field, text: str, shown: Any, unit: LengthUnit) -> Any:
    """As `read`; the value `shown` itself where its text was left alone, so that no digit is lost by looking."""
    return shown if shown is not None and text == write(field, shown, unit) else read(field, text, unit)


def _trimmed(value: float) -> str:
    """Three decimals at most."""
    return f"{value:.3f}".rstrip("0").rstrip(".")


def _number(text: str, _unit: LengthUnit) -> float:
    try:
        return float(text.replace(",", ".").replace("−", "-"))
    except ValueError:
        raise UnreadableQuantity(text, "a number such as 60 or 0.75") from None


def _count(text: str, _unit: LengthUnit) -> int:
    if not text.isdigit():
        raise UnreadableQuantity(text, "a whole number")
    return int(text)


def _names(text: str, _unit: LengthUnit) -> tuple[str, ...]:
    return tuple(name.strip() for name in text.split(",") if name.strip())


Reader = Callable[[str, LengthUnit], Any]
Writer = Callable[[Any, LengthUnit], str]
_READERS: Final[dict[Kind, Reader]] = {
    Kind.WORDS: lambda text, _: text,
    Kind.LENGTH: parse_length,
    Kind.MASS: lambda text, unit: parse_mass(text, mass_unit(unit)),
    Kind.NUMBER: _number,
    Kind.COUNT: _count,
    Kind.MONEY: lambda text, _: parse_money(text),
    Kind.NAMES: _names,
}
_WRITERS: Final[dict[Kind, Writer]] = {
    Kind.WORDS: lambda value, _: str(value),
    Kind.LENGTH: format_exact,
    Kind.MASS: lambda value, unit: _trimmed(value / mass_unit(unit).kg),
    Kind.NUMBER: lambda value, _: f"{value:.12g}",
    Kind.COUNT: lambda value, _: str(value),
    Kind.MONEY: lambda value, _: str(value),
    Kind.NAMES: lambda value, _: ", ".join(value),
}
