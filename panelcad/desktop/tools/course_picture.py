"""What is seen of an outline that is being drawn point by point: its edges, the one that would come, their words."""

from collections.abc import Iterator
from typing import Final

from panelcad.desktop.canvas.label import Label, LabelSide
from panelcad.desktop.canvas.sketch import Drawn, Run
from panelcad.desktop.drawing_desk import Coming
from panelcad.desktop.tools.outline_drag import arc_words, rise_of
from panelcad.desktop.workbench import Workbench
from panelcad.editing.course import Course, drawn, edges, foreseen
from panelcad.geometry.point import Point, bearing, distance
from panelcad.geometry.segment import Arc, Segment, segment_between
from panelcad.units import format_angle, format_length

_LABELLED_PX: Final = 56.0
"""A shorter edge on the screen goes without its length."""
_PIECES: Final = 48
_QUARTERS: Final = (0.25, 0.75)


def course_picture(bench: Workbench) -> Drawn:
    """The course and the edge to where the next point would go, on the picture that is shown."""
    return _Picture(bench).drawn()


class _Picture:
    def __init__(self, bench: Workbench) -> None:
        self._bench, self._desk = bench, bench.drawing

    def drawn(self) -> Drawn:
        course, coming = self._desk.foreseen, self._desk.coming()
        if course is None:
            return Drawn()
        standing, new = _edges_of(course, coming)
        points = [station.at for station in course.stations]
        if self._desk.arc_end is not None:
            points.append(self._desk.arc_end)
        return Drawn(
            standing=tuple(self._run(edge) for edge in standing),
            coming=tuple(self._run(edge) for edge in new),
            is_refused=bool(coming and coming.refusal),
            points=tuple(self._bench.stage.to_picture(at) for at in points),
            labels=tuple(self._labels(course, coming)),
            closes=_closes(coming),
        )

    def _run(self, edge: Segment) -> Run:
        pieces = _PIECES if isinstance(edge, Arc) else 1
        return tuple(self._bench.stage.to_picture(edge.at(i / pieces)) for i in range(pieces + 1))

    # Its words: lengths from point to point, as they were measured, and the radius at each point that has one

    def _labels(self, course: Course, coming: Coming | None) -> Iterator[Label]:
        if coming is not None and (edge := _edge_to(course, coming)) is not None:
            yield self._label(edge, self._place_of_words(edge), self._coming_words(edge))
        for number, station in enumerate(course.stations):
            if station.radius:
                yield self._radius_label(course, number, coming)
        for edge in edges(course):
            if edge.length * self._bench.view.zoom >= _LABELLED_PX:
                yield self._label(edge, edge.at(0.5), self._words(edge))

    def _label(self, edge: Segment, at: Point, words: str) -> Label:
        return Label(self._bench.stage.to_picture(at), words, run=self._run(edge))

    def _radius_label(self, course: Course, number: int, coming: Coming | None) -> Label:
        """Outside the corner, so that its arc is seen."""
        places = [station.at for station in course.stations]
        after = [*places[number + 1 : number + 2], *((coming.end,) if coming is not None else ())][:1]
        at, around = places[number], [*places[max(0, number - 1) : number], *after]
        opens_up = sum(place.y - at.y for place in around) >= 0
        shown = self._bench.stage.to_picture(at)
        words = f"R {format_length(course.stations[number].radius, self._bench.unit)}"
        return Label(shown, words, LabelSide.BELOW if opens_up else LabelSide.ABOVE, (shown,))

    def _words(self, edge: Segment) -> str:
        """Of an arc as it was typed: to which side it bows is seen."""
        if isinstance(edge, Arc):
            return arc_words(edge, abs(rise_of(edge)), self._bench)
        return format_length(edge.length, self._bench.unit)

    def _place_of_words(self, edge: Segment) -> Point:
        """Its middle; on an arc that runs under the pointer a place away from the words of what caught it."""
        aim = self._desk.pointed
        if self._desk.arc_end is None or aim is None:
            return edge.at(0.5)
        return max((edge.at(part) for part in _QUARTERS), key=lambda place: distance(place, aim))

    def _coming_words(self, edge: Segment) -> str:
        words = self._words(edge)
        return words if isinstance(edge, Arc) else f"{words}   {format_angle(bearing(edge.start, edge.end))}"


def _closes(coming: Coming | None) -> bool:
    return coming is not None and coming.closes and not coming.refusal


def _edge_to(course: Course, coming: Coming) -> Segment | None:
    """The edge to where the next point would go, sharp at both ends; None where that is the last point."""
    start = course.last.at
    return segment_between(start, coming.end, coming.bulge) if distance(start, coming.end) > 0 else None


def _edges_of(course: Course, coming: Coming | None) -> tuple[tuple[Segment, ...], tuple[Segment, ...]]:
    """What stands and what would come, with corners rounded where they can be."""
    edge = _edge_to(course, coming) if coming is not None else None
    if coming is None or edge is None:
        return drawn(course), ()
    if coming.refusal:
        return drawn(course), (edge,)
    found = foreseen(course, coming.end, coming.bulge)
    return found.standing, found.coming
