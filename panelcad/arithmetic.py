"""Simple arithmetic in what people type: fractions, units, + - * / and parentheses. Exact, and nothing is executed.

A mixed number is written `3 1/8` or, without blanks, `3-1/8`; `3 - 1/8` subtracts. A number is plain or bears a unit: a
sum takes plain numbers in the reader's unit, a product has at most one factor with a unit.
"""

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Final

LONGEST: Final = 200
DEEPEST: Final = 20
_NUMBER: Final = r"(?P<decimal>\d+(?:[.,]\d*)?|[.,]\d+)"
_FRACTION: Final = r"(?P<fraction>(?:(?P<whole>\d+)(?:-|\s+))?(?P<over>\d+)\s*[/⁄]\s*(?P<under>\d+))(?![\d.,])"
_REST: Final = r"""(?P<word>[^\W\d_]+|''|["”″])|(?P<sign>[-+−*×·/⁄÷()])"""
_TOKEN: Final = re.compile(rf"\s*(?:{_FRACTION}|{_NUMBER}|{_REST})")
_TOKEN_UNDER_A_BAR: Final = re.compile(rf"\s*(?:{_NUMBER}|{_REST})")
_PLAIN_SIGN: Final = {"−": "-", "×": "*", "·": "*", "⁄": "/", "÷": "/"}


class NotArithmetic(ValueError):
    """What is expected instead, in a few words."""


@dataclass(frozen=True)
class Quantity:
    """An amount in base units where it bears a unit, else a plain number; `word` is the first unit that was typed."""

    amount: Fraction
    word: str | None = None


Token = Fraction | str


def evaluate(text: str, units: Mapping[str, Fraction], default: str) -> Quantity:
    """The value of typed text. `units` says how many base units each word is; `default` is meant where none is typed.

    Raises `NotArithmetic`.
    """
    if len(text) > LONGEST:
        raise NotArithmetic(f"at most {LONGEST} characters")
    reader = _Reader(tuple(_tokens(text)), units, default)
    value = reader.sum()
    if not reader.is_done:
        raise NotArithmetic("a sign between two numbers")
    return value if value.word else Quantity(value.amount * units[default])


def _tokens(text: str) -> Iterator[Token]:
    """Numbers as fractions, units and signs as text. What follows a division sign is no numerator of its own."""
    at, last = 0, ""
    while text[at:].strip():
        match = (_TOKEN_UNDER_A_BAR if last == "/" else _TOKEN).match(text, at)
        if match is None:
            raise NotArithmetic(f"no '{text[at:].strip()[0]}'")
        token = _token(match)
        yield token
        at, last = match.end(), str(token)


def _token(match: re.Match[str]) -> Token:
    found = match.groupdict()
    if found["decimal"] is not None:
        return Fraction(found["decimal"].replace(",", ".").rstrip("."))
    if found.get("fraction") is not None:
        return _fraction(int(found["whole"] or 0), int(found["over"]), int(found["under"]), found["whole"] is not None)
    word = found["word"] or found["sign"]
    return _PLAIN_SIGN.get(word, word)


def _fraction(whole: int, over: int, under: int, is_mixed: bool) -> Fraction:  # noqa: FBT001 - said by the pattern
    if under == 0:
        raise NotArithmetic("a fraction that does not divide by zero")
    if is_mixed and over >= under:
        raise NotArithmetic("a fraction below one after a whole number")
    return whole + Fraction(over, under)


class _Reader:
    """Reads the tokens from left to right; each method takes what it names and gives its value."""

    def __init__(self, tokens: tuple[Token, ...], units: Mapping[str, Fraction], default: str) -> None:
        self._tokens = tokens
        self._units = units
        self._default = default
        self._at = 0
        self._depth = 0

    @property
    def is_done(self) -> bool:
        return self._at == len(self._tokens)

    def sum(self) -> Quantity:
        value = self._product()
        while sign := self._take("+", "-"):
            other = self._product()
            if value.word or other.word:
                value, other = self._with_unit(value), self._with_unit(other)
            value = Quantity(value.amount + (other.amount if sign == "+" else -other.amount), value.word)
        return value

    def _with_unit(self, value: Quantity) -> Quantity:
        return value if value.word else Quantity(value.amount * self._units[self._default], self._default)

    def _product(self) -> Quantity:
        value = self._signed()
        while sign := self._take("*", "/"):
            other = self._signed()
            value = _times(value, other) if sign == "*" else _over(value, other)
        return value

    def _signed(self) -> Quantity:
        is_negative = False
        while sign := self._take("+", "-"):
            is_negative ^= sign == "-"
        value = self._single()
        return Quantity(-value.amount, value.word) if is_negative else value

    def _single(self) -> Quantity:
        if self._take("("):
            value = self._in_parentheses()
        elif not self.is_done and isinstance(number := self._tokens[self._at], Fraction):
            self._at += 1
            value = Quantity(number)
        else:
            raise NotArithmetic("a number where one is missing")
        return self._unit_after(value)

    def _in_parentheses(self) -> Quantity:
        self._depth += 1
        if self._depth > DEEPEST:
            raise NotArithmetic(f"at most {DEEPEST} parentheses in each other")
        value = self.sum()
        if not self._take(")"):
            raise NotArithmetic("a closing parenthesis")
        self._depth -= 1
        return value

    def _unit_after(self, value: Quantity) -> Quantity:
        if self.is_done or not isinstance(word := self._tokens[self._at], str) or word in "+-*/()":
            return value
        if word.lower() not in self._units:
            raise NotArithmetic(f"a unit in place of '{word}'")
        if value.word:
            raise NotArithmetic("one unit only")
        self._at += 1
        return Quantity(value.amount * self._units[word.lower()], word.lower())

    def _take(self, *signs: str) -> str:
        if self.is_done or self._tokens[self._at] not in signs:
            return ""
        self._at += 1
        return str(self._tokens[self._at - 1])


def _times(a: Quantity, b: Quantity) -> Quantity:
    if a.word and b.word:
        raise NotArithmetic("a length times a plain number")
    return Quantity(a.amount * b.amount, a.word or b.word)


def _over(a: Quantity, b: Quantity) -> Quantity:
    if b.word:
        raise NotArithmetic("a division by a plain number")
    if b.amount == 0:
        raise NotArithmetic("no division by zero")
    return Quantity(a.amount / b.amount, a.word)
