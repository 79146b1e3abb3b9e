"""The panel as its owner will see it: finish, instruments with their faces, lettering, trim, glareshield, yokes."""

from dataclasses import dataclass
from functools import lru_cache
from typing import Final

from panelcad.drawing.appearance_around import edge_trim, glareshield, yokes
from panelcad.drawing.appearance_light import DAY, Lighting, lit
from panelcad.drawing.display import Across, Along, Colour, Group, Node, Path, Picture, Text
from panelcad.drawing.faces.frame import Frame, ScrewSpot
from panelcad.drawing.faces.inks import DARK, LEGEND, SHADOW
from panelcad.drawing.faces.marks import grown
from panelcad.drawing.faces.parts import screw, soft_shadow
from panelcad.drawing.faces.registry import FaceKind, kind_of
from panelcad.drawing.finish import finish
from panelcad.geometry.contour import Contour
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point
from panelcad.model.appearance import Appearance, Shield, Yokes
from panelcad.model.cutout import BodyKind, Cutout
from panelcad.model.equipment import EquipmentUnit
from panelcad.model.flight import Flight
from panelcad.model.hole import HoleForm
from panelcad.model.kept import kept
from panelcad.model.layout import Feature, FeatureKind, Layout, PlacedItem, PlateLayout, hole_spots
from panelcad.model.plate import PlateRole
from panelcad.model.project import Item, Project

REACH: Final = "reach"
"""The layer of the outline, drawn with nothing, by which a pointer finds an item."""
_SHADOW_DEPTH: Final = 4.0
_SMALL: Final = 30.0
"""Items narrower than this, in mm, throw their own, smaller shadows."""
_HEAD: Final = 1.9
"""Diameter of a screw head as a share of the fastener's, where nobody gave it; common practice for pan heads."""


@dataclass(frozen=True)
class Look:
    """How a panel is shown. What is None comes from the project (`flight`) or the option (`appearance`).

    A photograph, rectified to the plate's own mm, takes the place of the finish.
    """

    lighting: Lighting = DAY
    flight: Flight | None = None
    appearance: Appearance | None = None
    photograph: Picture | None = None


def panel_view(layout: Layout, look: Look | None = None) -> tuple[Group, ...]:
    """Every plate of the option where it stands in the aircraft, the farthest first."""
    far_first = sorted(layout.plates, key=lambda laid: (laid.plate.role is PlateRole.OVERLAY, -laid.plate.frame.z))
    groups = []
    for laid in far_first:
        frame = laid.plate.frame
        groups.append(Group(appearance_view(layout, laid.plate.id, look), placement=Placement(frame.x, frame.y)))
    return tuple(groups)


def appearance_view(layout: Layout, plate_id: str, look: Look | None = None) -> tuple[Group, ...]:
    """One plate as it will look, in its own axes, true to scale. Each item's group bears its id and name."""
    look = look or Look()
    return tuple(group for group in lit(unlit_view(layout, plate_id, look), look.lighting) if isinstance(group, Group))


def unlit_view(layout: Layout, plate_id: str, look: Look) -> tuple[Group, ...]:
    """The same as by day, whatever the look's lighting says."""
    laid = layout.plate(plate_id)
    appearance = look.appearance or layout.option.appearance
    flight = look.flight or layout.project.flight
    items = (item_group(layout.project, placed, laid, flight) for placed in laid.items)
    return (
        sheet_group(laid, appearance, look.photograph),
        *items,
        *_lettering(laid, appearance),
        *_around(layout, laid, appearance),
    )


def _around(layout: Layout, laid: PlateLayout, appearance: Appearance) -> tuple[Group, ...]:
    groups = []
    if appearance.shield is Shield.PADDED and laid.plate.role in {PlateRole.STRUCTURAL, PlateRole.OVERLAY}:
        groups.append(glareshield(laid.outline))
    if appearance.yokes is Yokes.OUTLINE:
        moving = layout.project.surroundings.moving_parts
        groups.extend(yokes(tuple(part for part in moving if part.plate == laid.plate.id)))
    return tuple(groups)


def sheet_group(laid: PlateLayout, appearance: Appearance, photograph: Picture | None) -> Group:
    """The sheet with its trim, its open cuts and the screws that hold it."""
    used = frozenset(placed.item.cut for placed in laid.items if placed.item.cut)
    return kept(
        "sheet as it looks",
        (laid.plate, appearance, photograph, " ".join(sorted(used))),
        lambda: _sheet_group(laid, appearance, photograph, used),
    )


def _sheet_group(laid: PlateLayout, appearance: Appearance, photograph: Picture | None, used: frozenset[str]) -> Group:
    surface = finish(laid.outline, appearance)
    photo = (Group((photograph,), clip=laid.outline),) if photograph is not None else ()
    open_features = (
        *laid.inner,
        *(f for cut in laid.cuts if cut.cut.id not in used for f in cut.features),
    )
    return Group(
        (
            *soft_shadow(laid.outline, 9.0, 16),
            surface,
            *photo,
            *edge_trim(laid.outline, appearance.trim),
            *(node for feature in open_features for node in open_cut(feature)),
            *(node for feature in laid.attach if feature.kind is FeatureKind.ATTACH for node in _attach(feature)),
        ),
        owner=laid.plate.id,
        title=laid.plate.name,
    )


def open_cut(feature: Feature) -> tuple[Node, ...]:
    """A hole one looks into: dark, its upper edge in shadow, the cut metal bright below."""
    return (
        Path((grown(feature.contour, 0.25),), Colour(255, 255, 255, 40)),
        Path((feature.contour,), DARK),
    )


def _attach(feature: Feature) -> tuple[Node, ...]:
    return screw(ScrewSpot(feature.centre, _head(feature.form)))


def _head(form: HoleForm | None) -> float:
    if form is None:
        return 6.0
    return form.head or _HEAD * form.fastener


def item_group(project: Project, placed: PlacedItem, laid: PlateLayout, flight: Flight) -> Group:
    """An item with its shadow and face; its owner is the item's id."""
    unit = project.unit_named(placed.item.unit) if placed.item.unit else None
    kind = kind_of(placed.item, placed.cutout, unit)
    return kept(
        "face",
        (placed, laid.cut_of(placed.item), kind.name, flight),
        lambda: _item_group(placed, laid, kind, (unit, flight)),
    )


def _item_group(
    placed: PlacedItem, laid: PlateLayout, kind: FaceKind, shown: tuple[EquipmentUnit | None, Flight]
) -> Group:
    unit, flight = shown
    label = label_of(placed.item, kind, unit)
    frame = frame_of(placed, laid, label)
    picture = face(kind, frame, flight)
    behind = placed.bezel is not None and not placed.shows_bezel
    before = () if behind else _fallen(placed)
    after = _rim(frame) if behind else ()
    area = Group((Path((frame.outline,)),), layer=REACH, placement=placed.placement)
    standing = Group((picture, *after), placement=placed.placement)
    return Group((area, *before, standing), owner=placed.item.id, title=placed.item.name)


@lru_cache(2048)
def face(kind: FaceKind, frame: Frame, flight: Flight) -> Group:
    """The face in the item's own axes, made once for each size and state."""
    return Group(kind.drawn_for(frame)(frame, flight))


def label_of(item: Item, kind: FaceKind, unit: EquipmentUnit | None) -> str:
    """What a labelled face bears: the item's name; on a breaker its rating, where one is known."""
    rating = item.circuit.breaker or (unit.breaker if unit else None)
    if kind.name == "breaker" and rating:
        return f"{rating:g} A"
    return item.name if kind.labelled else ""


def frame_of(placed: PlacedItem, laid: PlateLayout, label: str) -> Frame:
    """What the item's face fills, in the item's own axes."""
    cutout = placed.cutout
    cut = laid.cut_of(placed.item)
    own = cut is not None and cut.cutout is not None and cut.cutout.name == cutout.name
    return Frame(
        outline=visible_outline(placed),
        screws=_screws(cutout) if own else (),
        knobs=_bodies(cutout, BodyKind.KNOB),
        levers=_bodies(cutout, BodyKind.LEVER),
        label=label,
    )


def visible_outline(placed: PlacedItem) -> Contour:
    """What is seen of an item: its bezel, the opening where that stays behind the sheet, else its first body."""
    cutout = placed.cutout
    if cutout.bezel is not None and (placed.shows_bezel or not cutout.openings):
        return Placement(cutout.bezel.x, cutout.bezel.y).contour(cutout.bezel.shape.contour())
    if cutout.openings:
        opening = cutout.openings[0]
        return Placement(opening.x, opening.y, opening.rotation).contour(opening.shape.contour())
    body = cutout.bodies[0]
    return Placement(body.x, body.y, body.rotation).contour(body.shape.contour())


def _screws(cutout: Cutout) -> tuple[ScrewSpot, ...]:
    return tuple(ScrewSpot(spot, _head(group.form)) for group in cutout.holes for spot in hole_spots(group))


def _bodies(cutout: Cutout, kind: BodyKind) -> tuple[Contour, ...]:
    return tuple(
        Placement(body.x, body.y, body.rotation).contour(body.shape.contour())
        for body in cutout.bodies
        if body.kind is kind
    )


def _fallen(placed: PlacedItem) -> tuple[Group, ...]:
    """The shadow of the bezel on the sheet."""
    bezel = placed.cutout.bezel
    if bezel is None or bezel.shape.contour().bounds[2] * 2 < _SMALL:
        return ()
    local = Placement(bezel.x, bezel.y).contour(bezel.shape.contour())
    turned = Placement(rotation=placed.placement.rotation).contour(local)
    return (Group((bezel_shadow(turned),), placement=Placement(placed.placement.x, placed.placement.y)),)


@lru_cache(512)
def bezel_shadow(outline: Contour) -> Group:
    """The shadow of a bezel about its own origin, made once for each shape."""
    return Group(soft_shadow(outline, _SHADOW_DEPTH))


def _rim(frame: Frame) -> tuple[Node, ...]:
    """The sheet's edge over an instrument that is mounted from behind."""
    depths = (0.6, 1.2, 2.0)
    shade = SHADOW._replace(opacity=70)
    return tuple(Path((frame.outline, grown(frame.outline, -depth)), shade) for depth in depths)


def _lettering(laid: PlateLayout, appearance: Appearance) -> tuple[Group, ...]:
    """Engravings and printed legends, lit with the instruments."""
    colour = Colour.parse(appearance.placard)
    return tuple(
        Group(
            (
                Text(
                    engraving.text,
                    Point(engraving.x, engraving.y),
                    engraving.height,
                    colour,
                    Along.CENTRE,
                    Across.MIDDLE,
                    engraving.rotation,
                ),
            ),
            owner=engraving.id,
            layer=LEGEND,
        )
        for engraving in laid.plate.engravings
    )
