from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from panelcad.errors import UnreadableQuantity
from panelcad.units import (
    LengthUnit,
    MassUnit,
    format_mass,
    format_moment,
    format_money,
    mass_unit,
    parse_mass,
    parse_money,
)


def test_a_pound_is_what_the_agreement_of_1959_says() -> None:
    assert parse_mass("1 lb", MassUnit.KG) == 0.45359237


@pytest.mark.parametrize(
    ("text", "kg"), [("2", 0.90718474), ("2.5kg", 2.5), ("0,5 LB", 0.226796185), (".5 lbs", 0.226796185)]
)
def test_typed_masses(text: str, kg: float) -> None:
    assert parse_mass(text, MassUnit.LB) == kg


@pytest.mark.parametrize("text", ["", "-2 lb", "2 stone", "two", "1..2"])
def test_what_is_no_mass_is_refused(text: str) -> None:
    with pytest.raises(UnreadableQuantity, match="a mass such as"):
        parse_mass(text, MassUnit.KG)


@given(st.integers(0, 10**7))
def test_every_hundredth_of_a_pound_comes_back(hundredths: int) -> None:
    text = f"{hundredths // 100}.{hundredths % 100:02d} lb"
    assert format_mass(parse_mass(text, MassUnit.KG), MassUnit.LB) == text


def test_mass_and_moment_are_read_in_the_unit_of_the_file() -> None:
    assert mass_unit(LengthUnit.INCH) is MassUnit.LB
    assert format_mass(-0.0001, MassUnit.KG) == "0.00 kg"
    assert format_moment(0.45359237 * 25.4 * 12391, LengthUnit.INCH) == "12391.0 lb·in"
    assert format_moment(1500.0, LengthUnit.MM) == "1.5 kg·m"


@pytest.mark.parametrize(
    ("text", "amount"),
    [
        ("1250", "1250"),
        ("1,250.00", "1250.00"),
        ("1.250,00", "1250.00"),
        ("1250,5", "1250.5"),
        ("12'345.60", "12345.60"),
    ],
)
def test_typed_money(text: str, amount: str) -> None:
    assert parse_money(text) == Decimal(amount)


@pytest.mark.parametrize("text", ["", "12 dollars", "1,2,3", "1e5", "nan"])
def test_what_is_no_money_is_refused(text: str) -> None:
    with pytest.raises(UnreadableQuantity):
        parse_money(text)


def test_money_is_rounded_half_up_as_invoices_are() -> None:
    assert format_money(Decimal("12345.605"), "USD") == "USD 12,345.61"
    assert format_money(Decimal("-0.001"), "EUR") == "EUR 0.00"
