"""A stack of rack units: one opening, the units one above the other, and it stays a stack whatever changes."""

from collections.abc import Sequence

from panelcad.editing.carry import carry
from panelcad.editing.fixed import new_cut_state, refuse_locked
from panelcad.editing.ids import fresh_id, fresh_name, ids_in
from panelcad.editing.lookup import sharers
from panelcad.editing.made import Made
from panelcad.editing.place import cut_with_id, item_in_cut, names_in, with_cut, with_plate
from panelcad.editing.refusal import edit
from panelcad.editing.stack_opening import needed, rack_opening, rectangle_of, resized, spots_from_above
from panelcad.errors import EditRefused
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point
from panelcad.model.cutout import Cutout, RackUnit
from panelcad.model.plate import Cut
from panelcad.model.project import Item, Option, Project


@edit
def place_stack(  # noqa: PLR0913, PLR0917 - what, and where on which plate
    project: Project, option_id: str, plate_id: str, units: Sequence[Cutout], x: float, top: float
) -> Made:
    """Rack units, the first uppermost, in one new opening: its middle at x and its upper edge at `top`, in mm.

    The ids made are the opening's, then the units' from above. Raises `EditRefused`, `UnknownName`.
    """
    racks = [_rack(unit) for unit in units]
    if not racks:
        raise EditRefused("A stack needs at least one rack unit.")
    option = project.option(option_id)
    width, height = needed(racks, project.profile)
    cut_id = fresh_id("stack", ids_in(project, option))
    cut = Cut(
        id=cut_id,
        name=fresh_name("Stack", names_in(option)),
        x=x,
        y=top - height / 2,
        state=new_cut_state(option),
        openings=(rack_opening(width, height),),
    )
    project = project.with_option(with_cut(option, plate_id, cut))
    made = [cut_id]
    for unit in units:
        added = add_to_stack(project, option_id, cut_id, unit, len(made) - 1)
        project = added.project
        made.extend(added.ids)
    return Made(project, tuple(made))


@edit
def add_to_stack(project: Project, option_id: str, cut_id: str, unit: Cutout, position: int) -> Made:
    """A rack unit more in an opening, `position` from above (0 is uppermost); the opening grows downwards.

    Raises `EditRefused` where the opening holds something else, or must grow in a kept plate.
    """
    _rack(unit)
    project, name = carry(project, unit)
    option = project.option(option_id)
    _, cut = cut_with_id(option, cut_id)
    order = _units_from_above(project, option, cut)
    item = item_in_cut(project, option, cut_id, unit, name)
    project = project.with_option(option.revised(items=(*option.items, item)))
    return Made(_laid(project, option_id, cut_id, [*order[:position], item, *order[position:]]), (item.id,))


@edit
def move_in_stack(project: Project, option_id: str, item_id: str, position: int) -> Project:
    """The unit at another position of its stack, 0 being uppermost. Raises `EditRefused` for what is in no stack."""
    option = project.option(option_id)
    item = option.item(item_id)
    if item.cut is None:
        raise EditRefused(f"'{item.name}' is in no stack.")
    _, cut = cut_with_id(option, item.cut)
    order = [unit for unit in _units_from_above(project, option, cut) if unit.id != item_id]
    return _laid(project, option_id, cut.id, [*order[:position], item, *order[position:]])


@edit
def settle(project: Project, option_id: str, cut_id: str) -> Project:
    """The stack in its present order, closed up under its upper edge, in an opening that fits it."""
    option = project.option(option_id)
    _, cut = cut_with_id(option, cut_id)
    return _laid(project, option_id, cut_id, _units_from_above(project, option, cut))


def is_stack(project: Project, option: Option, cut_id: str) -> bool:
    """Whether rack units, and nothing else, stand in the cut, and it is one rectangular opening."""
    items = sharers(option).get(cut_id, ())
    if not items or any(_rack_of(project, item) is None for item in items):
        return False
    return rectangle_of(project, cut_with_id(option, cut_id)[1]) is not None


def _laid(project: Project, option_id: str, cut_id: str, order: Sequence[Item]) -> Project:
    """The units laid into the opening from above, the opening resized where the metal still allows it."""
    option = project.option(option_id)
    refuse_locked(option, [cut_id, *(item.id for item in order)])
    plate, cut = cut_with_id(option, cut_id)
    cutouts = {item.id: project.cutout(item.cutout or "") for item in order}
    racks = [_rack(cutouts[item.id]) for item in order]
    cut = resized(project, option, plate, cut, racks)
    option = with_plate(option, plate.revised(cuts=tuple(cut if old.id == cut_id else old for old in plate.cuts)))
    spots = spots_from_above(project, cut, racks)
    stood = {
        item.id: item.revised(x=spot.x, y=spot.y, rotation=cut.rotation)
        for item, spot in zip(order, spots, strict=True)
    }
    return project.with_option(option.revised(items=tuple(stood.get(item.id, item) for item in option.items)))


def _units_from_above(project: Project, option: Option, cut: Cut) -> list[Item]:
    """Raises `EditRefused` where something else is fitted there."""
    units = sharers(option).get(cut.id, ())
    for item in units:
        if _rack_of(project, item) is None:
            raise EditRefused(f"'{item.name}' is no rack unit, so '{cut.name}' cannot be a stack.")
    up = Placement(rotation=cut.rotation).point(Point(0.0, 1.0))
    return sorted(units, key=lambda item: -(item.x * up.x + item.y * up.y))


def _rack(cutout: Cutout) -> RackUnit:
    if cutout.rack is None:
        raise EditRefused(f"'{cutout.title}' is no rack unit and cannot stand in a stack.")
    return cutout.rack


def _rack_of(project: Project, item: Item) -> RackUnit | None:
    return project.cutout(item.cutout).rack if item.cutout else None
