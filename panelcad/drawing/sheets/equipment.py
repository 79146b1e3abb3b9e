"""The equipment list, numbered as on the panel."""

from collections.abc import Iterator
from typing import Final

from panelcad.drawing.display import Along
from panelcad.drawing.drawing_plates import common_material
from panelcad.drawing.numbering import number_key
from panelcad.drawing.page import Page
from panelcad.drawing.sheets.listing import Listing, listing_pages
from panelcad.drawing.subject import Subject
from panelcad.drawing.table import Column, Row
from panelcad.model.layout import PlacedItem
from panelcad.model.project import Item

_COLUMNS: Final = (
    Column("No.", 14.0),
    Column("Equipment", 78.0),
    Column("Cutout", 72.0),
    Column("Mounting", 34.0),
    Column("On", 42.0),
    Column("X", 22.0, Along.RIGHT),
    Column("Y", 22.0, Along.RIGHT),
    Column("Depth behind", 30.0, Along.RIGHT),
    Column("Notes", 72.0),
)
_WORDS: Final = (
    "Numbers as on the panel, the drawing and the hole schedule; items that share a cut add a letter from the top.",
    "Built-in equipment is generic: check every dimension against the makers' installation manuals.",
)


def equipment_pages(subject: Subject) -> list[Page]:
    """The list; none where the option has no equipment."""
    ordered = sorted(subject.option.items, key=lambda item: number_key(subject.numbers.items[item.id]))
    rows = tuple(_rows(subject, tuple(ordered)))
    title, material = subject.project.title, common_material(subject)
    return listing_pages(subject, Listing("Equipment list", title, _words(subject), _COLUMNS, rows, material=material))


def _words(subject: Subject) -> tuple[str, ...]:
    """With the cuts that hold no item, lest their numbers be missed in the list."""
    bare = [
        f"{subject.numbers.cuts[placed.cut.id]} ({placed.cut.name})"
        for plate in subject.laid.plates
        for placed in plate.cuts
        if not any(item.item.cut == placed.cut.id for item in plate.items)
    ]
    return (*_WORDS, f"No item is fitted in: {', '.join(bare)}.") if bare else _WORDS


def _rows(subject: Subject, items: tuple[Item, ...]) -> Iterator[Row]:
    placed = {each.item.id: each for plate in subject.laid.plates for each in plate.items}
    plates = {plate.id: plate.name for plate in subject.option.plates}
    for item in items:
        number = subject.numbers.items[item.id]
        where = plates[item.plate] if item.plate else _elsewhere(subject, item)
        yield Row((number, item.name, *_cells(subject, placed.get(item.id), where), item.notes))


def _elsewhere(subject: Subject, item: Item) -> str:
    if item.place is not None:
        return item.place.value
    return subject.project.unit_named(item.unit).place.value if item.unit else "not placed"


def _cells(subject: Subject, placed: PlacedItem | None, where: str) -> tuple[str, ...]:
    """Cutout, mounting, place, x, y and depth."""
    if placed is None:
        return "none", "remote", where, "–", "–", "–"
    depth = max((body.far for body in placed.behind), default=0.0)
    return (
        placed.cutout.title,
        placed.mounting.value,
        where,
        subject.number(placed.placement.x),
        subject.number(placed.placement.y),
        subject.number(depth) if depth else "–",
    )
