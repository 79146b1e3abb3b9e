"""All plates of an option as the owner sees them: where they stand in the aircraft, the farthest first."""

from collections.abc import Iterator
from dataclasses import replace
from typing import Final

from panelcad.drawing.appearance import Look, PlateParts
from panelcad.drawing.appearance_light import Lighting, ground_colour, lit
from panelcad.drawing.box import box_outline
from panelcad.drawing.display import Bounds, Group, Path
from panelcad.drawing.extent import extent
from panelcad.geometry.placement import Placement
from panelcad.model.layout import Layout, PlateLayout
from panelcad.model.plate import PlateRole

_BESIDE: Final = 30.0
"""Between plates set side by side, in mm."""


def panel_view(layout: Layout, look: Look | None = None) -> tuple[Group, ...]:
    """Every plate, in aircraft axes, in the look's light. Tilted plates are shown flat."""
    look = look or Look()
    return tuple(group for group in lit(unlit_panel(layout, look), look.lighting) if isinstance(group, Group))


def ground(bounds: Bounds, lighting: Lighting) -> Group:
    """What a picture in the dark stands on; on paper or a light screen its shadows would look wrong."""
    return Group((Path((box_outline(bounds),), fill=ground_colour(lighting)),))


def side_by_side(layout: Layout, look: Look) -> tuple[Group, ...]:
    """As `panel_view`, with pedestal faces to the right of all else at the same scale: wide rather than high."""
    pedestals = tuple(laid for laid in layout.plates if laid.plate.role is PlateRole.PEDESTAL)
    rest = tuple(laid for laid in layout.plates if laid not in pedestals)
    if not pedestals or not rest:
        return panel_view(layout, look)
    shown = panel_view(replace(layout, plates=rest), look)
    for laid in pedestals:
        beside = panel_view(replace(layout, plates=(laid,)), look)
        (_, low, right, _), (left, bottom, _, _) = extent(shown), extent(beside)
        shown = (*shown, Group(beside, placement=Placement(right + _BESIDE - left, low - bottom)))
    return shown


def unlit_panel(layout: Layout, look: Look) -> tuple[Group, ...]:
    """The same as by day, whatever the look's lighting says."""
    bases = [laid for laid in layout.plates if laid.plate.role is not PlateRole.OVERLAY]
    far_first = sorted(bases, key=lambda laid: -laid.plate.frame.z)
    return tuple(group for laid in far_first for group in _with_overlays(layout, laid, look))


def _with_overlays(layout: Layout, base: PlateLayout, look: Look) -> Iterator[Group]:
    """A plate and the overlays on it: an item's bezel lies on the overlay, the sheet's lettering below it."""
    over = [laid for laid in layout.plates if _lies_on(laid, base, layout)]
    plates = [(laid, PlateParts.of(layout, laid, look)) for laid in (base, *over)]
    under, parts = plates[0]
    yield _placed(under, (*parts.behind, parts.sheet, *(parts.lettering if over else ())))
    for laid, above in plates[1:]:
        yield _placed(laid, (above.sheet,))
    for laid, each in plates:
        yield _placed(laid, each.items)
    for laid, each in plates[1:] if over else plates:
        yield _placed(laid, each.lettering)
    yield _placed(under, parts.around)


def _lies_on(laid: PlateLayout, base: PlateLayout, layout: Layout) -> bool:
    """Whether an overlay lies on this plate, directly or on another overlay."""
    below, seen = laid.plate.over, {laid.plate.id}
    while below is not None and below != base.plate.id and below not in seen:
        seen.add(below)
        below = layout.option.plate(below).over
    return below == base.plate.id


def _placed(laid: PlateLayout, groups: tuple[Group, ...]) -> Group:
    return Group(groups, placement=Placement(laid.plate.frame.x, laid.plate.frame.y))
