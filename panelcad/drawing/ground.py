"""What already stands on a sheet: boxes of texts, found fast, and lines."""

from collections.abc import Iterable, Iterator
from typing import Final

import shapely

from panelcad.drawing.box import overlap
from panelcad.drawing.display import Bounds
from panelcad.geometry.point import Point

_CELL: Final = 12.0


class Boxes:
    """Boxes sorted into square cells, so that only near ones are looked at."""

    def __init__(self, boxes: Iterable[Bounds]) -> None:
        self._cells: dict[tuple[int, int], list[Bounds]] = {}
        for box in boxes:
            self.add(box)

    def add(self, box: Bounds) -> None:
        for cell in _cells(box):
            self._cells.setdefault(cell, []).append(box)

    def meets(self, box: Bounds) -> bool:
        """Whether any shares more than an edge with this one."""
        return any(overlap(box, other) for cell in _cells(box) for other in self._cells.get(cell, ()))

    def crossed_by(self, start: Point, end: Point) -> bool:
        """Whether a straight line runs through any."""
        around = (min(start.x, end.x), min(start.y, end.y), max(start.x, end.x), max(start.y, end.y))
        line = shapely.LineString([start, end])
        near = {other for cell in _cells(around) for other in self._cells.get(cell, ())}
        return any(line.intersects(shapely.box(*other)) for other in near)


def _cells(box: Bounds) -> Iterator[tuple[int, int]]:
    columns = range(int(box[0] // _CELL), int(box[2] // _CELL) + 1)
    for row in range(int(box[1] // _CELL), int(box[3] // _CELL) + 1):
        yield from ((column, row) for column in columns)
