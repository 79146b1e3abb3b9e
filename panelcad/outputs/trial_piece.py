"""A trial piece: some cuts of a plate in a rectangle of scrap, to try equipment in before the sheet itself is cut."""

from collections.abc import Iterable
from dataclasses import replace
from typing import Final

from panelcad.drawing.display import union
from panelcad.drawing.numbering import numbering
from panelcad.errors import UnknownName, UnusableInput
from panelcad.geometry.contour import rectangle
from panelcad.geometry.point import Point
from panelcad.model.layout import PlacedCut, PlateLayout, layout
from panelcad.model.plate import Plate, PlateState
from panelcad.model.project import Option, Project

MARGIN: Final = 25.4
"""Scrap in mm around the cuts: enough to clamp the piece by (common practice)."""


def piece_around(plate: PlateLayout, cuts: Iterable[str]) -> PlateLayout:
    """The plate as a piece of scrap that holds these cuts, by id, alone; the plate itself where it has none of them.

    Everything in it is to be cut, whatever is in the sheet already. It keeps the plate's axes.
    """
    wanted = frozenset(cuts)
    chosen = tuple(placed for placed in plate.cuts if placed.cut.id in wanted)
    if not chosen:
        return plate
    left, bottom, right, top = union(feature.contour.bounds for placed in chosen for feature in placed.features)
    middle = Point((left + right) / 2, (bottom + top) / 2)
    sheet = plate.plate.revised(state=PlateState.NEW, engravings=(), bends=())
    edge = rectangle(middle, right - left + 2 * MARGIN, top - bottom + 2 * MARGIN)
    return replace(plate, plate=sheet, outline=edge, inner=(), attach=(), cuts=chosen, items=())


def named_cuts(project: Project, option: Option, names: Iterable[str]) -> tuple[Plate, tuple[str, ...]]:
    """The plate in which the cuts of these names are, and their ids; a name is a number on the papers, an id or a name.

    Raises `UnknownName`, and `UnusableInput` where they are in different plates.
    """
    laid = layout(project, option)
    numbers = numbering(laid).cuts
    places = [(plate.plate, placed) for plate in laid.plates for placed in plate.cuts]
    found = [_named(places, numbers, name) for name in names]
    plates = tuple(dict.fromkeys(plate.id for plate, _ in found))
    if len(plates) != 1:
        raise UnusableInput("", "trial piece", f"its cuts are in {', '.join(plates)}", "cuts of one plate")
    return found[0][0], tuple(dict.fromkeys(placed.cut.id for _, placed in found))


def _named(places: list[tuple[Plate, PlacedCut]], numbers: dict[str, str], name: str) -> tuple[Plate, PlacedCut]:
    for plate, placed in places:
        known = (numbers[placed.cut.id], placed.cut.id, placed.cut.name)
        if name.strip().lower() in {each.lower() for each in known}:
            return plate, placed
    raise UnknownName("cut", name, tuple(placed.cut.id for _, placed in places))
