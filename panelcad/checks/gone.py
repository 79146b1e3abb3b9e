"""Old cuts that are gone: they lie wholly in an opening that is still to be made, so no metal is left around them."""

from collections.abc import Iterator

import numpy as np

from panelcad.geometry.contour import Contour
from panelcad.geometry.gap import contains
from panelcad.model.kept import kept_choice
from panelcad.model.layout import Feature, PlacedCut, PlateLayout
from panelcad.model.plate import CutState


def gone_features(plate: PlateLayout) -> dict[str, frozenset[str]]:
    """The ids of old cuts' contours that a new opening swallows, by the id of the old cut."""
    old = [feature for cut in existing_cuts(plate) for feature in cut.features]
    if not old:
        return {}
    new = [f for cut in plate.cuts if cut.cut.state is not CutState.EXISTING for f in cut.openings]
    if not new:
        return {}
    gone: dict[str, set[str]] = {}
    for small, large in _inside_boxes(old, new):
        if holds(large.contour, small.contour):
            gone.setdefault(small.owner, set()).add(small.id)
    return {owner: frozenset(ids) for owner, ids in gone.items()}


def existing_cuts(plate: PlateLayout) -> tuple[PlacedCut, ...]:
    """The cuts of a plate that were there before."""
    return kept_choice(("existing cuts", plate.plate.id), plate.cuts, lambda cut: cut.cut.state is CutState.EXISTING)


def holds(large: Contour, small: Contour) -> bool:
    """Whether every corner and every middle of a piece of `small` lies in `large`."""
    return all(contains(large, at) for piece in small.segments for at in (piece.start, piece.at(0.5)))


def _inside_boxes(old: list[Feature], new: list[Feature]) -> Iterator[tuple[Feature, Feature]]:
    a = np.array([f.contour.bounds for f in old])[:, None]
    b = np.array([f.contour.bounds for f in new])[None]
    inside = (a[..., :2] >= b[..., :2]).all(-1) & (a[..., 2:] <= b[..., 2:]).all(-1)
    for i, j in zip(*np.nonzero(inside), strict=True):
        yield old[int(i)], new[int(j)]
