"""Dimensions and notes that people put on an option, in mm of the plate's axes; each group has its mark's id as owner.

A dimension has extension lines, a line between them with oblique strokes at its ends (ISO 129-1), and its value above
the line, read from below or from the right. A note has its words and a leader to what it points at.
"""

import math
from typing import Final

from panelcad.drawing.box import joined
from panelcad.drawing.display import Across, Along, Bounds, Group, Path, Text
from panelcad.drawing.layers import Layer
from panelcad.drawing.style import ViewStyle
from panelcad.geometry.point import Point, distance, middle
from panelcad.geometry.track import Track, line
from panelcad.model.layout import Layout, PlateLayout
from panelcad.model.marked import hook_point, line_ends, measured
from panelcad.model.markup import Dimension, DrawingNote
from panelcad.units import LengthUnit, format_number

_OVER: Final = 2.0
_TICK: Final = 1.6
_ABOVE: Final = 1.0


def markup_view(layout: Layout, plate_id: str, style: ViewStyle) -> tuple[Group, ...]:
    """The groups of all dimensions and notes on a plate. Raises `UnknownName`."""
    plate = layout.plate(plate_id)
    option, unit = layout.option, layout.project.unit
    dimensions = (_dimension(each, plate, unit, style) for each in option.dimensions if each.plate == plate_id)
    notes = (_note(each, plate, style) for each in option.drawing_notes if each.plate == plate_id)
    return (*dimensions, *notes)


def drawn_bounds(layout: Layout, plate_id: str) -> Bounds:
    """The plate's box with the lines of all its dimensions, in mm of its axes. Raises `UnknownName`."""
    plate = layout.plate(plate_id)
    dimensions = [each for each in layout.option.dimensions if each.plate == plate_id]
    ends = [end for each in dimensions for end in line_ends(measured(plate, each), each)]
    return joined([plate.outline.bounds, *((end.x, end.y, end.x, end.y) for end in ends)])


def _dimension(dimension: Dimension, plate: PlateLayout, unit: LengthUnit, style: ViewStyle) -> Group:
    found = measured(plate, dimension)
    start, end = line_ends(found, dimension)
    way = _way(start, end)
    pen = style.narrow_pen(style.palette.ink)
    tracks = (
        line(start, end),
        *_extension(found.start, start),
        *_extension(found.end, end),
        _stroke(start, way),
        _stroke(end, way),
    )
    text = _value(format_number(found.value, unit), middle(start, end), way, style)
    reach = Group((Path((line(start, end),)),), layer=Layer.REACH)
    return Group((Path(tracks, pen=pen), text, reach), dimension.id, Layer.DIMENSIONS, title="Dimension")


def _way(start: Point, end: Point) -> tuple[float, float]:
    """The unit vector from start to end; to the right where both are one."""
    span = distance(start, end)
    return ((end.x - start.x) / span, (end.y - start.y) / span) if span else (1.0, 0.0)


def _extension(point: Point, end: Point) -> tuple[Track, ...]:
    """From a point that is measured to a little beyond the dimension line."""
    dx, dy = _way(point, end)
    return (line(point, end.moved(dx * _OVER, dy * _OVER)),) if distance(point, end) > 0.0 else ()


def _stroke(at: Point, way: tuple[float, float]) -> Track:
    dx, dy = way[0] - way[1], way[0] + way[1]
    return line(at.moved(-dx * _TICK, -dy * _TICK), at.moved(dx * _TICK, dy * _TICK))


def _value(words: str, at: Point, way: tuple[float, float], style: ViewStyle) -> Text:
    turn = math.degrees(math.atan2(way[1], way[0]))
    upright = turn - 180.0 if turn > 90.0 else turn + 180.0 if turn <= -90.0 else turn
    return Text(
        words,
        at,
        style.letter,
        style.palette.ink,
        Along.CENTRE,
        Across.CLEAR,
        round(upright, 9) % 360.0,
        measured=style.measured,
    )


def _note(note: DrawingNote, plate: PlateLayout, style: ViewStyle) -> Group:
    at = Point(note.x, note.y)
    text = Text(note.text, at, note.height, style.palette.ink)
    if note.to is None:
        return Group((text,), note.id, Layer.NOTES, title=note.text)
    leader = Path(
        (line(at.moved(-_ABOVE, note.height / 2), hook_point(plate, note.to)),), pen=style.narrow_pen(style.palette.ink)
    )
    return Group((leader, text), note.id, Layer.NOTES, title=note.text)
