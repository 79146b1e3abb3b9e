"""A row of like things that stand too near each other is spread about its middle, all by one pitch."""

from panelcad.editing.extents import bodies
from panelcad.editing.labels_along import with_labels
from panelcad.editing.move import move_each
from panelcad.editing.refusal import edit
from panelcad.model.like_row import LikeRow
from panelcad.model.project import Project


@edit
def spread_row(project: Project, option_id: str, row: LikeRow, pitch: float) -> Project:
    """The row at another pitch in mm, its middle where it was; each label that is not locked goes along.

    Raises `EditRefused` for what is locked or cut already, `UnknownName`.
    """
    option = project.option(option_id)
    shifts: dict[str, tuple[float, float]] = {}
    for item_id, dx, dy in row.shifts(pitch):
        (body,) = bodies(project, option, [item_id])
        shifts |= dict.fromkeys(body.ids, (dx, dy))
    return with_labels(project, move_each(project, option_id, shifts), option_id, row.ids)
