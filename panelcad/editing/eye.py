"""The pilot's eye point: moved, or entered for the first time."""

from typing import Final

from panelcad.editing.around import set_eye
from panelcad.model.project import Project
from panelcad.model.source import Source, Standing
from panelcad.model.surroundings import Eye

_ENTERED: Final = Source(standing=Standing.USER, text="eye point entered in the window; measure it in the aircraft")
FIRST_DISTANCE: Final = 762.0
"""Eye to panel of a first eye point, in mm: 30 in (AC 23.1311-1C paragraph 15.4, from memory)."""
_FIRST_ABOVE: Final = 150.0


def eye_or_first(project: Project) -> Eye:
    """The project's eye, or one to begin with: before the middle of the first plate's left half, a little above it."""
    if project.surroundings.eye is not None:
        return project.surroundings.eye
    plate = project.all_options[-1].plates[0]
    left, _, right, top = plate.outline.contour().bounds
    x = plate.frame.x + left + (right - left) / 4
    y = plate.frame.y + top + _FIRST_ABOVE
    return Eye(x=x, y=y, z=plate.frame.z - FIRST_DISTANCE, centre_line=x, source=_ENTERED)


def move_eye(project: Project, dx: float, dy: float, dz: float = 0.0) -> Project:
    """The project with the eye moved by mm in aircraft axes; the centre line goes with it sideways."""
    eye = eye_or_first(project)
    moved = {"x": eye.x + dx, "y": eye.y + dy, "z": eye.z + dz, "centre_line": eye.centre_line + dx}
    return set_eye(project, eye.revised(**moved, source=_ENTERED))


def place_eye(project: Project, x: float, y: float, z: float, centre_line: float | None = None) -> Project:
    """The project with the eye at this point of the aircraft, in mm, and the pilot's centre line; through it where none
    is given.
    """
    return set_eye(project, Eye(x=x, y=y, z=z, centre_line=x if centre_line is None else centre_line, source=_ENTERED))
