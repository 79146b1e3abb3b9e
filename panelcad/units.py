"""Lengths and other quantities: parse what people type, format what they read.

Inside panelcad a length is a float in millimetres, rounded to a whole nanometre where an edit or a file makes it.
"""

import re
from decimal import ROUND_HALF_UP, Decimal
from enum import StrEnum
from fractions import Fraction
from typing import Final

from panelcad.arithmetic import NotArithmetic, evaluate
from panelcad.errors import UnreadableQuantity

MM_PER_INCH: Final = 25.4
"""Exact by definition: international yard and pound agreement of 1959; NIST Special Publication 811, B.8."""

KG_PER_POUND: Final = 0.45359237
"""Exact by definition: international yard and pound agreement of 1959; NIST Special Publication 811, B.8."""

NM_PER_MM: Final = 1_000_000
LARGEST_LENGTH: Final = 100_000.0
"""A hundred metres: more than any light aircraft; what is larger is a slip of the pen or a hostile file."""
MOST_DEGREES: Final = 3600.0


class LengthUnit(StrEnum):
    MM = "mm"
    INCH = "in"

    @property
    def mm(self) -> float:
        """Millimetres in one unit."""
        return MM_PER_INCH if self is LengthUnit.INCH else 1.0


_UNIT_WORDS: Final = {
    "mm": LengthUnit.MM,
    "millimetre": LengthUnit.MM,
    "millimetres": LengthUnit.MM,
    "in": LengthUnit.INCH,
    "inch": LengthUnit.INCH,
    "inches": LengthUnit.INCH,
    '"': LengthUnit.INCH,
    "”": LengthUnit.INCH,
    "″": LengthUnit.INCH,
    "''": LengthUnit.INCH,
}
_MM: Final = {word: Fraction(round(unit.mm * 10), 10) for word, unit in _UNIT_WORDS.items()}
_MASS: Final = re.compile(r"^\s*(?P<number>\d+(?:[.,]\d*)?|[.,]\d+)\s*(?P<unit>[a-zA-Z]*)\s*$")
_EXPECTED: Final = "a length such as 3 1/8, 3.125in, 79.4 mm or 2*1.5in + 1/4"


def to_nanometre(mm: float) -> int:
    """Whole nanometres of a length in mm."""
    return round(mm * NM_PER_MM)


def rounded(mm: float) -> float:
    """The length in mm, rounded to a whole nanometre; 1/64 in is 396,875 nm exactly."""
    return to_nanometre(mm) / NM_PER_MM


def parse_length(text: str, unit: LengthUnit) -> float:
    """Millimetres, rounded to a nanometre, of what a person typed; `unit` is meant where the text names none.

    >>> parse_length("3 1/8", LengthUnit.INCH)
    79.375
    >>> parse_length("79,4 mm", LengthUnit.INCH)
    79.4
    >>> parse_length("2*(1.5in + 10mm)", LengthUnit.MM)
    96.2

    Raises `UnreadableQuantity`.
    """
    return parse_signed_length(text, unit)[0]


def parse_signed_length(text: str, unit: LengthUnit) -> tuple[float, LengthUnit]:
    """The length in mm and the first unit that was typed, or `unit`. Raises `UnreadableQuantity`."""
    try:
        value = evaluate(text, _MM, unit.value)
    except NotArithmetic as error:
        raise UnreadableQuantity(text[:60], f"{error}: {_EXPECTED}" if text.strip() else _EXPECTED) from None
    if abs(value.amount) > LARGEST_LENGTH:
        raise UnreadableQuantity(text[:60], "a length of at most 100 m")
    nanometres = round(value.amount * NM_PER_MM)
    return nanometres / NM_PER_MM, _UNIT_WORDS[value.word] if value.word else unit


def in_unit(mm: float, unit: LengthUnit) -> float:
    """The number a file or a report shows, to nine decimals (below a tenth of a nanometre)."""
    return round(mm / unit.mm, 9)


def decimals(unit: LengthUnit) -> int:
    """How many decimals a reading gets: 0.001 in, 0.01 mm."""
    return 3 if unit is LengthUnit.INCH else 2


def format_length(mm: float, unit: LengthUnit, *, places: int | None = None) -> str:
    """Text such as '3.125 in' or '79.38 mm'; three decimals of an inch or two of a millimetre unless told.

    >>> format_length(79.375, LengthUnit.INCH)
    '3.125 in'
    """
    return f"{format_number(mm, unit, places=places)} {unit.value}"


def format_number(mm: float, unit: LengthUnit, *, places: int | None = None) -> str:
    """As `format_length` without the unit; never '-0.00'. A half is rounded away from zero, of the exact nanometre.

    >>> format_number(28.575, LengthUnit.MM), format_number(79.375, LengthUnit.MM)
    ('28.58', '79.38')
    """
    digits = decimals(unit) if places is None else places
    whole = _halves_up(abs(to_nanometre(mm)) * 10**digits, round(unit.mm * NM_PER_MM))
    text = f"{Decimal(whole).scaleb(-digits):.{digits}f}"
    return f"-{text}" if mm < 0 and whole else text


def _halves_up(amount: int, by: int) -> int:
    """The quotient of two positive numbers, rounded to a whole one, a half upward."""
    return (2 * amount + by) // (2 * by)


def format_exact(mm: float, unit: LengthUnit) -> str:
    """The shortest number that reads back as the same nanometre, for edit fields; no unit.

    >>> format_exact(79.375, LengthUnit.INCH)
    '3.125'
    """
    for digits in range(1, 10):
        text = f"{mm / unit.mm:.{digits}f}"
        if to_nanometre(float(text) * unit.mm) == to_nanometre(mm):
            break
    trimmed = text.rstrip("0").rstrip(".")
    return "0" if trimmed in {"-0", ""} else trimmed


def format_tolerance(mm: float, unit: LengthUnit) -> str:
    """Exact, for a rounded one would be another tolerance; no unit.

    In inches it has no fewer decimals than the dimension beside it, as ASME Y14.5 asks (from memory); in mm no zeros
    are added.

    >>> format_tolerance(0.254, LengthUnit.INCH), format_tolerance(0.1, LengthUnit.MM)
    ('0.010', '0.1')
    """
    exact = format_exact(mm, unit)
    if unit is LengthUnit.MM:
        return exact
    whole, _, places = exact.partition(".")
    return f"{whole}.{places.ljust(decimals(unit), '0')}"


def format_brief(mm: float, unit: LengthUnit) -> str:
    """For fields: exact where one decimal more than a reading's says it, else rounded as readings are; no unit.

    >>> format_brief(77.788, LengthUnit.INCH), format_brief(195.214999968, LengthUnit.INCH)
    ('3.063', '7.686')
    >>> format_brief(77.7875, LengthUnit.INCH)
    '3.0625'
    """
    exact = format_exact(mm, unit)
    if len(exact.partition(".")[2]) <= decimals(unit) + 1:
        return exact
    return format_number(mm, unit).rstrip("0").rstrip(".")


def format_fraction(mm: float, denominator: int = 64) -> str:
    """Inches as a mixed fraction where the length is one to a nanometre, else decimals: '3 1/8'."""
    parts = Fraction(to_nanometre(mm), round(MM_PER_INCH * NM_PER_MM))
    if denominator % parts.denominator:
        return format_exact(mm, LengthUnit.INCH)
    whole, over = divmod(abs(parts.numerator), parts.denominator)
    sign = "-" if parts < 0 else ""
    fraction = f"{over}/{parts.denominator}" if over else ""
    return sign + (" ".join(piece for piece in (str(whole) if whole else "", fraction) if piece) or "0")


def parse_angle(text: str) -> float:
    """Decimal degrees of what a person typed, simple arithmetic included.

    >>> parse_angle("22,5°")
    22.5
    >>> parse_angle("90 - 7 1/2")
    82.5

    Raises `UnreadableQuantity`.
    """
    expected = "an angle in degrees such as 45, 22.5 or 90 - 7 1/2"
    try:
        value = evaluate(text.replace("°", " deg "), {"deg": Fraction(1)}, "deg")
    except NotArithmetic as error:
        raise UnreadableQuantity(text[:60], f"{error}: {expected}" if text.strip() else expected) from None
    if abs(value.amount) > MOST_DEGREES:
        raise UnreadableQuantity(text[:60], "an angle of at most ten turns")
    return round(float(value.amount), 9)


def format_angle(degrees: float) -> str:
    """Text such as '22.5°'.

    >>> format_angle(90.0)
    '90°'
    """
    return f"{round(degrees, 3):g}°"


class MassUnit(StrEnum):
    KG = "kg"
    LB = "lb"

    @property
    def kg(self) -> float:
        """Kilograms in one unit."""
        return KG_PER_POUND if self is MassUnit.LB else 1.0


_MASS_WORDS: Final[dict[str, MassUnit | None]] = {
    "": None,
    "kg": MassUnit.KG,
    "lb": MassUnit.LB,
    "lbs": MassUnit.LB,
}


def mass_unit(unit: LengthUnit) -> MassUnit:
    """The unit people weigh in where they measure in this one: pounds beside inches, kilograms beside millimetres."""
    return MassUnit.LB if unit is LengthUnit.INCH else MassUnit.KG


def parse_mass(text: str, unit: MassUnit) -> float:
    """Kilograms of what a person typed; `unit` is meant where the text names none. Raises `UnreadableQuantity`.

    >>> parse_mass("2,5 lb", MassUnit.KG)
    1.133980925
    """
    match = _MASS.match(text)
    word = match["unit"].lower() if match else ""
    if match is None or word not in _MASS_WORDS:
        raise UnreadableQuantity(text, "a mass such as 2.4 lb or 1.1 kg")
    typed_unit = _MASS_WORDS[word] or unit
    return round(float(match["number"].replace(",", ".")) * typed_unit.kg, 9)


def format_mass(kg: float, unit: MassUnit, *, places: int = 2) -> str:
    """Text such as '2.40 lb'; never '-0.00'.

    >>> format_mass(1.133980925, MassUnit.LB)
    '2.50 lb'
    """
    return f"{format_mass_number(kg, unit, places=places)} {unit.value}"


def format_mass_number(kg: float, unit: MassUnit, *, places: int = 2) -> str:
    """As `format_mass` without the unit."""
    return _plain_zero(f"{kg / unit.kg:.{places}f}")


def moment_unit(unit: LengthUnit) -> str:
    """The unit of moments beside this unit of length: 'lb·in' or 'kg·m'."""
    return "lb·in" if unit is LengthUnit.INCH else "kg·m"


def format_moment_number(kg_mm: float, unit: LengthUnit, *, places: int = 1) -> str:
    """The number of a moment given in kilogram-millimetres, in `moment_unit`."""
    value = kg_mm / KG_PER_POUND / MM_PER_INCH if unit is LengthUnit.INCH else kg_mm / 1000
    return _plain_zero(f"{value:.{places}f}")


def format_moment(kg_mm: float, unit: LengthUnit, *, places: int = 1) -> str:
    """Text of a moment such as '16104.0 lb·in' or '185.5 kg·m', of kilogram-millimetres."""
    return f"{format_moment_number(kg_mm, unit, places=places)} {moment_unit(unit)}"


def parse_money(text: str) -> Decimal:
    """The exact amount a person typed, such as '1,250.00' or '1250,5'. Raises `UnreadableQuantity`."""
    plain = text.replace(" ", "").replace("'", "").replace("\u202f", "")
    if re.fullmatch(r"-?\d{1,3}(,\d{3})+(\.\d+)?", plain):
        plain = plain.replace(",", "")
    elif re.fullmatch(r"-?\d{1,3}(\.\d{3})+(,\d+)?", plain) and ("," in plain or plain.count(".") > 1):
        plain = plain.replace(".", "")
    plain = plain.replace(",", ".")
    if not re.fullmatch(r"-?\d{1,12}(\.\d{1,4})?", plain):
        raise UnreadableQuantity(text, "an amount of money such as 1250.00")
    return Decimal(plain)


def format_money(amount: Decimal, currency: str) -> str:
    """Text such as 'USD 12,345.60', rounded half up to the hundredth; the currency is its ISO 4217 code.

    >>> format_money(Decimal("12345.6"), "USD")
    'USD 12,345.60'
    """
    return f"{currency} {hundredths(amount):,}"


def hundredths(amount: Decimal) -> Decimal:
    """The amount rounded half up to two decimals, as invoices are."""
    rounded_amount = amount.quantize(Decimal("0.01"), rounding=ROUND_HALF_UP)
    return rounded_amount.copy_abs() if rounded_amount == 0 else rounded_amount


def _plain_zero(text: str) -> str:
    return text.removeprefix("-") if float(text) == 0 else text
