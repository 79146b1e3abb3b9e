"""The outline that is being drawn point by point: what it is for, how far it is, and where the next point would go."""

from collections.abc import Callable
from dataclasses import dataclass
from enum import Enum
from typing import TYPE_CHECKING, Final

from PySide6.QtCore import QObject, Signal

from panelcad.editing.course import (
    Course,
    begun,
    closed,
    go_on,
    taken_back,
    with_radius,
)
from panelcad.editing.outline import bulge_of_radius, bulge_of_rise
from panelcad.errors import EditRefused, PanelcadError
from panelcad.geometry.corner import bulge_through
from panelcad.geometry.point import Point, distance
from panelcad.model.shape import Outline

if TYPE_CHECKING:
    from panelcad.desktop.workbench import Workbench

Use = Callable[["Workbench", Outline], bool]
_SAME: Final = 1e-6


class EdgeKind(Enum):
    """How the next edge runs."""

    STRAIGHT = "straight"
    THROUGH = "arc through a place"
    RADIUS = "arc by its radius"
    RISE = "arc by its rise"


@dataclass(frozen=True)
class Coming:
    """The edge to where the next point would go; `refusal` says why it cannot be."""

    end: Point
    bulge: float = 0.0
    refusal: str = ""
    closes: bool = False


class DrawingDesk(QObject):
    """`changed` when the course or the coming edge is another one, `went_on` when it is the course; `typed` with a key
    that begins a figure.
    """

    changed = Signal()
    went_on = Signal()
    typed = Signal(str)

    def __init__(self, bench: "Workbench") -> None:
        super().__init__()
        self._bench = bench
        self._use: Use | None = None
        self.course: Course | None = None
        self.aim: Point | None = None
        """Where the next point would go, pointed at or typed."""
        self.pointed: Point | None = None
        self.edge = EdgeKind.STRAIGHT
        self.size = 0.0
        self.typed_radius: float | None = None
        """What the corner at the last point is being rounded by, before it is entered."""
        self.arc_end: Point | None = None
        """Where an arc will end that still wants a place to pass through."""
        self._abandoned: Course | None = None

    @property
    def is_on(self) -> bool:
        return self._use is not None

    @property
    def last(self) -> Point | None:
        return self.course.last.at if self.course is not None else None

    @property
    def foreseen(self) -> Course | None:
        """The course with the radius that is being typed."""
        if self.course is None or self.typed_radius is None:
            return self.course
        return with_radius(self.course, self.typed_radius)

    def begin(self, use: Use) -> None:
        """Start from nothing; `use` does something with the outline and says whether that was done."""
        self._use = use
        self._start_over()

    def end(self) -> None:
        self._use = None
        self._start_over()

    def _start_over(self) -> None:
        self.course = self.aim = self.pointed = self.arc_end = self.typed_radius = None
        self.edge = EdgeKind.STRAIGHT
        self.changed.emit()
        self.went_on.emit()

    def aim_at(self, at: Point | None) -> None:
        self.aim = at
        self.changed.emit()

    def point_at(self, at: Point) -> None:
        """The pointer is there."""
        self.pointed = at
        self.aim_at(at)

    def take_edge(self, kind: EdgeKind, size: float = 0.0) -> None:
        """The next edge runs like this; `size` is its radius or rise in mm."""
        self.edge, self.size, self.arc_end = kind, size, None
        self.changed.emit()

    def coming(self) -> Coming | None:
        """The edge that the aim would make now."""
        course = self.foreseen
        if course is None or self.aim is None:
            return None
        end = self.arc_end or self.aim
        try:
            bulge = self._bulge_to(end)
        except PanelcadError as refusal:
            return Coming(end, refusal=str(refusal))
        closes = self._is_first(end)
        try:
            _ = closed(course, bulge) if closes else go_on(course, end, bulge)
        except PanelcadError as refusal:
            return Coming(end, bulge, str(refusal), closes)
        return Coming(end, bulge, closes=closes)

    def _bulge_to(self, end: Point) -> float:
        start = self.last
        if start is None or self.aim is None or distance(start, end) < _SAME:
            return 0.0
        if self.edge is EdgeKind.RADIUS:
            return bulge_of_radius(start, end, self.size)
        if self.edge is EdgeKind.RISE:
            return bulge_of_rise(start, end, self.size)
        return bulge_through(start, self.aim, end) if self.arc_end is not None else 0.0

    def _is_first(self, at: Point) -> bool:
        return self.course is not None and len(self.course.stations) > 1 and distance(at, self.course.first) < _SAME

    def settle(self, at: Point) -> bool:
        """The next point, or the place that an arc passes through; a refusal is told."""
        self.aim = at
        if self.course is None:
            self._take(begun(at))
            return True
        if self.edge is EdgeKind.THROUGH and self.arc_end is None:
            return self._settle_arc_end(at)
        coming = self.coming()
        if coming is None or coming.refusal:
            self._bench.told.emit(coming.refusal if coming else "")
            return False
        if coming.closes:
            return self._finish(coming.bulge)
        self._take(go_on(self.course, coming.end, coming.bulge))
        return True

    def _settle_arc_end(self, at: Point) -> bool:
        if self.last is not None and distance(at, self.last) < _SAME:
            self._bench.told.emit("The next point is where the last one is.")
            return False
        self.arc_end = at
        self.changed.emit()
        return True

    def _take(self, course: Course | None) -> None:
        self.course, self.arc_end, self.typed_radius, self.edge = course, None, None, EdgeKind.STRAIGHT
        self.changed.emit()
        self.went_on.emit()

    def close(self) -> bool:
        """A straight edge back to the first point, and the outline is done."""
        return self._finish(0.0)

    def _finish(self, bulge: float) -> bool:
        if self.course is None or self._use is None:
            return False
        try:
            outline = closed(self.course, bulge)
        except EditRefused as refusal:
            self._bench.refused.emit(str(refusal))
            return False
        if not self._use(self._bench, outline):
            return False
        self._abandoned = None
        self._bench.take_tool("select")
        return True

    def round_last(self, radius: float) -> bool:
        """The corner at the last point rounded by this radius in mm; how the next edge runs stays chosen."""
        if self.course is None:
            return False
        try:
            self.course, self.typed_radius = with_radius(self.course, radius), None
        except EditRefused as refusal:
            self._bench.refused.emit(str(refusal))
            return False
        self.changed.emit()
        return True

    def try_radius(self, radius: float | None) -> None:
        """Show the corner at the last point rounded so while the radius is typed; None for as it was. Not below 0."""
        self.typed_radius = radius
        self.changed.emit()

    def take_back(self) -> None:
        """Without the end of an arc, else without the last point; at nothing, what was abandoned is back."""
        if self.arc_end is not None:
            self.arc_end = None
            self.changed.emit()
        elif self.course is not None:
            self._take(taken_back(self.course))
        elif self._abandoned is not None:
            self._take(self._abandoned)

    def abandon(self) -> None:
        """Leave off; Backspace in a drawing begun anew brings the points back."""
        self._abandoned = self.course or self._abandoned
        self._bench.take_tool("select")
