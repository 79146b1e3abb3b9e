"""What a position is reckoned from: the datum, the pilot's centre line, the panel's middle, or another thing."""

from collections.abc import Iterator
from dataclasses import dataclass

from panelcad.editing.snapping.on_plate import pilot_line, standings
from panelcad.geometry.point import Point
from panelcad.model.layout import Layout


@dataclass(frozen=True)
class Reference:
    """`key` stays the same while its place moves."""

    key: str
    words: str
    origin: Point


def references(layout: Layout, plate_id: str, besides: str) -> tuple[Reference, ...]:
    """All that the position of `besides` can be given from."""
    return tuple(_references(layout, plate_id, besides))


def _references(layout: Layout, plate_id: str, besides: str) -> Iterator[Reference]:
    plate = layout.plate(plate_id)
    yield Reference("datum", "the datum", Point(0.0, 0.0))
    if layout.project.surroundings.eye is not None:
        yield Reference("pilot", "the pilot's centre line", Point(pilot_line(layout.project, plate), 0.0))
    x1, y1, x2, y2 = plate.outline.bounds
    yield Reference("middle", "the panel's middle", Point((x1 + x2) / 2, (y1 + y2) / 2))
    yield Reference("corner", "the panel's lower left", Point(x1, y1))
    others = standings(layout, plate_id)
    for part, standing in sorted(others.items(), key=lambda entry: entry[1].name.casefold()):
        if part != besides:
            yield Reference(f"part:{part}", standing.name, standing.centre)
