"""Panels for the pilot's-seat rules: square faces at given places, the eye 30 in in front of the datum."""

from collections.abc import Iterable

from panelcad.checks.pilot_primary import FLIGHT
from panelcad.checks.registry import load_rules
from panelcad.checks.report import CheckReport
from panelcad.checks.run import check
from panelcad.model.cutout import Bezel, Body, BodyKind, Control, Cutout
from panelcad.model.finding import Finding
from panelcad.model.function import Function
from panelcad.model.plate import Engraving, Plate
from panelcad.model.project import Item, Project
from panelcad.model.shape import Circle, Rectangle
from panelcad.model.surroundings import Eye, Surroundings
from tests import builders

INCH = 25.4
EYE_DISTANCE = 30 * INCH
FACE = 80.0


def gauge(name: str, *shows: Function, face: float = FACE, **fields: object) -> Cutout:
    bezel = Bezel(shape=Rectangle(width=face, height=face), source=builders.SOURCE)
    return builders.round_cutout(face * 0.9, name, bezel=bezel, shows=shows, **fields)


def control(name: str, kind: Control, size: float = 10.0) -> Cutout:
    knob = Body(kind=BodyKind.KNOB, shape=Rectangle(width=size, height=size), far=20, source=builders.SOURCE)
    return builders.round_cutout(size, name, control=kind, bodies=(knob,))


CUTOUTS = (
    gauge("attitude", Function.ATTITUDE),
    gauge("airspeed", Function.AIRSPEED),
    gauge("altimeter", Function.ALTITUDE),
    gauge("heading", Function.HEADING),
    gauge("display", Function.ATTITUDE, Function.AIRSPEED, Function.ALTITUDE, Function.HEADING, face=200.0),
    gauge("tachometer", Function.TACHOMETER),
    gauge("course", Function.COURSE_DEVIATION),
    gauge("whole-display", *FLIGHT, Function.COURSE_DEVIATION, face=200.0),
    gauge("compass", Function.MAGNETIC_DIRECTION),
    gauge("outlet", Function.POWER_OUTLET),
    gauge("nothing"),
    *(control(kind.value.replace(" ", "-"), kind) for kind in Control),
    builders.round_cutout(8.0, "lamp", family="lamps"),
    builders.round_cutout(8.0, "breaker", family="breakers", control=Control.PUSH_PULL),
    builders.round_cutout(
        8.0, "plate", family="placards", bezel=Bezel(shape=Circle(diameter=30), source=builders.SOURCE)
    ),
)


def eye(x: float = 0.0, y: float = 0.0, z: float = -EYE_DISTANCE, centre_line: float | None = None) -> Eye:
    return Eye(x=x, y=y, z=z, centre_line=x if centre_line is None else centre_line, source=builders.SOURCE)


def fitted(name: str, x: float, y: float, cutout: str | None = None, **fields: object) -> Item:
    return builders.item(name, x, y, cutout=cutout or name, **fields)


def words(text: str, x: float, y: float, height: float = 5.0) -> Engraving:
    return Engraving(id=f"words-{abs(hash((text, x, y))) % 10**8}", text=text, x=x, y=y, height=height)


def panel(
    *items: Item,
    plate: dict[str, object] | None = None,
    more: tuple[Plate, ...] = (),
    around: Surroundings | None = None,
    **fields: object,
) -> Project:
    made: Plate = builders.sheet(width=2000, height=1200, **(plate or {}))
    surroundings = around or Surroundings(eye=eye())
    return builders.project(made, *more, items=items, cutouts=CUTOUTS, surroundings=surroundings, **fields)


def found(project: Project, rule: str) -> list[Finding]:
    """What one rule finds on the option 'new'; fails where it could not judge."""
    return list(_report(project, rule).findings)


def unknown(project: Project, rule: str) -> set[tuple[str, ...]]:
    """The things of which one rule says that something is not known."""
    return {each.items for each in _report(project, rule).unknown}


def _report(project: Project, rule: str) -> CheckReport:
    loaded = load_rules()
    chosen = type(loaded)(tuple(each for each in loaded.rules if each.id == rule), ())
    assert chosen.rules, rule
    report = check(project, project.option("new"), chosen)
    assert report.not_judged == ()
    return report


def blamed(findings: Iterable[Finding]) -> set[tuple[str, ...]]:
    return {finding.items for finding in findings}
