"""Names of what is fitted and of what stands around, over the front view and the one from behind.

Names keep their size on the screen, so that they are placed anew for each zoom; a group each, with its thing as owner.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Final

from shapely.geometry.base import BaseGeometry

from panelcad.drawing.box import box_outline, joined
from panelcad.drawing.display import Across, Along, Bounds, Group, Measured, Path, Text, walk
from panelcad.drawing.layers import Layer
from panelcad.drawing.lettering import text_bounds
from panelcad.drawing.name_places import Block, Ground, Named, Names
from panelcad.drawing.style import ViewStyle
from panelcad.drawing.views.around import depth_limits, keep_outs, moving_parts, obstacles
from panelcad.drawing.views.behind import MIRROR, mirrored_plate
from panelcad.drawing.views.front import engraving_groups
from panelcad.drawing.views.markup import markup_view
from panelcad.drawing.views.numbers import number_view
from panelcad.geometry.contour import Contour
from panelcad.geometry.polygon import polygon
from panelcad.model.layout import Layout, PlacedItem, PlateLayout
from panelcad.model.placard import is_placard

HEIGHT_PX: Final = 7.5
"""Of a capital: legible, and a little lower than the figures of the numbers."""
_ERROR: Final = 0.1
_GROUND: Final = 0.6


@dataclass(frozen=True)
class Sight:
    """How the view is looked at: its zoom, the layers that are hidden, and boxes in mm where other words stand."""

    mm_per_pixel: float
    hidden: frozenset[str] = frozenset()
    taken: tuple[Bounds, ...] = ()

    @property
    def height(self) -> float:
        """Of a capital, in mm."""
        return HEIGHT_PX * self.mm_per_pixel

    def words(self, groups: tuple[Group, ...]) -> list[Bounds]:
        """What the texts of groups cover that are not hidden."""
        shown = tuple(group for group in groups if group.layer not in self.hidden)
        return [self._covered(node) for node in walk(shown) if isinstance(node, Text)]

    def _covered(self, text: Text) -> Bounds:
        if text.measured is Measured.PIXELS:
            text = replace(text, height=text.height * self.mm_per_pixel, measured=Measured.MM)
        return text_bounds(text)


def front_names(layout: Layout, plate_id: str, style: ViewStyle, sight: Sight) -> tuple[Group, ...]:
    """The names on the front view; words on hidden layers do not stand in their way. A placard bears its own words."""
    plate = layout.plate(plate_id)
    marks = (*markup_view(layout, plate_id, style), *number_view(layout, plate_id, style))
    words = sight.words((*engraving_groups(plate, style), *marks))
    things = [feature.contour.bounds for feature in plate.features] + [_front_box(item) for item in plate.items]
    wanted = [_in_front(item, plate) for item in plate.items if not is_placard(item.cutout)]
    if Layer.KEEP_OUTS not in sight.hidden:
        wanted += [_around(space.owner, space.name, space.footprint) for space in keep_outs(layout, plate_id)]
    names = Names(sight.height, (*words, *sight.taken), things, [_edge(plate.outline)])
    return tuple(_group(block, style) for block in names.placed(wanted))


def behind_names(layout: Layout, plate_id: str, style: ViewStyle, sight: Sight) -> tuple[Group, ...]:
    """The names on the view from behind, of what is not on a hidden layer."""
    plate = mirrored_plate(layout.plate(plate_id))
    wanted = [*_bodies(plate, sight.hidden), *_behind(layout, plate_id, sight.hidden)]
    solid = [named.beside for named in wanted if named.ground is Ground.OWN]
    openings = (*plate.inner, *(opening for cut in plate.cuts for opening in cut.openings))
    edges = [_edge(contour) for contour in (plate.outline, *(opening.contour for opening in openings))]
    names = Names(sight.height, sight.taken, solid, edges)
    return tuple(_group(block, style) for block in names.placed(wanted))


def _bodies(plate: PlateLayout, hidden: frozenset[str]) -> Iterator[Named]:
    for item in plate.items if Layer.BODIES not in hidden else ():
        footprints = [body.footprint for body in item.behind]
        if footprints:
            largest = max(footprints, key=lambda footprint: footprint.area)
            yield Named(item.item.id, item.item.name, largest, joined(each.bounds for each in footprints))


def _behind(layout: Layout, plate_id: str, hidden: frozenset[str]) -> Iterator[Named]:
    if Layer.OBSTACLES not in hidden:
        for space in obstacles(layout, plate_id):
            yield _solid(space.owner, space.name, MIRROR.contour(space.footprint))
    if Layer.MOVING not in hidden:
        for rest, *_ in moving_parts(layout, plate_id):
            yield _solid(rest.owner, rest.name, MIRROR.contour(rest.footprint))
    if Layer.DEPTH not in hidden:
        for limit in depth_limits(layout, plate_id):
            yield _around(limit.limit.id, limit.limit.name, MIRROR.contour(limit.footprint))


def _in_front(item: PlacedItem, plate: PlateLayout) -> Named:
    """In its opening where that is its own, else on its face."""
    cut = plate.cut_of(item.item)
    is_shared = cut is not None and sum(other.item.cut == cut.cut.id for other in plate.items) > 1
    openings = [feature.contour for feature in cut.openings] if cut is not None and not is_shared else []
    room = max(openings, key=lambda contour: contour.area, default=item.face)
    features = [feature.contour.bounds for feature in cut.features] if cut is not None and not is_shared else []
    return Named(item.item.id, item.item.name, room, joined([_front_box(item), *features]))


def _front_box(item: PlacedItem) -> Bounds:
    """What is seen of it from the front: its face and its knobs."""
    return joined([item.face.bounds, *(knob.footprint.bounds for knob in item.in_front)])


def _solid(owner: str, name: str, footprint: Contour) -> Named:
    return Named(owner, name, footprint, footprint.bounds)


def _around(owner: str, name: str, footprint: Contour) -> Named:
    return Named(owner, name, footprint, footprint.bounds, Ground.SHARED)


def _edge(outline: Contour) -> BaseGeometry:
    return polygon(outline, error=_ERROR).boundary


def _group(block: Block, style: ViewStyle) -> Group:
    """The lines on a ground that dims what runs under them."""
    ground = style.palette.background.faded(_GROUND)
    patches = tuple(Path((box_outline(box),), ground) for box in block.boxes())
    texts = tuple(
        Text(line, at, HEIGHT_PX, style.palette.ink, Along.CENTRE, Across.MIDDLE, measured=Measured.PIXELS)
        for line, at in block.places()
    )
    return Group((*patches, *texts), block.owner, Layer.NAMES, title=" ".join(block.lines))
