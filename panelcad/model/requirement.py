"""Lists of required equipment: what an authority wants on board for a kind of flight."""

from enum import StrEnum
from typing import Annotated, Self

from pydantic import Field, model_validator

from panelcad.model.base import Id, Name, Record, Text
from panelcad.model.function import Function
from panelcad.model.planning import Fact, FlightKind
from panelcad.model.quantity import Mass
from panelcad.model.source import Source


class Per(StrEnum):
    """What a requirement is counted by."""

    AIRCRAFT = "aircraft"
    ENGINE = "engine"
    TANK = "tank"


class Substitute(Record):
    """Another way to meet a requirement: so many independent sources of a function, with other functions beside it."""

    function: Function
    independent: Annotated[int, Field(ge=1, le=4)] = 1
    beside: tuple[Function, ...] = ()
    own_power: bool = False
    """True where the sources must not hang on one source of power."""
    most_mass: Mass | None = None
    """Only for aircraft of at most this greatest weight; an aircraft whose weight is not stated is taken as lighter."""
    source: Source


class Requirement(Record):
    """One line of a list. Any one of `any_of` meets it; without functions it can only be looked at in the aircraft."""

    id: Id
    title: Name
    paragraph: Name
    any_of: tuple[Function, ...] = ()
    independent: Annotated[int, Field(ge=1, le=4)] = 1
    """How many independent sources are wanted."""
    per: Per = Per.AIRCRAFT
    flights: tuple[FlightKind, ...] = Field(default=tuple(FlightKind), min_length=1)
    when: tuple[Fact, ...] = ()
    """Facts that must all hold for it to apply."""
    substitute: Substitute | None = None
    source: Source | None = None
    """Where it differs from the list's own source."""
    notes: Text = ""


class RequirementList(Record):
    name: Id
    title: Name
    authority: Name
    source: Source
    notes: Text = ""
    required: Annotated[tuple[Requirement, ...], Field(min_length=1)]

    @model_validator(mode="after")
    def _each_once(self) -> Self:
        ids = [requirement.id for requirement in self.required]
        for one in ids:
            if ids.count(one) > 1:
                raise ValueError(f"requirement '{one}' is there {ids.count(one)} times; each may be there once")
        return self
