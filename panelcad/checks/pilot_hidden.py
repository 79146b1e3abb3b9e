"""What glareshield and yoke hide of each face: from the pilot's eye, and from a shorter and a taller pilot's."""

from collections.abc import Iterator
from typing import Final, NamedTuple

import shapely
from shapely.geometry.base import BaseGeometry

from panelcad.checks.pilot_primary import flight_instruments
from panelcad.checks.pilot_sight import Facing, Seen, eye_spot, plate_frame, seen_where
from panelcad.checks.registry import FROM_THE_SEAT, rule
from panelcad.geometry.gap import TIE
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point
from panelcad.geometry.polygon import polygon
from panelcad.geometry.shadow import Solid, prism, shadow
from panelcad.geometry.space import Spot
from panelcad.model.finding import Finding, Measure, Severity
from panelcad.model.kept import kept, kept_with
from panelcad.model.layout import Layout
from panelcad.model.plate import Plate
from panelcad.model.profile import Profile, limit_source
from panelcad.model.surroundings import KeepOut, MovingPart, Volume

_CHORD: Final = 0.1


class EyeHeight(NamedTuple):
    """Whose eye, and how far above the eye point it is, in mm."""

    whose: str
    above: float


PILOT: Final = EyeHeight("the pilot", 0.0)


def eye_heights(profile: Profile) -> tuple[EyeHeight, ...]:
    return (
        PILOT,
        EyeHeight("a shorter pilot", -profile.eye_sweep),
        EyeHeight("a taller pilot", profile.eye_sweep),
    )


class Hidden(NamedTuple):
    """The hidden part of a face on its plate, its share of the face, and whose eye it is hidden from."""

    part: BaseGeometry
    share: float
    whose: str


class Obstruction(NamedTuple):
    """A solid before the pilot, in the axes of the plate that it is given for."""

    id: str
    plate: Plate
    solid: Solid


def obstructions(laid: Layout) -> tuple[Obstruction, ...]:
    """What stands before the plates and is not transparent: keep-outs marked solid and moving parts at rest."""
    return kept_with(laid, "obstructions of the view", lambda: tuple(_obstructions(laid)))


def _obstructions(laid: Layout) -> Iterator[Obstruction]:
    around = laid.project.surroundings
    plates = {plate.plate.id: plate.plate for plate in laid.plates}
    solid: tuple[KeepOut | MovingPart, ...] = tuple(each for each in around.keep_outs if each.is_solid)
    for thing in (*solid, *around.moving_parts):
        if thing.plate in plates and thing.volume.near < 0.0:
            yield Obstruction(thing.id, plates[thing.plate], _before_its_plate(thing.volume))


def _before_its_plate(volume: Volume) -> Solid:
    def make() -> Solid:
        footprint = Placement(volume.x, volume.y, volume.rotation).contour(volume.shape.contour())
        return prism(footprint, volume.near, min(volume.far, 0.0))

    return kept("solid before its plate", (volume,), make)


def obstruction_shadow(thing: Obstruction, plate: Plate | Facing, eye: Spot) -> BaseGeometry:
    """What one solid hides of a plate's plane from an eye in aircraft axes; in the plate's axes."""

    def make() -> BaseGeometry:
        there = plate_frame(plate)
        solid = thing.solid.carried(plate_frame(thing.plate), there)
        return shadow(solid, there.to_plate(eye))

    return kept("shadow of a solid", (thing.solid, thing.plate.frame, plate.frame, *eye), make)


def hidden_from(plate: Plate | Facing, laid: Layout, height: EyeHeight) -> BaseGeometry:
    """All that the solids before the pilot hide of a plate's plane from one eye, in the plate's axes.

    Nothing where the eye point is not known.
    """
    eye = laid.project.surroundings.eye
    if eye is None:
        return shapely.Polygon()
    spot = eye_spot(eye)._replace(y=eye.y + height.above)
    shadows = tuple(obstruction_shadow(thing, plate, spot) for thing in obstructions(laid))
    return kept("hidden of a plate", shadows, lambda: shapely.union_all(shadows))


def hidden_parts(seen: Seen, laid: Layout) -> tuple[Hidden, ...]:
    """What is hidden of one face from each of the three eyes; empty where the eye point is not known."""
    if laid.project.surroundings.eye is None:
        return ()
    heights = eye_heights(laid.project.profile)
    shadows = [hidden_from(seen.plate, laid, height) for height in heights]
    return kept(
        "hidden parts of a face",
        (seen.item, *shadows),
        lambda: tuple(_hidden(seen, dark, height.whose) for dark, height in zip(shadows, heights, strict=True)),
    )


def _hidden(seen: Seen, dark: BaseGeometry, whose: str) -> Hidden:
    face = polygon(seen.item.face, error=_CHORD)
    part = face.intersection(dark)
    return Hidden(part, part.area / face.area, whose)


@rule(
    "hidden-face",
    title="Share of a face hidden by glareshield or yoke",
    measures="share of each instrument's face that solids in front hide from the pilot's, a shorter and a taller eye, "
    "yoke in neutral",
    looks_at=FROM_THE_SEAT,
    severities=(Severity.WARNING, Severity.ADVICE),
    limits=("hidden_share", "eye_sweep"),
)
def hidden_face(laid: Layout) -> Iterator[Finding]:
    primary = {seen.id for seen in flight_instruments(laid).each}
    for seen in seen_where(laid, "shows something", lambda item: bool(item.shows)):
        parts = hidden_parts(seen, laid)
        worst = max(parts, key=lambda part: part.share, default=None)
        if worst is not None and worst.share > laid.project.profile.hidden_share + TIE:
            severity = Severity.WARNING if seen.id in primary else Severity.ADVICE
            yield _finding(seen, worst, severity, laid.project.profile.hidden_share)


def _finding(seen: Seen, worst: Hidden, severity: Severity, limit: float) -> Finding:
    middle = worst.part.representative_point()
    return Finding(
        rule="hidden-face",
        severity=severity,
        problem=f"Part of the face is hidden from {worst.whose}",
        items=(seen.id,),
        plate=seen.plate.id,
        measure=Measure.RATIO,
        measured=worst.share,
        required=limit,
        more_is_worse=True,
        where=(Point(middle.x, middle.y),),
        source=f"14 CFR 23.1321(a) before amendment 23-64; {limit_source('hidden_share')}",
    )
