"""From what is drawn at a place to what a person means by pointing there."""

from collections.abc import Iterable

from panelcad.desktop.canvas.gesture import Pointer
from panelcad.desktop.workbench import Workbench
from panelcad.editing.lookup import sharers
from panelcad.geometry.gap import contains

_REACH_PX = 3.0


def pickable(bench: Workbench, owners: Iterable[str]) -> tuple[str, ...]:
    """What these owners stand for: a cut with one item is that item; plates are not picked."""
    option = bench.document.option
    plates = {plate.id for plate in option.plates}
    fitted = sharers(option)
    meant = (fitted[one][0].id if len(fitted.get(one, ())) == 1 else one for one in owners if one not in plates)
    return tuple(dict.fromkeys(meant))


def picked_at(bench: Workbench, pointer: Pointer) -> str:
    """The id of the smallest thing under the pointer, or ''."""
    owners = bench.stage.scene.owners_at(pointer.at, _REACH_PX * pointer.mm_per_pixel)
    return next(iter(pickable(bench, owners)), "")


def all_at(bench: Workbench, pointer: Pointer) -> tuple[str, ...]:
    """Everything under the pointer, the smallest first."""
    return pickable(bench, bench.stage.scene.owners_at(pointer.at, _REACH_PX * pointer.mm_per_pixel))


def is_within_outline(bench: Workbench, pointer: Pointer, part: str) -> bool:
    """Whether a pointer at a thing around the panel is inside a bare outline of it, away from its line."""
    if part not in {thing.id for thing in bench.document.project.surroundings.things}:
        return False
    return bench.stage.scene.is_within_outline(part, pointer.at, 2 * _REACH_PX * pointer.mm_per_pixel)


def opening_at(bench: Workbench, pointer: Pointer) -> int | None:
    """The number of the sheet's own opening under the pointer, 0 for the first; None where there is none."""
    at = bench.stage.to_plate(pointer.at)
    inner = bench.stage.layout().plate(bench.stage.plate_id).inner
    return next((i for i, feature in enumerate(inner) if contains(feature.contour, at)), None)
