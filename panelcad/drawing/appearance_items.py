"""Items as they look: each with its face, its shadow and the outline by which it is found."""

from dataclasses import replace
from functools import lru_cache
from typing import Final

from panelcad.drawing.display import Group, Node, Path
from panelcad.drawing.faces.frame import Frame, ScrewSpot
from panelcad.drawing.faces.inks import SHADOW
from panelcad.drawing.faces.kind import FaceKind
from panelcad.drawing.faces.marks import grown
from panelcad.drawing.faces.parts import soft_shadow
from panelcad.drawing.faces.registry import kind_of
from panelcad.geometry.contour import Contour
from panelcad.geometry.placement import Placement
from panelcad.model.cutout import BodyKind, Cutout
from panelcad.model.equipment import EquipmentUnit
from panelcad.model.flight import Flight
from panelcad.model.hole import HoleForm
from panelcad.model.kept import kept
from panelcad.model.layout import PlacedItem, PlateLayout, hole_spots, placed_item
from panelcad.model.project import Item, Project

REACH: Final = "reach"
"""The layer of the outline, drawn with nothing, by which a pointer finds an item."""
_SHADOW_DEPTH: Final = 4.0
_ANY_SHEET: Final = 2.0
"""mm; how thick the sheet is does not show from the front."""
_SMALL: Final = 30.0
"""Items narrower than this, in mm, throw their own, smaller shadows."""
_HEAD: Final = 1.9
"""Diameter of a screw head as a share of the fastener's, where nobody gave it; common practice for pan heads."""


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
    return replace(
        _bare_frame(placed),
        screws=_screws(cutout) if own else (),
        label=label,
        light=placed.item.light.colour if placed.item.light else None,
    )


def _bare_frame(placed: PlacedItem) -> Frame:
    """What the cutout alone says of it."""
    cutout = placed.cutout
    knobs, levers = _bodies(cutout, BodyKind.KNOB), _bodies(cutout, BodyKind.LEVER)
    return Frame(outline=visible_outline(placed), screws=_screws(cutout), knobs=knobs, levers=levers)


def fitted_face(cutout: Cutout) -> Group:
    """What is fitted in a cutout of the library as it will look, about its own origin. It has a bezel or a body."""
    item = Item(id="item", name=cutout.title, cutout=cutout.name)
    kind = kind_of(item, cutout)
    frame = replace(_bare_frame(placed_item(item, cutout, _ANY_SHEET)), label=label_of(item, kind, None))
    return face(kind, frame, Flight())


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
    return tuple(ScrewSpot(spot, head_of(group.form)) for group in cutout.holes for spot in hole_spots(group))


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


def head_of(form: HoleForm | None) -> float:
    if form is None:
        return 6.0
    return form.head or _HEAD * form.fastener
