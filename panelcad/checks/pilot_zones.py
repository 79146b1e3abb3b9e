"""Zones of the pilot's view: rectangles in angle about a line of sight below the horizontal."""

from typing import Final, NamedTuple

from panelcad.checks.pilot_sight import Seen, Sight
from panelcad.model.finding import Severity
from panelcad.model.profile import Profile

ANGLE_TIE: Final = 1e-9


class Zone(NamedTuple):
    """Limits in degrees and the profile's names of them."""

    rule: str
    sideways: str
    up: str
    down: str
    severity: Severity


PRIMARY_ZONE: Final = Zone("view-primary", "primary_sideways", "primary_up", "primary_down", Severity.WARNING)
ADVISED_ZONE: Final = PRIMARY_ZONE._replace(severity=Severity.ADVICE)
IMPORTANT_ZONE: Final = Zone("view-important", "important_sideways", "important_up", "important_down", Severity.WARNING)


class Excess(NamedTuple):
    """An angle, the limit it exceeds, and the limit's name."""

    angle: float
    limit: float
    name: str


def worst_excess(sight: Sight, seen: Seen, zone: Zone, profile: Profile) -> Excess | None:
    """By what the middle of a face lies outside a zone the most, in degrees; None inside it."""
    point = seen.item.centre
    above = sight.above(point)
    angles = ((zone.sideways, abs(sight.sideways(point))), (zone.up, above), (zone.down, -above))
    excesses = [Excess(angle, float(getattr(profile, name)), name) for name, angle in angles]
    worst = max(excesses, key=lambda excess: excess.angle - excess.limit)
    return worst if worst.angle > worst.limit + ANGLE_TIE else None
