"""What of a plate was there before the work: lettering that stays or goes, and the contours of cuts that are enlarged.

Told from the plate of the same id in the panel as found; a new sheet has nothing of it.
"""

from collections.abc import Iterator
from typing import Final

from panelcad.geometry.gap import contains
from panelcad.model.engraved import engraving_box
from panelcad.model.layout import Feature, PlateLayout, layout
from panelcad.model.plate import CutState, Engraving, Plate, PlateState
from panelcad.model.project import Project

_SAME: Final = 1e-6
"""mm: stored lengths end at the nanometre."""


def plate_as_found(project: Project, plate: Plate) -> Plate | None:
    """The same plate before the work; None for a new sheet, and for one that was not there."""
    if plate.state is PlateState.NEW:
        return None
    return next((found for found in project.as_found.plates if found.id == plate.id), None)


def standing_lettering(project: Project, plate: Plate) -> frozenset[str]:
    """The ids of the plate's lines of lettering that are on it already: of the same text, place, height and turn."""
    found = plate_as_found(project, plate)
    there = {_place(each) for each in found.engravings} if found else set()
    return frozenset(each.id for each in plate.engravings if _place(each) in there)


def dropped_lettering(project: Project, plate: PlateLayout) -> tuple[Engraving, ...]:
    """The lines that are on the sheet already and shall not stay; those that are cut away with their metal left out."""
    found = plate_as_found(project, plate.plate)
    stay = {_place(each) for each in plate.plate.engravings}
    dropped = (each for each in (found.engravings if found else ()) if _place(each) not in stay)
    return tuple(each for each in dropped if not _is_cut_away(each, plate))


def enlarged_from(project: Project, plate: PlateLayout) -> dict[str, Feature]:
    """By the id of each contour of a cut that is enlarged, the largest old contour within it, where there is one."""
    old = _features_as_found(project, plate)
    return {
        feature.id: max(within, key=lambda each: each.contour.area)
        for feature in _enlarged(plate)
        if (within := [each for each in old if _takes_in(feature, each)])
    }


def old_contours(project: Project, plate: PlateLayout) -> tuple[Feature, ...]:
    """Every contour as found that a cut which is enlarged takes in, or had before, where it was another one."""
    enlarged = _enlarged(plate)
    owners = {feature.owner for feature in enlarged}
    return tuple(
        old
        for old in _features_as_found(project, plate)
        if (old.owner in owners or any(_takes_in(feature, old) for feature in enlarged))
        and not any(_is_same(feature, old) for feature in plate.features)
    )


def _features_as_found(project: Project, plate: PlateLayout) -> tuple[Feature, ...]:
    found = plate_as_found(project, plate.plate)
    return layout(project, project.as_found).plate(found.id).features if found else ()


def _enlarged(plate: PlateLayout) -> tuple[Feature, ...]:
    return tuple(each for cut in plate.cuts if cut.cut.state is CutState.ENLARGED for each in cut.features)


def _takes_in(new: Feature, old: Feature) -> bool:
    """Whether an old contour lies within a new one and is another."""
    x1, y1, x2, y2 = new.contour.bounds
    left, bottom, right, top = old.contour.bounds
    is_within = left >= x1 - _SAME and bottom >= y1 - _SAME and right <= x2 + _SAME and top <= y2 + _SAME
    return is_within and contains(new.contour, old.centre) and not _is_same(new, old)


def _is_same(one: Feature, other: Feature) -> bool:
    pairs: Iterator[tuple[float, float]] = zip(one.contour.bounds, other.contour.bounds, strict=True)
    same_area = abs(one.contour.area - other.contour.area) < _SAME * max(1.0, one.contour.area)
    return same_area and all(abs(a - b) < _SAME for a, b in pairs)


def _is_cut_away(line: Engraving, plate: PlateLayout) -> bool:
    """Whether one cut takes in the whole line: its box has straight sides, so the corners tell."""
    corners = [segment.start for segment in engraving_box(line).segments]
    return any(all(contains(feature.contour, corner) for corner in corners) for feature in plate.features)


def _place(line: Engraving) -> tuple[str, float, float, float, float]:
    return line.text, line.x, line.y, line.height, line.rotation % 360.0
