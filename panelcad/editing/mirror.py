"""Mirror an arrangement. Equipment cannot be mirrored: it changes sides and keeps its face; bare cuts are mirrored.

A label goes along with its control, on the side of it where it was.
"""

from collections.abc import Collection
from dataclasses import replace

from panelcad.editing.extents import Axis
from panelcad.editing.labels_along import with_labels
from panelcad.editing.lookup import sharers, together
from panelcad.editing.move import standing
from panelcad.editing.places import stand
from panelcad.editing.refusal import edit
from panelcad.geometry.placement import Placement
from panelcad.model.project import Project


@edit
def mirror(project: Project, option_id: str, ids: Collection[str], axis: Axis, at: float) -> Project:
    """Everything named on the other side of a line in mm: upright at x = `at` for ACROSS, level at y = `at` for UP."""
    option = project.option(option_id)
    here = standing(project, option, together(option, ids))
    bare = {cut_id for cut_id in option.cut_ids() if cut_id in here} - set(sharers(option))
    where = {one: _across(place, axis, at, is_bare=one in bare) for one, place in here.items()}
    return with_labels(project, stand(project, option.id, where), option_id, ids)


def _across(place: Placement, axis: Axis, at: float, *, is_bare: bool) -> Placement:
    """A mirrored cut is mirrored about its own y axis first, so a level line adds half a turn."""
    moved = replace(place, x=2 * at - place.x) if axis is Axis.ACROSS else replace(place, y=2 * at - place.y)
    if not is_bare:
        return replace(moved, rotation=-place.rotation % 360.0)
    half = 0.0 if axis is Axis.ACROSS else 180.0
    return replace(moved, rotation=(half - place.rotation) % 360.0, mirrored=not place.mirrored)
