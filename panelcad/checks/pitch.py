"""How far apart two like things must stand in a row, so that neither is found too near the other."""

import math
from typing import Final

from panelcad.checks.live import LiveChecker
from panelcad.editing.move import move_to
from panelcad.editing.place import Placed, place
from panelcad.model.cutout import Cutout
from panelcad.model.plate import Plate, PlateState
from panelcad.model.project import AS_FOUND, Option, Project
from panelcad.model.shape import Rectangle
from panelcad.model.surroundings import Surroundings
from panelcad.units import LengthUnit

_FARTHEST: Final = 400.0
"""mm; what does not get on with its like at this pitch is told no pitch."""
_STEPS: Final = {LengthUnit.INCH: 25.4 / 16, LengthUnit.MM: 0.5}
"""What a pitch is rounded up to, in mm: a sixteenth of an inch, or half a millimetre."""


def least_pitch(project: Project, plate: Plate, cutout: Cutout) -> float | None:
    """The least pitch across, in mm, at which two of a cutout on sheet as thick as this plate leave nothing to find.

    Judged by the project's own limits, advice too, and rounded up to what is marked out easily. None beyond 400 mm.
    """
    pair = _Pair(project, plate, cutout)
    step = _STEPS[project.unit]
    if not pair.is_free(_FARTHEST):
        return None
    low, high = 0, math.floor(_FARTHEST / step)
    while high - low > 1:
        middle = (low + high) // 2
        low, high = (low, middle) if pair.is_free(middle * step) else (middle, high)
    return high * step


class _Pair:
    """Two of a cutout, alone on a bare sheet."""

    def __init__(self, project: Project, plate: Plate, cutout: Cutout) -> None:
        sheet = Rectangle(width=4 * _FARTHEST, height=4 * _FARTHEST)
        bare = Plate(
            id="bare", name="Bare", state=PlateState.NEW, outline=sheet, thickness=plate.thickness, alloy=plate.alloy
        )
        alone = project.revised(
            as_found=Option(id=AS_FOUND, name="As found", plates=(bare,)), options=(), surroundings=Surroundings()
        )
        self._one = place(alone, AS_FOUND, bare.id, cutout, 0.0, 0.0)
        self._other = place(self._one.project, AS_FOUND, bare.id, cutout, _FARTHEST, 0.0)
        self._checker = LiveChecker()

    def is_free(self, pitch: float) -> bool:
        """Whether nothing is found between the two at this pitch."""
        there = move_to(self._other.project, AS_FOUND, self._other.ids[0], pitch, 0.0)
        found = self._checker.update(there, AS_FOUND, with_cures=False).findings
        return not any(_names(finding.items, self._one) and _names(finding.items, self._other) for finding in found)


def _names(items: tuple[str, ...], placed: Placed) -> bool:
    return not set(items).isdisjoint(placed.ids)
