"""Where words stand on a plate: engraved lines, as wide as they are cut, and fitted placards, as boxes."""

import math
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from typing import Any

from panelcad.geometry.boxes import box_gap
from panelcad.geometry.contour import Contour
from panelcad.geometry.gap import TIE, gap
from panelcad.model.engraved import engraving_box
from panelcad.model.finding import Severity
from panelcad.model.kept import kept_choice
from panelcad.model.labelled import nearest_controls
from panelcad.model.layout import PlacedItem, PlateLayout
from panelcad.model.placard import is_placard


@dataclass(frozen=True)
class Words:
    """The id of an engraving or a placard item, what it says, the box it fills, and how that is turned in degrees."""

    id: str
    text: str
    box: Contour
    turn: float


def words_on(plate: PlateLayout) -> Iterator[Words]:
    for engraving in plate.plate.engravings:
        yield Words(engraving.id, engraving.text, engraving_box(engraving), engraving.rotation)
    placards = kept_choice(("placards", plate.plate.id), plate.items, lambda placed: is_placard(placed.cutout))
    for placed in placards:
        yield Words(placed.item.id, placed.item.name, placed.face, placed.item.rotation)


def with_words_of_their_own(controls: Sequence[PlacedItem], words: Iterable[Words], limit: float) -> frozenset[str]:
    """The ids of the controls that words within `limit` mm stand for.

    Each stands for the control below or above which it is put, or else for the nearest alone.

    Words as near to several stand for one of those that no others stand for.
    """
    nearest = [nearest_controls(each.box, each.turn, controls, limit) for each in words]
    sure = {ids[0] for ids in nearest if len(ids) == 1}
    for ids in nearest:
        free = [one for one in ids if one not in sure]
        if len(ids) > 1 and free:
            sure.add(free[0])
    return frozenset(sure)


def without_words(placed: PlacedItem, words: Iterable[Words], limit: float) -> dict[str, Any] | None:
    """The fields of a finding where no words stand within `limit` mm of an item's face; None where some do."""
    nearest = _nearest(placed.face, words)
    if nearest is not None and nearest <= limit + TIE:
        return None
    return {
        "severity": Severity.WARNING,
        "items": (placed.item.id,),
        "measured": nearest,
        "required": None if nearest is None else limit,
        "more_is_worse": True,
        "where": (placed.centre,),
    }


def _nearest(face: Contour, words: Iterable[Words]) -> float | None:
    """The least distance in mm; words are measured only while their boxes leave room for a lesser one."""
    boxes = sorted((box_gap(face.bounds, each.box.bounds), number, each.box) for number, each in enumerate(words))
    nearest = math.inf
    for apart, _, box in boxes:
        if apart > max(nearest, 0.0):
            break
        nearest = min(nearest, gap(face, box).distance)
    return nearest if boxes else None
