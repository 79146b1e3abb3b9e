"""Put a cutout on the panel at once: in the middle of what is seen, or the nearest free place to it."""

from collections.abc import Iterator
from typing import Final

from panelcad.desktop.workbench import Workbench
from panelcad.drawing.display import Bounds
from panelcad.editing.equip import place_unit
from panelcad.editing.made import Made
from panelcad.editing.place import Placed, place
from panelcad.editing.snapping.on_plate import standings
from panelcad.editing.snapping.standing import Standing, around
from panelcad.geometry.point import Point
from panelcad.model.cutout import Cutout
from panelcad.model.layout import layout
from panelcad.model.project import Project

_RINGS: Final = 12
_STEP: Final = 25.4


def put_in_view(bench: Workbench, cutout: Cutout) -> None:
    """Place it, select it, and leave the keyboard on the canvas so that arrow keys nudge it."""
    made: list[Placed] = []

    def placed(project: Project, option: str) -> Project:
        trial = place(project, option, bench.stage.plate_id, cutout, 0.0, 0.0)
        at = _free_place(bench, trial)
        made.append(place(project, option, bench.stage.plate_id, cutout, at.x, at.y))
        return bench.said(made[0].project, made[0].ids)

    if bench.edit(f"Place {cutout.title}", placed):
        bench.settings.used_cutout(cutout.name)
        bench.selection.set(made[0].ids[:1])
        bench.view.setFocus()


def put_waiting(bench: Workbench, item_id: str) -> None:
    """Place an item that is not placed yet at the nearest free place, and select it."""

    def placed(project: Project, option: str) -> Project:
        cutout = project.cutout(project.option(option).item(item_id).cutout or "")
        trial = place(project, option, bench.stage.plate_id, cutout, 0.0, 0.0)
        at = _free_place(bench, trial)
        return place_unit(project, option, item_id, bench.stage.plate_id, at.x, at.y)

    if bench.edit(f"Place {bench.name_of(item_id)}", placed):
        bench.selection.set((item_id,))
        bench.view.setFocus()


def free_place(bench: Workbench, trial: Placed | Made) -> Point:
    """As `_free_place`, begun where the pointer was last on the sheet."""
    return _free_place(bench, trial, bench.view.last_pointed)


def _free_place(bench: Workbench, trial: Placed | Made, seen: Point | None = None) -> Point:
    """The place nearest to the middle of the view, or what is `seen`, where its box covers no other's, on the sheet."""
    stage, option_id = bench.stage, bench.document.option_id
    laid = layout(trial.project, trial.project.option(option_id))
    known = standings(laid, stage.plate_id)
    mine = [known.pop(one) for one in trial.ids if one in known]
    sheet = laid.plate(stage.plate_id).outline.bounds
    middle = _middle_of_view(bench, sheet, seen)
    if not mine:
        return middle
    whole = around(mine, "")
    return next((at for at in _outward(middle) if _is_free(whole, at, tuple(known.values()), sheet)), middle)


def _middle_of_view(bench: Workbench, sheet: Bounds, pointed: Point | None) -> Point:
    x1, y1, x2, y2 = bench.view.seen()
    seen = bench.stage.to_plate(pointed or Point((x1 + x2) / 2, (y1 + y2) / 2))
    step = bench.settings.step("grid", bench.unit)
    x, y = min(max(seen.x, sheet[0]), sheet[2]), min(max(seen.y, sheet[1]), sheet[3])
    return Point(round(x / step) * step, round(y / step) * step)


def _outward(middle: Point) -> Iterator[Point]:
    """The middle, then places on squares around it, nearer ones first."""
    yield middle
    for ring in range(1, _RINGS + 1):
        spots = [(i, j) for i in range(-ring, ring + 1) for j in range(-ring, ring + 1) if max(abs(i), abs(j)) == ring]
        for i, j in sorted(spots, key=lambda spot: spot[0] ** 2 + spot[1] ** 2):
            yield Point(middle.x + i * _STEP, middle.y + j * _STEP)


def _is_free(mine: Standing, at: Point, others: tuple[Standing, ...], sheet: Bounds) -> bool:
    x1, y1, x2, y2 = mine.box
    box = (x1 + at.x, y1 + at.y, x2 + at.x, y2 + at.y)
    on_sheet = box[0] >= sheet[0] and box[1] >= sheet[1] and box[2] <= sheet[2] and box[3] <= sheet[3]
    return on_sheet and not any(_overlap(box, other.box) for other in others)


def _overlap(a: Bounds, b: Bounds) -> bool:
    return a[0] < b[2] and b[0] < a[2] and a[1] < b[3] and b[1] < a[3]
