"""The second pilot's instruments: what repeats the pilot's own on the other side of the panel.

Seats side by side are each other's mirror image about the middle of the panel (common practice), and so are the eyes.
An instrument is the second pilot's where it stands on his side, shows a flight function, and shows nothing that the
pilot has not on his own side and within his field of view.
"""

from typing import Final

from panelcad.checks.pilot_sight import Seen, seen_items, sight_of
from panelcad.checks.pilot_zones import IMPORTANT_ZONE, worst_excess
from panelcad.geometry.point import Point
from panelcad.geometry.space import PlateFrame, Spot
from panelcad.model.function import Function
from panelcad.model.kept import kept_with
from panelcad.model.layout import Layout, PlateLayout
from panelcad.model.surroundings import Eye

FLOWN_BY: Final = frozenset(
    {
        *(Function.ATTITUDE, Function.AIRSPEED, Function.ALTITUDE, Function.HEADING, Function.VERTICAL_SPEED),
        *(Function.RATE_OF_TURN, Function.SLIP, Function.COURSE_DEVIATION),
    }
)
SIDE_BY_SIDE: Final = 100.0
"""With the pilot's centre line nearer the middle of the panel than this, in mm, the seats are not side by side."""


def eye_for(seen: Seen, laid: Layout, eye: Eye) -> Eye:
    """The eye that an instrument is for: the pilot's, or the second pilot's."""
    if seen.id not in second_pilots(laid):
        return eye
    middle = _middle(laid)
    return eye.revised(x=2 * middle - eye.x, centre_line=2 * middle - eye.centre_line)


def second_pilots(laid: Layout) -> frozenset[str]:
    """Ids of the items that are the second pilot's; none without an eye point or where the pilot sits in the middle."""
    return kept_with(laid, "second pilot's instruments", lambda: _second_pilots(laid))


def _second_pilots(laid: Layout) -> frozenset[str]:
    eye = laid.project.surroundings.eye
    if eye is None:
        return frozenset()
    middle = _middle(laid)
    side = eye.centre_line - middle
    if abs(side) < SIDE_BY_SIDE:
        return frozenset()
    there = [seen for seen in seen_items(laid) if (seen.middle.x - middle) * side < 0]
    his = {seen.id for seen in there}
    own = frozenset[Function]().union(
        *(seen.item.shows for seen in seen_items(laid) if seen.id not in his and _in_view(seen, laid, eye))
    )
    return frozenset(seen.id for seen in there if seen.item.shows & FLOWN_BY and seen.item.shows <= own)


def _in_view(seen: Seen, laid: Layout, eye: Eye) -> bool:
    profile = laid.project.profile
    sight = sight_of(seen.plate, eye, profile.line_of_sight_down)
    return worst_excess(sight, seen, IMPORTANT_ZONE, profile) is None


def _middle(laid: Layout) -> float:
    """The x in aircraft axes half way between the outermost edges of the plates."""
    edges = [spot.x for plate in laid.plates for spot in _corners(plate)]
    return (min(edges) + max(edges)) / 2


def _corners(plate: PlateLayout) -> tuple[Spot, ...]:
    frame = plate.plate.frame
    at = PlateFrame(Spot(frame.x, frame.y, frame.z), frame.tilt, frame.cant)
    left, low, right, high = plate.outline.bounds
    return tuple(at.on_face(Point(x, y)) for x in (left, right) for y in (low, high))
