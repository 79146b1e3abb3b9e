"""What changed between a release and the option as it stands, or between two releases: features and fitted items."""

from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum
from typing import Final

from panelcad.geometry.contour import Contour
from panelcad.model.layout import layout
from panelcad.model.plate import Engraving
from panelcad.model.project import Option, Project
from panelcad.model.release import Release, ReleasedFeature, ReleasedItem
from panelcad.units import LengthUnit, format_length, format_number

_LONGEST: Final = 200
UNCHANGED: Final = 1e-6
"""A difference of a nanometre in mm is none."""


class ChangeKind(StrEnum):
    MOVED = "moved"
    RESIZED = "resized"
    ADDED = "added"
    REMOVED = "removed"
    FITTED = "fitted"
    TAKEN_OUT = "taken out"
    RENAMED = "renamed"


@dataclass(frozen=True)
class Change:
    """One thing that changed; `before` and `after` are None where it was not there."""

    kind: ChangeKind
    subject: str
    before: ReleasedFeature | ReleasedItem | None = None
    after: ReleasedFeature | ReleasedItem | None = None


def released_features(project: Project, option: Option) -> tuple[ReleasedFeature, ...]:
    """The outlines and every contour inside them, as the release log keeps them."""
    return tuple(_features(project, option))


def released_items(option: Option) -> tuple[ReleasedItem, ...]:
    return tuple(ReleasedItem(id=item.id, name=item.name) for item in option.items)


def changes_since(release: Release, project: Project, option: Option) -> tuple[Change, ...]:
    """What changed since a release: features first, in the option's order, then fitted items."""
    features = _feature_changes(release.features, released_features(project, option))
    return (*features, *_item_changes(release.items, released_items(option)))


def change_sentence(change: Change, unit: LengthUnit) -> str:
    """The change in words and in the reader's unit: 'gauge/opening moved by x +1.00, y 0.00 mm'."""
    before, after = change.before, change.after
    if isinstance(before, ReleasedFeature) and isinstance(after, ReleasedFeature):
        return f"{_name(after)} {_difference(before, after, unit)}"
    if isinstance(after, ReleasedFeature):
        return f"{_name(after)} added: {_size(after, unit)} at {_place(after, unit)}"
    if isinstance(before, ReleasedFeature):
        return f"{_name(before)} removed: {_size(before, unit)} at {_place(before, unit)}"
    return f"{change.subject} {change.kind.value}"


def _features(project: Project, option: Option) -> Iterator[ReleasedFeature]:
    for plate in layout(project, option).plates:
        yield _released(plate.plate.id, f"{plate.plate.id}/outline", "outline", plate.outline)
        for feature in plate.features:
            yield _released(plate.plate.id, feature.id, feature.purpose, feature.contour)
        yield from (_released_lettering(plate.plate.id, each) for each in plate.plate.engravings)


def _released(plate: str, feature_id: str, what: str, contour: Contour) -> ReleasedFeature:
    x1, y1, x2, y2 = contour.bounds
    return ReleasedFeature(
        plate=plate,
        id=feature_id,
        what=what,
        x=(x1 + x2) / 2,
        y=(y1 + y2) / 2,
        width=x2 - x1,
        height=y2 - y1,
        around=contour.length,
    )


def _released_lettering(plate: str, line: Engraving) -> ReleasedFeature:
    """Lettering has its place and the height of a capital; how wide it is depends on the font."""
    what = f"lettering '{line.text}'"[:_LONGEST]
    sizes = {"width": 0.0, "height": line.height, "around": 0.0}
    return ReleasedFeature(plate=plate, id=f"{plate}/{line.id}", what=what, x=line.x, y=line.y, **sizes)


def _feature_changes(before: tuple[ReleasedFeature, ...], after: tuple[ReleasedFeature, ...]) -> Iterator[Change]:
    old = {(feature.plate, feature.id): feature for feature in before}
    new = {(feature.plate, feature.id): feature for feature in after}
    for key, feature in new.items():
        was = old.get(key)
        if was is None:
            yield Change(ChangeKind.ADDED, feature.id, None, feature)
        elif _resized(was, feature):
            yield Change(ChangeKind.RESIZED, feature.id, was, feature)
        elif _moved(was, feature):
            yield Change(ChangeKind.MOVED, feature.id, was, feature)
        elif was.what != feature.what:
            yield Change(ChangeKind.RENAMED, feature.id, was, feature)
    for key, feature in old.items():
        if key not in new:
            yield Change(ChangeKind.REMOVED, feature.id, feature, None)


def _item_changes(before: tuple[ReleasedItem, ...], after: tuple[ReleasedItem, ...]) -> Iterator[Change]:
    old, new = {item.id: item for item in before}, {item.id: item for item in after}
    for key, item in new.items():
        was = old.get(key)
        if was is None:
            yield Change(ChangeKind.FITTED, item.name, None, item)
        elif was.name != item.name:
            yield Change(ChangeKind.RENAMED, f"{was.name} to {item.name}:", was, item)
    for key, item in old.items():
        if key not in new:
            yield Change(ChangeKind.TAKEN_OUT, item.name, item, None)


def _moved(a: ReleasedFeature, b: ReleasedFeature) -> bool:
    return abs(a.x - b.x) > UNCHANGED or abs(a.y - b.y) > UNCHANGED


def _resized(a: ReleasedFeature, b: ReleasedFeature) -> bool:
    pairs = ((a.width, b.width), (a.height, b.height), (a.around, b.around))
    return any(abs(one - other) > 2 * UNCHANGED for one, other in pairs)


def _name(feature: ReleasedFeature) -> str:
    return f"{feature.plate}: {feature.id}" if not feature.id.startswith(f"{feature.plate}/") else feature.id


def _difference(before: ReleasedFeature, after: ReleasedFeature, unit: LengthUnit) -> str:
    words = []
    if _moved(before, after):
        dx, dy = after.x - before.x, after.y - before.y
        words.append(f"moved by x {_signed(dx, unit)}, y {_signed(dy, unit)} {unit.value}")
    if _resized(before, after):
        words.append(f"changed from {_size(before, unit)} to {_size(after, unit)}")
    if before.what != after.what:
        words.append(f"is now {after.what}, was {before.what}")
    return " and ".join(words)


def _signed(mm: float, unit: LengthUnit) -> str:
    text = format_number(mm, unit)
    return text if text.startswith("-") or float(text) == 0 else f"+{text}"


def _size(feature: ReleasedFeature, unit: LengthUnit) -> str:
    if feature.width == 0.0:
        return f"{feature.what}, {format_length(feature.height, unit)} high"
    return f"{format_number(feature.width, unit)} x {format_length(feature.height, unit)}"


def _place(feature: ReleasedFeature, unit: LengthUnit) -> str:
    return f"x {format_number(feature.x, unit)}, y {format_length(feature.y, unit)}"
