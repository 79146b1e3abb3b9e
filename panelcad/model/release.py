"""The release log: which option left the shop as which revision and plates, what it held, what had changed."""

from typing import Annotated, Final

from pydantic import Field

from panelcad.model.base import Id, Length, Name, NonNegativeLength, Record, Text

Revision = Annotated[str, Field(pattern=r"^[A-Z]{1,2}$")]
Day = Annotated[str, Field(pattern=r"^\d{4}-\d{2}-\d{2}$")]


class ReleasedFeature(Record):
    """One closed contour as it was released: the middle and the size of its box, and its length all around."""

    plate: Id
    id: Name
    what: Name
    x: Length
    y: Length
    width: NonNegativeLength
    height: NonNegativeLength
    around: NonNegativeLength


class ReleasedItem(Record):
    id: Id
    name: Name


class Release(Record):
    """An entry of the release log, which only grows."""

    option: Id
    revision: Revision
    on: Day
    fingerprint: Annotated[str, Field(max_length=64)]
    by: Text = ""
    changes: tuple[Text, ...] = ()
    """What changed since the option's release before, one sentence each."""
    features: tuple[ReleasedFeature, ...] = ()
    items: tuple[ReleasedItem, ...] = ()


class Issued(Record):
    """Which plates of a revision left the shop on a day, and the folder their papers were written to."""

    option: Id
    revision: Revision
    on: Day
    plates: Annotated[tuple[Id, ...], Field(min_length=1)]
    folder: Name
    by: Text = ""


class OpenedRevision(Record):
    """Somebody's word that a released option may change again, toward this revision."""

    option: Id
    revision: Revision
    on: Day
    reason: Annotated[str, Field(min_length=1, max_length=1000)]
    by: Text = ""


_LETTERS: Final = "ABCDEFGHJKLMNPRTUVWY"
"""ASME Y14.35 leaves out I, O, Q, S, X and Z (from memory)."""


def next_revision(revision: str) -> str:
    """The revision after this one: A after nothing, B after A, J after H, AA after Y."""
    if not revision:
        return _LETTERS[0]
    rest, place = revision[:-1], _LETTERS.find(revision[-1]) + 1
    if place < len(_LETTERS):
        return rest + _LETTERS[place]
    return next_revision(rest) + _LETTERS[0]
