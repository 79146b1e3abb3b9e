"""What every record of the model shares: frozen, complete, and in millimetres.

A file states its unit once. `in_file_unit` is the pydantic context that scales every `Length` while a file is read or
written; without a context a length is in mm.
"""

from collections.abc import Callable
from typing import Annotated, Any, Self, TypeVar

from pydantic import (
    AfterValidator,
    BaseModel,
    ConfigDict,
    Field,
    PlainSerializer,
    SerializationInfo,
    StringConstraints,
    ValidationInfo,
)

from panelcad.units import LARGEST_LENGTH, LengthUnit, in_unit, rounded, to_nanometre

Checked = TypeVar("Checked", bound="Record")


class Record(BaseModel):
    """Frozen and closed: an unknown key is an error, not a silent loss."""

    __slots__ = ("_is_checked",)
    model_config = ConfigDict(frozen=True, extra="forbid", allow_inf_nan=False)

    def revised(self, **changes: Any) -> Self:
        """A copy with these fields changed, validated again; the parts that stay are shared, not copied.

        Validation makes new tuples of the things it was given; those of fields that stay are put back, so that what is
        kept by the identity of a tuple is found again.
        """
        made = type(self).model_validate({**dict(self), **changes})
        made.__dict__.update((name, value) for name, value in self.__dict__.items() if name not in changes)
        return made

    def standing_elsewhere(self, **changes: Any) -> Self:
        """A copy with these collections in place of its own, not validated again.

        For an edit that only gives things other places: each was validated when it was made, and no check of the record
        that holds them reads a place.
        """
        return self.model_copy(update=changes)


def checked_once(check: Callable[[Checked], None]) -> Callable[[Checked], Checked]:
    """The check of a record when it is made, for `model_validator(mode="after")`.

    Pydantic would check a record again whenever it becomes part of another; a frozen one stays as good as it was.
    """

    def checked(record: Checked) -> Checked:
        if not getattr(record, "_is_checked", False):
            check(record)
            object.__setattr__(record, "_is_checked", True)
        return record

    return checked


def in_file_unit(unit: LengthUnit) -> dict[str, Any]:
    """The context that reads or writes lengths in a file's unit."""
    return {"unit": unit}


def in_nanometres() -> dict[str, Any]:
    """The context that writes lengths as whole nanometres, for fingerprints."""
    return {"nanometres": True}


def _length_in(value: float, info: ValidationInfo) -> float:
    unit = (info.context or {}).get("unit", LengthUnit.MM)
    mm = value * unit.mm
    if abs(mm) > LARGEST_LENGTH:
        raise ValueError("a length of at most 100 m is expected")
    return rounded(mm)


def _length_out(value: float, info: SerializationInfo) -> float | int:
    context = info.context or {}
    if context.get("nanometres"):
        return to_nanometre(value)
    return in_unit(value, context.get("unit", LengthUnit.MM))


def _angle(value: float) -> float:
    return round(value % 360.0, 9) % 360.0


Number = Annotated[float, Field(strict=True, allow_inf_nan=False)]
Length = Annotated[Number, AfterValidator(_length_in), PlainSerializer(_length_out)]
PositiveLength = Annotated[Annotated[Number, Field(gt=0)], AfterValidator(_length_in), PlainSerializer(_length_out)]
NonNegativeLength = Annotated[Annotated[Number, Field(ge=0)], AfterValidator(_length_in), PlainSerializer(_length_out)]
Angle = Annotated[Number, AfterValidator(_angle)]
"""Decimal degrees counter-clockwise, kept in 0 to below 360."""
Tilt = Annotated[Number, Field(ge=-90, le=90)]
Bulge = Annotated[Number, Field(ge=-1000, le=1000)]

Name = Annotated[str, StringConstraints(min_length=1, max_length=200, strip_whitespace=True)]
"""What people call a thing; shown as typed."""
Id = Annotated[str, StringConstraints(pattern=r"^[a-z0-9][a-z0-9._-]*$", max_length=100)]
"""What files and findings call a thing: small letters, digits, dots and dashes."""
Text = Annotated[str, StringConstraints(max_length=4000)]
