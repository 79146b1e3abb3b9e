"""The same things again: once beside, in a row, or in a grid with a pitch."""

from collections.abc import Collection
from dataclasses import dataclass

from panelcad.editing.clip import copy, left_out, paste, plate_of
from panelcad.editing.clip_marks import measured_to_others
from panelcad.editing.made import Made
from panelcad.errors import EditRefused
from panelcad.model.project import Project


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
    return paste(project, option_id, plate.id, copy(project, option_id, ids), dx, dy)


def not_repeated(project: Project, option_id: str, ids: Collection[str]) -> tuple[str, ...]:
    """What is left behind when these are repeated: the chosen that cannot be, and dimensions to what is not repeated.

    Raises `EditRefused`, `UnknownName`.
    """
    option = project.option(option_id)
    clip = copy(project, option_id, ids)
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
    clip = copy(project, option_id, ids)
    plate = plate_of(project, option_id, ids)
    made: list[str] = []
    for dx, dy in shifts:
        pasted = paste(project, option_id, plate.id, clip, dx, dy)
        project = pasted.project
        made.extend(pasted.ids)
    return Made(project, tuple(made))
