"""An option resolved to geometry: every cut, bezel and body as contours and prisms in its plate's axes, in mm.

Checks, drawings and papers read this and never resolve a cutout themselves. Placed parts are kept by the identity of
the frozen records they were made from, so that an edit re-places only what it touched.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from enum import StrEnum
from functools import cached_property
from typing import Final

from panelcad.geometry.contour import Contour, Rounded
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point, polar
from panelcad.model.cutout import Body, BodyKind, Cutout, Mounting, Opening
from panelcad.model.equipment import EquipmentUnit
from panelcad.model.function import Function
from panelcad.model.hole import BoltCircle, HoleForm, HoleGroup
from panelcad.model.kept import kept, kept_row
from panelcad.model.pilot import Purpose
from panelcad.model.plate import Cut, Plate
from panelcad.model.project import Item, Option, Project

_SPOT: Final = Rounded((Point(0.0, 0.0),), 0.0)


class FeatureKind(StrEnum):
    """What a closed contour of the sheet is."""

    OPENING = "opening"
    HOLE = "hole"
    RIVET = "rivet"
    ATTACH = "attach screw"
    INNER = "inner opening"


@dataclass(frozen=True)
class Feature:
    """One closed contour cut in a plate. `owner` is the id of the cut, attach screw or plate it belongs to."""

    owner: str
    name: str
    kind: FeatureKind
    contour: Contour
    centre: Point
    purpose: str
    form: HoleForm | None = None

    @property
    def id(self) -> str:
        return f"{self.owner}/{self.name}"


@dataclass(frozen=True)
class Prism:
    """A footprint on the plate's plane and the range it fills along z, in mm; z grows away from the pilot."""

    owner: str
    kind: BodyKind
    footprint: Contour
    near: float
    far: float


@dataclass(frozen=True)
class PlacedCut:
    cut: Cut
    cutout: Cutout | None
    placement: Placement
    features: tuple[Feature, ...]

    @property
    def own_web(self) -> float:
        return self.cutout.own_web if self.cutout else 0.0

    @cached_property
    def openings(self) -> tuple[Feature, ...]:
        return tuple(f for f in self.features if f.kind is FeatureKind.OPENING)

    @property
    def holes(self) -> tuple[Feature, ...]:
        return tuple(f for f in self.features if f.kind is not FeatureKind.OPENING)


@dataclass(frozen=True)
class PlacedItem:
    item: Item
    cutout: Cutout
    placement: Placement
    bezel: Contour | None
    bodies: tuple[Prism, ...]
    mounting: Mounting
    unit: EquipmentUnit | None = None

    @cached_property
    def shows(self) -> frozenset[Function]:
        """What the pilot gets from it: what its unit provides, or what its face shows where no unit is known."""
        return frozenset(self.unit.provides if self.unit else self.cutout.shows)

    @property
    def purpose(self) -> Purpose | None:
        return self.item.purpose or self.cutout.purpose

    @property
    def face(self) -> Contour:
        """What the pilot sees of it: its bezel, else its first opening, else its largest body, else its first hole."""
        if self.bezel is not None:
            return self.bezel
        for opening in self.cutout.openings:
            at = self.placement.after(Placement(opening.x, opening.y, opening.rotation))
            return at.contour(opening.shape.contour())
        if self.bodies:
            return max((body.footprint for body in self.bodies), key=lambda footprint: footprint.area)
        group = self.cutout.holes[0]
        spot = hole_spots(group)[0]
        return self.placement.after(Placement(spot.x, spot.y)).contour(group.form.contour())

    @property
    def centre(self) -> Point:
        x1, y1, x2, y2 = self.face.bounds
        return Point((x1 + x2) / 2, (y1 + y2) / 2)

    @property
    def shows_bezel(self) -> bool:
        """A rear-mounted item's bezel stays behind the sheet."""
        return self.bezel is not None and self.mounting is not Mounting.REAR

    @property
    def behind(self) -> tuple[Prism, ...]:
        return tuple(body for body in self.bodies if body.far > 0.0)

    @property
    def in_front(self) -> tuple[Prism, ...]:
        return tuple(body for body in self.bodies if body.near < 0.0)


@dataclass(frozen=True)
class PlateLayout:
    plate: Plate
    outline: Contour
    inner: tuple[Feature, ...]
    attach: tuple[Feature, ...]
    cuts: tuple[PlacedCut, ...]
    items: tuple[PlacedItem, ...]

    @cached_property
    def features(self) -> tuple[Feature, ...]:
        """Every closed contour inside the outline."""
        return (*self.inner, *self.attach, *(f for cut in self.cuts for f in cut.features))

    def cut_of(self, item: Item) -> PlacedCut | None:
        return next((placed for placed in self.cuts if placed.cut.id == item.cut), None)


@dataclass(frozen=True)
class Layout:
    project: Project
    option: Option
    plates: tuple[PlateLayout, ...]

    def plate(self, plate_id: str) -> PlateLayout:
        """The plate of this id. Raises `UnknownName`."""
        wanted = self.option.plate(plate_id)
        return next(laid for laid in self.plates if laid.plate is wanted)


def layout(project: Project, option: Option) -> Layout:
    """Resolve an option of a project."""
    return Layout(project, option, tuple(_plate_layout(plate, option, project) for plate in option.plates))


def _plate_layout(plate: Plate, option: Option, project: Project) -> PlateLayout:
    cutouts = {cutout.name: cutout for cutout in project.cutouts}
    units = {unit.name: unit for unit in project.units}

    def fitted(item: Item) -> PlacedItem | None:
        if item.plate != plate.id or item.cutout is None:
            return None
        return placed_item(item, cutouts[item.cutout], plate.thickness, units.get(item.unit or ""))

    def made(cut: Cut) -> PlacedCut:
        return placed_cut(cut, cutouts[cut.cutout] if cut.cutout else None)

    row = (option.id, plate.id)
    items = kept_row(("placed items", *row, plate.thickness), option.items, (project.cutouts, project.units), fitted)
    return PlateLayout(
        plate=plate,
        outline=kept("outline", (plate.outline,), plate.outline.contour),
        inner=kept("inner openings", (plate.id, plate.inner_openings), lambda: tuple(_inner_features(plate))),
        attach=kept("attach screws", (plate.attach_screws,), lambda: tuple(_attach_features(plate))),
        cuts=kept_row(("placed cuts", *row), plate.cuts, (project.cutouts,), made),
        items=tuple(item for item in items if item is not None),
    )


def placed_cut(cut: Cut, cutout: Cutout | None) -> PlacedCut:
    """The cut's contours where they stand on the plate."""
    return kept("placed cut", (cut, cutout), lambda: _place_cut(cut, cutout))


def placed_item(item: Item, cutout: Cutout, thickness: float, unit: EquipmentUnit | None = None) -> PlacedItem:
    """The item's bezel and bodies where they stand; depth is reckoned from the face it is mounted on."""
    return kept("placed item", (item, cutout, thickness, unit), lambda: _place_item(item, cutout, thickness, unit))


def _place_cut(cut: Cut, cutout: Cutout | None) -> PlacedCut:
    placement = Placement(cut.x, cut.y, cut.rotation, cut.mirrored)
    openings = cutout.openings if cutout else cut.openings
    groups = cutout.holes if cutout else cut.holes
    features = [
        _opening(cut.id, opening.purpose if len(openings) == 1 else f"{opening.purpose} {i}", opening, placement)
        for i, opening in enumerate(openings, 1)
    ]
    features.extend(_hole_features(cut.id, groups, placement))
    return PlacedCut(cut, cutout, placement, tuple(features))


def _opening(
    owner: str, name: str, opening: Opening, placement: Placement, kind: FeatureKind = FeatureKind.OPENING
) -> Feature:
    at = placement.after(Placement(opening.x, opening.y, opening.rotation))
    return Feature(owner, name, kind, at.contour(opening.shape.contour()), Point(at.x, at.y), opening.purpose)


def _hole_features(owner: str, groups: tuple[HoleGroup, ...], placement: Placement) -> Iterator[Feature]:
    number = 0
    for group in groups:
        for spot in hole_spots(group):
            number += 1
            at = placement.after(Placement(spot.x, spot.y))
            yield from _hole(
                Feature(owner, f"hole {number}", FeatureKind.HOLE, _SPOT, spot, group.purpose, group.form), at
            )


def _hole(bare: Feature, at: Placement) -> Iterator[Feature]:
    """The hole `bare` describes, cut at its place, and the rivet holes of its nutplate."""
    form = bare.form
    if form is None:
        raise ValueError(f"{bare.id} has no form")
    yield replace(bare, contour=at.contour(form.contour()), centre=Point(at.x, at.y))
    if form.nutplate is None:
        return
    rivet = HoleForm(diameter=form.nutplate.rivet_diameter, fastener=form.nutplate.rivet_diameter)
    for i, turn in enumerate((0.0, 180.0), 1):
        spot = polar(Point(0.0, 0.0), form.nutplate.rivet_spacing / 2, form.nutplate.angle + turn)
        place = at.after(Placement(spot.x, spot.y))
        name = f"{bare.name} rivet {i}"
        yield Feature(
            bare.owner, name, FeatureKind.RIVET, place.contour(rivet.contour()), Point(place.x, place.y), "rivet", rivet
        )


def hole_spots(group: HoleGroup) -> list[Point]:
    """Where a group's holes are, in the pattern's own axes: its spots, then its bolt circle."""
    spots = [Point(spot.x, spot.y) for spot in group.spots]
    return spots + (_around(group.bolt_circle) if group.bolt_circle else [])


def _around(ring: BoltCircle) -> list[Point]:
    centre = Point(0.0, 0.0)
    return [polar(centre, ring.diameter / 2, ring.first_angle + 360.0 * i / ring.count) for i in range(ring.count)]


def _inner_features(plate: Plate) -> Iterator[Feature]:
    for number, opening in enumerate(plate.inner_openings):
        yield _opening(plate.id, inner_opening_name(number), opening, Placement(), FeatureKind.INNER)


def inner_opening_name(number: int) -> str:
    """What a sheet's own opening is called among its features; 0 is the first."""
    return f"inner opening {number + 1}"


def _attach_features(plate: Plate) -> Iterator[Feature]:
    for screw in plate.attach_screws:
        spot = Point(screw.x, screw.y)
        bare = Feature(screw.id, "attach screw", FeatureKind.ATTACH, _SPOT, spot, "attach screw", screw.form)
        yield from _hole(bare, Placement(screw.x, screw.y))


def _place_item(item: Item, cutout: Cutout, thickness: float, unit: EquipmentUnit | None) -> PlacedItem:
    placement = Placement(item.x, item.y, item.rotation)
    mounting = item.mounting or cutout.mounting
    bezel = None
    if cutout.bezel is not None:
        at = placement.after(Placement(cutout.bezel.x, cutout.bezel.y))
        bezel = at.contour(cutout.bezel.shape.contour())
    face = thickness if mounting is Mounting.REAR else 0.0
    bodies = tuple(_prism(item.id, body, placement, face) for body in cutout.bodies)
    return PlacedItem(item, cutout, placement, bezel, bodies, mounting, unit)


def _prism(owner: str, body: Body, placement: Placement, face: float) -> Prism:
    at = placement.after(Placement(body.x, body.y, body.rotation))
    footprint = at.contour(body.shape.contour())
    if body.in_front:
        return Prism(owner, body.kind, footprint, -body.far, -body.near)
    return Prism(owner, body.kind, footprint, face + body.near, face + body.far)
