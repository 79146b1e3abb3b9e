"""Controls get their labels: engraved lettering, one line below or above each, all of one height."""

import re
from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass
from enum import Enum
from typing import Final

from panelcad.editing.fixed import refuse_locked
from panelcad.editing.made import Made
from panelcad.editing.plates import add_engraving, revise_part
from panelcad.editing.refusal import edit
from panelcad.editing.remove import remove
from panelcad.editing.standing_labels import standing_labels
from panelcad.errors import EditRefused
from panelcad.geometry.boxes import box_around, box_gap
from panelcad.geometry.contour import Contour
from panelcad.geometry.gap import TIE, edge_gap, gap
from panelcad.geometry.point import Point
from panelcad.model.engraved import STROKE, engraving_box
from panelcad.model.layout import PlacedItem, PlateLayout, layout
from panelcad.model.plate import Engraving
from panelcad.model.project import Item, Option, Project

LABEL_GAP: Final = 1.5
"""mm left free between a label and its control's bezel, and between a label and what else is there: common practice."""
_PLUGGED: Final = frozenset({"jacks", "outlets"})
"""Families that no hand turns or presses, and that are labelled as controls are."""
_KIND: Final = re.compile(r"\s+(?:switch|breaker)(?:,\s*[\d.,/ ]+A)?(\s+\d+)?$", re.IGNORECASE)
_ROW: Final = 1.0
"""mm by which controls of one row may differ in height: they are listed from the left all the same."""


class Side(Enum):
    """Where a label stands, as seen on the plate."""

    BELOW = "below"
    ABOVE = "above"


@dataclass(frozen=True)
class Label:
    """The lettering that stands for a control, and on which side of it."""

    words: Engraving
    side: Side


def controls(project: Project, option: Option, ids: Collection[str]) -> tuple[Item, ...]:
    """What takes a label among these items and cuts, on a plate: row by row from the top, each from the left."""
    chosen = {*ids}
    found = [item for item in option.items if chosen & {item.id, item.cut} and _takes_label(project, item)]
    return tuple(sorted(found, key=lambda item: (item.plate or "", -round(item.y / _ROW), item.x)))


def short_name(name: str) -> str:
    """The words for a control of this name, in capitals, without its kind and a breaker's rating at the end.

    A number stays, so that the labels of a row are alike: 'Toggle switch 2' is 'TOGGLE 2'.

    >>> short_name("Landing light switch"), short_name("Fuel pump breaker, 5 A"), short_name("Panel lights dimmer")
    ('LANDING LIGHT', 'FUEL PUMP', 'PANEL LIGHTS DIMMER')
    """
    return _KIND.sub(r"\1", name).upper()


def label_spot(plate: PlateLayout, placed: PlacedItem, height: float, side: Side) -> Point:
    """The middle of a label of this height in mm: centred on the control's face, the gap clear of it.

    Clear of its lever or knob and of its cut too, which may reach past the bezel.
    """
    left, _, right, _ = placed.face.bounds
    cut = plate.cut_of(placed.item)
    openings = () if cut is None else cut.features
    taken = (*_seen(placed), *(opening.contour for opening in openings))
    _, bottom, _, top = box_around(contour.bounds for contour in taken)
    away = LABEL_GAP + height * (1 + STROKE) / 2
    return Point((left + right) / 2, bottom - away if side is Side.BELOW else top + away)


def labels(project: Project, option: Option) -> dict[str, Label]:
    """The label that each control has already, by the control's id; it is as near as the rules ask of a label."""
    found: dict[str, Label] = {}
    for plate in layout(project, option).plates:
        mine = {placed.item.id: placed for placed in plate.items if _takes_label(project, placed.item)}
        standing = standing_labels(plate, tuple(mine.values()), project.profile.label_distance)
        found |= {one: Label(words, _side(mine[one], words)) for one, words in standing.items()}
    return found


def _side(placed: PlacedItem, words: Engraving) -> Side:
    return Side.ABOVE if words.y > placed.centre.y else Side.BELOW


@edit
def label_row(project: Project, option_id: str, texts: Mapping[str, str], height: float, side: Side) -> Made:
    """Lettering of one height in mm for each of these items by its id; the ids made are the labels', in that order.

    A label that stands already is changed and put in its place; one whose text is empty goes. Raises `EditRefused`
    where there is nothing to letter or take away, for a height of 0, for what is locked and for a plate that is kept.
    """
    option = project.option(option_id)
    standing = {one: label.words for one, label in labels(project, option).items() if one in texts}
    wanted = {item_id: text.strip() for item_id, text in texts.items() if text.strip()}
    if not wanted and not standing:
        raise EditRefused("There are no words yet.")
    if height <= 0:
        raise EditRefused("A height larger than 0 is expected.")
    refuse_locked(option, [words.id for words in standing.values()])
    placed = {one.item.id: (plate, one) for plate in layout(project, option).plates for one in plate.items}
    made: list[str] = []
    for item_id, text in wanted.items():
        plate, control = placed[item_id]
        spot = label_spot(plate, control, height, side)
        words = Engraving(id="lettering-1", text=text, x=spot.x, y=spot.y, height=height)
        done = _lettered(project, option_id, plate.plate.id, words, standing.get(item_id))
        project = done.project
        made.extend(done.ids)
    emptied = [words.id for item_id, words in standing.items() if item_id not in wanted]
    return Made(remove(project, option_id, emptied) if emptied else project, tuple(made))


def _lettered(project: Project, option_id: str, plate_id: str, words: Engraving, old: Engraving | None) -> Made:
    """The words in the place of the old ones, under their id, so that what holds on to them still does."""
    if old is None:
        return add_engraving(project, option_id, plate_id, words)
    changes = {"text": words.text, "x": words.x, "y": words.y, "height": words.height, "rotation": words.rotation}
    return Made(revise_part(project, option_id, old.id, **changes), (old.id,))


def crowded(project: Project, option_id: str, ids: Collection[str]) -> tuple[str, ...]:
    """The words among these engravings that stand nearer than the gap to a control, a cut, other words or the edge."""
    laid = layout(project, project.option(option_id))
    return tuple(
        words.text
        for plate in laid.plates
        for words in plate.plate.engravings
        if words.id in ids and _is_crowded(words, plate)
    )


def _takes_label(project: Project, item: Item) -> bool:
    if item.plate is None or item.cutout is None:
        return False
    cutout = project.cutout(item.cutout)
    return cutout.control is not None or cutout.family in _PLUGGED


def _seen(placed: PlacedItem) -> Iterator[Contour]:
    """Its face, and the lever or knob in front of it."""
    yield placed.face
    yield from (body.footprint for body in placed.in_front)


def _is_crowded(words: Engraving, plate: PlateLayout) -> bool:
    box = engraving_box(words)
    least = LABEL_GAP - TIE
    if edge_gap(box, plate.outline).distance < least:
        return True
    near = (other for other in _beside(words, plate) if box_gap(box.bounds, other.bounds) < least)
    return any(gap(box, other).distance < least for other in near)


def _beside(words: Engraving, plate: PlateLayout) -> Iterator[Contour]:
    for placed in plate.items:
        yield from _seen(placed)
    yield from (feature.contour for feature in plate.features)
    yield from (engraving_box(other) for other in plate.plate.engravings if other.id != words.id)
