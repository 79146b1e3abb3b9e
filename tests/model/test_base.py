import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pydantic import ValidationError, model_validator

from panelcad.model.base import Angle, Length, Record, checked_once, in_file_unit, in_nanometres
from panelcad.units import LengthUnit


class Thing(Record):
    width: Length
    turn: Angle = 0.0


@given(st.floats(-3000, 3000), st.sampled_from(list(LengthUnit)))
def test_a_length_comes_back_from_a_file_to_the_nanometre(width: float, unit: LengthUnit) -> None:
    thing = Thing(width=width)
    plain = thing.model_dump(mode="json", context=in_file_unit(unit))
    assert Thing.model_validate(plain, context=in_file_unit(unit)) == thing


def test_inches_are_scaled_once() -> None:
    thing = Thing.model_validate({"width": 3.125}, context=in_file_unit(LengthUnit.INCH))
    assert thing.width == 79.375
    assert thing.model_dump(context=in_file_unit(LengthUnit.INCH))["width"] == 3.125
    assert thing.model_dump(context=in_nanometres())["width"] == 79_375_000


@pytest.mark.parametrize("width", [math.nan, math.inf, 1e9, "3", None, True, [1]])
def test_what_is_no_length_is_refused(width: object) -> None:
    with pytest.raises(ValidationError):
        Thing.model_validate({"width": width})


def test_unknown_keys_are_refused() -> None:
    with pytest.raises(ValidationError):
        Thing.model_validate({"width": 1.0, "wdith": 2.0})


@pytest.mark.parametrize(("typed", "kept"), [(-90.0, 270.0), (360.0, 0.0), (725.0, 5.0), (-1e-12, 0.0)])
def test_angles_are_kept_within_a_turn(typed: float, kept: float) -> None:
    assert Thing(width=1.0, turn=typed).turn == kept


def test_revising_validates_and_shares_what_stays() -> None:
    class Pair(Record):
        left: Thing
        right: Thing

    pair = Pair(left=Thing(width=1.0), right=Thing(width=2.0))
    revised = pair.revised(left=Thing(width=3.0))
    assert revised.right is pair.right
    with pytest.raises(ValidationError):
        pair.revised(left="nothing")


class Row(Record):
    things: tuple[Thing, ...] = ()
    name: str = ""


def test_a_revision_shares_what_stays_and_validates_what_changes() -> None:
    row = Row(things=(Thing(width=1.0), Thing(width=2.0)))
    renamed = row.revised(name="other")
    assert renamed.things is row.things
    with pytest.raises(ValidationError):
        row.revised(name=3)


class Guarded(Record):
    width: Length

    @model_validator(mode="after")
    @checked_once
    def _is_narrow(self) -> None:
        CHECKED.append(self.width)
        if self.width > 10.0:
            raise ValueError("a narrow thing is expected")


class Holder(Record):
    things: tuple[Guarded, ...]


CHECKED: list[float] = []


def test_a_record_is_checked_when_it_is_made_and_not_again_as_a_part_of_others() -> None:
    CHECKED.clear()
    thing = Guarded(width=3.0)
    holder = Holder(things=(thing,))
    holder.revised(things=(*holder.things, thing.revised(width=4.0)))
    assert CHECKED == [3.0, 4.0]


def test_what_a_check_refuses_is_never_made() -> None:
    with pytest.raises(ValidationError):
        Guarded(width=3.0).revised(width=11.0)
    with pytest.raises(ValidationError):
        Holder.model_validate({"things": [{"width": 12.0}]})
