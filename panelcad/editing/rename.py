"""Call a thing by another name; ids stay, so that findings and acceptances keep their hold."""

from typing import Any

from panelcad.editing.parts import all_things, with_things
from panelcad.editing.refusal import edit
from panelcad.errors import EditRefused, UnknownName
from panelcad.model.markup import DrawingNote
from panelcad.model.plate import AttachScrew, Engraving
from panelcad.model.project import Option, Project


@edit
def rename(project: Project, option_id: str, part_id: str, name: str) -> Project:
    """The item, cut or thing around the panel under another name; an item's own cut is renamed with it.

    Raises `EditRefused` for what bears no name, `UnknownName` for what is not there.
    """
    option = project.option(option_id)
    _refuse_nameless(project, option, part_id)
    ids = {part_id} | _own_cut(option, part_id)

    def renamed(kept: tuple[Any, ...]) -> tuple[Any, ...]:
        if not any(thing.id in ids for thing in kept):
            return kept
        return tuple(thing.revised(name=name) if thing.id in ids else thing for thing in kept)

    return with_things(project, option.id, renamed)


def _refuse_nameless(project: Project, option: Option, part_id: str) -> None:
    known = {thing.id: thing for thing in all_things(project, option)}
    if part_id not in known:
        raise UnknownName("part", part_id, tuple(known))
    if isinstance(known[part_id], AttachScrew | Engraving | DrawingNote):
        raise EditRefused(f"'{part_id}' bears no name; change its lettering or its hole instead.")


def _own_cut(option: Option, item_id: str) -> set[str]:
    """The cut of this item, where no other item shares it and it still bears the item's name."""
    item = next((one for one in option.items if one.id == item_id), None)
    if item is None or item.cut is None or sum(other.cut == item.cut for other in option.items) > 1:
        return set()
    return {cut.id for plate in option.plates for cut in plate.cuts if cut.id == item.cut and cut.name == item.name}
