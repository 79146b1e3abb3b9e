from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from panelcad import units
from panelcad.errors import UnreadableQuantity
from panelcad.units import LengthUnit

INCH, MM = LengthUnit.INCH, LengthUnit.MM
lengths = st.floats(-90_000, 90_000).map(units.rounded)


def test_an_inch_is_25_4_mm() -> None:
    """NIST Special Publication 811 (2008), appendix B.8: inch to millimetre, 25.4 exactly."""
    assert units.parse_length("1 in", MM) == 25.4
    assert units.parse_length("100 in", MM) == 2540.0


@given(lengths, st.sampled_from(LengthUnit))
def test_every_printed_number_is_rounded_half_away_from_zero_from_the_exact_nanometre(
    mm: float, unit: LengthUnit
) -> None:
    """Against decimal's own ROUND_HALF_UP of the exact quotient."""
    exact = Fraction(units.to_nanometre(mm), 25_400_000 if unit is INCH else 1_000_000)
    places = units.decimals(unit)
    digits = Decimal(exact.numerator * 10**places) / Decimal(exact.denominator)
    wanted = digits.quantize(Decimal(1), ROUND_HALF_UP).scaleb(-places)
    assert Decimal(units.format_number(mm, unit)) == wanted


def test_halves_of_a_hundredth_go_one_way() -> None:
    shown = [units.format_number(mm, MM) for mm in (28.575, 79.375, 57.145, -28.575, -0.004)]
    assert shown == ["28.58", "79.38", "57.15", "-28.58", "0.00"]


@pytest.mark.parametrize(
    "text", ["3 1/8", "3.125in", "79.375 mm", '3-1/8"', "3,125 in", "25/8", "3 1/8 inches", "3 1⁄8"]
)
def test_the_same_length_typed_in_many_ways(text: str) -> None:
    assert units.parse_length(text, INCH) == 79.375


def sixty_fourths() -> list[int]:
    return list(range(6401))


def test_every_sixty_fourth_up_to_100_in_is_a_whole_number_of_nanometres_however_it_is_typed() -> None:
    """1/64 in is 396,875 nm exactly (25.4 mm / 64)."""
    for parts in sixty_fourths():
        whole, over = divmod(parts, 64)
        decimal = f"{Fraction(parts, 64).__float__():.6f} in"
        for text in (f"{whole} {over}/64", f"{parts}/64in", f"{whole} + {over}/64", decimal):
            assert units.to_nanometre(units.parse_length(text, INCH)) == parts * 396_875


def test_every_sixty_fourth_up_to_100_in_comes_back_from_its_texts_and_its_file_number() -> None:
    for parts in sixty_fourths():
        mm = units.parse_length(f"{parts}/64in", MM)
        assert units.parse_length(units.format_fraction(mm), INCH) == mm
        assert units.parse_length(units.format_exact(mm, INCH), INCH) == mm
        assert units.parse_length(units.format_exact(mm, MM), MM) == mm
        assert units.rounded(units.in_unit(mm, INCH) * INCH.mm) == mm


@given(lengths, st.sampled_from(LengthUnit))
def test_a_length_shown_for_editing_reads_back_to_the_nanometre(mm: float, unit: LengthUnit) -> None:
    assert units.parse_length(units.format_exact(mm, unit), unit) == mm


@given(lengths, st.sampled_from(LengthUnit))
def test_a_length_in_a_file_reads_back_to_the_nanometre(mm: float, unit: LengthUnit) -> None:
    assert units.rounded(units.in_unit(mm, unit) * unit.mm) == mm


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("", "'' cannot be read; expected a length such as 3 1/8, 3.125in, 79.4 mm or 2*1.5in + 1/4."),
        ("3 foot", "'3 foot' cannot be read; expected a unit in place of 'foot': a length such as 3 1/8"),
        ("1/0", "expected a fraction that does not divide by zero: a length"),
        ("100.1 m", "expected a unit in place of 'm'"),
        ("100001 mm", "expected a length of at most 100 m."),
        ("1e9", "expected a unit in place of 'e'"),
        ("nan", "cannot be read"),
    ],
)
def test_unreadable_lengths_get_one_sentence(text: str, expected: str) -> None:
    with pytest.raises(UnreadableQuantity) as caught:
        units.parse_length(text, INCH)
    assert expected in str(caught.value)


def test_readings_have_their_decimals_and_never_a_minus_zero() -> None:
    assert units.format_length(79.375, INCH) == "3.125 in"
    assert units.format_length(79.375, MM) == "79.38 mm"
    assert units.format_length(-0.001, MM) == "0.00 mm"
    assert units.format_fraction(-3.175) == "-1/8"
    assert units.format_fraction(1.0) == "0.03937008"


@pytest.mark.parametrize(
    ("text", "degrees"),
    [("45", 45.0), ("22,5°", 22.5), ("−90 deg", -90.0), ("90 - 7 1/2", 82.5), ("360/7", 51.428571429)],
)
def test_angles(text: str, degrees: float) -> None:
    assert units.parse_angle(text) == degrees


@pytest.mark.parametrize("text", ["", "nan", "inf", "4000", "ten", "45 in", "45/0"])
def test_unreadable_angles(text: str) -> None:
    with pytest.raises(UnreadableQuantity):
        units.parse_angle(text)
