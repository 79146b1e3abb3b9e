"""Old cutouts that nothing uses: they are covered by a blank, or light and air come through."""

import math
from collections.abc import Iterator
from typing import Final

import shapely

from panelcad.checks.parts import Fitting, Kind, Layer, Piece
from panelcad.checks.registry import EachNeighbourhood, rule
from panelcad.checks.setting import Setting
from panelcad.geometry.contour import Contour
from panelcad.geometry.gap import TIE, edge_gap
from panelcad.geometry.polygon import Side, polygon
from panelcad.model.finding import Cure, Finding, Measure, Severity
from panelcad.model.plate import CutState, PlateState

_WHY = "an unused hole in the panel is covered; common practice"
_NOTHING = 1e-4
"""Shares below this are rounding."""


@rule(
    "open-cutout",
    title="Old cutout neither used nor covered",
    measures="share of an unused old cut that no bezel covers; a hole for a shaft or a duct is used",
    looks_at=EachNeighbourhood(
        Kind.FITTING, Layer.OLD_CUTS, (Layer.BEZELS, Layer.MOVING, Layer.OBSTACLES), lambda _: 0.0
    ),
    severities=(Severity.WARNING, Severity.ADVICE),
    source=_WHY,
)
def open_cutout(fitting: Fitting, near: tuple[Piece, ...], setting: Setting) -> Iterator[Finding]:
    cut = fitting.cut
    if cut.cut.state is not CutState.EXISTING or not cut.features or _is_used(fitting, near, setting):
        return
    covers = [piece.contour for piece in near if piece.name == "bezel"]
    contours = [feature.contour for feature in cut.features]
    share = sum(_shows(contour, covers) for contour in contours) / sum(contour.area for contour in contours)
    if share < _NOTHING:
        return
    is_open = share > 1 - _NOTHING
    yield Finding(
        rule="open-cutout",
        severity=Severity.ADVICE if setting.plate.state is PlateState.KEPT else Severity.WARNING,
        items=(cut.cut.id,),
        plate=setting.plate.id,
        problem="Old cutout is neither used nor covered" if is_open else "Old cutout is only partly covered",
        measure=Measure.RATIO,
        measured=1.0 if is_open else share,
        required=0.0,
        more_is_worse=True,
        where=(cut.features[0].centre,),
        source=_WHY,
        cure=Cure(item=cut.cut.id, advice="fit a blank over it"),
    )


_ANYTHING: Final = "opening"
"""What an opening's purpose says when nobody said what it is for."""


def _is_used(fitting: Fitting, near: tuple[Piece, ...], setting: Setting) -> bool:
    """Whether an item uses it, its own opening says what it is for, or a shaft or a duct goes through it."""
    named = any(opening.purpose != _ANYTHING for opening in fitting.cut.cut.openings)
    return bool(fitting.items) or named or _is_passed(near, setting)


def _is_passed(near: tuple[Piece, ...], setting: Setting) -> bool:
    return any(p.name != "bezel" and p.near < setting.thickness and p.far > 0.0 for p in near)


def _shows(hole: Contour, covers: list[Contour]) -> float:
    """Area in mm² of a hole that stays visible."""
    if any(edge_gap(hole, cover).distance >= -TIE for cover in covers):
        return 0.0
    shape = polygon(hole, Side.INSCRIBED)
    left = shape.difference(shapely.union_all([polygon(cover, Side.INSCRIBED) for cover in covers]))
    return hole.area * left.area / shape.area if not math.isclose(left.area, 0.0) else 0.0
