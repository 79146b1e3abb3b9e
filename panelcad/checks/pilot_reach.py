"""Reach: controls within the arm of a small and of a large pilot, harness on, both with their eye at the eye point."""

import math
from collections.abc import Iterator
from typing import Final

from panelcad.checks.cures import rounded_up
from panelcad.checks.finding import Curable
from panelcad.checks.nearer import moves_nearer
from panelcad.checks.pilot_sight import Seen, eye_spot, seen_where
from panelcad.checks.registry import FROM_THE_SEAT, rule
from panelcad.geometry.gap import TIE
from panelcad.geometry.space import Spot
from panelcad.model.finding import Cure, Finding, Severity
from panelcad.model.layout import Layout, PlacedItem
from panelcad.model.profile import Profile, limit_source
from panelcad.model.surroundings import Eye
from panelcad.units import LengthUnit

BREAKERS: Final = "breakers"
_WHOSE: Final = {"reach_large": "any pilot", "reach_small": "a small pilot"}
_GRAVE: Final = {"reach_large": Severity.ERROR, "reach_small": Severity.WARNING}
_MILD: Final = {"reach_large": Severity.WARNING, "reach_small": Severity.ADVICE}


def shoulder(eye: Eye, profile: Profile) -> Spot:
    """The shoulder point in aircraft axes, in mm, on the pilot's centre line."""
    spot = eye_spot(eye)
    return Spot(eye.centre_line, spot.y - profile.shoulder_below_eye, spot.z - profile.shoulder_behind_eye)


def reach_to(seen: Seen, eye: Eye, profile: Profile) -> float:
    """From the shoulder to the middle of a control's face, in mm."""
    return shoulder(eye, profile).to(seen.middle).length


@rule(
    "reach",
    title="Controls within reach",
    measures="distance from the shoulder of a small and of a large pilot to the middle of each control, breakers only "
    "where they must be reset in flight; the farthest of a plate is shown",
    looks_at=FROM_THE_SEAT,
    severities=(Severity.ERROR, Severity.WARNING, Severity.ADVICE),
    limits=("reach_small", "reach_large", "shoulder_below_eye", "shoulder_behind_eye"),
)
def reach(laid: Layout) -> Iterator[Finding]:
    eye, profile = laid.project.surroundings.eye, laid.project.profile
    if eye is None:
        return
    beyond: dict[tuple[str, str, bool], list[tuple[float, Seen]]] = {}
    left_out = _breakers_left_out(laid, eye, profile)
    for seen in seen_where(laid, "reached for", _is_reached_for):
        limit = _missed(reach_to(seen, eye, profile), profile)
        if limit is not None:
            key = (seen.plate.id, limit, seen.item.item.reset_in_flight)
            beyond.setdefault(key, []).append((reach_to(seen, eye, profile), seen))
    for (plate, limit, essential), far in beyond.items():
        found = _finding(far, limit, profile, _GRAVE if essential else _MILD, hides_breakers=plate in left_out)
        arm = float(getattr(profile, limit))
        yield _mended(
            found, [seen for _, seen in sorted(far, key=_distance)], shoulder(eye, profile), arm, laid.project.unit
        )


def _distance(each: tuple[float, Seen]) -> float:
    return each[0]


def _mended(found: Curable, nearest_first: list[Seen], at: Spot, arm: float, unit: LengthUnit) -> Finding:
    """One control is moved; of several the move that the farthest needs is told, as no single move mends them all."""
    *others, farthest = nearest_first
    if not others:
        return found.by(lambda: moves_nearer(farthest, at, arm), is_alone=True)
    needed = moves_nearer(farthest, at, arm)
    return found.cured(_told(farthest, needed[0], unit)) if needed else found.cured(None)


def _told(farthest: Seen, move: Cure, unit: LengthUnit) -> Cure:
    way = ("left" if move.dx < 0 else "right") if move.dx else ("down" if move.dy < 0 else "up")
    name = farthest.item.item.name.replace("{", "{{").replace("}", "}}")
    advice = f"move the farthest, {name}, {{value}} {way} or more, and the others as far as they need"
    return Cure(item=farthest.id, advice=advice, value=rounded_up(math.hypot(move.dx, move.dy), unit))


def _is_reached_for(item: PlacedItem) -> bool:
    is_breaker = item.cutout.family == BREAKERS
    return item.item.reset_in_flight or (item.cutout.control is not None and not is_breaker)


def _breakers_left_out(laid: Layout, eye: Eye, profile: Profile) -> set[str]:
    """The plates with breakers as far away that nobody has to reset in flight; what is said of others says so."""
    seen = seen_where(laid, "breaker left out", _is_left_out)
    return {each.plate.id for each in seen if _missed(reach_to(each, eye, profile), profile) is not None}


def _is_left_out(item: PlacedItem) -> bool:
    return item.cutout.family == BREAKERS and not item.item.reset_in_flight


def _missed(far: float, profile: Profile) -> str | None:
    """The largest reach that does not suffice."""
    return next((name for name in _WHOSE if far > float(getattr(profile, name)) + TIE), None)


def _finding(
    beyond: list[tuple[float, Seen]],
    limit: str,
    profile: Profile,
    severities: dict[str, Severity],
    *,
    hides_breakers: bool,
) -> Curable:
    far, farthest = max(beyond, key=_distance)
    essential = severities is _GRAVE
    which = ", and to be reset in flight" if essential else ""
    without = " (breakers that need not be reset in flight are left out)" if hides_breakers and not essential else ""
    rests_on = "14 CFR 23.1357(d) before amendment 23-64; " if essential else ""
    return Curable(
        rule="reach",
        severity=severities[limit],
        problem=f"Out of reach of {_WHOSE[limit]}{which}{without}",
        items=tuple(sorted(seen.id for _, seen in beyond)),
        plate=farthest.plate.id,
        measured=far,
        required=float(getattr(profile, limit)),
        more_is_worse=True,
        where=(farthest.item.centre,),
        source=f"{rests_on}{limit_source(limit)}",
    )
