"""The order of a stack: where a unit stands in it, a step up or down, and where one more would go."""

from panelcad.editing.place import cut_with_id
from panelcad.editing.stack import is_stack, move_in_stack
from panelcad.errors import EditRefused
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point
from panelcad.model.layout import layout
from panelcad.model.plate import Cut
from panelcad.model.project import Item, Option, Project


def step_in_stack(project: Project, option_id: str, item_id: str, by: int) -> Project:
    """The unit so many places lower in its stack, higher where `by` is negative; at an end it stays.

    Raises `EditRefused` for what is in no stack.
    """
    option = project.option(option_id)
    item = option.item(item_id)
    if item.cut is None or not is_stack(project, option, item.cut):
        raise EditRefused(f"'{item.name}' is in no stack.")
    order = [unit.id for unit in units_from_above(option, cut_with_id(option, item.cut)[1])]
    position = min(max(order.index(item_id) + by, 0), len(order) - 1)
    return move_in_stack(project, option_id, item_id, position)


def units_from_above(option: Option, cut: Cut) -> tuple[Item, ...]:
    """The units of a stack, the uppermost first, as the stack itself is turned."""
    units = (item for item in option.items if item.cut == cut.id)
    return tuple(sorted(units, key=lambda item: -_height(cut, Point(item.x, item.y))))


def place_in_order(project: Project, option: Option, item_id: str, at: Point) -> int | None:
    """The position that a unit takes among its neighbours when it is held at a point of its plate, 0 being uppermost.

    It goes past a neighbour at that one's middle. None outside the stack's opening, and for what is in no stack.
    """
    item = option.item(item_id)
    found = stack_at(project, option, item.plate, at) if item.plate is not None else None
    if found is None or found[0] != item.cut:
        return None
    cut = cut_with_id(option, found[0])[1]
    others = (unit for unit in units_from_above(option, cut) if unit.id != item_id)
    return sum(_height(cut, Point(unit.x, unit.y)) > _height(cut, at) for unit in others)


def stack_at(project: Project, option: Option, plate_id: str, at: Point) -> tuple[str, int] | None:
    """The stack under a point of a plate, by its cut's id, and the position that a unit put there takes."""
    from panelcad.geometry.gap import contains  # noqa: PLC0415 - shapely waits until a stack is looked for

    for placed in layout(project, option).plate(plate_id).cuts:
        cut = placed.cut
        is_under = any(contains(opening.contour, at) for opening in placed.openings)
        if is_under and is_stack(project, option, cut.id):
            heights = [_height(cut, Point(unit.x, unit.y)) for unit in units_from_above(option, cut)]
            return cut.id, sum(height > _height(cut, at) for height in heights)
    return None


def _height(cut: Cut, at: Point) -> float:
    """How far a point is up the stack, in mm; the stack may be turned."""
    up = Placement(rotation=cut.rotation).point(Point(0.0, 1.0))
    return at.x * up.x + at.y * up.y
