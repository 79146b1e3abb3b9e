"""The numbers of cuts, holes and items, the same on the canvas, the drawing, the hole schedule and every list.

Cuts are numbered plate by plate in reading order: row by row from the top, each from the left. A cut's opening bears
the cut's number (7), its other openings and its holes follow it (7.1, 7.2). An item has the number of its cut; items
that share one add a letter from the top (7A, 7B); items without a cut and those mounted elsewhere come last.
Attach screws are S1, S2, …, inner openings of a plate P1, P2, …, engravings E1, E2, …
"""

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from string import ascii_uppercase
from typing import Final, TypeVar

from panelcad.geometry.point import Point
from panelcad.model.layout import Feature, FeatureKind, Layout, PlacedCut, PlateLayout
from panelcad.model.project import Item

ROW: Final = 25.0
"""What stands at most so many mm below the first of a row belongs to that row."""
Thing = TypeVar("Thing")


@dataclass(frozen=True)
class Numbering:
    """Numbers by id: of cuts, of features (owner/name), of items, of engravings."""

    cuts: dict[str, str]
    features: dict[str, str]
    items: dict[str, str]
    engravings: dict[str, str]


def numbering(layout: Layout) -> Numbering:
    """The numbers of everything in an option."""
    placed = [cut for plate in layout.plates for cut in _in_reading_order(plate.cuts, _cut_place)]
    cuts = {cut.cut.id: str(number) for number, cut in enumerate(placed, 1)}
    features = dict(_cut_features(placed, cuts))
    features.update(_series("S", (f for plate in layout.plates for f in _attach_in_order(plate))))
    features.update(_series("P", (f for plate in layout.plates for f in _in_reading_order(plate.inner, _centre))))
    return Numbering(cuts, features, dict(_items(layout, cuts)), dict(_engravings(layout)))


def sort_key(number: str) -> tuple[str, tuple[int, ...]]:
    """Sorts '2' before '10', '7.2' after '7', and S and P series after the cuts."""
    letter = number[0] if number[0].isalpha() else ""
    return letter, tuple(int(part) for part in number.removeprefix(letter).split("."))


def number_key(number: str) -> tuple[tuple[str, tuple[int, ...]], int, str]:
    """Sorts '7' before '7A' before '7B' before '10'."""
    letters = number.lstrip("0123456789")
    return sort_key(number.removesuffix(letters)), len(letters), letters


def _in_reading_order(things: Iterable[Thing], place: Callable[[Thing], Point]) -> list[Thing]:
    """Row by row from the top, each from left to right."""
    ordered: list[Thing] = []
    row: list[Thing] = []
    for thing in sorted(things, key=lambda each: -place(each).y):
        if row and place(row[0]).y - place(thing).y > ROW:
            ordered.extend(sorted(row, key=lambda each: place(each).x))
            row = []
        row.append(thing)
    return ordered + sorted(row, key=lambda each: place(each).x)


def _cut_place(cut: PlacedCut) -> Point:
    return Point(cut.cut.x, cut.cut.y)


def _centre(feature: Feature) -> Point:
    return feature.centre


def _attach_in_order(plate: PlateLayout) -> list[Feature]:
    """Each screw, and the rivets of its nutplate after it."""
    screws = [feature for feature in plate.attach if feature.kind is FeatureKind.ATTACH]
    rivets = [feature for feature in plate.attach if feature.kind is FeatureKind.RIVET]
    return [
        feature
        for screw in _in_reading_order(screws, _centre)
        for feature in (screw, *(rivet for rivet in rivets if rivet.owner == screw.owner))
    ]


def _cut_features(placed: list[PlacedCut], cuts: dict[str, str]) -> Iterator[tuple[str, str]]:
    for cut in placed:
        number = cuts[cut.cut.id]
        first = 0 if cut.openings else 1
        for i, feature in enumerate((*cut.openings, *cut.holes), first):
            yield feature.id, f"{number}.{i}" if i else number


def _series(letter: str, features: Iterable[Feature]) -> Iterator[tuple[str, str]]:
    for number, feature in enumerate(features, 1):
        yield feature.id, f"{letter}{number}"


def _engravings(layout: Layout) -> Iterator[tuple[str, str]]:
    words = [e for plate in layout.plates for e in _in_reading_order(plate.plate.engravings, lambda e: Point(e.x, e.y))]
    for number, engraving in enumerate(words, 1):
        yield engraving.id, f"E{number}"


def _items(layout: Layout, cuts: dict[str, str]) -> Iterator[tuple[str, str]]:
    by_cut: dict[str, list[Item]] = {}
    others: list[Item] = []
    for item in layout.option.items:
        if item.cut in cuts and item.cut is not None:
            by_cut.setdefault(item.cut, []).append(item)
        else:
            others.append(item)
    for cut, items in by_cut.items():
        yield from _sharing(cuts[cut], items)
    for number, item in enumerate(sorted(others, key=_elsewhere_last), len(cuts) + 1):
        yield item.id, str(number)


def _sharing(number: str, items: list[Item]) -> Iterator[tuple[str, str]]:
    if len(items) == 1:
        yield items[0].id, number
        return
    ordered = sorted(items, key=lambda item: (-item.y, item.x))
    for i, item in enumerate(ordered):
        yield item.id, number + _letters(i)


def _letters(i: int) -> str:
    """A to Z, then AA, AB and so on."""
    head = _letters(i // 26 - 1) if i >= 26 else ""
    return head + ascii_uppercase[i % 26]


def _elsewhere_last(item: Item) -> tuple[bool, float, float]:
    return item.plate is None, -item.y, item.x
