"""Lengths and numbers as people type them, with simple arithmetic: '3 1/8 + 0.25', '(79,4 mm + 2 in) / 2'."""

import re
from dataclasses import dataclass
from typing import Final

from panelcad.errors import UnreadableQuantity
from panelcad.units import LARGEST_LENGTH, LengthUnit, parse_length, rounded

_EXPECTED: Final = "a length such as 3 1/8, 79.4 mm or 3 1/8 + 0.25"
_TOKEN = re.compile(
    r"""\s*(?:
      (?P<length>(?:\d+(?:\s+|\s?-(?=\d+/)))?\d+\s?[/⁄]\s?\d+|\d+(?:[.,]\d*)?|[.,]\d+)\s*(?P<unit>[a-zA-Z]+|["”″]|'')?
      | (?P<sign>[-+−*×/÷()])
    )""",
    re.VERBOSE,
)
_SIGNS: Final = {"−": "-", "×": "*", "÷": "/"}


@dataclass(frozen=True)
class _Value:
    """`power` is 1 for a length in mm, 0 for a plain number."""

    number: float
    power: int


@dataclass(frozen=True)
class _Token:
    sign: str = ""
    text: str = ""
    unit: str = ""


def evaluate_length(text: str, unit: LengthUnit) -> float:
    """Millimetres, rounded to a nanometre, of typed arithmetic; numbers without a unit are in `unit`.

    A number beside × or ÷ may be plain: '2 × 3 in' and '3 / 4 in + 1' are what they look like.
    Raises `UnreadableQuantity`.

    >>> evaluate_length("3 1/8 + 0.25", LengthUnit.INCH)
    85.725
    """
    try:
        return parse_length(text, unit)
    except UnreadableQuantity:
        return _Reader(text, unit).length()


class _Reader:
    """A reader of sums of products, one token ahead."""

    def __init__(self, text: str, unit: LengthUnit) -> None:
        self._text = text
        self._unit = unit
        self._tokens = _tokens(text)
        self._next = 0

    def length(self) -> float:
        value = self._sum()
        if self._peek() is not None or value.power not in {0, 1}:
            raise UnreadableQuantity(self._text, _EXPECTED)
        mm = value.number * (self._unit.mm if value.power == 0 else 1.0)
        if not abs(mm) <= LARGEST_LENGTH:
            raise UnreadableQuantity(self._text, "a length of at most 100 m")
        return rounded(mm)

    def _peek(self) -> _Token | None:
        return self._tokens[self._next] if self._next < len(self._tokens) else None

    def _takes(self, signs: str) -> str:
        token = self._peek()
        if token is not None and token.sign and token.sign in signs:
            self._next += 1
            return token.sign
        return ""

    def _sum(self) -> _Value:
        value = self._product()
        while sign := self._takes("+-"):
            value = self._added(value, self._product(), 1.0 if sign == "+" else -1.0)
        return value

    def _added(self, a: _Value, b: _Value, factor: float) -> _Value:
        """A plain number beside a length is a length in the user's unit."""
        if a.power != b.power:
            a, b = self._as_length(a), self._as_length(b)
        return _Value(a.number + factor * b.number, a.power)

    def _as_length(self, value: _Value) -> _Value:
        if value.power == 0:
            return _Value(value.number * self._unit.mm, 1)
        if value.power != 1:
            raise UnreadableQuantity(self._text, _EXPECTED)
        return value

    def _product(self) -> _Value:
        value = self._factor()
        while sign := self._takes("*/"):
            other = self._factor()
            value = self._divided(value, other) if sign == "/" else self._times(value, other)
        return value

    def _times(self, a: _Value, b: _Value) -> _Value:
        return _Value(a.number * b.number, a.power + b.power)

    def _divided(self, a: _Value, b: _Value) -> _Value:
        if b.number == 0:
            raise UnreadableQuantity(self._text, "a division that is not by zero")
        return _Value(a.number / b.number, a.power - b.power)

    def _factor(self) -> _Value:
        if sign := self._takes("+-"):
            inner = self._factor()
            return _Value(-inner.number if sign == "-" else inner.number, inner.power)
        if self._takes("("):
            inner = self._sum()
            if not self._takes(")"):
                raise UnreadableQuantity(self._text, "a closing bracket")
            return inner
        return self._number()

    def _number(self) -> _Value:
        token = self._peek()
        if token is None or token.sign:
            raise UnreadableQuantity(self._text, _EXPECTED)
        self._next += 1
        if token.unit:
            return _Value(parse_length(f"{token.text} {token.unit}", self._unit), 1)
        return _Value(parse_length(token.text, LengthUnit.MM), 0)


def _tokens(text: str) -> list[_Token]:
    found: list[_Token] = []
    place = 0
    while place < len(text.rstrip()):
        match = _TOKEN.match(text, place)
        if match is None:
            raise UnreadableQuantity(text, _EXPECTED)
        sign = match["sign"] or ""
        found.append(_Token(_SIGNS.get(sign, sign), match["length"] or "", match["unit"] or ""))
        place = match.end()
    return found
