"""First-article inspection: what of a plate is measured, in the order in which an inspector would, lengths in mm.

First the sheet itself and its outline, then hole by hole its size and its place from the datum, then what is looked
at, the lettering, last what was there before the work, for reference. What callipers, a height gauge and radius gauges
cannot find on the part, such as the centre of an arc, stands for reference only.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Final

from panelcad.drawing.engravings import numbered_engravings, standing
from panelcad.drawing.outline_edges import Edge, edges
from panelcad.drawing.schedule import Hole, holes
from panelcad.drawing.subject import Subject
from panelcad.geometry.contour import Contour
from panelcad.geometry.segment import Arc
from panelcad.model.found import dropped_lettering
from panelcad.model.hole import HoleKind
from panelcad.model.layout import PlateLayout
from panelcad.model.plate import PlateState
from panelcad.units import LengthUnit, format_tolerance


@dataclass(frozen=True)
class Characteristic:
    """One thing to be measured or looked at: `nominal` and `tolerance` in mm, None where there is nothing to measure.

    `words` is the nominal in words, `purpose` what the feature is for, given with the first of its characteristics.
    `is_reference` marks what is not judged; `was_there` what was in the sheet before the work, which is not either.
    """

    feature: str
    what: str
    words: str
    nominal: float | None = None
    tolerance: float | None = None
    is_reference: bool = False
    purpose: str = ""
    was_there: bool = False


CLOSING: Final = (
    ("result", "accept or reject"),
    ("result", "nonconforming features"),
    ("record", "part number"),
    ("record", "serial number"),
    ("record", "instruments used"),
    ("record", "inspector"),
    ("record", "signature"),
    ("record", "date"),
)
"""What closes an inspection, to be filled in."""


LARGEST_GAUGE: Final = 25.0
"""mm: sets of radius gauges end at about this radius (common practice)."""
PROFILE: Final = {LengthUnit.MM: 0.25, LengthUnit.INCH: 0.254}
"""mm: what may be told with a radius gauge, or a contour held to the full-size template (shop setting)."""


def characteristics(subject: Subject, plate: PlateLayout) -> list[Characteristic]:
    """All of a plate's, numbered from 1 by their place in the list."""
    listed = holes(subject, plate)
    sheet = (*_of_sheet(subject, plate), *_of_outline(subject, plate))
    measured = [*sheet, *(each for hole in listed for each in _of_hole(subject, hole))]
    letters = list(_lettering(subject, plate))
    old = [each for each in (*measured, *letters) if each.was_there]
    return [*_new(measured), *_looked_at(listed, plate.plate.state), *_new(letters), *old]


def _new(listed: list[Characteristic]) -> Iterator[Characteristic]:
    return (each for each in listed if not each.was_there)


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

    def size(self, what: str, value: float, tolerance: float | None = None) -> Characteristic:
        words, within = self.subject.number(value), None if self.is_there else tolerance or self._tolerance
        return Characteristic(self.name, what, words, value, within, self.is_there, self.purpose, self.is_there)

    def reference(self, what: str, value: float) -> Characteristic:
        """A size that is told and not judged."""
        return replace(self.size(what, value), tolerance=None, is_reference=True)

    def words(self, what: str, words: str) -> Characteristic:
        return Characteristic(
            self.name, what, words, is_reference=self.is_there, purpose=self.purpose, was_there=self.is_there
        )

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
    found = edges(contour)
    for edge in found:
        here = feature.called(f"{prefix}{edge.name}")
        if edge.is_corner and not (_is_near(edge.start.x, (x1, x2)) and _is_near(edge.start.y, (y1, y2))):
            corner = feature.called(f"{prefix}V{edge.number}")
            yield corner.size("corner X", edge.start.x)
            yield corner.size("corner Y", edge.start.y)
        if edge.arc is not None:
            yield from _of_arc(here, edge, found[edge.following - 1])
        elif edge.upright_at is not None and not _is_near(edge.upright_at, (x1, x2)):
            yield here.size("edge X", edge.upright_at)
        elif edge.level_at is not None and not _is_near(edge.level_at, (y1, y2)):
            yield here.size("edge Y", edge.level_at)
    if any(edge.arc is not None for edge in found):
        yield feature.words("profile, all round", f"to the template within {gauge_words(feature.subject)}")


def _of_arc(feature: _Feature, edge: Edge, after: Edge) -> Iterator[Characteristic]:
    """A small arc by a radius gauge, a larger one by points on it; its centre is in the air and only for reference."""
    arc = edge.arc
    if arc is None:
        return
    radius = "arc radius, concave" if edge.is_concave else "arc radius"
    if arc.radius <= LARGEST_GAUGE:
        yield feature.size(radius, arc.radius, PROFILE[feature.subject.unit])
    else:
        for what, share in _points(edge, after):
            yield feature.size(*_point_on(arc, what, share, feature.subject))
        yield feature.reference(radius, arc.radius)
    yield feature.reference("arc centre X", arc.centre.x)
    yield feature.reference("arc centre Y", arc.centre.y)


def _points(edge: Edge, after: Edge) -> Iterator[tuple[str, float]]:
    """Middle and ends of a large arc; an end that is a corner, or where another such arc begins, is measured there."""
    if not edge.is_corner:
        yield "start", 0.0
    yield "middle", 0.5
    goes_on = after.arc is not None and after.arc.radius > LARGEST_GAUGE
    if not after.is_corner and not goes_on:
        yield "end", 1.0


def _point_on(arc: Arc, what: str, share: float, subject: Subject) -> tuple[str, float]:
    """A point of an arc as a height gauge finds it: across the direction in which the arc runs there."""
    at = arc.at(share)
    if abs(at.y - arc.centre.y) >= abs(at.x - arc.centre.x):
        return f"arc's {what}: Y at X {subject.number(at.x)}", at.y
    return f"arc's {what}: X at Y {subject.number(at.y)}", at.x


def tolerance_words(subject: Subject, each: Characteristic) -> str:
    """The tolerance as a plain number; 'reference' for what is not judged; the sheet's thickness is its maker's."""
    if each.is_reference:
        return "reference"
    if each.tolerance is not None:
        return format_tolerance(each.tolerance, subject.unit)
    return "as supplied" if each.nominal is not None else ""


def gauge_words(subject: Subject) -> str:
    """'±0.010 in': what a radius gauge or the template tells."""
    return f"±{format_tolerance(PROFILE[subject.unit], subject.unit)} {subject.unit.value}"


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
        yield each if i else replace(each, purpose=hole.about(subject.unit))


def _places(feature: _Feature, hole: Hole) -> Iterator[Characteristic]:
    of = "circle's centre " if hole.is_about_a_circle else ""
    yield feature.size(f"{of}X", hole.centre.x)
    yield feature.size(f"{of}Y", hole.centre.y)


_OF_NEW: Final = (
    ("both faces", "deburred, edges broken, no scratches on the good face"),
    ("sheet", "flat; grain and good face as noted"),
)
_OF_USED: Final = (
    ("both faces", "deburred where cut, edges broken, no new scratches on the front"),
    ("sheet", "flat; nothing cut that was to stay"),
)
_HARDWARE: Final = {
    HoleKind.COUNTERSUNK: "countersinks on the right face, heads flush",
    HoleKind.TAPPED: "threads gauged",
    HoleKind.NUTPLATE: "nutplates riveted, screw runs freely",
    HoleKind.INSERT: "inserts seated and locked",
}


def _looked_at(listed: list[Hole], state: PlateState) -> Iterator[Characteristic]:
    kinds = {hole.feature.form.kind for hole in listed if hole.feature.form is not None and not hole.is_there}
    for feature, words in _OF_NEW if state is PlateState.NEW else _OF_USED:
        yield Characteristic(feature, "looked at", words)
    for kind, words in _HARDWARE.items():
        if kind in kinds:
            yield Characteristic(f"{kind.value} holes", "looked at", words)


def _lettering(subject: Subject, plate: PlateLayout) -> Iterator[Characteristic]:
    """What each line says, and of a new one how high its letters are; where its middle is for reference; which go."""
    there = standing(subject, plate)
    for number, engraving in numbered_engravings(subject, plate):
        line = _Feature(subject, number, number in there)
        yield line.words("reads", engraving.text)
        if number in there:
            continue
        yield line.size("letter height", engraving.height, PROFILE[subject.unit])
        yield line.reference("middle X", engraving.x)
        yield line.reference("middle Y", engraving.y)
    for engraving in dropped_lettering(subject.project, plate):
        place = f"at X {subject.number(engraving.x)} Y {subject.number(engraving.y)}"
        yield Characteristic("old lettering", "removed", f"{engraving.text}, {place}")
