"""Quantities other than lengths as records hold them: kilograms, amperes, exact money, hours, shares."""

from decimal import Decimal, InvalidOperation
from typing import Annotated, Any

from pydantic import BeforeValidator, Field, StringConstraints

from panelcad.errors import UnreadableQuantity
from panelcad.model.base import Number
from panelcad.units import MassUnit, parse_mass


def _mass_in(value: Any) -> Any:
    """Kilograms; a file may also say '2.4 lb'."""
    if not isinstance(value, str):
        return value
    try:
        return parse_mass(value, MassUnit.KG)
    except UnreadableQuantity:
        raise ValueError("a mass in kg, or a text such as '2.4 lb', is expected") from None


def _exact(value: Any) -> Any:
    """A decimal as it was typed: 0.1 in a file is one tenth, not the nearest binary fraction."""
    if isinstance(value, bool) or not isinstance(value, str | int | float | Decimal):
        raise ValueError("an exact number such as '1250.00' is expected")  # noqa: TRY004 - pydantic wants ValueError
    try:
        return Decimal(str(value))
    except InvalidOperation:
        raise ValueError("an exact number such as '1250.00' is expected") from None


Mass = Annotated[Annotated[Number, Field(ge=0, le=100_000)], BeforeValidator(_mass_in)]
"""Kilograms, never negative."""
Amperes = Annotated[Number, Field(ge=0, le=10_000)]
PositiveAmperes = Annotated[Number, Field(gt=0, le=10_000)]
Volts = Annotated[Number, Field(gt=0, le=1000)]
Minutes = Annotated[Number, Field(ge=0, le=10_000)]
Exact = Annotated[Decimal, BeforeValidator(_exact), Field(max_digits=16, decimal_places=4, allow_inf_nan=False)]
Money = Annotated[Exact, Field(ge=0)]
"""An exact amount, never negative; its currency stands beside it."""
Hours = Annotated[Exact, Field(ge=0, le=100_000)]
Percent = Annotated[Exact, Field(ge=0, le=100)]
Currency = Annotated[str, StringConstraints(pattern=r"^[A-Z]{3}$")]
"""An ISO 4217 code."""
