"""The basic T of flight instruments.

14 CFR 23.1321(d) as it stood before 30 August 2017 (amendment 23-62 and earlier): attitude in the top centre position,
airspeed adjacent to and directly to its left, altitude adjacent to and directly to its right, direction of flight
adjacent to and directly below it. Turn at the lower left and vertical speed at the lower right are common practice.
"""

from collections.abc import Mapping
from enum import Enum
from typing import Final

from panelcad.editing.extents import Box, bodies
from panelcad.editing.made import Made
from panelcad.editing.move import move_each
from panelcad.editing.place import place
from panelcad.editing.refusal import edit
from panelcad.errors import EditRefused
from panelcad.geometry.point import Point
from panelcad.model.cutout import Cutout
from panelcad.model.plate import Plate
from panelcad.model.project import Project


class Seat(Enum):
    """Where an instrument belongs: columns from the centre and rows from the top."""

    ATTITUDE = (0, 0)
    AIRSPEED = (-1, 0)
    ALTITUDE = (1, 0)
    DIRECTION = (0, -1)
    TURN = (-1, -1)
    VERTICAL_SPEED = (1, -1)

    @property
    def column(self) -> int:
        return int(self.value[0])

    @property
    def row(self) -> int:
        return int(self.value[1])


REQUIRED: Final = frozenset({Seat.ATTITUDE, Seat.AIRSPEED, Seat.ALTITUDE, Seat.DIRECTION})
"""What the regulation places; the lower corners are common practice."""


@edit
def arrange_basic_t(
    project: Project, option_id: str, seats: Mapping[Seat, str], gap: float, at: Point | None = None
) -> Project:
    """Placed instruments moved into the T about the attitude's centre, with `gap` mm between bezels.

    `seats` gives the id of the instrument in each seat; `at` is where the attitude goes, where it is now by default.
    Raises `EditRefused` where one of the four that the regulation places is missing.
    """
    _refuse_incomplete(seats)
    option = project.option(option_id)
    found = {seat: bodies(project, option, [one])[0] for seat, one in seats.items()}
    centre = at or found[Seat.ATTITUDE].origin
    spots = _spots({seat: _about(body.box, body.origin) for seat, body in found.items()}, centre, gap)
    shifts = {
        one: (spots[seat].x - body.origin.x, spots[seat].y - body.origin.y)
        for seat, body in found.items()
        for one in body.ids
    }
    return move_each(project, option_id, shifts)


@edit
def place_basic_t(  # noqa: PLR0913, PLR0917 - what, and where on which plate
    project: Project, option_id: str, plate_id: str, cutouts: Mapping[Seat, Cutout], at: Point, gap: float
) -> Made:
    """Instruments from the library placed as the T, the attitude at `at`; ids seat by seat.

    Raises `EditRefused` where one of the four that the regulation places is missing.
    """
    _refuse_incomplete(cutouts)
    first: dict[Seat, str] = {}
    made: list[str] = []
    for seat, cutout in cutouts.items():
        placed = place(project, option_id, plate_id, cutout, at.x, at.y)
        project, first[seat] = placed.project, placed.ids[0]
        made.extend(placed.ids)
    return Made(arrange_basic_t(project, option_id, first, gap, at), tuple(made))


def pilots_line(project: Project, plate: Plate) -> float | None:
    """The x of the pilot's vertical plane of forward vision in the plate's axes in mm; None where no eye is given."""
    eye = project.surroundings.eye
    return None if eye is None else eye.centre_line - plate.frame.x


def _refuse_incomplete(seats: Mapping[Seat, object]) -> None:
    missing = [seat.name.lower() for seat in Seat if seat in REQUIRED and seat not in seats]
    if missing:
        raise EditRefused(f"The basic T needs an instrument for {', '.join(missing)}.")


def _about(box: Box, origin: Point) -> Box:
    """The box as seen from the instrument's own centre."""
    return Box(box.left - origin.x, box.bottom - origin.y, box.right - origin.x, box.top - origin.y)


def _spots(own: Mapping[Seat, Box], centre: Point, gap: float) -> dict[Seat, Point]:
    """Centres in straight rows and columns, the columns and rows just far enough apart for every pair of bezels."""
    left = _pitch(own, -1, gap)
    right = _pitch(own, 1, gap)
    down = _drop(own, gap)
    across = {-1: -left, 0: 0.0, 1: right}
    return {seat: centre.moved(across[seat.column], seat.row * down) for seat in own}


def _pitch(own: Mapping[Seat, Box], side: int, gap: float) -> float:
    """How far the column on that side stands from the middle one."""
    outer = [box for seat, box in own.items() if seat.column == side]
    middle = [box for seat, box in own.items() if seat.column == 0]
    if side < 0:
        return max(box.right for box in outer) - min(box.left for box in middle) + gap
    return max(box.right for box in middle) - min(box.left for box in outer) + gap


def _drop(own: Mapping[Seat, Box], gap: float) -> float:
    upper = [box for seat, box in own.items() if seat.row == 0]
    lower = [box for seat, box in own.items() if seat.row == -1]
    return max(box.top for box in lower) - min(box.bottom for box in upper) + gap
