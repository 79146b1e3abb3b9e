"""What each rule is put to: a case just inside its limit and one just outside, turned and moved copies of both.

A test module states `CASES` and `IGNORED`; `test_proof` collects them, runs them, and fails for a rule that lacks some.
"""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from panelcad.checks.registry import Loaded, load_rules
from panelcad.checks.report import Unknown
from panelcad.checks.run import check
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point
from panelcad.model.finding import Finding, Severity
from panelcad.model.project import Project
from panelcad.model.shape import Corner, Outline
from panelcad.model.surroundings import Surroundings

COPIES = (Placement(), Placement(rotation=30.0), Placement(1234.5, -987.25, 90.0), Placement(-310.0, 77.0, 217.3))
"""As it is, turned, off the origin by a quarter turn, and both at an odd angle."""
ASIDE = (Placement(431.0, -77.0),)
"""Off the origin and not turned."""


@dataclass(frozen=True)
class Case:
    """`make(value)` builds a project whose measured value is `measured(value)` by a closed form.

    `measured` is None for a rule that measures nothing, `severity` for one that only says what is unknown.
    """

    rule: str
    make: Callable[[float], Project]
    passes: Any
    fails: Any
    measured: Callable[[Any], float] | None = lambda value: value
    required: float | None = None
    severity: Severity | None = Severity.ERROR
    accuracy: float = 1e-5
    not_turned: str = ""
    """Why a turned copy would be another case."""

    @property
    def copies(self) -> tuple[Placement, ...]:
        return tuple(copy for copy in COPIES + ASIDE if not (self.not_turned and copy.rotation))

    def __str__(self) -> str:
        return f"{self.rule}-{self.severity or 'unknown'}-{getattr(self.make, '__name__', '')}"


@dataclass(frozen=True)
class Ignored:
    """`make()` builds a project with something beside which a rule must stay silent; `what` says what it is."""

    rule: str
    what: str
    make: Callable[[], Project]

    def __str__(self) -> str:
        return f"{self.rule}: {self.what}"


def said(project: Project, rule: str) -> list[Finding | Unknown]:
    """What one rule finds or does not know on the option 'new', asked alone; fails where it could not judge."""
    chosen = Loaded(tuple(each for each in load_rules().rules if each.id == rule), ())
    assert chosen.rules, rule
    report = check(project, project.option("new"), chosen)
    assert report.not_judged == ()
    return [*report.findings, *report.unknown]


def unknown(project: Project, rule: str) -> list[tuple[tuple[str, ...], str]]:
    """Of which items the rule does not know what, on the option 'new'."""
    return [(each.items, each.missing) for each in said(project, rule) if isinstance(each, Unknown)]


def found(project: Project, rule: str) -> list[Finding]:
    report = check(project, project.option("new"))
    assert report.not_judged == ()
    return [finding for finding in report.findings if finding.rule == rule]


def holds(case: Case) -> None:
    """Inside passes, outside is found once with the closed form's value, and the same in every copy."""
    for copy in case.copies:
        assert said(moved(case.make(case.passes), copy), case.rule) == [], "inside its limit"
        (verdict,) = said(moved(case.make(case.fails), copy), case.rule)
        assert getattr(verdict, "severity", None) is case.severity
        if isinstance(verdict, Finding):
            _measures(verdict, case)


def _measures(finding: Finding, case: Case) -> None:
    if case.measured is None:
        assert finding.measured is None
    else:
        assert abs(finding.measured - case.measured(case.fails)) < case.accuracy
    if case.required is not None:
        assert abs(finding.required - case.required) < 1e-9


def moved(project: Project, to: Placement) -> Project:
    """A copy of the project with everything on and around the panel turned and moved, eye and compass too."""
    if to == Placement():
        return project
    option = project.option("new")
    plates = tuple(_moved_plate(plate, to) for plate in option.plates)
    items = tuple(_placed(item, to) if item.plate else item for item in option.items)
    around = _moved_surroundings(project.surroundings, to)
    return project.revised(surroundings=around).with_option(option.revised(plates=plates, items=items))


def _placed(record, to: Placement):
    at = to.after(Placement(record.x, record.y, record.rotation))
    return record.revised(x=at.x, y=at.y, rotation=at.rotation)


def _spot(record, to: Placement):
    x, y = to.point(Point(record.x, record.y))
    return record.revised(x=x, y=y)


def _moved_plate(plate, to: Placement):
    vertices = getattr(plate.outline.contour(), "chain", plate.outline.contour()).vertices
    corners = tuple(Corner(x=x, y=y, bulge=v.bulge) for v in vertices for x, y in (to.point(v.point),))
    return plate.revised(
        outline=Outline(corners=corners),
        cuts=tuple(_placed(cut, to) for cut in plate.cuts),
        inner_openings=tuple(_placed(opening, to) for opening in plate.inner_openings),
        attach_screws=tuple(_moved_screw(screw, to) for screw in plate.attach_screws),
        bends=tuple(_moved_bend(bend, to) for bend in plate.bends),
        engravings=tuple(_placed(words, to) for words in plate.engravings),
        frame=_spot(plate.frame, Placement(rotation=to.rotation)),
    )


def _moved_screw(screw, to: Placement):
    flange = screw.form.nutplate and screw.form.nutplate.revised(angle=screw.form.nutplate.angle + to.rotation)
    return _spot(screw, to).revised(form=screw.form.revised(nutplate=flange))


def _moved_bend(bend, to: Placement):
    (x1, y1), (x2, y2) = to.point(Point(bend.x1, bend.y1)), to.point(Point(bend.x2, bend.y2))
    return bend.revised(x1=x1, y1=y1, x2=x2, y2=y2)


def _moved_surroundings(around: Surroundings, to: Placement) -> Surroundings:
    return around.revised(
        obstacles=tuple(_moved_volume(thing, to) for thing in around.obstacles),
        moving_parts=tuple(_moved_mover(thing, to) for thing in around.moving_parts),
        keep_outs=tuple(_moved_volume(thing, to) for thing in around.keep_outs),
        depth_limits=tuple(_moved_limit(limit, to) for limit in around.depth_limits),
        eye=around.eye and _spot(around.eye, to).revised(centre_line=around.eye.centre_line + to.x),
        compass=around.compass and _spot(around.compass, to),
    )


def _moved_volume(thing, to: Placement):
    return thing.revised(volume=_placed(thing.volume, to))


def _moved_mover(thing, to: Placement):
    ways = tuple(way.revised(dx=x, dy=y) for way in thing.travels for x, y in (_direction(way.dx, way.dy, to),))
    turn = thing.turn if thing.turn is None else _spot(thing.turn, to)
    return _moved_volume(thing, to).revised(travels=ways, turn=turn)


def _moved_limit(limit, to: Placement):
    slope_x, slope_y = _direction(limit.slope_x, limit.slope_y, to)
    at_origin = limit.at_origin - slope_x * to.x - slope_y * to.y
    return _placed(limit, to).revised(slope_x=slope_x, slope_y=slope_y, at_origin=at_origin)


def _direction(x: float, y: float, to: Placement) -> Point:
    return Placement(rotation=to.rotation).point(Point(x, y))
