"""From what is drawn at a place to what a person means by pointing there."""

from collections.abc import Iterable

from panelcad.desktop.canvas.gesture import Pointer
from panelcad.desktop.workbench import Workbench
from panelcad.editing.lookup import sharers
from panelcad.editing.openings import is_opening, openings

_REACH_PX = 3.0


def pickable(bench: Workbench, owners: Iterable[str]) -> tuple[str, ...]:
    """What these owners stand for: a cut with one item is that item; plates are not picked."""
    option = bench.document.option
    plates = {plate.id for plate in option.plates}
    fitted = sharers(option)
    meant = (fitted[one][0].id if len(fitted.get(one, ())) == 1 else one for one in owners if one not in plates)
    return _openings_below(bench, tuple(dict.fromkeys(meant)))


def _openings_below(bench: Workbench, parts: tuple[str, ...]) -> tuple[str, ...]:
    """An opening of the sheet is meant where nothing on the sheet is; among things around it, it keeps its place."""
    around = {thing.id for thing in bench.document.project.surroundings.things}
    is_on_sheet = any(part not in around and not is_opening(part) for part in parts)
    return tuple(sorted(parts, key=is_opening)) if is_on_sheet else parts


def picked_at(bench: Workbench, pointer: Pointer) -> str:
    """The id of the smallest thing under the pointer, or ''."""
    owners = bench.stage.scene.owners_at(pointer.at, _REACH_PX * pointer.mm_per_pixel)
    return next(iter(pickable(bench, owners)), "")


def all_at(bench: Workbench, pointer: Pointer) -> tuple[str, ...]:
    """Everything under the pointer, the smallest first."""
    return pickable(bench, bench.stage.scene.owners_at(pointer.at, _REACH_PX * pointer.mm_per_pixel))


def is_within_outline(bench: Workbench, pointer: Pointer, part: str) -> bool:
    """Whether a pointer at an opening or a thing around the panel is inside a bare outline of it, off its line."""
    around = {thing.id for thing in bench.document.project.surroundings.things}
    if part not in around and not is_opening(part):
        return False
    return bench.stage.scene.is_within_outline(part, pointer.at, 2 * _REACH_PX * pointer.mm_per_pixel)


def opening_at(bench: Workbench, pointer: Pointer) -> int | None:
    """The number of the sheet's own opening under the pointer, 0 for the first; None where something else is there."""
    one = openings(bench.document.option).get(picked_at(bench, pointer))
    return one.number if one is not None else None
