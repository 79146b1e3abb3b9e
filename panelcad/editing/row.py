"""A row of like things: switches, breakers, lamps."""

from dataclasses import dataclass

from panelcad.editing.made import Made
from panelcad.editing.place import place
from panelcad.editing.refusal import edit
from panelcad.errors import EditRefused
from panelcad.geometry.point import Point, polar
from panelcad.model.cutout import Cutout
from panelcad.model.project import Project


@dataclass(frozen=True)
class Row:
    """So many places, the first at `start`, one `pitch` in mm after the other, in a direction in degrees."""

    start: Point
    count: int
    pitch: float
    direction: float = 0.0

    @property
    def places(self) -> tuple[Point, ...]:
        return tuple(polar(self.start, i * self.pitch, self.direction) for i in range(self.count))


@edit
def place_row(project: Project, option_id: str, plate_id: str, cutout: Cutout, row: Row) -> Made:
    """The cutout at every place of the row; each stands upright whatever the row's direction.

    Raises `EditRefused` for a row of none or one that does not advance, `UnknownName`.
    """
    if not 1 <= row.count <= 200 or (row.count > 1 and row.pitch == 0.0):
        raise EditRefused("A row of 1 to 200 places with a pitch other than 0 is expected.")
    made: list[str] = []
    for spot in row.places:
        placed = place(project, option_id, plate_id, cutout, spot.x, spot.y)
        project = placed.project
        made.extend(placed.ids)
    return Made(project, tuple(made))
