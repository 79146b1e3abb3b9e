"""The shape and size of a cut that is no cutout of the library: an opening made to measure."""

from panelcad.editing.fixed import is_made, refuse_kept, refuse_locked
from panelcad.editing.place import cut_with_id
from panelcad.editing.plates import revise_part
from panelcad.editing.stack import is_stack
from panelcad.errors import EditRefused
from panelcad.model.cutout import Opening
from panelcad.model.project import Option, Project
from panelcad.model.shape import Shape


def own_opening(project: Project, option: Option, part_id: str) -> Opening | None:
    """The one opening of a lone cut made to measure; None for anything else, a stack's opening among it."""
    if part_id not in option.cut_ids():
        return None
    _, cut = cut_with_id(option, part_id)
    is_single = cut.cutout is None and len(cut.openings) == 1
    return cut.openings[0] if is_single and not is_stack(project, option, cut.id) else None


def reshape_cut(project: Project, option_id: str, cut_id: str, shape: Shape) -> Project:
    """The cut with its opening in another shape or size about the same place.

    Raises `EditRefused` for metal that is cut already, what is locked, and what is not made to measure.
    """
    option = project.option(option_id)
    opening = own_opening(project, option, cut_id)
    if opening is None:
        raise EditRefused("Only an opening made to measure has a size of its own; replace a cutout of the library.")
    plate, cut = cut_with_id(option, cut_id)
    refuse_locked(option, [cut_id])
    refuse_kept(option, plate)
    if is_made(option, plate, cut):
        raise EditRefused(f"The cut '{cut.name}' is already in the metal of plate '{plate.name}' and keeps its size.")
    return revise_part(project, option_id, cut_id, openings=(opening.revised(shape=shape),))
