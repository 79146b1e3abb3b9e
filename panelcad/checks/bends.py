"""Bends: holes too near them, and radii against AC 43.13-1B table 4-6."""

from bisect import bisect_left
from collections.abc import Iterator
from typing import Final

from panelcad.checks.finding import Bound, is_short, missed
from panelcad.checks.nearness import in_plan
from panelcad.checks.parts import Kind, Layer, Piece
from panelcad.checks.registry import EachPair, EachPart, rule
from panelcad.checks.report import Unknown
from panelcad.checks.setting import Setting
from panelcad.geometry.point import Point
from panelcad.model.finding import Cure, Finding, Severity
from panelcad.model.plate import Bend, PlateState

TABLE_4_6: Final[dict[str, tuple[tuple[float, float, float], ...]]] = {
    "2024-T3": (
        (0.4064, 1.5, 3.0),
        (0.8128, 2.0, 4.0),
        (1.6256, 3.0, 5.0),
        (3.2512, 4.0, 6.0),
        (4.6228, 4.0, 6.0),
        (6.5532, 5.0, 7.0),
    ),
    "6061-T6": (
        (0.4064, 0.0, 1.0),
        (0.8128, 0.5, 1.5),
        (1.6256, 1.0, 2.0),
        (3.2512, 1.5, 3.0),
        (4.6228, 2.0, 4.0),
        (6.5532, 3.0, 4.0),
    ),
    "6061-T4": ((1.6256, 0.5, 1.5), (3.2512, 1.0, 2.0)),
    "5052-H32": ((1.6256, 0.5, 1.0), (3.2512, 0.5, 1.5)),
}
"""Thickness in mm (0.016, 0.032, 0.064, 0.128, 0.182 and 0.258 in), least and most of the radii for 90°, in t."""

_TABLE: Final = "AC 43.13-1B table 4-6, radii for a 90° bend; of the two nearest thicknesses the thicker one counts"


def least_radii(alloy: str, thickness: float) -> tuple[float, float] | None:
    """The least and the safe inside radius in mm of a 90° bend; None where the table does not say."""
    rows = next((rows for name, rows in TABLE_4_6.items() if name in alloy.upper()), ())
    at = bisect_left([row[0] for row in rows], thickness - 1e-6)
    if at == len(rows):
        return None
    _, least, most = rows[at]
    return least * thickness, most * thickness


@rule(
    "bend-radius",
    title="Radius of a bend",
    measures="inside radius of a new sheet's bend against the table for its alloy and thickness",
    looks_at=EachPart((Kind.BEND,)),
    severities=(Severity.ERROR, Severity.WARNING),
    source=_TABLE,
)
def bend_radius(bend: Bend, setting: Setting) -> Iterator[Finding | Unknown]:
    plate = setting.plate
    if plate.state is not PlateState.NEW:
        return
    radii = least_radii(plate.alloy, plate.thickness)
    if radii is None:
        yield Unknown("bend-radius", (plate.id,), f"the least bend radius of {plate.alloy} in this thickness")
        return
    bounds = (Bound(radii[0], Severity.ERROR, _TABLE), Bound(radii[1], Severity.WARNING, _TABLE))
    bound = missed(bend.inside_radius, *bounds)
    if bound is not None:
        yield _tight(bend, bound, setting)


def _tight(bend: Bend, bound: Bound, setting: Setting) -> Finding:
    plate = setting.plate
    number = plate.bends.index(bend) + 1
    return Finding(
        rule="bend-radius",
        severity=bound.severity,
        items=(plate.id,),
        features=(f"{plate.id}/bend {number}",),
        plate=plate.id,
        problem="Bend is too tight for the sheet"
        if bound.severity is Severity.ERROR
        else "Bend is tight for the sheet",
        measured=bend.inside_radius,
        required=bound.required,
        where=(Point(bend.x1, bend.y1), Point(bend.x2, bend.y2)),
        source=_TABLE,
        cure=Cure(item=plate.id, advice="bend it over a radius of {value}", value=bound.required),
    )


def _reach(setting: Setting) -> float:
    radii = [bend.inside_radius for bend in setting.plate.bends]
    return setting.profile.bend_hole_thicknesses * setting.thickness + max(radii, default=0.0)


@rule(
    "hole-to-bend",
    title="Hole near a bend",
    measures="from a cut's contour to a bend line",
    looks_at=EachPair(Layer.CUTS, Layer.BENDS, _reach),
    severities=(Severity.ERROR, Severity.ADVICE),
    limits=("bend_hole_thicknesses",),
)
def hole_to_bend(cut: Piece, line: Piece, setting: Setting) -> Iterator[Finding]:
    bend: Bend = line.part.source
    required = setting.profile.bend_hole_thicknesses * setting.thickness + bend.inside_radius
    near = in_plan(cut, line, setting)
    if is_short(near.distance, required):
        severity = Severity.ADVICE if cut.part.is_existing else Severity.ERROR
        yield near.finding("hole-to-bend", "Cut is near a bend", Bound(required, severity, "bend_hole_thicknesses"))
