"""The pilot's eye and the panel: ways from the eye to points of a plate, in aircraft axes."""

from collections.abc import Callable, Hashable
from dataclasses import dataclass
from functools import cached_property
from itertools import chain
from typing import NamedTuple

from panelcad.geometry.point import Point
from panelcad.geometry.space import PlateFrame, Spot, angle_between, azimuth, elevation
from panelcad.model.kept import kept, kept_choice, kept_row, kept_with
from panelcad.model.layout import Layout, PlacedItem, PlateLayout
from panelcad.model.plate import Frame, Plate, PlateRole
from panelcad.model.surroundings import Eye


@dataclass(frozen=True)
class Facing:
    """What the pilot's rules know of a plate; the very same one as long as that stays."""

    id: str
    role: PlateRole
    frame: Frame


def facing_of(plate: Plate) -> Facing:
    return kept(
        "facing of a plate", (plate.id, plate.role, plate.frame), lambda: Facing(plate.id, plate.role, plate.frame)
    )


def plate_frame(plate: Plate | Facing) -> PlateFrame:
    """The plate's axes in the aircraft."""
    frame = plate.frame
    return PlateFrame(Spot(frame.x, frame.y, frame.z), frame.tilt, frame.cant)


def eye_spot(eye: Eye) -> Spot:
    return Spot(eye.x, eye.y, eye.z)


@dataclass(frozen=True)
class Sight:
    """How one eye sees the front face of one plate. Angles in degrees, lengths in mm."""

    eye: Spot
    frame: PlateFrame
    line_of_sight_down: float

    @cached_property
    def local_eye(self) -> Spot:
        """The eye in the plate's axes; its z is negative where the eye is in front of the plate."""
        return self.frame.to_plate(self.eye)

    def way(self, point: Point) -> Spot:
        return self.eye.to(self.frame.on_face(point))

    def sideways(self, point: Point) -> float:
        """To the right of straight ahead."""
        return azimuth(self.way(point))

    def above(self, point: Point) -> float:
        """Above the normal line of sight."""
        return elevation(self.way(point)) + self.line_of_sight_down

    def turned(self, point: Point) -> float:
        """Between the line of sight and the face's normal; 0 where the face is seen square on."""
        return angle_between(self.way(point), self.frame.axes[2])

    def distance(self, point: Point) -> float:
        return self.way(point).length


def sight_of(plate: Plate | Facing, eye: Eye, line_of_sight_down: float) -> Sight:
    return Sight(eye_spot(eye), plate_frame(plate), line_of_sight_down)


class Seen(NamedTuple):
    """A fitted item with its plate and its middle in aircraft axes."""

    item: PlacedItem
    plate: Facing
    middle: Spot

    @property
    def id(self) -> str:
        return self.item.item.id


def seen_items(laid: Layout) -> tuple[Seen, ...]:
    """Every item fitted to a plate, in the option's order by plate; asked by many rules about one layout."""
    return kept_with(laid, "seen items", lambda: tuple(chain.from_iterable(map(_seen_on, laid.plates))))


def seen_where(laid: Layout, what: Hashable, is_wanted: Callable[[PlacedItem], bool]) -> tuple[Seen, ...]:
    """Those of the seen items that are what is asked for: `what` names it, and stands for always the same question."""
    return kept_choice((what, laid.option.id), seen_items(laid), lambda seen: is_wanted(seen.item))


def _seen_on(plate: PlateLayout) -> tuple[Seen, ...]:
    facing, frame = facing_of(plate.plate), plate_frame(plate.plate)
    key = ("seen items", plate.plate.id)
    return kept_row(key, plate.items, (facing,), lambda item: Seen(item, facing, frame.on_face(item.centre)))
