"""Put a cutout on the panel at once: in the middle of what is seen, or the nearest free place to it."""

from dataclasses import dataclass

from panelcad.desktop.workbench import Workbench
from panelcad.drawing.display import Bounds
from panelcad.editing.equip import place_unit
from panelcad.editing.made import Made
from panelcad.editing.place import Placed, place
from panelcad.geometry.point import Point
from panelcad.model.cutout import Cutout
from panelcad.model.layout import layout
from panelcad.model.project import Project


@dataclass(frozen=True)
class Found:
    """A place in mm, and in words how far it is free; '' where it is free in front and behind."""

    at: Point
    words: str


def put_in_view(bench: Workbench, cutout: Cutout) -> None:
    """Place it, select it, and leave the keyboard on the canvas so that arrow keys nudge it."""
    made: list[Placed] = []
    found: list[Found] = []

    def placed(project: Project, option: str) -> Project:
        found.append(_free_place(bench, place(project, option, bench.stage.plate_id, cutout, 0.0, 0.0)))
        at = found[0].at
        made.append(place(project, option, bench.stage.plate_id, cutout, at.x, at.y))
        return bench.said(made[0].project, made[0].ids)

    if bench.edit(f"Place {cutout.title}", placed):
        bench.settings.used_cutout(cutout.name)
        bench.selection.set(made[0].ids[:1])
        bench.view.setFocus()
        bench.told.emit(found[0].words)


def put_waiting(bench: Workbench, item_id: str) -> None:
    """Place an item that is not placed yet at the nearest free place, and select it."""
    found: list[Found] = []

    def placed(project: Project, option: str) -> Project:
        cutout = project.cutout(project.option(option).item(item_id).cutout or "")
        found.append(_free_place(bench, place(project, option, bench.stage.plate_id, cutout, 0.0, 0.0)))
        at = found[0].at
        return place_unit(project, option, item_id, bench.stage.plate_id, at.x, at.y)

    if bench.edit(f"Place {bench.name_of(item_id)}", placed):
        bench.selection.set((item_id,))
        bench.view.setFocus()
        bench.told.emit(found[0].words)


def free_place(bench: Workbench, trial: Placed | Made) -> Found:
    """As `_free_place`, begun where the pointer was last on the sheet."""
    return _free_place(bench, trial, bench.view.last_pointed)


def _free_place(bench: Workbench, trial: Placed | Made, seen: Point | None = None) -> Found:
    """The free place nearest to the middle of the view, or what is `seen`, for what was put down about the datum."""
    from panelcad.checks.free_place import free_place as freest  # noqa: PLC0415 - the rules load with the first check

    laid = layout(trial.project, trial.project.option(bench.document.option_id))
    plate_id = bench.stage.plate_id
    wanted = _middle_of_view(bench, laid.plate(plate_id).outline.bounds, seen)
    place = freest(laid, plate_id, trial.ids, wanted)
    return Found(place.at, place.words(laid, plate_id, trial.ids))


def _middle_of_view(bench: Workbench, sheet: Bounds, pointed: Point | None) -> Point:
    x1, y1, x2, y2 = bench.view.seen()
    seen = bench.stage.to_plate(pointed or Point((x1 + x2) / 2, (y1 + y2) / 2))
    step = bench.settings.step("grid", bench.unit)
    x, y = min(max(seen.x, sheet[0]), sheet[2]), min(max(seen.y, sheet[1]), sheet[3])
    return Point(round(x / step) * step, round(y / step) * step)
