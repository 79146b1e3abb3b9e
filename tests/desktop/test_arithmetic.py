import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from panelcad.desktop.arithmetic import evaluate_length
from panelcad.errors import UnreadableQuantity
from panelcad.units import LengthUnit

INCH, MM = LengthUnit.INCH, LengthUnit.MM


@pytest.mark.parametrize(
    ("text", "unit", "mm"),
    [
        ("3 1/8 + 0.25", INCH, 85.725),
        ("3-1/8 + 1/4", INCH, 85.725),
        ('3 1/8" - 2 mm', MM, 77.375),
        ("2 * 3 in", MM, 152.4),
        ("3 in × 2", MM, 152.4),
        ("79,4 mm + 0,6", MM, 80.0),
        ("(79.4 mm + 2 in) / 2", MM, 65.1),
        ("10 - 2 - 3", MM, 5.0),
        ("-3 + 1", MM, -2.0),
        ("2 + 3 * 4", MM, 14.0),
        ("6.25in / 2", MM, 79.375),
        ("1/2", INCH, 12.7),
        ("1 in / 1 in + 1", MM, 2.0),
        ("10−4", MM, 6.0),
    ],
)
def test_arithmetic_is_what_it_looks_like(text, unit, mm) -> None:
    assert evaluate_length(text, unit) == mm


@pytest.mark.parametrize(
    "text", ["", "+", "3 +", "3 in * 2 in", "(3", "3)", "1/0", "5 / (2 - 2)", "3 apples", "1e5", "9" * 400, "2 ** 3"]
)
def test_nonsense_is_refused_in_one_sentence(text) -> None:
    with pytest.raises(UnreadableQuantity, match="cannot be read"):
        evaluate_length(text, MM)


@given(a=st.integers(0, 6400), b=st.integers(1, 6400))
@settings(max_examples=50)
def test_sums_of_sixty_fourths_are_exact(a, b) -> None:
    text = f"{a // 64} {a % 64}/64 + {b // 64} {b % 64}/64"
    assert evaluate_length(text, INCH) == round((a + b) * 25.4 / 64, 6)
