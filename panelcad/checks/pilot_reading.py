"""Reading: letters high enough for the distance, strokes in proportion, words not covered, the compass placard."""

import math
from collections.abc import Iterator
from typing import NamedTuple

import numpy as np

from panelcad.checks.pilot_sight import sight_of
from panelcad.checks.pilot_words import without_words, words_on
from panelcad.checks.registry import FROM_THE_SEAT, TheWhole, rule
from panelcad.checks.report import Unknown
from panelcad.geometry.boxes import Box
from panelcad.geometry.contour import Contour
from panelcad.geometry.gap import TIE, gap
from panelcad.geometry.point import Point
from panelcad.model.engraved import engraving_box
from panelcad.model.finding import Cure, Finding, Measure, Severity
from panelcad.model.function import Function
from panelcad.model.kept import kept_choice
from panelcad.model.layout import Layout, PlacedItem, PlateLayout
from panelcad.model.placard import is_placard
from panelcad.model.plate import Engraving, Plate
from panelcad.model.profile import Profile, limit_source
from panelcad.model.project import Project


def height_for(minutes: float, distance: float) -> float:
    """The height in mm that fills so many minutes of arc at a distance in mm: 2 d tan(angle / 2)."""
    return 2 * distance * math.tan(math.radians(minutes / 60) / 2)


def height_preferred(plate: Plate, project: Project, at: Point) -> float | None:
    """The height in mm at which the rule finds nothing in letters at this place; None where no eye is known."""
    eye, profile = project.surroundings.eye, project.profile
    if eye is None:
        return None
    minutes = max(profile.letter_least, profile.letter_preferred)
    return height_for(minutes, sight_of(plate, eye, profile.line_of_sight_down).distance(at))


@rule(
    "letter-height",
    title="Height of letters at the pilot's eye",
    measures="height of engraved letters against their distance from the eye, by angle",
    looks_at=TheWhole(),
    severities=(Severity.WARNING, Severity.ADVICE),
    limits=("letter_least", "letter_preferred"),
)
def letter_height(laid: Layout) -> Iterator[Finding]:
    """One finding a plate and limit, measured at the line of lettering that misses it the most."""
    eye, profile = laid.project.surroundings.eye, laid.project.profile
    if eye is None:
        return
    for plate in laid.plates:
        sight = sight_of(plate.plate, eye, profile.line_of_sight_down)
        low: dict[str, list[Low]] = {"letter_least": [], "letter_preferred": []}
        for engraving in plate.plate.engravings:
            for limit, found in low.items():
                least = height_for(getattr(profile, limit), sight.distance(Point(engraving.x, engraving.y)))
                if engraving.height < least - TIE:
                    found.append(Low(engraving, least))
                    break
        yield from (_too_low(found, plate, limit) for limit, found in low.items() if found)


class Low(NamedTuple):
    """A line of lettering and the height it should have, in mm."""

    engraving: Engraving
    least: float


def _too_low(low: list[Low], plate: PlateLayout, limit: str) -> Finding:
    worst, least = min(low, key=lambda each: each.engraving.height / each.least)
    return Finding(
        rule="letter-height",
        severity=Severity.WARNING if limit == "letter_least" else Severity.ADVICE,
        problem="Letters are low for their distance from the eye",
        items=tuple(sorted(each.engraving.id for each in low)),
        plate=plate.plate.id,
        measured=worst.height,
        required=least,
        where=(Point(worst.x, worst.y),),
        source=str(limit_source(limit)),
        cure=Cure(item=worst.id, advice="make the letters {value} high", value=least),
    )


@rule(
    "letter-stroke",
    title="Stroke of engraved letters",
    measures="width of the engraving tool as a share of the letters' height; how wide they are for their height cannot "
    "vary: engraved capitals and figures are 3:5 to 1:1, save I and 1 (DOD-HDBK-791 6-5.3.2.2)",
    looks_at=TheWhole(),
    severities=(Severity.ADVICE,),
    limits=("engraving_tool", "stroke_finest", "stroke_boldest"),
)
def letter_stroke(laid: Layout) -> Iterator[Finding | Unknown]:
    tool = laid.project.profile.engraving_tool
    for plate in laid.plates:
        if tool is not None:
            yield from _strokes(plate, tool, laid.project.profile)
        elif plate.plate.engravings:
            yield Unknown("letter-stroke", (plate.plate.id,), "how wide the engraving tool cuts")


def _strokes(plate: PlateLayout, tool: float, profile: Profile) -> Iterator[Finding]:
    for engraving in plate.plate.engravings:
        share = tool / engraving.height
        if share < profile.stroke_finest - TIE:
            yield _stroke(engraving, plate, share, "stroke_finest", profile)
        elif share > profile.stroke_boldest + TIE:
            yield _stroke(engraving, plate, share, "stroke_boldest", profile)


def _stroke(engraving: Engraving, plate: PlateLayout, share: float, limit: str, profile: Profile) -> Finding:
    is_bold = limit == "stroke_boldest"
    return Finding(
        rule="letter-stroke",
        severity=Severity.ADVICE,
        problem="Strokes are bold for the letters' height" if is_bold else "Strokes are fine for the letters' height",
        items=(engraving.id,),
        plate=plate.plate.id,
        measure=Measure.RATIO,
        measured=share,
        required=float(getattr(profile, limit)),
        more_is_worse=is_bold,
        where=(Point(engraving.x, engraving.y),),
        source=str(limit_source(limit)),
    )


@rule(
    "covered-words",
    title="Words covered by a bezel, a knob or a cut",
    measures="overlap of engraved words and placards with what stands or is cut there",
    looks_at=FROM_THE_SEAT,
    severities=(Severity.WARNING,),
    source="14 CFR 23.1541(b) before amendment 23-64: not easily obscured",
)
def covered_words(laid: Layout) -> Iterator[Finding]:
    for plate in laid.plates:
        covers = list(_covers(plate)) if plate.plate.engravings else []
        boxes = np.array([cover.bounds for _, cover in covers]).reshape(-1, 4)
        for engraving in plate.plate.engravings:
            box = engraving_box(engraving)
            near = [covers[place] for place in _meeting(box.bounds, boxes)]
            found = [(gap(box, cover).distance, owner) for owner, cover in near]
            over, owner = min(found, default=(0.0, ""))
            if over < -TIE:
                yield _covered(engraving, owner, over, plate)


def _meeting(box: Box, boxes: "np.ndarray[tuple[int, int], np.dtype[np.float64]]") -> list[int]:
    """The places of the boxes that meet this one."""
    left, bottom, right, top = box
    across = (boxes[:, 0] <= right) & (boxes[:, 2] >= left)
    return list(np.flatnonzero(across & (boxes[:, 1] <= top) & (boxes[:, 3] >= bottom)))


def _covers(plate: PlateLayout) -> Iterator[tuple[str, Contour]]:
    for placed in plate.items:
        if placed.shows_bezel:
            yield placed.item.id, placed.face
        for body in placed.in_front:
            yield placed.item.id, body.footprint
    for cut in plate.cuts:
        for feature in cut.features:
            yield cut.cut.id, feature.contour


def _covered(engraving: Engraving, owner: str, over: float, plate: PlateLayout) -> Finding:
    is_under_placard = any(placed.item.id == owner and is_placard(placed.cutout) for placed in plate.items)
    return Finding(
        rule="covered-words",
        severity=Severity.WARNING,
        problem="Words are covered or cut",
        items=tuple(sorted((engraving.id, owner))),
        plate=plate.plate.id,
        measured=over,
        required=0.0,
        where=(Point(engraving.x, engraving.y),),
        source="14 CFR 23.1541(b) before amendment 23-64, 23.2610(a) since",
        cure=Cure(item=owner, advice="give the placard itself these words") if is_under_placard else None,
    )


def _is_compass(placed: PlacedItem) -> bool:
    return Function.MAGNETIC_DIRECTION in placed.shows


@rule(
    "compass-placard",
    title="Deviation placard beside the compass",
    measures="distance from a magnetic compass to the nearest placard or engraving that names it",
    looks_at=FROM_THE_SEAT,
    severities=(Severity.WARNING,),
    limits=("compass_placard_distance",),
    source="14 CFR 23.1547 before amendment 23-64; distance: shop setting",
)
def compass_placard(laid: Layout) -> Iterator[Finding]:
    for plate in laid.plates:
        cards = [w for w in words_on(plate) if "compass" in w.text.lower() or "deviation" in w.text.lower()]
        for placed in kept_choice(("compasses", plate.plate.id), plate.items, _is_compass):
            missing = without_words(placed, cards, laid.project.profile.compass_placard_distance)
            if missing:
                yield Finding(
                    rule="compass-placard",
                    problem="No deviation placard on or near the compass",
                    plate=plate.plate.id,
                    source=f"14 CFR 23.1547 before amendment 23-64; {limit_source('compass_placard_distance')}",
                    **missing,
                )
