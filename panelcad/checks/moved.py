"""A plate with some of its things elsewhere, to try what a move would do."""

from collections.abc import Mapping
from dataclasses import replace

from panelcad.model.layout import PlacedCut, PlacedItem, PlateLayout, placed_cut, placed_item
from panelcad.model.plate import Engraving

Shifts = Mapping[str, tuple[float, float]]
"""How far each thing moves in x and y, in mm, by its id."""


def moved(plate: PlateLayout, shifts: Shifts) -> PlateLayout:
    """The plate with these moved."""

    def cut(placed: PlacedCut) -> PlacedCut:
        dx, dy = shifts[placed.cut.id]
        there = placed.cut.revised(x=placed.cut.x + dx, y=placed.cut.y + dy)
        return placed_cut(there, placed.cutout)

    def item(placed: PlacedItem) -> PlacedItem:
        dx, dy = shifts[placed.item.id]
        there = placed.item.revised(x=placed.item.x + dx, y=placed.item.y + dy)
        return placed_item(there, placed.cutout, plate.plate.thickness, placed.unit)

    return replace(
        plate,
        cuts=tuple(cut(each) if each.cut.id in shifts else each for each in plate.cuts),
        items=tuple(item(each) if each.item.id in shifts else each for each in plate.items),
    )


def with_labels(there: PlateLayout, shifts: Shifts, labels: Mapping[str, str]) -> PlateLayout:
    """The plate once the label of each control that has moved went along; `labels` are known by the control's id."""
    along = {labels[one]: shift for one, shift in shifts.items() if one in labels}
    if not along:
        return there

    def went(line: Engraving) -> Engraving:
        dx, dy = along[line.id]
        return line.revised(x=line.x + dx, y=line.y + dy)

    words = tuple(went(line) if line.id in along else line for line in there.plate.engravings)
    return replace(there, plate=there.plate.standing_elsewhere(engravings=words))
