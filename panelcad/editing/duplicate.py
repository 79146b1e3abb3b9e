"""The same things again: once beside, in a row, or in a grid with a pitch."""

from collections.abc import Collection
from dataclasses import dataclass
from typing import Final

from panelcad.editing.clip import Clip, copy, left_out, paste, plate_of
from panelcad.editing.clip_marks import measured_to_others
from panelcad.editing.made import Made
from panelcad.errors import EditRefused
from panelcad.geometry.boxes import Box, box_around
from panelcad.model.engraved import engraving_box
from panelcad.model.layout import PlateLayout
from panelcad.model.profile import Profile
from panelcad.model.project import Project
from panelcad.units import rounded

_INCH: Final = 25.4


@dataclass(frozen=True)
class Grid:
    """Columns to the right and rows upwards, downwards with a negative pitch; the first place is there already."""

    columns: int
    rows: int = 1
    across: float = 0.0
    up: float = 0.0

    @property
    def shifts(self) -> tuple[tuple[float, float], ...]:
        """Each place but the first, row by row, in mm."""
        spots = ((c * self.across, r * self.up) for r in range(self.rows) for c in range(self.columns))
        return tuple(spots)[1:]


def duplicate(project: Project, option_id: str, ids: Collection[str], dx: float, dy: float) -> Made:
    """These things once more on the same plate, moved by mm. Raises `EditRefused`, `UnknownName`."""
    plate = plate_of(project, option_id, ids)
    return paste(project, option_id, plate.id, _repeatable(project, option_id, ids), dx, dy)


def not_repeated(project: Project, option_id: str, ids: Collection[str]) -> tuple[str, ...]:
    """What is left behind when these are repeated: the chosen that cannot be, and dimensions to what is not repeated.

    A dimension from the plate itself is: repeated it would lie upon the first.

    Raises `EditRefused`, `UnknownName`.
    """
    option = project.option(option_id)
    clip = _repeatable(project, option_id, ids)
    behind = left_out(project, option_id, ids, clip)
    others = measured_to_others(option, {part.id for part in clip.parts}, clip.dimensions)
    return tuple(dict.fromkeys((*behind, *others)))


def duplicate_in_grid(project: Project, option_id: str, ids: Collection[str], grid: Grid) -> Made:
    """These things repeated in a row or a grid; the ids of all that was added, place by place.

    Raises `EditRefused` where the grid has no second place or two places coincide.
    """
    shifts = grid.shifts
    if grid.columns < 1 or grid.rows < 1 or not shifts or len(shifts) > 400:
        raise EditRefused("A grid of 2 to 400 places is expected.")
    if len(set(shifts) | {(0.0, 0.0)}) != len(shifts) + 1:
        raise EditRefused("A pitch other than 0 is expected, so that no two places coincide.")
    clip = _repeatable(project, option_id, ids)
    plate = plate_of(project, option_id, ids)
    made: list[str] = []
    for dx, dy in shifts:
        pasted = paste(project, option_id, plate.id, clip, dx, dy)
        project = pasted.project
        made.extend(pasted.ids)
    return Made(project, tuple(made))


def _repeatable(project: Project, option_id: str, ids: Collection[str]) -> Clip:
    """What is copied of these but for dimensions from the plate itself."""
    clip = copy(project, option_id, ids)
    return clip.revised(dimensions=tuple(one for one in clip.dimensions if one.plate not in one.parts))


def least_pitches(plate: PlateLayout, ids: Collection[str], profile: Profile) -> tuple[float, float]:
    """Across and up, in mm: from the front an advised web apart, behind as far as bodies must stand from each other.

    An inch each way for things without a size.
    """
    items = [placed for placed in plate.items if {placed.item.id, placed.item.cut} & set(ids)]
    lines = [engraving_box(line).bounds for line in plate.plate.engravings if line.id in ids]
    holes = [feature.contour.bounds for feature in plate.features if feature.owner in ids]
    front = [*lines, *holes, *(placed.face.bounds for placed in items)]
    behind = [body.footprint.bounds for placed in items for body in placed.behind]
    sizes = [_grown(front, profile.web_advised), _grown(behind, profile.body_clearance)]
    return max(width for width, _ in sizes) or _INCH, max(height for _, height in sizes) or _INCH


def _grown(boxes: list[Box], by: float) -> tuple[float, float]:
    """Width and height around these boxes and so many mm more; 0 around none."""
    if not boxes:
        return 0.0, 0.0
    x1, y1, x2, y2 = box_around(boxes)
    return rounded(x2 - x1 + by), rounded(y2 - y1 + by)
