"""Reach: controls within the arm of a small and of a large pilot, harness on, both with their eye at the eye point."""

from collections.abc import Iterator

from panelcad.checks.parts import Kind
from panelcad.checks.pilot_sight import eye_spot, plate_frame
from panelcad.checks.registry import EachPart, rule
from panelcad.checks.setting import Setting
from panelcad.geometry.gap import TIE
from panelcad.geometry.space import Spot
from panelcad.model.finding import Finding, Severity
from panelcad.model.layout import PlacedItem
from panelcad.model.profile import Profile, limit_source
from panelcad.model.surroundings import Eye


def shoulder(eye: Eye, profile: Profile) -> Spot:
    """The shoulder point in aircraft axes, in mm, on the pilot's centre line."""
    spot = eye_spot(eye)
    return Spot(eye.centre_line, spot.y - profile.shoulder_below_eye, spot.z - profile.shoulder_behind_eye)


def reach_to(placed: PlacedItem, setting: Setting, eye: Eye) -> float:
    """From the shoulder to the middle of a control's face, in mm."""
    target = plate_frame(setting.plate).on_face(placed.centre)
    return shoulder(eye, setting.profile).to(target).length


@rule(
    "reach",
    title="Controls within reach",
    measures="distance from the shoulder of a small and of a large pilot to the middle of each control",
    looks_at=EachPart((Kind.ITEM,)),
    severities=(Severity.ERROR, Severity.WARNING, Severity.ADVICE),
    limits=("reach_small", "reach_large", "shoulder_below_eye", "shoulder_behind_eye"),
)
def reach(placed: PlacedItem, setting: Setting) -> Iterator[Finding]:
    eye = setting.surroundings.eye
    if eye is None or (placed.cutout.control is None and not placed.item.reset_in_flight):
        return
    far = reach_to(placed, setting, eye)
    for name, whose in (("reach_large", "any pilot"), ("reach_small", "a small pilot")):
        limit = float(getattr(setting.profile, name))
        if far > limit + TIE:
            yield _finding(placed, setting, far, name, f"Out of reach of {whose}")
            return


def _finding(placed: PlacedItem, setting: Setting, far: float, name: str, problem: str) -> Finding:
    essential = placed.item.reset_in_flight
    grave = {"reach_large": Severity.ERROR, "reach_small": Severity.WARNING}
    mild = {"reach_large": Severity.WARNING, "reach_small": Severity.ADVICE}
    rests_on = "14 CFR 23.1357(d) before amendment 23-64; " if essential else ""
    return Finding(
        rule="reach",
        severity=(grave if essential else mild)[name],
        problem=f"{problem}, and it must be reset in flight" if essential else problem,
        items=(placed.item.id,),
        plate=setting.plate.id,
        measured=far,
        required=float(getattr(setting.profile, name)),
        more_is_worse=True,
        where=(placed.centre,),
        source=f"{rests_on}{limit_source(name)}",
    )
