"""What glareshield and yoke hide of each face: from the pilot's eye, and from a shorter and a taller pilot's."""

from collections.abc import Iterator
from typing import Final, NamedTuple

import shapely
from shapely.geometry.base import BaseGeometry

from panelcad.checks.pilot_primary import flight_instruments
from panelcad.checks.pilot_sight import Seen, eye_spot, plate_frame, seen_items
from panelcad.checks.registry import TheWhole, rule
from panelcad.geometry.gap import TIE
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point
from panelcad.geometry.polygon import polygon
from panelcad.geometry.shadow import shadow
from panelcad.geometry.space import Spot
from panelcad.model.finding import Finding, Measure, Severity
from panelcad.model.kept import kept
from panelcad.model.layout import Layout
from panelcad.model.plate import Plate
from panelcad.model.profile import Profile, limit_source
from panelcad.model.surroundings import Eye, Surroundings, Volume

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


def hidden_from(plate: Plate, around: Surroundings, eye: Eye, height: EyeHeight) -> BaseGeometry:
    """All that the solids in front of a plate hide of its plane from one eye, in the plate's axes.

    Solids are keep-outs marked solid and moving parts at rest, those given in this plate's own axes.
    """
    return kept(
        "hidden from an eye",
        (plate.frame, plate.id, around, eye, height.above),
        lambda: _all_shadows(plate, around, eye_spot(eye), height.above),
    )


def _all_shadows(plate: Plate, around: Surroundings, eye: Spot, above: float) -> BaseGeometry:
    local = plate_frame(plate).to_plate(eye._replace(y=eye.y + above))
    return shapely.union_all([volume_shadow(volume, local) for _, volume in solids(around, plate.id)])


def solids(around: Surroundings, plate_id: str) -> Iterator[tuple[str, Volume]]:
    """What stands in front of a plate and is not transparent: its id and its volume at rest."""
    for keep_out in around.keep_outs:
        if keep_out.is_solid and keep_out.plate == plate_id:
            yield keep_out.id, keep_out.volume
    for part in around.moving_parts:
        if part.plate == plate_id and part.volume.near < 0.0:
            yield part.id, part.volume


def volume_shadow(volume: Volume, eye: Spot) -> BaseGeometry:
    """What a solid hides of its plate's plane from an eye; both in the plate's axes."""
    footprint = Placement(volume.x, volume.y, volume.rotation).contour(volume.shape.contour())
    return shadow(footprint, volume.near, volume.far, eye)


def hidden_parts(seen: Seen, laid: Layout) -> tuple[Hidden, ...]:
    """What is hidden of one face from each of the three eyes; empty where the eye point is not known."""
    around, eye = laid.project.surroundings, laid.project.surroundings.eye
    if eye is None:
        return ()
    heights = eye_heights(laid.project.profile)
    shadows = [hidden_from(seen.plate.plate, around, eye, height) for height in heights]
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
    looks_at=TheWhole(),
    severities=(Severity.WARNING, Severity.ADVICE),
    limits=("hidden_share", "eye_sweep"),
)
def hidden_face(laid: Layout) -> Iterator[Finding]:
    primary = {seen.id for seen in flight_instruments(laid).each}
    for seen in seen_items(laid):
        if not seen.item.shows:
            continue
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
        plate=seen.plate.plate.id,
        measure=Measure.RATIO,
        measured=worst.share,
        required=limit,
        more_is_worse=True,
        where=(Point(middle.x, middle.y),),
        source=f"14 CFR 23.1321(a) before amendment 23-64; {limit_source('hidden_share')}",
    )
