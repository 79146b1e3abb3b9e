"""The labels that controls have already: lettering that is put below or above its control, or is nearest to it."""

from collections.abc import Sequence

from panelcad.geometry.contour import Contour
from panelcad.geometry.gap import gap
from panelcad.model.engraved import engraving_box
from panelcad.model.labelled import nearest_controls
from panelcad.model.layout import PlacedItem, PlateLayout
from panelcad.model.plate import Engraving


def standing_labels(plate: PlateLayout, controls: Sequence[PlacedItem], limit: float) -> dict[str, Engraving]:
    """The line within `limit` mm that stands for each of these controls, by the control's id; who has none is left out.

    It is above, below or beside its control. Of several lines that stand for one control the nearest is its label; a
    line as near to several controls is that of one that no other line stands for.
    """
    lines = {line.id: line for line in plate.plate.engravings}
    boxes = {line.id: engraving_box(line) for line in plate.plate.engravings}
    in_line = {placed.item.id: {line.id for line in lines.values() if _is_in_line(line, placed)} for placed in controls}
    nearest = {
        one: [
            item_id
            for item_id in nearest_controls(box, lines[one].rotation, controls, limit)
            if one in in_line[item_id]
        ]
        for one, box in boxes.items()
    }
    found: dict[str, Engraving] = {}
    for placed in controls:
        own = [one for one, ids in nearest.items() if ids == [placed.item.id]]
        if own:
            found[placed.item.id] = lines[min(own, key=lambda one: _apart(placed, boxes[one]))]
    for one, ids in nearest.items():
        free = [item_id for item_id in ids if item_id not in found]
        if len(ids) > 1 and free:
            found[free[0]] = lines[one]
    return found


def _is_in_line(line: Engraving, placed: PlacedItem) -> bool:
    """Whether its middle is above, below or beside the control's face, not off its corner."""
    left, bottom, right, top = placed.face.bounds
    return left <= line.x <= right or bottom <= line.y <= top


def _apart(placed: PlacedItem, box: Contour) -> float:
    return gap(placed.face, box).distance
