"""What is of one kind, for picking all of it at once."""

from collections.abc import Collection, Iterator

from panelcad.editing.lookup import bundles
from panelcad.editing.parts import Thing, all_things, plate_parts
from panelcad.model.markup import Dimension
from panelcad.model.plate import Cut
from panelcad.model.project import Item, Option, Project

Kind = tuple[str, str]


def all_on(option: Option, plate_id: str) -> tuple[str, ...]:
    """Everything on a plate: items with their cuts, lone cuts, screws, lettering, and what is drawn on it."""
    items = (item.id for item in option.items if item.plate == plate_id)
    parts = (part.id for part in plate_parts(option.plate(plate_id)))
    anchors = tuple(bundle.anchor for bundle in bundles(option, (*items, *parts)))
    notes = (note.id for note in option.drawing_notes if note.plate == plate_id)
    dimensions = (dimension.id for dimension in option.dimensions if dimension.plate == plate_id)
    return (*anchors, *notes, *dimensions)


def same_kind(project: Project, option_id: str, plate_id: str, ids: Collection[str]) -> tuple[str, ...]:
    """Everything on a plate that is of a kind with one of these: of its family, or the same sort of thing."""
    option = project.option(option_id)
    kinds = dict(_kinds(project, option))
    wanted = {kinds[one] for one in ids if one in kinds}
    return tuple(one for one in all_on(option, plate_id) if kinds.get(one) in wanted)


def _kinds(project: Project, option: Option) -> Iterator[tuple[str, Kind]]:
    for thing in (*all_things(project, option), *option.dimensions):
        yield thing.id, _kind(project, thing)


def _kind(project: Project, thing: Thing | Dimension) -> Kind:
    """Its sort of record, and the family of its cutout where it has one."""
    cutout = thing.cutout if isinstance(thing, Item | Cut) else None
    return type(thing).__name__, project.cutout(cutout).family if cutout else ""
