"""Field of view: what must lie where, about a line of sight below the horizontal, and how far a face may be turned.

Zones are rectangular in angle: sideways from straight ahead, up and down from the normal line of sight. A face is
judged at its middle. The circular gives no combined cone and nothing for a tilted panel.
"""

from collections.abc import Iterator
from typing import Any, Final

from panelcad.checks.pilot_primary import FLIGHT, flight_instruments
from panelcad.checks.pilot_second import eye_for, second_pilots
from panelcad.checks.pilot_sight import Seen, seen_items, seen_where, sight_of
from panelcad.checks.pilot_zones import (
    ADVISED_ZONE,
    ANGLE_TIE,
    IMPORTANT_ZONE,
    PRIMARY_ZONE,
    Excess,
    Zone,
    worst_excess,
)
from panelcad.checks.registry import FROM_THE_SEAT, TheWhole, rule
from panelcad.model.finding import Finding, Measure, Severity
from panelcad.model.function import Function
from panelcad.model.layout import Layout
from panelcad.model.pilot import LightMeaning
from panelcad.model.profile import limit_source
from panelcad.model.view_zones import ViewZone, functions_in, functions_told


@rule(
    "view-primary",
    title="Flight instruments in the primary field of view",
    measures="angles from the eye to the middle of each warning light and of the instruments whose functions belong in "
    "the primary field of view: by default attitude, airspeed, altitude and heading, and as advice course deviation",
    looks_at=FROM_THE_SEAT,
    severities=(Severity.WARNING, Severity.ADVICE),
    limits=("primary_sideways", "primary_up", "primary_down", "line_of_sight_down"),
)
def view_primary(laid: Layout) -> Iterator[Finding]:
    yield from _outside(laid, PRIMARY_ZONE, [*_serving(laid, ViewZone.PRIMARY), *_warning_lights(laid)])
    primary = {seen.id for seen in _serving(laid, ViewZone.PRIMARY)}
    advised = [seen for seen in _serving(laid, ViewZone.PRIMARY_ADVISED) if seen.id not in primary]
    yield from _outside(laid, ADVISED_ZONE, advised)


@rule(
    "view-important",
    title="Important instruments in the field of view",
    measures="angles from the eye to the middle of standby, navigation and powerplant instruments, and of what else a "
    "shop says; a second pilot's, "
    "which repeat on his side of the panel what the pilot has in view, from the eye's mirror image (common practice)",
    looks_at=FROM_THE_SEAT,
    severities=(Severity.WARNING,),
    limits=("important_sideways", "important_up", "important_down", "line_of_sight_down"),
)
def view_important(laid: Layout) -> Iterator[Finding]:
    zones = laid.project.profile.zones
    told = functions_told(zones)
    primary = {seen.id for seen in _serving(laid, ViewZone.PRIMARY)}
    important = seen_where(laid, ("important", zones), lambda item: not item.shows.isdisjoint(told))
    yield from _outside(laid, IMPORTANT_ZONE, [seen for seen in important if seen.id not in primary])


def _serving(laid: Layout, zone: ViewZone) -> list[Seen]:
    """The instruments that serve the functions of a zone, each once."""
    functions = functions_in(zone, laid.project.profile.zones)
    flight = flight_instruments(laid).by_function
    serving = [flight[function] for function in FLIGHT if function in functions and function in flight]
    for function in sorted(functions.difference(FLIGHT)):
        serving += _nearest_with(laid, function)
    return list({seen.id: seen for seen in serving}.values())


def _nearest_with(laid: Layout, function: Function) -> list[Seen]:
    """The flight instruments that show it too; where none does, the instrument nearest the centre line that does."""
    eye = laid.project.surroundings.eye
    able = seen_where(laid, ("shows", function), lambda item: function in item.shows)
    if eye is None or not able:
        return []
    in_use = {seen.id for seen in flight_instruments(laid).each}
    serving = [seen for seen in able if seen.id in in_use]
    return serving or [min(able, key=lambda seen: (abs(seen.middle.x - eye.centre_line), seen.id))]


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
    looks_at=FROM_THE_SEAT,
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
