"""What a straight bend takes of the sheet: setback and bend allowance, in mm.

Setback: AC 43.13-1B paragraph 4-56, SB = K (BR + MT) with K = tan(angle / 2). Allowance: the way along the neutral
axis; 0.4475 thicknesses from the inside give the formula of FAA-H-8083-31, (0.01743 R + 0.0078 T) for each degree.
"""

import math

from panelcad.model.plate import Bend


def setback(bend: Bend, thickness: float) -> float:
    """From the bend's tangent line to the mould line, where the outer faces would meet if there were no radius."""
    return math.tan(math.radians(bend.angle) / 2) * (bend.inside_radius + thickness)


def allowance(bend: Bend, thickness: float, neutral: float) -> float:
    """Length of flat sheet that goes into the bend; `neutral` is where its length stays, in thicknesses from inside."""
    return math.radians(bend.angle) * (bend.inside_radius + neutral * thickness)


def deduction(bend: Bend, thickness: float, neutral: float) -> float:
    """How much shorter the flat sheet is than the two legs measured to the mould line."""
    return 2 * setback(bend, thickness) - allowance(bend, thickness, neutral)
