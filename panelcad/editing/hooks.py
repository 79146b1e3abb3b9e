"""Where a dimension or a note takes hold under a pointer, and how a dimension line stands off from what it measures."""

from collections.abc import Iterator

from panelcad.geometry.point import Point, distance, middle
from panelcad.model.layout import PlateLayout
from panelcad.model.marked import hook_point
from panelcad.model.markup import Along, Hold, Hook


def hook_near(plate: PlateLayout, at: Point, reach: float) -> Hook:
    """The hold of a part within `reach` mm of a point of the plate, the nearest first; else the bare point itself.

    Centres win over edges that are about as near, for people dimension to centres.
    """
    near = [(distance(hook_point(plate, hook), at), hook) for hook in _holds(plate)]
    within = [
        (apart - (reach / 2 if hook.hold is Hold.CENTRE else 0.0), hook) for apart, hook in near if apart <= reach
    ]
    if not within:
        return Hook(x=at.x, y=at.y)
    return min(within, key=lambda found: found[0])[1]


def stand_off(start: Point, end: Point, pointer: Point) -> tuple[Along, float]:
    """Which distance is meant where a pointer pulls a dimension line to, and how far it stands off the first point.

    Above or below both points the distance across, left or right of them the height, between them the straight one.
    """
    across = min(start.x, end.x) <= pointer.x <= max(start.x, end.x)
    up = min(start.y, end.y) <= pointer.y <= max(start.y, end.y)
    if across and not up:
        return Along.ACROSS, pointer.y - start.y
    if up and not across:
        return Along.UP, pointer.x - start.x
    return Along.STRAIGHT, _aside(start, end, pointer)


def _aside(start: Point, end: Point, pointer: Point) -> float:
    """How far the pointer is to the left of the way from start to end, in mm."""
    span = distance(start, end)
    if span == 0.0:
        return distance(pointer, middle(start, end))
    return ((end.x - start.x) * (pointer.y - start.y) - (end.y - start.y) * (pointer.x - start.x)) / span


def _holds(plate: PlateLayout) -> Iterator[Hook]:
    for item in plate.items:
        yield from (Hook(part=item.item.id, hold=hold) for hold in Hold)
    fitted = {item.item.cut for item in plate.items}
    for cut in plate.cuts:
        if cut.cut.id not in fitted:
            yield from (Hook(part=cut.cut.id, hold=hold) for hold in Hold)
    yield from (Hook(part=owner) for owner in dict.fromkeys(screw.owner for screw in plate.attach))
    yield from (Hook(part=plate.plate.id, hold=hold) for hold in Hold if hold is not Hold.CENTRE)
    yield Hook()
