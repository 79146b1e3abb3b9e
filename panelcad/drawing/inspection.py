"""First-article inspection: what of a plate is measured, in the order in which an inspector would, lengths in mm.

First the sheet itself and its outline, then hole by hole its size and its place from the datum, then what is looked
at, last what was there before the work, for reference.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Final

from panelcad.drawing.engravings import numbered_engravings
from panelcad.drawing.outline_edges import edges
from panelcad.drawing.schedule import Hole, holes
from panelcad.drawing.subject import Subject
from panelcad.geometry.contour import Contour
from panelcad.model.hole import HoleKind
from panelcad.model.layout import PlateLayout
from panelcad.model.plate import PlateState


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
    sheet = (*_of_sheet(subject, plate), *_of_outline(subject, plate))
    measured = [*sheet, *(each for hole in listed for each in _of_hole(subject, hole))]
    new = [each for each in measured if not each.is_reference]
    old = [each for each in measured if each.is_reference]
    return [*new, *_looked_at(subject, plate, listed), *old]


@dataclass(frozen=True)
class _Feature:
    """Makes the characteristics of one feature; what is there already is for reference and has no tolerance."""

    subject: Subject
    name: str
    is_there: bool
    purpose: str = ""

    @property
    def _tolerance(self) -> float | None:
        return None if self.is_there else self.subject.project.profile.sheet_tolerance

    def size(self, what: str, value: float) -> Characteristic:
        words = self.subject.number(value)
        return Characteristic(self.name, what, words, value, self._tolerance, self.is_there, self.purpose)

    def words(self, what: str, words: str) -> Characteristic:
        return Characteristic(self.name, what, words, is_reference=self.is_there, purpose=self.purpose)

    def called(self, name: str) -> "_Feature":
        return replace(self, name=name)


def _of_sheet(subject: Subject, plate: PlateLayout) -> Iterator[Characteristic]:
    sheet = _Feature(subject, "sheet", plate.plate.state is not PlateState.NEW)
    yield sheet.words("material", plate.plate.alloy)
    yield replace(sheet.size("thickness", plate.plate.thickness), tolerance=None)


def _of_outline(subject: Subject, plate: PlateLayout) -> Iterator[Characteristic]:
    outline = _Feature(subject, "outline", plate.plate.state is not PlateState.NEW)
    x1, y1, x2, y2 = plate.outline.bounds
    yield outline.size("overall width", x2 - x1)
    yield outline.size("overall height", y2 - y1)
    yield from _of_contour(outline, plate.outline, "")


def _of_contour(feature: _Feature, contour: Contour, prefix: str) -> Iterator[Characteristic]:
    """Where a contour's sides are, its corners and its arcs; what lies on the box's sides is measured with those."""
    x1, y1, x2, y2 = contour.bounds
    for what, value in (("left edge X", x1), ("right edge X", x2), ("lower edge Y", y1), ("upper edge Y", y2)):
        yield feature.size(what, value)
    for edge in edges(contour):
        here = feature.called(f"{prefix}{edge.name}")
        if edge.is_corner and not (_is_near(edge.start.x, (x1, x2)) and _is_near(edge.start.y, (y1, y2))):
            corner = feature.called(f"{prefix}V{edge.number}")
            yield corner.size("corner X", edge.start.x)
            yield corner.size("corner Y", edge.start.y)
        if edge.arc is not None:
            yield here.size("arc radius, concave" if edge.is_concave else "arc radius", edge.arc.radius)
            yield here.size("arc centre X", edge.arc.centre.x)
            yield here.size("arc centre Y", edge.arc.centre.y)
        elif edge.upright_at is not None and not _is_near(edge.upright_at, (x1, x2)):
            yield here.size("edge X", edge.upright_at)
        elif edge.level_at is not None and not _is_near(edge.level_at, (y1, y2)):
            yield here.size("edge Y", edge.level_at)


def _is_near(value: float, ends: tuple[float, float]) -> bool:
    return min(abs(value - end) for end in ends) < 1e-6


def _of_hole(subject: Subject, hole: Hole) -> Iterator[Characteristic]:
    """Its sizes, then its place; what it is for stands with the first."""
    feature = _Feature(subject, hole.number, hole.is_there)
    sizes = [
        feature.words(each.what, each.words) if each.value is None else feature.size(each.what, each.value)
        for each in hole.measures
    ]
    places = _of_contour(feature, hole.feature.contour, f"{hole.number} ") if hole.is_free else _places(feature, hole)
    for i, each in enumerate((*sizes, *places)):
        yield each if i else replace(each, purpose=hole.purpose)


def _places(feature: _Feature, hole: Hole) -> Iterator[Characteristic]:
    of = "circle's centre " if hole.is_about_a_circle else ""
    yield feature.size(f"{of}X", hole.centre.x)
    yield feature.size(f"{of}Y", hole.centre.y)


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


def _looked_at(subject: Subject, plate: PlateLayout, listed: list[Hole]) -> Iterator[Characteristic]:
    kinds = {hole.feature.form.kind for hole in listed if hole.feature.form is not None and not hole.is_there}
    for feature, words in _ALWAYS:
        yield Characteristic(feature, "looked at", words)
    for kind, words in _HARDWARE.items():
        if kind in kinds:
            yield Characteristic(f"{kind.value} holes", "looked at", words)
    for number, engraving in numbered_engravings(subject, plate):
        what = f"reads, letters {subject.number(engraving.height)} high"
        yield Characteristic(number, what, engraving.text)
