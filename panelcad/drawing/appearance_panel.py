"""All plates of an option as the owner sees them: where they stand in the aircraft, the farthest first."""

from collections.abc import Iterator

from panelcad.drawing.appearance import Look, PlateParts
from panelcad.drawing.appearance_light import lit
from panelcad.drawing.display import Group
from panelcad.geometry.placement import Placement
from panelcad.model.layout import Layout, PlateLayout
from panelcad.model.plate import PlateRole


def panel_view(layout: Layout, look: Look | None = None) -> tuple[Group, ...]:
    """Every plate, in aircraft axes, in the look's light. Tilted plates are shown flat."""
    look = look or Look()
    return tuple(group for group in lit(unlit_panel(layout, look), look.lighting) if isinstance(group, Group))


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
