"""What stands on a plate, as snapping sees it: each thing's origin and the box of its bezel and metal, in mm."""

from collections.abc import Collection, Iterator

from panelcad.desktop.snapping import Axis, AxisLine, Field, Standing
from panelcad.drawing.display import Bounds, union
from panelcad.editing.lookup import bundles
from panelcad.geometry.point import Point
from panelcad.model.layout import Feature, Layout, PlacedItem, PlateLayout
from panelcad.model.project import Project


def standings(layout: Layout, plate_id: str) -> dict[str, Standing]:
    """Every placed thing of a plate by the id that stands for it: an item with its cut, a shared cut, a lone one."""
    plate = layout.plate(plate_id)
    boxes = dict(_boxes(plate))
    origins, names = dict(_origins(plate)), dict(_names(plate))
    made: dict[str, Standing] = {}
    for bundle in bundles(layout.option, tuple(boxes)):
        members = [boxes[one] for one in bundle.ids if one in boxes]
        if members and bundle.anchor in origins:
            made[bundle.anchor] = Standing(names[bundle.anchor], origins[bundle.anchor], union(members))
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
    yield AxisLine(Axis.X, (x1 + x2) / 2, "middle of the panel")
    yield AxisLine(Axis.Y, (y1 + y2) / 2, "mid-height of the panel")
    yield AxisLine(Axis.X, 0.0, "datum")
    yield AxisLine(Axis.Y, 0.0, "datum")
    if project.surroundings.eye is not None:
        yield AxisLine(Axis.X, pilot_line(project, plate), "pilot's centre line")


def pilot_line(project: Project, plate: PlateLayout) -> float:
    """The x of the pilot's vertical centre line on a plate, in mm; the datum where no eye was entered."""
    eye = project.surroundings.eye
    return eye.centre_line - plate.plate.frame.x if eye is not None else 0.0


def _boxes(plate: PlateLayout) -> Iterator[tuple[str, Bounds]]:
    for cut in plate.cuts:
        yield cut.cut.id, union([feature.contour.bounds for feature in cut.features])
    for item in plate.items:
        box = _item_box(item)
        if box is not None:
            yield item.item.id, box
    for screw, features in _by_owner(plate.attach).items():
        yield screw, union([feature.contour.bounds for feature in features])


def _by_owner(features: tuple[Feature, ...]) -> dict[str, list[Feature]]:
    found: dict[str, list[Feature]] = {}
    for feature in features:
        found.setdefault(feature.owner, []).append(feature)
    return found


def _item_box(item: PlacedItem) -> Bounds | None:
    if item.bezel is not None:
        return item.bezel.bounds
    return union([body.footprint.bounds for body in item.bodies]) if item.bodies else None


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
