"""The hole schedule: every closed contour of a plate with its number, place, size and purpose."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from panelcad.drawing.describe import hole_text, shape_text, turned_text
from panelcad.drawing.subject import Subject
from panelcad.geometry.contour import Rounded
from panelcad.geometry.point import Point
from panelcad.model.layout import Feature, FeatureKind, PlacedCut, PlateLayout
from panelcad.model.plate import CutState, PlateState
from panelcad.model.shape import Circle, Shape

_ON_THE_SHEET: Final = {False: "cut", True: "there"}


@dataclass(frozen=True)
class Hole:
    """A line of the schedule; `size` and `purpose` in words, the centre in mm from the plate's datum."""

    number: str
    feature: Feature
    centre: Point
    size: str
    purpose: str
    is_there: bool

    @property
    def is_circle(self) -> bool:
        contour = self.feature.contour
        return isinstance(contour, Rounded) and contour.is_circle

    @property
    def is_main(self) -> bool:
        """Whether it is an opening, an attach screw or the like, and not one hole of a pattern."""
        return "." not in self.number and self.feature.kind is not FeatureKind.RIVET

    @property
    def state(self) -> str:
        return _ON_THE_SHEET[self.is_there]


def holes(subject: Subject, plate: PlateLayout) -> list[Hole]:
    """The plate's holes: inner openings, cuts in their order, attach screws."""
    is_used = plate.plate.state is not PlateState.NEW
    own = (*_inner(subject, plate, is_there=is_used), *_attach(subject, plate, is_there=is_used))
    found = [*_of_cuts(subject, plate), *own]
    return sorted(found, key=lambda hole: sort_key(hole.number))


def sort_key(number: str) -> tuple[str, tuple[int, ...]]:
    """Sorts '2' before '10', '7.2' after '7', and S and P series after the cuts."""
    letter = number[0] if number[0].isalpha() else ""
    return letter, tuple(int(part) for part in number.removeprefix(letter).split("."))


def _inner(subject: Subject, plate: PlateLayout, *, is_there: bool) -> Iterator[Hole]:
    for feature, opening in zip(plate.inner, plate.plate.inner_openings, strict=True):
        size = _size(opening.shape, opening.rotation, subject)
        yield Hole(subject.numbers.features[feature.id], feature, feature.centre, size, feature.purpose, is_there)


def _of_cuts(subject: Subject, plate: PlateLayout) -> Iterator[Hole]:
    for placed in plate.cuts:
        is_there = placed.cut.state is CutState.EXISTING
        sizes = dict(_opening_sizes(subject, placed))
        for feature in placed.features:
            size = sizes.get(feature.id) or _hole_size(subject, feature)
            purpose = f"{placed.cut.name}: {feature.purpose}"
            yield Hole(subject.numbers.features[feature.id], feature, feature.centre, size, purpose, is_there)


def _opening_sizes(subject: Subject, placed: PlacedCut) -> Iterator[tuple[str, str]]:
    openings = placed.cutout.openings if placed.cutout else placed.cut.openings
    for feature, opening in zip(placed.openings, openings, strict=True):
        yield feature.id, _size(opening.shape, placed.placement.rotation + opening.rotation, subject)


def _size(shape: Shape, rotation: float, subject: Subject) -> str:
    turned = "" if isinstance(shape, Circle) else turned_text(rotation)
    return shape_text(shape, subject.unit) + turned


def _hole_size(subject: Subject, feature: Feature) -> str:
    if feature.form is None:
        raise ValueError(f"{feature.id} has no form")
    return hole_text(feature.form, subject.unit)


def _attach(subject: Subject, plate: PlateLayout, *, is_there: bool) -> Iterator[Hole]:
    for feature in plate.attach:
        purpose = "attach screw's rivet" if feature.kind is FeatureKind.RIVET else "attach screw"
        number = subject.numbers.features[feature.id]
        yield Hole(number, feature, feature.centre, _hole_size(subject, feature), purpose, is_there)
