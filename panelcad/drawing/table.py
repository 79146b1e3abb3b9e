"""Tables of text that run over as many boxes as they need; every cell is wrapped, so that no two texts overlap."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Final

from panelcad.drawing.box import box_outline
from panelcad.drawing.display import Across, Along, Bounds, Face, Node, Path
from panelcad.drawing.inks import PLAIN, Inks
from panelcad.drawing.lettering import text_width, wrapped
from panelcad.geometry.point import Point
from panelcad.geometry.track import line

PITCH: Final = 4.25
"""From line to line of letters 2.5 mm high (ISO 3098-1, 1.7 heights)."""
_PAD: Final = 1.2
_SLACK: Final = 0.01


@dataclass(frozen=True)
class Column:
    """One that is to be filled in by hand has a rule at its left."""

    title: str
    width: float
    along: Along = Along.LEFT
    is_blank: bool = False


@dataclass(frozen=True)
class Row:
    """A row's cells; one that is a heading shows its first cell across the whole table."""

    cells: tuple[str, ...]
    is_heading: bool = False


def table_width(columns: Sequence[Column]) -> float:
    return sum(column.width for column in columns)


def stretched(columns: Sequence[Column], width: float) -> tuple[Column, ...]:
    """The columns widened or narrowed together to fill a width; none is narrower than the longest word of its title."""
    least = [_least_width(column) for column in columns]
    share = width / table_width(columns)
    tight = {i for i, column in enumerate(columns) if column.width * share < least[i]}
    if tight and len(tight) < len(columns):
        left = width - sum(least[i] for i in tight)
        share = left / sum(column.width for i, column in enumerate(columns) if i not in tight)
    return tuple(
        replace(column, width=least[i] if i in tight else column.width * share) for i, column in enumerate(columns)
    )


def _least_width(column: Column) -> float:
    words = column.title.split() or [""]
    padding = 3 * _PAD if column.along is Along.RIGHT else 2 * _PAD
    return max(text_width(word, PLAIN, Face.BOLD) for word in words) + padding + _SLACK


def run_over(
    columns: Sequence[Column], rows: Sequence[Row], boxes: Iterable[Bounds], inks: Inks
) -> Iterator[tuple[Node, ...]]:
    """For each box that is needed, what of the table stands in it; the header is repeated in each."""
    rest, heights = list(rows), [height_of(columns, row) for row in rows]
    for box in boxes:
        if not rest:
            return
        fitting = _fitting(columns, rest, box[3] - box[1], heights)
        heights = heights[fitting:]
        yield tuple(_part(columns, rest[:fitting], box, inks))
        rest = rest[fitting:]


def boxes_filled(columns: Sequence[Column], rows: Sequence[Row], boxes: Sequence[Bounds]) -> list[int]:
    """How many rows stand in each box that is needed; the boxes are used over and over."""
    heights = [height_of(columns, row) for row in rows]
    counts: list[int] = []
    first = 0
    while first < len(rows):
        _, foot, _, top = boxes[len(counts) % len(boxes)]
        counts.append(_fitting(columns, rows[first:], top - foot, heights[first:]))
        first += counts[-1]
    return counts


def table_height(columns: Sequence[Column], rows: Sequence[Row]) -> float:
    """With its header, in mm."""
    return _header_height(columns) + sum(height_of(columns, row) for row in rows)


def height_of(columns: Sequence[Column], row: Row, face: Face = Face.REGULAR) -> float:
    lines = 1 if row.is_heading else max(len(_lines(text, column, face)) for text, column in _pairs(row, columns))
    return lines * PITCH + 2 * _PAD - (PITCH - PLAIN) + 0.8


def _fitting(columns: Sequence[Column], rows: Sequence[Row], height: float, heights: Sequence[float]) -> int:
    """How many rows fit below the header, at least one; a heading never stands alone at the foot."""
    left = height - _header_height(columns)
    count = 0
    for needed in heights:
        left -= needed
        if left < 0 and count:
            break
        count += 1
    if count < len(rows) and count > 1 and rows[count - 1].is_heading:
        return count - 1
    return count


def _header_height(columns: Sequence[Column]) -> float:
    return height_of(columns, _header(columns), Face.BOLD)


def _header(columns: Sequence[Column]) -> Row:
    return Row(tuple(column.title for column in columns))


def _part(columns: Sequence[Column], rows: Sequence[Row], box: Bounds, inks: Inks) -> Iterator[Node]:
    left, _, _, top = box
    right = left + table_width(columns)
    head = _header_height(columns)
    yield Path((box_outline((left, top - head, right, top)),), fill=inks.shade)
    yield from _cells(columns, _header(columns), Point(left, top), inks, Face.BOLD)
    y = top - head
    rules = []
    for row in rows:
        yield from _row(columns, row, Point(left, y), inks)
        y -= height_of(columns, row)
        rules.append(line(Point(left, y), Point(right, y)))
    rules.extend(line(Point(x, top), Point(x, y)) for x in _blanks(columns, left))
    yield Path(tuple(rules), pen=inks.pen(0.18, colour=inks.faint))
    heavy = (line(Point(left, top), Point(right, top)), line(Point(left, top - head), Point(right, top - head)))
    yield Path((*heavy, line(Point(left, y), Point(right, y))), pen=inks.pen(0.35))


def _blanks(columns: Sequence[Column], left: float) -> Iterator[float]:
    x = left
    for column in columns:
        if column.is_blank:
            yield x
        x += column.width


def _row(columns: Sequence[Column], row: Row, corner: Point, inks: Inks) -> Iterator[Node]:
    if row.is_heading:
        yield inks.text(row.cells[0], (corner.x + _PAD, corner.y - _PAD), across=Across.TOP, face=Face.BOLD)
    else:
        yield from _cells(columns, row, corner, inks, Face.REGULAR)


def _cells(columns: Sequence[Column], row: Row, corner: Point, inks: Inks, face: Face) -> Iterator[Node]:
    x = corner.x
    for text, column in _pairs(row, columns):
        at = {
            Along.LEFT: x + _PAD,
            Along.CENTRE: x + column.width / 2,
            Along.RIGHT: x + column.width - 2 * _PAD,
        }[column.along]
        for i, words in enumerate(_lines(text, column, face)):
            if words:
                yield inks.text(words, (at, corner.y - _PAD - i * PITCH), PLAIN, column.along, Across.TOP, face=face)
        x += column.width


def _pairs(row: Row, columns: Sequence[Column]) -> Iterable[tuple[str, Column]]:
    return zip(row.cells, columns, strict=True)


def _lines(text: str, column: Column, face: Face) -> list[str]:
    """A cell's lines; a word wider than the column is broken within."""
    room = column.width - 2 * _PAD
    return [piece for words in wrapped(text, room, PLAIN, face) for piece in _broken(words, room, face)]


def _broken(words: str, room: float, face: Face) -> Iterator[str]:
    while text_width(words, PLAIN, face) > room and len(words) > 1:
        count = next(n for n in range(len(words) - 1, 0, -1) if n == 1 or text_width(words[:n], PLAIN, face) <= room)
        yield words[:count]
        words = words[count:]
    yield words
