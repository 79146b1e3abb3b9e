"""Placards get their words: a placard is a plate of its own, so nothing is engraved into the panel under it."""

from collections.abc import Collection, Mapping

from panelcad.editing.made import Made
from panelcad.editing.refusal import edit
from panelcad.editing.rename import rename
from panelcad.errors import EditRefused
from panelcad.geometry.boxes import box_gap
from panelcad.geometry.gap import contains
from panelcad.geometry.point import Point
from panelcad.model.layout import PlateLayout
from panelcad.model.placard import is_placard
from panelcad.model.project import Item, Option, Project


def placards(project: Project, option: Option, ids: Collection[str]) -> tuple[Item, ...]:
    """The placards among these things, in the option's order."""
    return tuple(item for item in option.items if item.id in ids and _is_placard(project, item))


def placard_at(plate: PlateLayout, at: Point) -> Item | None:
    """The placard that lies at a point of its plate in mm; the last of several lies on top."""
    spot = (*at, *at)
    over = (placed for placed in reversed(plate.items) if is_placard(placed.cutout))
    near = (placed for placed in over if box_gap(placed.face.bounds, spot) == 0.0)
    return next((placed.item for placed in near if contains(placed.face, at)), None)


def words_of(project: Project, placard: Item) -> str:
    """What a placard says; '' while it still bears the name of its cutout."""
    if placard.cutout is not None and placard.name.startswith(project.cutout(placard.cutout).title):
        return ""
    return placard.name


@edit
def letter_placards(project: Project, option_id: str, texts: Mapping[str, str]) -> Made:
    """Words for each of these placards by its id; one whose text is empty stays as it is. The ids are the lettered.

    Raises `EditRefused` where all are empty, `UnknownName`.
    """
    wanted = {one: text.strip() for one, text in texts.items() if text.strip()}
    if not wanted:
        raise EditRefused("There are no words yet.")
    for one, text in wanted.items():
        project = rename(project, option_id, one, text)
    return Made(project, tuple(wanted))


def _is_placard(project: Project, item: Item) -> bool:
    return item.cutout is not None and is_placard(project.cutout(item.cutout))
