"""A control's label goes along when the control is moved, unless it is locked or is itself told where to go."""

from collections.abc import Collection

from panelcad.editing.lookup import together
from panelcad.editing.move import move_by, move_each
from panelcad.model.project import Option, Project


def labels_of(project: Project, option: Option, ids: Collection[str]) -> dict[str, str]:
    """The label of each control among these things and what belongs to them, by the control's id.

    Labels that are among the ids themselves, and locked ones, are left out.
    """
    if not ids:
        return {}
    from panelcad.editing.label_row import labels  # noqa: PLC0415 - shapely waits until it is asked

    parts, staying = together(option, ids), {*ids, *option.locked}
    known = {one: label.words.id for one, label in labels(project, option).items() if one in parts}
    return {one: words for one, words in known.items() if words not in staying}


def move_labelled(project: Project, option_id: str, ids: Collection[str], dx: float, dy: float) -> Project:
    """As `move_by`, with the labels of the controls among these."""
    return with_labels(project, move_by(project, option_id, ids, dx, dy), option_id, ids)


def with_labels(before: Project, after: Project, option_id: str, ids: Collection[str]) -> Project:
    """The project after a move of these things, each label as far from its control as before the move.

    Letters stay as they are turned, and the label of a control that only turned stays where it is.
    """
    option, there = before.option(option_id), {item.id: item for item in after.option(option_id).items}
    labels = labels_of(before, option, ids)
    was = {item.id: item for item in option.items if item.id in labels}
    return move_each(
        after,
        option_id,
        {words: (there[one].x - was[one].x, there[one].y - was[one].y) for one, words in labels.items()},
    )
