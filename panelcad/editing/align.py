"""Line things up: edges, centres, even spreads, equal gaps. Labels go along with their controls."""

from collections import Counter
from collections.abc import Callable, Collection
from enum import Enum
from typing import Final

from panelcad.editing.extents import Axis, Body, bodies
from panelcad.editing.labels_along import with_labels
from panelcad.editing.move import move_each
from panelcad.errors import EditRefused
from panelcad.model.project import Project
from panelcad.units import rounded

Shift = tuple[float, float]


class Line(Enum):
    """What is brought onto one line."""

    LEFT = "left edges"
    RIGHT = "right edges"
    TOP = "top edges"
    BOTTOM = "bottom edges"
    UPRIGHT = "centres on an upright line"
    LEVEL = "centres on a level line"


_AXIS: Final = {
    Line.LEFT: Axis.ACROSS,
    Line.RIGHT: Axis.ACROSS,
    Line.UPRIGHT: Axis.ACROSS,
    Line.TOP: Axis.UP,
    Line.BOTTOM: Axis.UP,
    Line.LEVEL: Axis.UP,
}
_AT: Final[dict[Line, Callable[[Body], float]]] = {
    Line.LEFT: lambda body: body.box.left,
    Line.RIGHT: lambda body: body.box.right,
    Line.UPRIGHT: lambda body: body.origin.x,
    Line.TOP: lambda body: body.box.top,
    Line.BOTTOM: lambda body: body.box.bottom,
    Line.LEVEL: lambda body: body.origin.y,
}


def align(project: Project, option_id: str, ids: Collection[str], line: Line) -> Project:
    """Everything brought onto the line of the first thing named, which stays. Edges are those of bezels.

    Raises `EditRefused` for fewer than two things.
    """
    chosen = _at_least(2, project, option_id, ids)
    return align_to(project, option_id, ids, line, _AT[line](chosen[0]))


def align_to(project: Project, option_id: str, ids: Collection[str], line: Line, at: float) -> Project:
    """Everything brought onto a given line in mm: the panel's axis, the pilot's centre line.

    Raises `EditRefused` where things of one size, such as a row of screws, would lie exactly on one another.
    """
    chosen = bodies(project, project.option(option_id), ids)
    _refuse_heap(chosen, _AXIS[line])
    return _shifted(project, option_id, _AXIS[line], [(body, at - _AT[line](body)) for body in chosen])


def distribute(project: Project, option_id: str, ids: Collection[str], axis: Axis) -> Project:
    """Centres spread evenly between the first and the last along an axis, which stay.

    Raises `EditRefused` for fewer than three things.
    """
    row = sorted(_at_least(3, project, option_id, ids), key=lambda body: body.origin[axis.value])
    start, end = row[0].origin[axis.value], row[-1].origin[axis.value]
    pitch = (end - start) / (len(row) - 1)
    shifts = [(body, start + i * pitch - body.origin[axis.value]) for i, body in enumerate(row)]
    return _shifted(project, option_id, axis, shifts)


def equal_gaps(project: Project, option_id: str, ids: Collection[str], axis: Axis) -> Project:
    """Gaps between bezels made equal along an axis; the first and the last stay.

    Raises `EditRefused` for fewer than three things.
    """
    row = _row(_at_least(3, project, option_id, ids), axis)
    free = row[-1].box.span(axis)[1] - row[0].box.span(axis)[0] - sum(_length(body, axis) for body in row)
    return _with_gap(project, option_id, row, axis, free / (len(row) - 1))


def set_gaps(project: Project, option_id: str, ids: Collection[str], axis: Axis, gap: float) -> Project:
    """The first stays and each next one follows with this gap between bezels, in mm. Negative gaps overlap.

    Raises `EditRefused` for fewer than two things.
    """
    return _with_gap(project, option_id, _row(_at_least(2, project, option_id, ids), axis), axis, gap)


def centre_between(
    project: Project, option_id: str, ids: Collection[str], between: tuple[str, str], axis: Axis
) -> Project:
    """What is named, as one, moved midway between the facing edges of two other things along an axis."""
    option = project.option(option_id)
    first, last = _row(tuple(bodies(project, option, [one])[0] for one in between), axis)
    middle = (first.box.span(axis)[1] + last.box.span(axis)[0]) / 2
    chosen = bodies(project, option, ids)
    low = min(body.box.span(axis)[0] for body in chosen)
    high = max(body.box.span(axis)[1] for body in chosen)
    return _shifted(project, option_id, axis, [(body, middle - (low + high) / 2) for body in chosen])


def _refuse_heap(chosen: tuple[Body, ...], along: Axis) -> None:
    """Brought onto one line, things coincide that are alike in size and stand equally far along that line."""
    across = Axis.UP if along is Axis.ACROSS else Axis.ACROSS
    kinds = Counter(
        (*(rounded(edge) for edge in body.box.span(across)), rounded(_length(body, along))) for body in chosen
    )
    heaped = sum(count for count in kinds.values() if count > 1)
    if heaped:
        raise EditRefused(f"{heaped} of these things would lie exactly on one another, so none was moved.")


def _at_least(count: int, project: Project, option_id: str, ids: Collection[str]) -> tuple[Body, ...]:
    chosen = bodies(project, project.option(option_id), ids)
    if len(chosen) < count:
        raise EditRefused(f"At least {('', 'one', 'two', 'three')[count]} things are needed for that.")
    return chosen


def _row(chosen: tuple[Body, ...], axis: Axis) -> tuple[Body, ...]:
    return tuple(sorted(chosen, key=lambda body: sum(body.box.span(axis))))


def _length(body: Body, axis: Axis) -> float:
    low, high = body.box.span(axis)
    return high - low


def _with_gap(project: Project, option_id: str, row: tuple[Body, ...], axis: Axis, gap: float) -> Project:
    at = row[0].box.span(axis)[0]
    shifts: list[tuple[Body, float]] = []
    for body in row:
        shifts.append((body, at - body.box.span(axis)[0]))
        at += _length(body, axis) + gap
    return _shifted(project, option_id, axis, shifts)


def _shifted(project: Project, option_id: str, axis: Axis, shifts: list[tuple[Body, float]]) -> Project:
    along: Callable[[float], Shift] = (lambda by: (by, 0.0)) if axis is Axis.ACROSS else (lambda by: (0.0, by))
    moves = {one: along(by) for body, by in shifts if abs(by) > 1e-9 for one in body.ids}
    chosen = frozenset(one for body, _ in shifts for one in body.ids)
    return with_labels(project, move_each(project, option_id, moves), option_id, chosen)
