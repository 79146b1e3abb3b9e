"""The basic T, the group about the pilot's centre line, and engine instruments in engine order."""

from collections.abc import Iterator
from itertools import pairwise
from typing import Any, Final

from panelcad.checks.pilot_primary import FlightInstruments, flight_instruments
from panelcad.checks.pilot_sight import Seen, plate_frame, seen_where
from panelcad.checks.registry import FROM_THE_SEAT, rule
from panelcad.geometry.gap import TIE
from panelcad.geometry.point import Point
from panelcad.geometry.space import Spot
from panelcad.model.finding import Finding, Severity
from panelcad.model.function import Function
from panelcad.model.layout import Layout
from panelcad.model.profile import Profile

_PARAGRAPHS: Final = {Function.AIRSPEED: "(2)", Function.ALTITUDE: "(3)", Function.HEADING: "(4)"}
_PLACES: Final = {
    Function.AIRSPEED: "adjacent to and directly left of",
    Function.ALTITUDE: "adjacent to and directly right of",
    Function.HEADING: "adjacent to and directly below",
}
_LABELS: Final = {
    Function.AIRSPEED: "Airspeed",
    Function.ALTITUDE: "Altitude",
    Function.HEADING: "Direction of flight",
}
_T: Final = "14 CFR 23.1321(d){} before amendment 23-64"


@rule(
    "basic-t",
    title="Basic T of the flight instruments",
    measures="where airspeed, altitude and direction stand beside the attitude instrument; one display that shows all "
    "four satisfies it (23.1311), standby instruments are judged by visibility",
    looks_at=FROM_THE_SEAT,
    severities=(Severity.WARNING,),
    limits=("t_out_of_line", "t_apart"),
    source=_T.format(""),
)
def basic_t(laid: Layout) -> Iterator[Finding]:
    flight = flight_instruments(laid)
    attitude = flight.by_function.get(Function.ATTITUDE)
    if attitude is None or flight.spans:
        return
    for function in _PLACES:
        other = flight.by_function.get(function)
        if other is not None and other.id != attitude.id:
            yield from _out_of_place(attitude, other, function, laid.project.profile)


@rule(
    "top-centre",
    title="Attitude in the top centre position",
    measures="whether a flight instrument stands above the attitude instrument",
    looks_at=FROM_THE_SEAT,
    severities=(Severity.WARNING,),
    source=_T.format("(1)"),
)
def top_centre(laid: Layout) -> Iterator[Finding]:
    flight = flight_instruments(laid)
    attitude = flight.by_function.get(Function.ATTITUDE)
    if attitude is not None and not flight.spans:
        yield from _not_top(attitude, flight)


def _not_top(attitude: Seen, flight: FlightInstruments) -> Iterator[Finding]:
    height = _size(attitude)[1]
    for other in flight.each:
        if other.middle.y - attitude.middle.y > height / 2:
            problem = "Attitude is not in the top centre position"
            yield Finding(rule="top-centre", problem=problem, source=_T.format("(1)"), **_pair(attitude, other))


def _out_of_place(attitude: Seen, other: Seen, function: Function, profile: Profile) -> Iterator[Finding]:
    width, height = _size(attitude)
    across, along, size = _offsets(attitude, other, function, width, height)
    source = _T.format(_PARAGRAPHS[function])
    problem = f"{_LABELS[function]} is not {_PLACES[function]} attitude"
    what = {"rule": "basic-t", "problem": problem, "source": source, **_pair(attitude, other)}
    if along <= 0.0:
        yield Finding(**what)
    elif across > profile.t_out_of_line * height + TIE:
        yield Finding(**what, measured=across, required=profile.t_out_of_line * height, more_is_worse=True)
    elif along - size > profile.t_apart * width + TIE:
        yield Finding(**what, measured=along - size, required=profile.t_apart * width, more_is_worse=True)


def _offsets(
    attitude: Seen, other: Seen, function: Function, width: float, height: float
) -> tuple[float, float, float]:
    """Out of line, along the arm of the T from middle to middle, and the middles' distance when faces touch; in mm."""
    dx, dy = other.middle.x - attitude.middle.x, other.middle.y - attitude.middle.y
    other_width, other_height = _size(other)
    if function is Function.HEADING:
        return abs(dx), -dy, (height + other_height) / 2
    return abs(dy), -dx if function is Function.AIRSPEED else dx, (width + other_width) / 2


def _size(seen: Seen) -> tuple[float, float]:
    x1, y1, x2, y2 = seen.item.face.bounds
    return x2 - x1, y2 - y1


def _pair(a: Seen, b: Seen) -> dict[str, Any]:
    return {
        "severity": Severity.WARNING,
        "items": tuple(sorted((a.id, b.id))),
        "plate": b.plate.id,
        "where": (b.item.centre,),
    }


@rule(
    "flight-group",
    title="Flight instruments about the pilot's centre line",
    measures="offset of the middle of the flight instruments from the vertical plane of the pilot's forward vision",
    looks_at=FROM_THE_SEAT,
    severities=(Severity.ADVICE,),
    limits=("group_offset",),
)
def flight_group(laid: Layout) -> Iterator[Finding]:
    offset = group_offset(laid)
    limit = laid.project.profile.group_offset
    if offset is None or abs(offset) <= limit + TIE:
        return
    flight = flight_instruments(laid).each
    yield Finding(
        rule="flight-group",
        severity=Severity.ADVICE,
        problem="Flight instruments stand aside of the pilot's centre line",
        items=tuple(sorted(seen.id for seen in flight)),
        plate=flight[0].plate.id,
        measured=abs(offset),
        required=limit,
        more_is_worse=True,
        where=_offset_line(flight, offset),
        source="14 CFR 23.1321(d) before amendment 23-64, as nearly as practicable; AC 23.1311-1C table 3, from memory",
    )


def group_offset(laid: Layout) -> float | None:
    """How far right of the centre line the flight instruments' middle stands, in mm; None where it is not known."""
    eye = laid.project.surroundings.eye
    flight = flight_instruments(laid).each
    if eye is None or not flight:
        return None
    return sum(seen.middle.x for seen in flight) / len(flight) - eye.centre_line


def _offset_line(flight: tuple[Seen, ...], offset: float) -> tuple[Point, Point]:
    """From the middle of the group to the centre line, on the plate."""
    middle = Spot(*(sum(seen.middle[i] for seen in flight) / len(flight) for i in range(3)))
    frame = plate_frame(flight[0].plate)
    ends = (frame.to_plate(middle), frame.to_plate(middle._replace(x=middle.x - offset)))
    return Point(ends[0].x, ends[0].y), Point(ends[1].x, ends[1].y)


@rule(
    "engine-order",
    title="Identical engine instruments in engine order",
    measures="order from left to right of instruments and controls that serve one engine each",
    looks_at=FROM_THE_SEAT,
    severities=(Severity.WARNING,),
    source="14 CFR 23.1321(b) before amendment 23-64",
)
def engine_order(laid: Layout) -> Iterator[Finding]:
    alike: dict[tuple[Any, ...], list[Seen]] = {}
    for seen in seen_where(laid, "of one engine", lambda item: item.item.engine is not None):
        kind = (seen.item.purpose, frozenset(seen.item.shows), seen.plate.id)
        alike.setdefault(kind, []).append(seen)
    for group in alike.values():
        in_order = sorted(group, key=lambda seen: seen.middle.x)
        for left, right in pairwise(in_order):
            if (left.item.item.engine or 0) > (right.item.item.engine or 0):
                problem = "Engine instruments do not stand in engine order"
                source = "14 CFR 23.1321(b) before amendment 23-64"
                yield Finding(rule="engine-order", problem=problem, source=source, **_pair(left, right))
