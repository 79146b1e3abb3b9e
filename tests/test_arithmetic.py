import contextlib
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from panelcad.arithmetic import DEEPEST, LONGEST, NotArithmetic, evaluate

UNITS = {"mm": Fraction(1), "in": Fraction(254, 10), '"': Fraction(254, 10)}


def value(text: str, default: str = "mm") -> Fraction:
    return evaluate(text, UNITS, default).amount


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("3 1/8 + 0.25", Fraction(27, 8)),
        ("3-1/8", Fraction(25, 8)),
        ("3 - 1/8", Fraction(23, 8)),
        ("3 -1/8", Fraction(23, 8)),
        ("-3 1/8", Fraction(-25, 8)),
        ("2*1/8", Fraction(1, 4)),
        ("2.5/8/4", Fraction(5, 64)),
        ("10/4/2", Fraction(5, 4)),
        ("(1 + 2) * 3 - 4/2", Fraction(7)),
        ("2 × 3 ÷ 4", Fraction(3, 2)),
        ("−(1,5 + .5)", Fraction(-2)),
        ("1 - -2", Fraction(3)),
        ("8.", Fraction(8)),
    ],
)
def test_plain_numbers(text: str, expected: Fraction) -> None:
    assert value(text) == expected


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("2*1.5in", Fraction("76.2")),
        ("1in + 1", Fraction("26.4")),
        ("1 + 1in", Fraction("26.4")),
        ('3 1/8" / 2', Fraction("39.6875")),
        ("(1 + 1/2)in", Fraction("38.1")),
        ("1 in - 25.4 mm", Fraction(0)),
        ("1/8in*2", Fraction("6.35")),
    ],
)
def test_numbers_with_units(text: str, expected: Fraction) -> None:
    assert value(text) == expected


def test_the_first_unit_typed_is_told_and_the_readers_unit_is_meant_where_none_is() -> None:
    assert evaluate("2 * (1 mm + 1 in)", UNITS, "in").word == "mm"
    assert evaluate("1 + 1", UNITS, "in").word is None
    assert value("1 + 1", "in") == Fraction("50.8")


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("", "a number where one is missing"),
        ("1 +", "a number where one is missing"),
        ("1 2", "a sign between two numbers"),
        ("(1", "a closing parenthesis"),
        ("1)", "a sign between two numbers"),
        ("1/0", "a fraction that does not divide by zero"),
        ("1/(2-2)", "no division by zero"),
        ("3 9/8", "a fraction below one after a whole number"),
        ("1in * 1in", "a length times a plain number"),
        ("1 / 1in + 2*(1/(2in))", "a division by a plain number"),
        ("1 furlong", "a unit in place of 'furlong'"),
        ("1 in mm", "a sign between two numbers"),
        ("(1 in) mm", "one unit only"),
        ("2 ** 3", "a number where one is missing"),
        ("__import__", "no '_'"),
        ("1; 2", "no ';'"),
        ("(" * (DEEPEST + 1) + "1" + ")" * (DEEPEST + 1), f"at most {DEEPEST} parentheses in each other"),
        ("1" * (LONGEST + 1), f"at most {LONGEST} characters"),
    ],
)
def test_anything_else_says_what_is_expected(text: str, expected: str) -> None:
    with pytest.raises(NotArithmetic) as caught:
        value(text)
    assert str(caught.value) == expected


plain = st.integers(0, 99).map(str) | st.sampled_from(["0.5", "1/3", "2 1/4"])
sums = st.recursive(
    plain,
    lambda inner: st.builds("({} {} {})".format, inner, st.sampled_from("+-*"), inner) | inner.map("-{}".format),
    max_leaves=6,
)


def by_python(text: str) -> Fraction:
    """The same sum worked out by Python's own arithmetic, every number a fraction."""
    source = text.replace("2 1/4", "9/4").replace("0.5", "1/2")
    for name, number in (("9/4", "F(9,4)"), ("1/3", "F(1,3)"), ("1/2", "F(1,2)")):
        source = source.replace(name, number)
    return Fraction(eval(source, {"F": Fraction}))  # noqa: S307 - a yardstick made by this test


@given(sums)
def test_sums_agree_with_pythons_fractions(text: str) -> None:
    assert value(text) == by_python(text)


@given(st.text(max_size=30))
def test_any_text_gives_a_value_or_is_no_arithmetic(text: str) -> None:
    with contextlib.suppress(NotArithmetic):
        assert isinstance(value(text), Fraction)
