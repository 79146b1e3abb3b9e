"""A project carries the cutouts it uses, so that it opens the same on a machine with another library."""

from panelcad.editing.ids import fresh_id
from panelcad.model.cutout import Cutout
from panelcad.model.project import Project


def carry(project: Project, cutout: Cutout) -> tuple[Project, str]:
    """The project with this cutout among those it carries, and the name it is carried under.

    A different cutout of the same name keeps its name; the newcomer gets a numbered one.
    """
    known = {carried.name: carried for carried in project.cutouts}
    for carried in project.cutouts:
        if _same_but_for_name(carried, cutout):
            return project, carried.name
    name = fresh_id(cutout.name, known)
    return project.revised(cutouts=(*project.cutouts, cutout.revised(name=name))), name


def _same_but_for_name(carried: Cutout, cutout: Cutout) -> bool:
    if carried.name != cutout.name and not carried.name.startswith(f"{cutout.name}-"):
        return False
    return carried == cutout or carried.revised(name=cutout.name) == cutout
