"""Which control a line of lettering stands for: the nearest one."""

from collections.abc import Iterable

from panelcad.geometry.boxes import box_gap
from panelcad.geometry.contour import Contour
from panelcad.geometry.gap import TIE, gap
from panelcad.model.layout import PlacedItem


def nearest_controls(box: Contour, controls: Iterable[PlacedItem], limit: float) -> list[str]:
    """The ids of the controls nearest to words in this box, sorted; none where all are beyond the limit in mm."""
    near = (placed for placed in controls if box_gap(placed.face.bounds, box.bounds) <= limit + TIE)
    apart = {placed.item.id: gap(placed.face, box).distance for placed in near}
    least = min(apart.values(), default=limit)
    return sorted(one for one, distance in apart.items() if distance <= min(least, limit) + TIE)
