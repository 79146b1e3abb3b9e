"""Where a plate's axes begin, in the same words on drawing and cutting file."""

from panelcad.model.plate import Frame, Plate
from panelcad.model.project import Project
from panelcad.units import format_number


def datum_of(project: Project, plate: Plate) -> str:
    """The aircraft's datum, or the own origin of a plate that stands elsewhere in it, in the project's unit."""
    aircraft, frame = project.aircraft.datum, plate.frame
    if frame == Frame():
        return aircraft
    places = zip("XYZ", (frame.x, frame.y, frame.z), strict=True)
    where = ", ".join(f"{axis} {format_number(value, project.unit)}" for axis, value in places)
    return f"the plate's own origin, which is at {where} from the aircraft's datum ({aircraft})"
