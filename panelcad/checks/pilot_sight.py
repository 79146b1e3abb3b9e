"""The pilot's eye and the panel: ways from the eye to points of a plate, in aircraft axes."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from typing import NamedTuple

from panelcad.geometry.point import Point
from panelcad.geometry.space import PlateFrame, Spot, angle_between, azimuth, elevation
from panelcad.model.kept import kept_row, kept_with
from panelcad.model.layout import Layout, PlacedItem, PlateLayout
from panelcad.model.plate import Plate
from panelcad.model.surroundings import Eye


def plate_frame(plate: Plate) -> PlateFrame:
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


def sight_of(plate: Plate, eye: Eye, line_of_sight_down: float) -> Sight:
    return Sight(eye_spot(eye), plate_frame(plate), line_of_sight_down)


class Seen(NamedTuple):
    """A fitted item with its plate and its middle in aircraft axes."""

    item: PlacedItem
    plate: PlateLayout
    middle: Spot

    @property
    def id(self) -> str:
        return self.item.item.id


def seen_items(laid: Layout) -> tuple[Seen, ...]:
    """Every item fitted to a plate, in the option's order by plate; asked by many rules about one layout."""
    return kept_with(laid, "seen items", lambda: tuple(_seen_on_all(laid)))


def _seen_on_all(laid: Layout) -> Iterator[Seen]:
    for plate in laid.plates:
        yield from (Seen(item, plate, middle) for item, middle in zip(plate.items, _middles(plate), strict=True))


def _middles(plate: PlateLayout) -> tuple[Spot, ...]:
    frame = plate_frame(plate.plate)
    key = ("middles in the aircraft", plate.plate.id)
    return kept_row(key, plate.items, (plate.plate.frame,), lambda item: frame.on_face(item.centre))
