"""Dialogs on what stands around the panel: obstacles, keep-outs in front, depth limits, moving parts, the eye.

They begin with what was drawn on the canvas or with what is selected, and show it there while they are filled in.
"""

from collections.abc import Callable
from typing import Any, Final

from PySide6.QtWidgets import QWidget

from panelcad.desktop.dialogs.edit_dialog import EditDialog
from panelcad.desktop.dialogs.entries import LengthEntry
from panelcad.desktop.dialogs.rows import choice_row, length_row, start, text_row
from panelcad.desktop.dialogs.shape_entry import ShapeEntry
from panelcad.desktop.drawn import Drawn
from panelcad.desktop.help.topics import Dialog
from panelcad.desktop.sight import Sight
from panelcad.desktop.workbench import Workbench
from panelcad.editing.around import add_standing, revise_standing
from panelcad.editing.depths import depth_measures
from panelcad.editing.made import Made
from panelcad.editing.parts import Standing
from panelcad.geometry.boxes import Box
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point
from panelcad.model.shape import Circle, Rectangle, Shape
from panelcad.model.surroundings import DepthLimit, KeepOut, MovingPart, Obstacle, ObstacleKind, Volume
from panelcad.model.travel import Travel
from panelcad.units import LengthUnit

Fields = Callable[[], dict[str, Any]]
Rest = Callable[[Box], dict[str, Any]]
"""What the rows below the place say of a thing that covers a box."""
_FIRST: Final = {LengthUnit.INCH: 25.4, LengthUnit.MM: 25.0}
"""A first size in mm; what depths begin with are whole multiples of it."""


def obstacle(bench: Workbench, parent: QWidget, drawn: Drawn) -> None:
    """A rib, tube, duct or the like behind the panel."""
    shape = drawn.shape or Rectangle(width=_FIRST[bench.unit], height=4 * _FIRST[bench.unit])
    volume = _volume(bench, shape, drawn.at, 1, 4)
    _add(
        bench,
        parent,
        Obstacle(id="obstacle", name="Rib", kind=ObstacleKind.RIB, plate=bench.stage.plate_id, volume=volume),
    )


def keep_out(bench: Workbench, parent: QWidget, drawn: Drawn) -> None:
    """A space in front that must stay free, such as that of the yoke at full travel, or that a glareshield fills."""
    shape = drawn.shape or Circle(diameter=6 * _FIRST[bench.unit])
    volume = _volume(bench, shape, drawn.at, -8, -1)
    _add(bench, parent, KeepOut(id="keep-out", name="Yoke travel", plate=bench.stage.plate_id, volume=volume))


def depth_limit(bench: Workbench, parent: QWidget, drawn: Drawn) -> None:
    """The firewall or a sloping floor behind a part of the panel; behind all of it where nothing was drawn."""
    laid = bench.stage.layout().plate(bench.stage.plate_id)
    x1, y1, x2, y2 = laid.outline.bounds
    whole = Rectangle(width=x2 - x1, height=y2 - y1), Point((x1 + x2) / 2, (y1 + y2) / 2)
    shape, at = whole if drawn.shape is None else (drawn.shape, drawn.at)
    depth = 14 * _FIRST[bench.unit]
    made = DepthLimit(
        id="depth", name="Firewall", plate=bench.stage.plate_id, shape=shape, x=at.x, y=at.y, at_origin=depth
    )
    _add(bench, parent, made)


def moving_part(bench: Workbench, parent: QWidget, drawn: Drawn) -> None:
    """Something that moves behind or through the panel, such as a control shaft, with the way it goes."""
    volume = _volume(bench, drawn.shape or Circle(diameter=_FIRST[bench.unit]), drawn.at, 0, 12)
    _add(bench, parent, MovingPart(id="moving", name="Control shaft", plate=bench.stage.plate_id, volume=volume))


def change_standing(bench: Workbench, parent: QWidget) -> None:
    """The selected thing around the panel in numbers."""
    thing = selected_standing(bench)
    if thing is None:
        return
    project, _, _ = start(bench)
    dialog = EditDialog(bench, f"Change {thing.name}", "Take", parent, at=Dialog.STANDING)
    fields = _fields(dialog, thing)
    dialog.ask(lambda: revise_standing(project, thing.id, **fields()))


def selected_standing(bench: Workbench) -> Standing | None:
    """The one thing around the panel that is selected; None where something else is."""
    if len(bench.selection) != 1:
        return None
    around = bench.document.project.surroundings
    things: tuple[Standing, ...] = (*around.obstacles, *around.keep_outs, *around.depth_limits, *around.moving_parts)
    return next((thing for thing in things if thing.id == bench.selection.current), None)


def _add(bench: Workbench, parent: QWidget, thing: Standing) -> None:
    project, _, _ = start(bench)
    dialog = EditDialog(bench, f"Add {_WORDS[type(thing)]}", "Add", parent, at=Dialog.STANDING)
    fields = _fields(dialog, thing)

    def change() -> Made:
        added = add_standing(project, thing)
        return Made(revise_standing(added.project, added.ids[0], **fields()), added.ids)

    dialog.ask(change)


_WORDS: Final = {
    Obstacle: "an obstacle",
    KeepOut: "a keep-out",
    DepthLimit: "a depth limit",
    MovingPart: "a moving part",
}


def _fields(dialog: EditDialog, thing: Standing) -> Fields:
    """Rows for all that can be said of a thing; the function gives what they say."""
    name = text_row(dialog, "&Name", thing.name)
    kind = choice_row(dialog, "&Kind", ObstacleKind, thing.kind) if isinstance(thing, Obstacle) else None
    place = thing if isinstance(thing, DepthLimit) else thing.volume
    shape = ShapeEntry(dialog.form, dialog.bench.unit, place.shape)
    shape.edited.connect(dialog.preview)
    x, y = length_row(dialog, "&x", place.x), length_row(dialog, "&y", place.y)
    rest = _RESTS[type(thing)](dialog, thing)

    def fields() -> dict[str, Any]:
        found = shape.shape()
        box = Placement(x.mm, y.mm, place.rotation).contour(found.contour()).bounds
        said: dict[str, Any] = {"name": name.text().strip(), "shape": found, "x": x.mm, "y": y.mm, **rest(box)}
        return said if kind is None else {**said, "kind": ObstacleKind(kind.currentData())}

    return fields


def _depths(dialog: EditDialog, thing: Standing) -> Rest:
    """A row for each measure of how deep it is."""
    measures = depth_measures(thing)
    figures = zip(measures.titles, measures.read(thing), strict=True)
    rows = tuple(length_row(dialog, title, mm) for title, mm in figures)
    return lambda box: measures.changes(tuple(row.mm for row in rows), box)


def _front(dialog: EditDialog, thing: Standing) -> Rest:
    depths = _depths(dialog, thing)
    is_solid = isinstance(thing, KeepOut) and thing.is_solid
    sight = choice_row(dialog, "Fro&m the eye", Sight, Sight.HIDES if is_solid else Sight.CLEAR)
    return lambda box: {**depths(box), "is_solid": sight.currentData() is Sight.HIDES}


def _travel(dialog: EditDialog, thing: Standing) -> Rest:
    """One straight way each along x, y and z; other ways the part may have stay."""
    if not isinstance(thing, MovingPart):
        raise TypeError("only a moving part travels")
    depths = _depths(dialog, thing)
    first = next(iter(thing.travels), Travel())
    ways: tuple[LengthEntry, ...] = (
        length_row(dialog, "Travels to the right", first.dx),
        length_row(dialog, "Travels up", first.dy),
        length_row(dialog, "Travels away from the pilot", first.dz),
    )
    others = tuple(way for way in thing.travels if way is not first)

    def rest(box: Box) -> dict[str, Any]:
        dx, dy, dz = (way.mm for way in ways)
        travels = (Travel(dx=dx, dy=dy, dz=dz), *others) if (dx, dy, dz) != (0.0, 0.0, 0.0) else others
        return {**depths(box), "travels": travels}

    return rest


_RESTS: Final[dict[type, Callable[[EditDialog, Standing], Rest]]] = {
    Obstacle: _depths,
    KeepOut: _front,
    DepthLimit: _depths,
    MovingPart: _travel,
}


def _volume(bench: Workbench, shape: Shape, at: Point, near: int, far: int) -> Volume:
    """From so many first sizes behind the face to so many."""
    size = _FIRST[bench.unit]
    return Volume(shape=shape, x=at.x, y=at.y, near=near * size, far=far * size)
