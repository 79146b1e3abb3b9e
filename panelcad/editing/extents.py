"""How much room things take on their plate, in mm: what is seen from the front, or else the metal."""

from collections.abc import Collection, Iterable
from dataclasses import dataclass
from enum import Enum

from panelcad.editing.groups import with_groups
from panelcad.editing.lookup import Bundle, bundles
from panelcad.editing.parts import standing_around
from panelcad.editing.places import place_of, places
from panelcad.errors import EditRefused
from panelcad.geometry.contour import Contour
from panelcad.geometry.point import Point
from panelcad.model.layout import PlateLayout, layout
from panelcad.model.project import Option, Project
from panelcad.model.surroundings import DepthLimit


class Axis(Enum):
    """Along which axis something is reckoned."""

    ACROSS = 0
    UP = 1


@dataclass(frozen=True)
class Box:
    left: float
    bottom: float
    right: float
    top: float

    @property
    def centre(self) -> Point:
        return Point((self.left + self.right) / 2, (self.bottom + self.top) / 2)

    @property
    def width(self) -> float:
        return self.right - self.left

    @property
    def height(self) -> float:
        return self.top - self.bottom

    def span(self, axis: Axis) -> tuple[float, float]:
        """Where it begins and ends along an axis."""
        return ((self.left, self.right), (self.bottom, self.top))[axis.value]


@dataclass(frozen=True)
class Body:
    """Things that are arranged as one: their ids, the box around them, and the origin that stands for them."""

    ids: frozenset[str]
    box: Box
    origin: Point


def around(boxes: Iterable[Box]) -> Box:
    """The box around these boxes. Raises ValueError for none."""
    all_boxes = tuple(boxes)
    return Box(
        min(box.left for box in all_boxes),
        min(box.bottom for box in all_boxes),
        max(box.right for box in all_boxes),
        max(box.top for box in all_boxes),
    )


def boxes(project: Project, option: Option) -> dict[str, Box]:
    """The box of everything that stands on a plate, by id."""
    found: dict[str, Box] = {}
    for plate in layout(project, option).plates:
        found |= _on_plate(plate)
    found |= {note.id: Box(note.x, note.y, note.x, note.y) for note in option.drawing_notes}
    for thing in standing_around(project.surroundings):
        shape = thing.shape if isinstance(thing, DepthLimit) else thing.volume.shape
        found[thing.id] = _box(place_of(thing).contour(shape.contour()))
    return found


def bodies(project: Project, option: Option, ids: Collection[str]) -> tuple[Body, ...]:
    """What is arranged as one among these ids, in their order; a group counts as one, an item with its cut too."""
    known, standing = boxes(project, option), places(project, option)
    made: dict[frozenset[str], Body] = {}
    for bundle in bundles(option, ids):
        members = _group_members(option, bundle)
        if members is None:
            spot = standing[bundle.anchor]
            made[bundle.ids] = Body(bundle.ids, _seen(option, bundle.ids, known), Point(spot.x, spot.y))
        else:
            box = _seen(option, members, known)
            made[members] = Body(members, box, box.centre)
    return tuple(made.values())


def middle(project: Project, option: Option, ids: Collection[str]) -> Point:
    """The middle of all these things; the origin of one alone. Raises `EditRefused` where none has a place."""
    chosen = bodies(project, option, ids)
    if not chosen:
        raise EditRefused("Nothing that is selected has a place of its own.")
    return chosen[0].origin if len(chosen) == 1 else around(body.box for body in chosen).centre


def _group_members(option: Option, bundle: Bundle) -> frozenset[str] | None:
    whole = with_groups(option, bundle.ids)
    return whole if whole != bundle.ids else None


def _seen(option: Option, ids: Collection[str], known: dict[str, Box]) -> Box:
    """Around what is seen from the front: items where there are some, else the cuts."""
    items = [known[item.id] for item in option.items if item.id in ids and item.id in known]
    return around(items or [known[one] for one in ids if one in known])


def _on_plate(plate: PlateLayout) -> dict[str, Box]:
    found = {cut.cut.id: around(_box(f.contour) for f in cut.openings or cut.features) for cut in plate.cuts}
    found |= {screw.owner: _box(screw.contour) for screw in plate.attach}
    found |= {e.id: Box(e.x, e.y, e.x, e.y) for e in plate.plate.engravings}
    for item in plate.items:
        shown = [item.bezel] if item.bezel else [body.footprint for body in item.bodies]
        spot = item.placement
        found[item.item.id] = around(map(_box, shown)) if shown else Box(spot.x, spot.y, spot.x, spot.y)
    return found


def _box(contour: Contour) -> Box:
    return Box(*contour.bounds)
