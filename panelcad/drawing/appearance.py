"""The panel as its owner will see it: finish, instruments with their faces, lettering, trim, glareshield, yokes."""

from dataclasses import dataclass

from panelcad.drawing.appearance_around import edge_trim, footwell, glareshield, shafts, yokes
from panelcad.drawing.appearance_items import head_of, item_group
from panelcad.drawing.appearance_light import DAY, Lighting, lit
from panelcad.drawing.display import Across, Along, Colour, Group, Node, Path, Pen, Picture, Text
from panelcad.drawing.faces.frame import ScrewSpot
from panelcad.drawing.faces.inks import DARK, LEGEND
from panelcad.drawing.faces.marks import grown
from panelcad.drawing.faces.parts import screw, soft_shadow
from panelcad.drawing.finish import finish, plain_finish
from panelcad.geometry.point import Point
from panelcad.model.appearance import Appearance, Shield, Yokes
from panelcad.model.flight import Flight
from panelcad.model.kept import kept
from panelcad.model.layout import Feature, FeatureKind, Layout, PlateLayout
from panelcad.model.plate import PlateRole
from panelcad.model.surroundings import MovingPart


@dataclass(frozen=True)
class Look:
    """How a panel is shown. What is None comes from the project (`flight`) or the option (`appearance`)."""

    lighting: Lighting = DAY
    flight: Flight | None = None
    appearance: Appearance | None = None


def appearance_view(layout: Layout, plate_id: str, look: Look | None = None) -> tuple[Group, ...]:
    """One plate as it will look, in its own axes, true to scale. Each item's group bears its id and name."""
    look = look or Look()
    return tuple(group for group in lit(unlit_view(layout, plate_id, look), look.lighting) if isinstance(group, Group))


def unlit_view(layout: Layout, plate_id: str, look: Look) -> tuple[Group, ...]:
    """The same as by day, whatever the look's lighting says."""
    laid = layout.plate(plate_id)
    parts = PlateParts.of(layout, laid, look)
    return (*parts.behind, parts.sheet, *parts.items, *parts.lettering, *parts.around)


@dataclass(frozen=True)
class PlateParts:
    """What is seen of one plate and past its edge, from behind the sheet up, in its own axes and by day."""

    behind: tuple[Group, ...]
    sheet: Group
    items: tuple[Group, ...]
    lettering: tuple[Group, ...]
    around: tuple[Group, ...]

    @staticmethod
    def of(layout: Layout, laid: PlateLayout, look: Look) -> "PlateParts":
        appearance = look.appearance or layout.option.appearance
        flight = look.flight or layout.project.flight
        moving = layout.project.surroundings.moving_parts
        columns = shafts(tuple(part for part in moving if part.plate == laid.plate.id))
        return PlateParts(
            footwell(laid.outline, columns),
            sheet_group(laid, appearance),
            tuple(item_group(layout.project, placed, laid, flight) for placed in laid.items),
            _lettering(laid, appearance),
            _around(laid, columns, appearance),
        )


def _around(laid: PlateLayout, columns: tuple[MovingPart, ...], appearance: Appearance) -> tuple[Group, ...]:
    groups = []
    if appearance.shield is Shield.PADDED and laid.plate.role is PlateRole.STRUCTURAL:
        groups.append(glareshield(laid.outline))
    if appearance.yokes is Yokes.OUTLINE:
        groups.extend(yokes(columns))
    return tuple(groups)


def sheet_group(laid: PlateLayout, appearance: Appearance) -> Group:
    """The sheet with its trim, its open cuts and the screws that hold it."""
    used = frozenset(placed.item.cut for placed in laid.items if placed.item.cut)
    return kept(
        "sheet as it looks",
        (laid.plate, appearance, " ".join(sorted(used))),
        lambda: _sheet_group(laid, appearance, used),
    )


def _sheet_group(laid: PlateLayout, appearance: Appearance, used: frozenset[str]) -> Group:
    surface = _pierced(laid, appearance) if laid.plate.role is PlateRole.OVERLAY else _whole(laid, appearance, used)
    screws = (node for feature in laid.attach if feature.kind is FeatureKind.ATTACH for node in _attach(feature))
    return Group((*surface, *screws), owner=laid.plate.id, title=laid.plate.name)


def _whole(laid: PlateLayout, appearance: Appearance, used: frozenset[str]) -> tuple[Node, ...]:
    """A sheet with dark holes where nothing is fitted."""
    fitted = (f for cut in laid.cuts if cut.cut.id not in used for f in cut.features)
    return (
        *soft_shadow(laid.outline, 9.0, 16),
        finish(laid.outline, appearance),
        *_photograph(laid, appearance),
        *edge_trim(laid.outline, appearance.trim),
        *(node for feature in (*laid.inner, *fitted) for node in open_cut(feature)),
    )


def _photograph(laid: PlateLayout, appearance: Appearance) -> tuple[Group, ...]:
    photo = appearance.photograph
    if photo is None or photo.plate != laid.plate.id:
        return ()
    return (Group((Picture(photo.bytes, Point(photo.x, photo.y), photo.width, photo.height),), clip=laid.outline),)


def _pierced(laid: PlateLayout, appearance: Appearance) -> tuple[Node, ...]:
    """An overlay: one looks through its cuts at what lies below."""
    holes = tuple(feature.contour for feature in laid.features)
    base = plain_finish(laid.outline, appearance)
    edge = Path((laid.outline, *holes), None, Pen(Colour(0, 0, 0, 110), 0.4))
    return *soft_shadow(laid.outline, 2.0, 8), Path((laid.outline, *holes), base), edge


def open_cut(feature: Feature) -> tuple[Node, ...]:
    """A hole one looks into: dark, its upper edge in shadow, the cut metal bright below."""
    return (
        Path((grown(feature.contour, 0.25),), Colour(255, 255, 255, 40)),
        Path((feature.contour,), DARK),
    )


def _attach(feature: Feature) -> tuple[Node, ...]:
    return screw(ScrewSpot(feature.centre, head_of(feature.form)))


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
