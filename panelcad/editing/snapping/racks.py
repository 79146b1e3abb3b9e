"""The lines of a rack: its two rails, between which trays stand, and the edges where its opening begins and ends."""

from typing import Final

from panelcad.editing.extents import Axis
from panelcad.editing.snapping.standing import OwnLine
from panelcad.model.layout import PlacedCut, PlateLayout

_UPRIGHT: Final = (
    ("left rack rail of {}", "right rack rail of {}"),
    ("lower rack edge of {}", "upper rack edge of {}"),
)
_LYING: Final = (
    ("left rack edge of {}", "right rack edge of {}"),
    ("lower rack rail of {}", "upper rack rail of {}"),
)


def rack_lines(plate: PlateLayout) -> dict[str, tuple[OwnLine, ...]]:
    """The lines of every rack on a plate, by its cut's id; a rack at an angle has none that a move could meet."""
    holding_units = {item.item.cut for item in plate.items if item.cutout.rack is not None}
    holding_others = {item.item.cut for item in plate.items if item.cutout.rack is None}
    racks = holding_units - holding_others
    return {cut.cut.id: _lines(cut) for cut in plate.cuts if cut.cut.id in racks}


def _lines(cut: PlacedCut) -> tuple[OwnLine, ...]:
    if len(cut.openings) != 1 or cut.placement.rotation % 90.0 != 0.0:
        return ()
    box = cut.openings[0].contour.bounds
    words = _UPRIGHT if cut.placement.rotation % 180.0 == 0.0 else _LYING
    return tuple(OwnLine(axis, box[axis.value + 2 * side], words[axis.value][side]) for axis in Axis for side in (0, 1))
