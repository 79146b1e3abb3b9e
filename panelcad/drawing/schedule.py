"""The hole schedule: every closed contour of a plate with its number, place, size and purpose."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from panelcad.drawing.box import middle
from panelcad.drawing.describe import contour_text, hole_text, shape_text
from panelcad.drawing.measures import Measure, hole_measures, is_about_a_circle, shape_measures
from panelcad.drawing.numbering import sort_key
from panelcad.drawing.subject import Subject
from panelcad.geometry.contour import Rounded
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point
from panelcad.model.cutout import Opening
from panelcad.model.found import enlarged_from
from panelcad.model.hole import HoleForm
from panelcad.model.layout import Feature, FeatureKind, PlacedCut, PlateLayout
from panelcad.model.plate import CutState, PlateState
from panelcad.model.shape import Outline, Shape
from panelcad.units import LengthUnit

_UPRIGHT: Final = Placement()


@dataclass(frozen=True)
class Hole:
    """A line of the schedule: an opening with its `shape`, or a hole with the form of its feature; `at` is its place.

    Lengths in mm from the plate's datum; `purpose` in words; `was` is what a cut that is enlarged was before.
    """

    number: str
    feature: Feature
    purpose: str
    is_there: bool
    at: Placement
    shape: Shape | None = None
    was: Feature | None = None

    @property
    def centre(self) -> Point:
        """Where it is: its own origin; the middle of its box where its outline is free."""
        return middle(self.feature.contour.bounds) if self.is_free else self.feature.centre

    @property
    def is_circle(self) -> bool:
        contour = self.feature.contour
        return isinstance(contour, Rounded) and contour.is_circle

    @property
    def is_free(self) -> bool:
        """Whether it has an outline of its own, corner by corner."""
        return isinstance(self.shape, Outline)

    @property
    def is_about_a_circle(self) -> bool:
        """Whether its place is the centre of a circle that has a key or a flat."""
        return is_about_a_circle(self.shape, self.feature.form)

    @property
    def measures(self) -> tuple[Measure, ...]:
        if self.shape is not None:
            return tuple(shape_measures(self.shape, self.at))
        return tuple(hole_measures(self._form, self.at))

    def size(self, unit: LengthUnit) -> str:
        """In words."""
        if self.shape is not None:
            return shape_text(self.shape, unit, self.at)
        return hole_text(self._form, unit, self.at)

    @property
    def _form(self) -> HoleForm:
        if self.feature.form is None:
            raise ValueError(f"{self.feature.id} has neither a shape nor a form")
        return self.feature.form

    @property
    def is_main(self) -> bool:
        """Whether it is an opening, an attach screw or the like, and not one hole of a pattern."""
        return "." not in self.number and self.feature.kind is not FeatureKind.RIVET

    @property
    def state(self) -> str:
        if self.is_there:
            return "existing"
        return "enlarged" if self.was is not None else "cut"

    def about(self, unit: LengthUnit) -> str:
        """What it is for, and what it is enlarged from."""
        if self.was is None:
            return self.purpose
        return f"{self.purpose}, enlarged from {contour_text(self.was.contour, unit)}"


def holes(subject: Subject, plate: PlateLayout) -> list[Hole]:
    """The plate's holes: inner openings, cuts in their order, attach screws."""
    is_used = plate.plate.state is not PlateState.NEW
    own = (*_inner(subject, plate, is_there=is_used), *_attach(subject, plate, is_there=is_used))
    found = [*_of_cuts(subject, plate), *own]
    return sorted(found, key=lambda hole: sort_key(hole.number))


def _inner(subject: Subject, plate: PlateLayout, *, is_there: bool) -> Iterator[Hole]:
    for feature, opening in zip(plate.inner, plate.plate.inner_openings, strict=True):
        at = _place(opening, _UPRIGHT)
        number = subject.numbers.features[feature.id]
        yield Hole(number, feature, feature.purpose, is_there, at, opening.shape)


def _of_cuts(subject: Subject, plate: PlateLayout) -> Iterator[Hole]:
    was = enlarged_from(subject.project, plate)
    for placed in plate.cuts:
        is_there = placed.cut.state is CutState.EXISTING
        openings = dict(_openings(placed))
        for feature in placed.features:
            opening = openings.get(feature.id)
            number, purpose = subject.numbers.features[feature.id], f"{placed.cut.name}: {feature.purpose}"
            if opening is not None:
                at = _place(opening, placed.placement)
                yield Hole(number, feature, purpose, is_there, at, opening.shape, was.get(feature.id))
            else:
                yield Hole(number, feature, purpose, is_there, placed.placement, was=was.get(feature.id))


def _openings(placed: PlacedCut) -> Iterator[tuple[str, Opening]]:
    openings = placed.cutout.openings if placed.cutout else placed.cut.openings
    for feature, opening in zip(placed.openings, openings, strict=True):
        yield feature.id, opening


def _place(opening: Opening, on: Placement) -> Placement:
    return on.after(Placement(opening.x, opening.y, opening.rotation))


def _attach(subject: Subject, plate: PlateLayout, *, is_there: bool) -> Iterator[Hole]:
    """The screws, and the rivets of their nutplates, which are told whose they are."""
    numbers = subject.numbers.features
    screws = {screw.owner: numbers[screw.id] for screw in plate.attach if screw.kind is FeatureKind.ATTACH}
    for feature in plate.attach:
        is_rivet = feature.kind is FeatureKind.RIVET
        purpose = f"rivet of the nutplate of {screws[feature.owner]}" if is_rivet else "attach screw"
        yield Hole(numbers[feature.id], feature, purpose, is_there, _UPRIGHT)
