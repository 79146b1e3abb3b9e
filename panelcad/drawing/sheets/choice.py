"""Choosing the sheet for a view: the smallest on which all that is written has its place near what it names."""

from collections.abc import Iterable
from typing import Final, NamedTuple, Protocol

from panelcad.drawing.labels import CROWDED
from panelcad.drawing.page import Page
from panelcad.drawing.paper import Scale
from panelcad.errors import UnusableInput

LOST: Final = 0.135
"""A view that takes less than this share of its room deserves a larger scale, if a larger sheet has one."""


class Trouble(NamedTuple):
    """How many texts found no place, and the share of those that stand far off."""

    missing: int
    crowding: float


class View(Protocol):
    """A view laid out on one paper; `fill` is the share of its room that it takes."""

    @property
    def scale(self) -> Scale: ...

    @property
    def trouble(self) -> Trouble: ...

    @property
    def fill(self) -> float: ...

    @property
    def page(self) -> Page: ...


def clearest_page(what: str, views: Iterable[View]) -> Page:
    """The first clear one of a view's layouts from the smallest paper up, or the one with the least trouble.

    A larger paper that gives no larger scale leaves a crowd as it is, so it is passed over; one that gives a larger
    scale is taken too where the view would be lost on the smaller one. Raises `UnusableInput` where there is no layout,
    because even the largest sheet is too small.
    """
    tried: list[View] = []
    for view in views:
        if tried and tried[-1].scale == view.scale and not tried[-1].trouble.missing:
            continue
        tried.append(view)
        if not view.trouble.missing and view.trouble.crowding <= CROWDED and view.fill >= LOST:
            break
    if not tried:
        raise UnusableInput("", what, "it is too large for any sheet at 1:100", "a plate of at most 100 m")
    return min(tried, key=_badness).page


def _badness(view: View) -> tuple[int, bool, bool, float]:
    missing, crowding = view.trouble
    return missing, crowding > CROWDED, view.fill < LOST, crowding
