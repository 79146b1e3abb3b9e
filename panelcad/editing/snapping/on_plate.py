"""What stands on a plate, as snapping sees it: each thing's origin and the box of its bezel, or else its metal."""

from collections.abc import Collection, Iterator

from panelcad.editing.extents import Axis
from panelcad.editing.lookup import bundles
from panelcad.editing.snapping.field import AxisLine, Field
from panelcad.editing.snapping.racks import rack_lines
from panelcad.editing.snapping.standing import Standing
from panelcad.geometry.boxes import Box, box_around
from panelcad.geometry.point import Point
from panelcad.model.kept import kept_lately
from panelcad.model.layout import Feature, Layout, PlacedItem, PlateLayout
from panelcad.model.project import Project


def standings(layout: Layout, plate_id: str) -> dict[str, Standing]:
    """Every placed thing of a plate by the id that stands for it: an item with its cut, a shared cut, a lone one."""
    sources = (layout.project, layout.option, plate_id)
    return dict(kept_lately("standings", sources, lambda: _standings(layout, layout.plate(plate_id))))


def _standings(layout: Layout, plate: PlateLayout) -> dict[str, Standing]:
    boxes = dict(_boxes(plate))
    origins, names, racks = dict(_origins(plate)), dict(_names(plate)), rack_lines(plate)
    fitted = {item.item.id for item in plate.items}
    made: dict[str, Standing] = {}
    for bundle in bundles(layout.option, tuple(boxes)):
        there = [one for one in bundle.ids if one in boxes]
        seen = [one for one in there if one in fitted] or there
        if seen and bundle.anchor in origins:
            box = box_around(boxes[one] for one in seen)
            lines = tuple(line for one in there for line in racks.get(one, ()))
            made[bundle.anchor] = Standing(names[bundle.anchor], origins[bundle.anchor], box, lines)
    return made


def field_around(
    layout: Layout, plate_id: str, moving: Collection[str], grid: float, known: dict[str, Standing]
) -> Field:
    """All that things may snap to while these move; screws that hold the plate are no one's neighbours."""
    plate = layout.plate(plate_id)
    screws = {screw.id for screw in plate.plate.attach_screws}
    others = tuple(standing for one, standing in known.items() if one not in moving and one not in screws)
    return Field(others, tuple(_lines(layout.project, plate)), grid)


def _lines(project: Project, plate: PlateLayout) -> Iterator[AxisLine]:
    x1, y1, x2, y2 = plate.outline.bounds
    yield AxisLine(Axis.ACROSS, (x1 + x2) / 2, "middle of the panel")
    yield AxisLine(Axis.UP, (y1 + y2) / 2, "mid-height of the panel")
    yield AxisLine(Axis.ACROSS, 0.0, "datum")
    yield AxisLine(Axis.UP, 0.0, "datum")
    if project.surroundings.eye is not None:
        yield AxisLine(Axis.ACROSS, pilot_line(project, plate), "pilot's centre line")


def pilot_line(project: Project, plate: PlateLayout) -> float:
    """The x of the pilot's vertical centre line on a plate, in mm; the datum where no eye was entered."""
    eye = project.surroundings.eye
    return eye.centre_line - plate.plate.frame.x if eye is not None else 0.0


def _boxes(plate: PlateLayout) -> Iterator[tuple[str, Box]]:
    for cut in plate.cuts:
        yield cut.cut.id, box_around([feature.contour.bounds for feature in cut.features])
    for item in plate.items:
        box = _item_box(item)
        if box is not None:
            yield item.item.id, box
    for screw, features in _by_owner(plate.attach).items():
        yield screw, box_around([feature.contour.bounds for feature in features])


def _by_owner(features: tuple[Feature, ...]) -> dict[str, list[Feature]]:
    found: dict[str, list[Feature]] = {}
    for feature in features:
        found.setdefault(feature.owner, []).append(feature)
    return found


def _item_box(item: PlacedItem) -> Box | None:
    if item.bezel is not None:
        return item.bezel.bounds
    return box_around([body.footprint.bounds for body in item.bodies]) if item.bodies else None


def _origins(plate: PlateLayout) -> Iterator[tuple[str, Point]]:
    for cut in plate.cuts:
        yield cut.cut.id, Point(cut.cut.x, cut.cut.y)
    for item in plate.items:
        yield item.item.id, Point(item.item.x, item.item.y)
    for screw in plate.plate.attach_screws:
        yield screw.id, Point(screw.x, screw.y)


def _names(plate: PlateLayout) -> Iterator[tuple[str, str]]:
    for cut in plate.cuts:
        yield cut.cut.id, cut.cut.name
    for item in plate.items:
        yield item.item.id, item.item.name
    for screw in plate.plate.attach_screws:
        yield screw.id, "attach screw"
