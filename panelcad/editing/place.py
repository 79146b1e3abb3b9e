"""Put a library cutout on a plate: the metal it takes away, and what is fitted there."""

from dataclasses import dataclass

from panelcad.editing.carry import carry
from panelcad.editing.fixed import new_cut_state, refuse_kept
from panelcad.editing.ids import fresh_id, fresh_name, ids_in
from panelcad.editing.refusal import edit
from panelcad.errors import EditRefused, UnknownName
from panelcad.model.cutout import Cutout
from panelcad.model.plate import Cut, Plate
from panelcad.model.project import Item, Option, Project


@dataclass(frozen=True)
class Placed:
    """The new project, and the ids of what was made."""

    project: Project
    cut_id: str | None
    item_id: str | None

    @property
    def ids(self) -> tuple[str, ...]:
        return tuple(made for made in (self.item_id, self.cut_id) if made is not None)


@edit
def place(  # noqa: PLR0913, PLR0917 - what, and where on which plate
    project: Project, option_id: str, plate_id: str, cutout: Cutout, x: float, y: float, rotation: float = 0.0
) -> Placed:
    """Cut and fit a cutout at a point of the plate in mm, turned by degrees; the project carries it from then on.

    Raises `EditRefused` on a kept plate, `UnknownName` for an unknown option or plate.
    """
    project, name = carry(project, cutout)
    option = project.option(option_id)
    taken = ids_in(project, option)
    label = fresh_name(cutout.title, names_in(option))
    spot = {"name": label, "cutout": name, "x": x, "y": y, "rotation": rotation}
    item_id = fresh_id(cutout.name, taken) if is_fitted(cutout) else None
    cut_id = fresh_id(f"{item_id}-cut" if item_id else cutout.name, taken) if takes_metal(cutout) else None
    if cut_id is not None:
        option = with_cut(option, plate_id, Cut.model_validate({"id": cut_id, "state": new_cut_state(option), **spot}))
    if item_id is not None:
        plate_of = option.plate(plate_id).id
        item = Item.model_validate({"id": item_id, "cut": cut_id, "plate": plate_of, **spot})
        option = option.revised(items=(*option.items, item))
    return Placed(project.with_option(option), cut_id, item_id)


def with_cut(option: Option, plate_id: str, cut: Cut) -> Option:
    """The option with a cut more in that plate. Raises `EditRefused` on a kept plate, `UnknownName`."""
    plate = option.plate(plate_id)
    refuse_kept(option, plate)
    return with_plate(option, plate.revised(cuts=(*plate.cuts, cut)))


def with_plate(option: Option, plate: Plate) -> Option:
    """The option with this plate in place of the one of the same id."""
    return option.revised(plates=tuple(plate if old.id == plate.id else old for old in option.plates))


@edit
def fit(project: Project, option_id: str, cut_id: str, cutout: Cutout) -> Placed:
    """Fit a cutout's item in a cut that is there, taking away no metal; the item stands as the cut does.

    Raises `EditRefused` where the cutout has nothing to fit, `UnknownName` for an unknown cut.
    """
    if not is_fitted(cutout):
        raise EditRefused(f"'{cutout.title}' has neither a bezel nor a body, so there is nothing to fit in the cut.")
    project, name = carry(project, cutout)
    option = project.option(option_id)
    item = item_in_cut(project, option, cut_id, cutout, name)
    return Placed(project.with_option(option.revised(items=(*option.items, item))), None, item.id)


def item_in_cut(project: Project, option: Option, cut_id: str, cutout: Cutout, carried: str) -> Item:
    """A new item of a cutout, which the project carries under that name, standing as the cut does. `UnknownName`."""
    plate, cut = cut_with_id(option, cut_id)
    return Item(
        id=fresh_id(cutout.name, ids_in(project, option)),
        name=fresh_name(cutout.title, names_in(option)),
        cutout=carried,
        cut=cut_id,
        plate=plate.id,
        x=cut.x,
        y=cut.y,
        rotation=cut.rotation,
    )


def place_blank(project: Project, option_id: str, cut_id: str, blank: Cutout) -> Placed:
    """Cover a cut that nothing is fitted in with a blank. Raises `EditRefused` where something still is."""
    option = project.option(option_id)
    fitted = [item.name for item in option.items if item.cut == cut_id]
    if fitted:
        raise EditRefused(f"'{fitted[0]}' is still fitted in that cut; take it out before covering the hole.")
    return fit(project, option_id, cut_id, blank)


def cut_with_id(option: Option, cut_id: str) -> tuple[Plate, Cut]:
    """The cut of this id and the plate it is in. Raises `UnknownName`."""
    for plate in option.plates:
        for cut in plate.cuts:
            if cut.id == cut_id:
                return plate, cut
    raise UnknownName("cut", cut_id, option.cut_ids())


def takes_metal(cutout: Cutout) -> bool:
    """Whether placing it cuts the sheet."""
    return bool(cutout.openings or cutout.holes)


def is_fitted(cutout: Cutout) -> bool:
    """Whether something is fitted, and not only cut."""
    return bool(cutout.bezel or cutout.bodies)


def names_in(option: Option) -> set[str]:
    """The names that items and cuts bear."""
    return {item.name for item in option.items} | {cut.name for plate in option.plates for cut in plate.cuts}
