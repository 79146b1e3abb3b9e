"""Field of view: what must lie where, about a line of sight below the horizontal, and how far a face may be turned.

Zones are rectangular in angle: sideways from straight ahead, up and down from the normal line of sight. A face is
judged at its middle. The circular gives no combined cone and nothing for a tilted panel.
"""

from collections.abc import Iterator
from typing import Any, Final

from panelcad.checks.pilot_primary import flight_instruments
from panelcad.checks.pilot_second import eye_for, second_pilots
from panelcad.checks.pilot_sight import Seen, seen_items, seen_where, sight_of
from panelcad.checks.pilot_zones import ANGLE_TIE, COURSE_ZONE, IMPORTANT_ZONE, PRIMARY_ZONE, Excess, Zone, worst_excess
from panelcad.checks.registry import TheWhole, rule
from panelcad.model.finding import Finding, Measure, Severity
from panelcad.model.function import Function
from panelcad.model.layout import Layout
from panelcad.model.pilot import LightMeaning
from panelcad.model.profile import limit_source

IMPORTANT: Final = frozenset(
    {
        *(Function.ATTITUDE, Function.AIRSPEED, Function.ALTITUDE, Function.HEADING, Function.VERTICAL_SPEED),
        *(Function.RATE_OF_TURN, Function.SLIP, Function.COURSE_DEVIATION, Function.ANGLE_OF_ATTACK),
        *(Function.TACHOMETER, Function.MANIFOLD_PRESSURE, Function.OIL_PRESSURE, Function.OIL_TEMPERATURE),
        *(Function.COOLANT_TEMPERATURE, Function.FUEL_PRESSURE, Function.FUEL_QUANTITY, Function.GEAR_POSITION),
    }
)
"""Standby instruments and required powerplant information (AC 23.1311-1C table 3, from memory; verify)."""


@rule(
    "view-primary",
    title="Flight instruments in the primary field of view",
    measures="angles from the eye to the middle of each primary flight instrument, each warning light, and the pilot's "
    "course deviation indicator (advice: AC 23.1311-1C table 3, from memory)",
    looks_at=TheWhole(),
    severities=(Severity.WARNING, Severity.ADVICE),
    limits=("primary_sideways", "primary_up", "primary_down", "line_of_sight_down"),
)
def view_primary(laid: Layout) -> Iterator[Finding]:
    yield from _outside(laid, PRIMARY_ZONE, [*flight_instruments(laid).each, *_warning_lights(laid)])
    yield from _outside(laid, COURSE_ZONE, _course_deviation(laid))


@rule(
    "view-important",
    title="Important instruments in the field of view",
    measures="angles from the eye to the middle of standby, navigation and powerplant instruments; a second pilot's, "
    "which repeat on his side of the panel what the pilot has in view, from the eye's mirror image (common practice)",
    looks_at=TheWhole(),
    severities=(Severity.WARNING,),
    limits=("important_sideways", "important_up", "important_down", "line_of_sight_down"),
)
def view_important(laid: Layout) -> Iterator[Finding]:
    primary = {seen.id for seen in flight_instruments(laid).each}
    important = seen_where(laid, "important", lambda item: not item.shows.isdisjoint(IMPORTANT))
    yield from _outside(laid, IMPORTANT_ZONE, [seen for seen in important if seen.id not in primary])


def _course_deviation(laid: Layout) -> list[Seen]:
    """The indicator nearest the centre line; none where a primary flight instrument shows course deviation itself."""
    eye = laid.project.surroundings.eye
    able = seen_where(laid, "shows course deviation", lambda item: Function.COURSE_DEVIATION in item.shows)
    primary = {seen.id for seen in flight_instruments(laid).each}
    if eye is None or not able or any(seen.id in primary for seen in able):
        return []
    return [min(able, key=lambda seen: (abs(seen.middle.x - eye.centre_line), seen.id))]


def _warning_lights(laid: Layout) -> tuple[Seen, ...]:
    grave = {LightMeaning.WARNING, LightMeaning.CAUTION}
    return seen_where(
        laid, "warning light", lambda item: item.item.light is not None and item.item.light.meaning in grave
    )


def _outside(laid: Layout, zone: Zone, items: list[Seen]) -> Iterator[Finding]:
    eye, profile = laid.project.surroundings.eye, laid.project.profile
    if eye is None:
        return
    for seen in items:
        sight = sight_of(seen.plate, eye_for(seen, laid, eye), profile.line_of_sight_down)
        excess = worst_excess(sight, seen, zone, profile)
        if excess is not None:
            direction = excess.name.rpartition("_")[2]
            problem = (
                f"Too far {direction} for the {_whose(seen, laid)} {zone.rule.removeprefix('view-')} field of view"
            )
            yield Finding(rule=zone.rule, severity=zone.severity, problem=problem, **_angle(seen, excess))


def _whose(seen: Seen, laid: Layout) -> str:
    return "second pilot's" if seen.id in second_pilots(laid) else "pilot's"


def _angle(seen: Seen, excess: Excess) -> dict[str, Any]:
    return {
        "items": (seen.id,),
        "plate": seen.plate.id,
        "measure": Measure.ANGLE,
        "measured": excess.angle,
        "required": excess.limit,
        "more_is_worse": True,
        "where": (seen.item.centre,),
        "source": str(limit_source(excess.name)),
    }


_NOT_READ: Final = frozenset({Function.POWER_OUTLET, Function.ELT, Function.INSTRUMENT_LIGHTING})
"""What a thing on the panel does without being read."""


@rule(
    "face-turned",
    title="Face turned from the line of sight",
    measures="angle between the line of sight and the normal of a display's face; for a second pilot's instruments the "
    "line from the mirror image of the eye (common practice)",
    looks_at=TheWhole(),
    severities=(Severity.WARNING,),
    limits=("face_turned",),
)
def face_turned(laid: Layout) -> Iterator[Finding]:
    eye, profile = laid.project.surroundings.eye, laid.project.profile
    if eye is None:
        return
    for seen in seen_items(laid):
        turned = sight_of(seen.plate, eye_for(seen, laid, eye), 0.0).turned(seen.item.centre)
        if set(seen.item.shows) - _NOT_READ and turned > profile.face_turned + ANGLE_TIE:
            excess = Excess(turned, profile.face_turned, "face_turned")
            problem = f"Face is turned too far from the {_whose(seen, laid)} line of sight"
            yield Finding(rule="face-turned", severity=Severity.WARNING, problem=problem, **_angle(seen, excess))


@rule(
    "eye-point",
    title="The pilot's eye point",
    measures="whether the eye point is entered; without it view, reach and lettering are not judged",
    looks_at=TheWhole(),
    severities=(Severity.ADVICE,),
    source="AC 23.1311-1C paragraph 15.2: the field of view is judged from the design eye reference point",
)
def eye_point(laid: Layout) -> Iterator[Finding]:
    if laid.project.surroundings.eye is None and any(seen.item.shows for seen in seen_items(laid)):
        yield Finding(
            rule="eye-point",
            severity=Severity.ADVICE,
            problem="The pilot's eye point is not entered; view, reach and lettering are unknown",
            items=(laid.plates[0].plate.id,),
            plate=laid.plates[0].plate.id,
            source="AC 23.1311-1C paragraph 15.2",
        )
