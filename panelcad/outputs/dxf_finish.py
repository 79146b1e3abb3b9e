"""Cut sizes from finished sizes: a finish of some thickness narrows every opening and thickens the sheet's edge."""

from dataclasses import replace
from typing import Final

from panelcad.errors import UnusableInput
from panelcad.geometry.contour import Contour
from panelcad.geometry.offset import offset
from panelcad.model.layout import PlateLayout
from panelcad.model.plate import PlateState
from panelcad.outputs.dxf_layers import CUT_THROUGH, Layer
from panelcad.outputs.dxf_plan import Loop, Plan

_NOT_COATED: Final = frozenset({Layer.DRILL_TAPPED, Layer.DRILL_INSERT})
"""Threads and inserts are masked, so their holes are drilled to size."""


def before_finish(plan: Plan, thickness: float) -> Plan:
    """The plan in cut sizes for a finish `thickness` mm thick on each surface: cuts larger, the outline smaller."""
    if thickness == 0.0:
        return plan
    return replace(plan, loops=tuple(_cut_size(loop, thickness) for loop in plan.loops))


def finish_on(layer: Layer, thickness: float) -> float:
    """How many mm the contours of a layer are cut outside their finished place; the sheet's edge lies inside it."""
    if layer not in CUT_THROUGH or layer in _NOT_COATED:
        return 0.0
    return -thickness if layer is Layer.OUTLINE else thickness


def cut_outline(plate: PlateLayout, thickness: float) -> Contour:
    """The plate's edge as it is cut; as it is, where the sheet is there already. Raises `UnusableInput`."""
    layer = Layer.OUTLINE if plate.plate.state is PlateState.NEW else Layer.OUTLINE_EXISTING
    return _cut_size(Loop(layer, plate.outline, plate.plate.id), thickness).contour


def _cut_size(loop: Loop, thickness: float) -> Loop:
    try:
        return replace(loop, contour=offset(loop.contour, finish_on(loop.layer, thickness)))
    except ValueError as error:
        problem = f"a finish {thickness:g} mm thick leaves no sound contour ({error})"
        raise UnusableInput("", loop.feature, problem, "a thinner finish or a plainer contour") from error
