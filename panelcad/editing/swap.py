"""Put another cutout in the place of one that is there; ids stay, so that dimensions, groups and findings hold."""

from dataclasses import dataclass

from panelcad.editing.carry import carry
from panelcad.editing.fixed import is_made, new_cut_state, refuse_kept, refuse_locked
from panelcad.editing.ids import fresh_id, fresh_name, ids_in
from panelcad.editing.lookup import plate_holding, sharers
from panelcad.editing.marks import marks_without
from panelcad.editing.place import cut_with_id, is_fitted, names_in, takes_metal, with_cut, with_plate
from panelcad.editing.refusal import edit
from panelcad.editing.stack import is_stack, settle
from panelcad.errors import EditRefused
from panelcad.geometry.placement import Placement
from panelcad.model.cutout import Cutout
from panelcad.model.plate import Cut, CutState, Plate
from panelcad.model.project import Item, Option, Project


@dataclass(frozen=True)
class _Swap:
    """What is there, and what takes its place: the cutout, the name it is carried under, what people will call it."""

    item: Item | None
    cut: Cut | None
    plate: Plate
    cutout: Cutout
    carried: str
    label: str

    @property
    def at(self) -> Placement:
        here = self.item or self.cut
        return Placement(here.x, here.y, here.rotation) if here else Placement()


@edit
def swap(project: Project, option_id: str, part_id: str, cutout: Cutout) -> Project:
    """Another cutout where this item or cut is; a cut that is already in the metal is enlarged.

    A rack unit changed for another in a stack resizes the stack's opening. The item is then no longer the unit of
    equipment it was. Raises `EditRefused` where metal would change in a kept plate, `UnknownName`.
    """
    project, carried = carry(project, cutout)
    option = project.option(option_id)
    item, cut, plate = _what_is_there(option, part_id)
    refuse_locked(option, [part.id for part in (item, cut) if part is not None])
    change = _Swap(item, cut, plate, cutout, carried, _label(project, option, item or cut, cutout))
    if item is not None and cut is not None and len(sharers(option)[cut.id]) > 1:
        return _swapped_in_stack(project, option, item, cut, change)
    option, cut_id = _with_metal(project, option, change)
    return project.with_option(_with_item(project, option, change, cut_id))


def _what_is_there(option: Option, part_id: str) -> tuple[Item | None, Cut | None, Plate]:
    item = next((one for one in option.items if one.id == part_id and one.plate is not None), None)
    if item is None:
        return _in_cut(option, *cut_with_id(option, part_id))
    cut = cut_with_id(option, item.cut)[1] if item.cut is not None else None
    return item, cut, plate_holding(option, item.id)


def _in_cut(option: Option, plate: Plate, cut: Cut) -> tuple[Item | None, Cut, Plate]:
    fitted = sharers(option).get(cut.id, ())
    if len(fitted) > 1:
        raise EditRefused(f"'{cut.name}' holds several things; pick the one to replace.")
    return (fitted[0] if fitted else None), cut, plate


def _label(project: Project, option: Option, part: Item | Cut | None, cutout: Cutout) -> str:
    """A name somebody gave stays; one that came with the old cutout goes with it."""
    old = project.cutout(part.cutout).title if part is not None and part.cutout is not None else None
    if part is not None and (old is None or not part.name.startswith(old)):
        return part.name
    return fresh_name(cutout.title, names_in(option) - ({part.name} if part else set()))


def _swapped_in_stack(project: Project, option: Option, item: Item, cut: Cut, change: _Swap) -> Project:
    if change.cutout.rack is None or not is_stack(project, option, cut.id):
        raise EditRefused(f"'{item.name}' shares its opening; only another rack unit can take its place there.")
    changed = item.revised(cutout=change.carried, name=change.label, unit=None)
    option = option.revised(items=tuple(changed if old.id == item.id else old for old in option.items))
    return settle(project.with_option(option), option.id, cut.id)


def _with_metal(project: Project, option: Option, change: _Swap) -> tuple[Option, str | None]:
    """The option with the cut that the newcomer needs, and its id; metal that is gone stays gone."""
    old = change.cut
    if not takes_metal(change.cutout):
        made = old is not None and is_made(option, change.plate, old)
        return (option, old.id) if old is not None and made else (_without_cut(option, change), None)
    if old is None:
        cut = _new_cut(project, option, change)
        return with_cut(option, change.plate.id, cut), cut.id
    return _with_changed(option, change.plate, _recut(project, option, change, old)), old.id


def _recut(project: Project, option: Option, change: _Swap, old: Cut) -> Cut:
    if _same_metal(project, old, change.cutout):
        return old.revised(name=change.label)
    refuse_kept(option, change.plate)
    state = CutState.ENLARGED if is_made(option, change.plate, old) else old.state
    return old.revised(cutout=change.carried, openings=(), holes=(), state=state, name=change.label)


def _same_metal(project: Project, cut: Cut, cutout: Cutout) -> bool:
    if cut.cutout is None:
        return (cut.openings, cut.holes) == (cutout.openings, cutout.holes)
    carried = project.cutout(cut.cutout)
    return (carried.openings, carried.holes) == (cutout.openings, cutout.holes)


def _new_cut(project: Project, option: Option, change: _Swap) -> Cut:
    stem = f"{change.item.id}-cut" if change.item else change.cutout.name
    return Cut(
        id=fresh_id(stem, ids_in(project, option)),
        name=change.label,
        x=change.at.x,
        y=change.at.y,
        rotation=change.at.rotation,
        state=new_cut_state(option),
        cutout=change.carried,
    )


def _with_changed(option: Option, plate: Plate, changed: Cut) -> Option:
    return with_plate(option, plate.revised(cuts=tuple(changed if c.id == changed.id else c for c in plate.cuts)))


def _without_cut(option: Option, change: _Swap) -> Option:
    if change.cut is None:
        return option
    gone = change.cut.id
    cuts = tuple(cut for cut in change.plate.cuts if cut.id != gone)
    plates = tuple(old.revised(cuts=cuts) if old.id == change.plate.id else old for old in option.plates)
    items = tuple(item.revised(cut=None) if item.cut == gone else item for item in option.items)
    return option.revised(plates=plates, items=items, **marks_without(option, frozenset({gone})))


def _with_item(project: Project, option: Option, change: _Swap, cut_id: str | None) -> Option:
    """The item as the newcomer, a first item where there was a bare cut, or none where there is nothing to fit."""
    old = change.item
    if not is_fitted(change.cutout):
        return option if old is None else _without_item(option, old)
    fields = {"cutout": change.carried, "cut": cut_id, "name": change.label, "unit": None}
    if old is not None:
        return option.revised(items=tuple(i.revised(**fields) if i.id == old.id else i for i in option.items))
    spot = {"plate": change.plate.id, "x": change.at.x, "y": change.at.y, "rotation": change.at.rotation}
    name = fresh_id(change.cutout.name, ids_in(project, option))
    return option.revised(items=(*option.items, Item.model_validate({"id": name, **fields, **spot})))


def _without_item(option: Option, gone: Item) -> Option:
    items = tuple(item for item in option.items if item.id != gone.id)
    return option.revised(items=items, **marks_without(option, frozenset({gone.id})))
