"""The CG envelope with the loading extremes in it: weight over arm, before hollow, after filled."""

from collections.abc import Iterator

from panelcad.drawing.charts.frame import (
    TITLE_LETTER,
    Chart,
    ChartLook,
    Scale,
    across_grid,
    ticks,
    upright_grid,
    words,
)
from panelcad.drawing.display import Colour, Face, Node, Path, Pen
from panelcad.geometry.contour import Vertex, circle, closed_chain
from panelcad.geometry.point import Point
from panelcad.planning.balance import Balance
from panelcad.planning.envelope import LoadedCase
from panelcad.planning.weight import Loading
from panelcad.units import LengthUnit, mass_unit

_LEFT, _LOW, _HEAD, _RIGHT = 16.0, 11.0, 14.0, 40.0

_ARM_WORDS = {LengthUnit.INCH: "inches", LengthUnit.MM: "mm"}


def envelope_chart(  # noqa: PLR0913 - what, how, and how large
    figures: Balance, title: str, unit: LengthUnit, look: ChartLook, *, width: float = 160.0, height: float = 95.0
) -> Chart | None:
    """The envelope in the reader's unit; None where no envelope is entered or no loading can be told."""
    sheet = figures.sheet
    if sheet is None or not sheet.envelope or not figures.after:
        return None
    frame = _Frame(figures, unit, width, height)
    corners = closed_chain(tuple(Vertex(*frame.place(point.arm, point.mass)) for point in sheet.envelope))
    nodes = (
        words(title, 0.0, height - 2.0, look, height=TITLE_LETTER, face=Face.BOLD, room=width),
        words(
            f"weight in {mass_unit(unit)}, arm in {_ARM_WORDS[unit]}; datum: {sheet.datum}",
            _LEFT,
            height - 7.0,
            look,
            room=width - _LEFT,
        ),
        *across_grid(frame.weights, frame.up, _LEFT, width - _RIGHT, look),
        *upright_grid(frame.arms, frame.along, _LOW, height - _HEAD, look),
        Path((corners,), fill=look.inside.faded(0.12), pen=Pen(look.inside, 0.4)),
        *(node for case in figures.before for node in _point(case, frame, look, is_after=False)),
        *_labelled(figures, frame, look),
    )
    return Chart(title, width, height, nodes)


class _Frame:
    """Round scales around the envelope and every point, in the reader's unit."""

    def __init__(self, figures: Balance, unit: LengthUnit, width: float, height: float) -> None:
        self._unit, self._mass = unit.mm, mass_unit(unit).kg
        loadings = [case.loading for case in (*figures.before, *figures.after)] + _empties(figures)
        corners = figures.sheet.envelope if figures.sheet else ()
        arms = [loading.arm for loading in loadings] + [point.arm for point in corners]
        masses = [loading.kg for loading in loadings] + [point.mass for point in corners]
        self.arms = ticks(min(arms) / self._unit, max(arms) / self._unit)
        self.weights = ticks(min(masses) / self._mass, max(masses) / self._mass)
        self.along = Scale(self.arms[0], self.arms[-1], _LEFT, width - _RIGHT)
        self.up = Scale(self.weights[0], self.weights[-1], _LOW, height - _HEAD)

    def place(self, arm: float, kg: float) -> Point:
        return Point(self.along.at(arm / self._unit), self.up.at(kg / self._mass))


def _empties(figures: Balance) -> list[Loading]:
    return [loading for loading in (figures.change.old, figures.change.new) if loading is not None]


def _point(case: LoadedCase, frame: _Frame, look: ChartLook, *, is_after: bool) -> Iterator[Node]:
    colour = _colour(case, look)
    dot = circle(frame.place(case.loading.arm, case.loading.kg), 2.4)
    yield Path((dot,), fill=colour if is_after else None, pen=Pen(colour, 0.3))


def _colour(case: LoadedCase, look: ChartLook) -> Colour:
    return look.outside if case.is_inside is False else look.ink


def _labelled(figures: Balance, frame: _Frame, look: ChartLook) -> Iterator[Node]:
    """Filled points with their names at the right, one below the other so that none hides another."""
    x, y = frame.along.end + 3.0, frame.up.end
    for i, case in enumerate(figures.after, 1):
        yield from _point(case, frame, look, is_after=True)
        ending = " (outside)" if case.is_inside is False else ""
        yield words(f"{i} {case.name}{ending}", x, y - 5.0 * i, look, colour=_colour(case, look), room=_RIGHT - 4.0)
    for spot, numbers in _numbers(figures.after, frame).items():
        yield words(", ".join(numbers), spot.x + 2.2, spot.y + 1.6, look, face=Face.BOLD)
    if figures.change.new is not None:
        spot = frame.place(figures.change.new.arm, figures.change.new.kg)
        yield Path((circle(spot, 2.0),), pen=Pen(look.series[0], 0.5))
        yield words("empty", spot.x + 2.2, spot.y, look, colour=look.series[0])
    yield words("hollow: before the work", x, y - 5.0 * (len(figures.after) + 1.4), look, room=_RIGHT - 4.0)


def _numbers(cases: tuple[LoadedCase, ...], frame: _Frame) -> dict[Point, list[str]]:
    """The numbers of the cases by place; those nearer than a letter stand together."""
    found: dict[Point, list[str]] = {}
    for i, case in enumerate(cases, 1):
        spot = frame.place(case.loading.arm, case.loading.kg)
        near = next((p for p in found if abs(p.x - spot.x) < 3.0 and abs(p.y - spot.y) < 3.0), spot)
        found.setdefault(near, []).append(str(i))
    return found
