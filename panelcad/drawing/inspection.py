"""First-article inspection: what of a plate is measured, in the order in which an inspector would, lengths in mm.

First the sheet itself, then hole by hole its size and its place from the datum, last what is looked at.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from panelcad.drawing.schedule import Hole, holes
from panelcad.drawing.subject import Subject
from panelcad.model.hole import HoleKind
from panelcad.model.layout import PlateLayout


@dataclass(frozen=True)
class Characteristic:
    """One thing to be measured or looked at: `nominal` and `tolerance` in mm, None where there is nothing to measure.

    `words` is the nominal in words, `purpose` what the feature is for, given with the first of its characteristics;
    `is_reference` marks what was in the sheet before the work.
    """

    feature: str
    what: str
    words: str
    nominal: float | None = None
    tolerance: float | None = None
    is_reference: bool = False
    purpose: str = ""


def characteristics(subject: Subject, plate: PlateLayout) -> list[Characteristic]:
    """All of a plate's, numbered from 1 by their place in the list."""
    listed = holes(subject, plate)
    new = [each for hole in listed if not hole.is_there for each in _of_hole(subject, hole)]
    old = [each for hole in listed if hole.is_there for each in _of_hole(subject, hole)]
    return [*_of_sheet(subject, plate), *new, *_looked_at(plate, listed), *old]


def _of_sheet(subject: Subject, plate: PlateLayout) -> Iterator[Characteristic]:
    x1, y1, x2, y2 = plate.outline.bounds
    tolerance = subject.project.profile.sheet_tolerance
    sheet = plate.plate
    yield Characteristic("sheet", "material", sheet.alloy)
    yield Characteristic("sheet", "thickness", subject.number(sheet.thickness), sheet.thickness)
    for what, value in (("overall width", x2 - x1), ("overall height", y2 - y1)):
        yield Characteristic("outline", what, subject.number(value), value, tolerance)
    for what, value in (("left edge X", x1), ("right edge X", x2), ("lower edge Y", y1), ("upper edge Y", y2)):
        yield Characteristic("outline", what, subject.number(value), value, tolerance)


def _of_hole(subject: Subject, hole: Hole) -> Iterator[Characteristic]:
    tolerance = None if hole.is_there else subject.project.profile.sheet_tolerance
    x, y = hole.centre
    sizes = (*_sizes(hole), ("X", x), ("Y", y))
    for i, (what, value) in enumerate(sizes):
        purpose = "" if i else hole.purpose
        words = subject.number(value)
        yield Characteristic(hole.number, what, words, value, tolerance, is_reference=hole.is_there, purpose=purpose)


def _sizes(hole: Hole) -> Iterator[tuple[str, float]]:
    """Diameter of a round hole, else width and height over all as it stands."""
    form = hole.feature.form
    if form is not None:
        yield "diameter", form.diameter
        if form.countersink is not None:
            yield "countersink diameter", form.countersink.diameter
        return
    x1, y1, x2, y2 = hole.feature.contour.bounds
    if hole.is_circle:
        yield "diameter", x2 - x1
    else:
        yield "width over all", x2 - x1
        yield "height over all", y2 - y1


_ALWAYS: Final = (
    ("both faces", "deburred, edges broken, no scratches on the good face"),
    ("sheet", "flat; grain and good face as noted"),
)
_HARDWARE: Final = {
    HoleKind.COUNTERSUNK: "countersinks on the right face, heads flush",
    HoleKind.TAPPED: "threads gauged",
    HoleKind.NUTPLATE: "nutplates riveted, screw runs freely",
    HoleKind.INSERT: "inserts seated and locked",
}


def _looked_at(plate: PlateLayout, listed: list[Hole]) -> Iterator[Characteristic]:
    kinds = {hole.feature.form.kind for hole in listed if hole.feature.form is not None and not hole.is_there}
    for feature, words in _ALWAYS:
        yield Characteristic(feature, "looked at", words)
    for kind, words in _HARDWARE.items():
        if kind in kinds:
            yield Characteristic(f"{kind.value} holes", "looked at", words)
    for engraving in plate.plate.engravings:
        yield Characteristic("engraving", "reads", engraving.text)
