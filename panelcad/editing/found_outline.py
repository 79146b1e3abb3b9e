"""The outline of a panel that is drawn first of all is that of the panel as found.

A new project begins with a sheet that nobody measured. Until something is cut or fitted, and while there is one option
alone, whoever draws the outline draws the panel that is in the aircraft.
"""

from panelcad.editing.place import with_plate
from panelcad.model.project import AS_FOUND, Option, Project
from panelcad.model.shape import Shape


def with_outline(project: Project, option: Option, plate_id: str, shape: Shape) -> Project:
    """The option's plate with this outline; the panel as found too, where it is still the sheet that was begun with."""
    begun = is_just_begun(project, option, plate_id)
    changed = project.with_option(with_plate(option, option.plate(plate_id).revised(outline=shape)))
    if not begun:
        return changed
    found = project.as_found
    return changed.with_option(with_plate(found, found.plate(plate_id).revised(outline=shape)))


def is_just_begun(project: Project, option: Option, plate_id: str) -> bool:
    """Whether nothing but the outline was ever decided about this plate."""
    if option.id == AS_FOUND or project.options != (option,) or project.releases:
        return False
    mine = option.plate(plate_id)
    same = [plate for plate in project.as_found.plates if plate.id == plate_id and plate.outline == mine.outline]
    return bool(same) and not (option.items or project.as_found.items or mine.cuts or same[0].cuts)
