"""In front: knobs, levers and plugs against each other, against bezels, and against what moves or hangs over."""

from collections.abc import Iterator

from panelcad.checks.finding import Bound, is_short, missed
from panelcad.checks.nearness import Nearness, in_space
from panelcad.checks.parts import Layer, Piece
from panelcad.checks.registry import EachPair, rule
from panelcad.checks.setting import Setting
from panelcad.geometry.gap import TIE
from panelcad.model.cutout import BodyKind
from panelcad.model.finding import Finding, Severity

_WORD = {BodyKind.KNOB: "Knob", BodyKind.LEVER: "Lever", BodyKind.PLUG: "Plug"}


def _between(a: Layer, b: Layer, limit: str) -> EachPair:
    def clearance(setting: Setting) -> float:
        return float(getattr(setting.profile, limit))

    return EachPair(a, b, clearance, clearance)


@rule(
    "knobs",
    title="Knobs, levers and plugs against each other",
    measures="gap between knobs, levers over their travel, and plugs of two items",
    looks_at=_between(Layer.BEFORE, Layer.BEFORE, "knob_gap"),
    severities=(Severity.ERROR, Severity.WARNING),
    limits=("knob_gap",),
)
def knobs(a: Piece, b: Piece, setting: Setting) -> Iterator[Finding]:
    first, second = sorted((_word(a), _word(b)))
    yield from _crowded("knobs", f"{first} and {second.lower()} are in each other's way", in_space(a, b, setting))


@rule(
    "knob-over-bezel",
    title="Knobs, levers and plugs against bezels",
    measures="gap between a knob, lever or plug and the bezel of something else",
    looks_at=_between(Layer.BEFORE, Layer.BEZELS, "knob_gap"),
    severities=(Severity.ERROR, Severity.WARNING),
    limits=("knob_gap",),
)
def knob_over_bezel(knob: Piece, bezel: Piece, setting: Setting) -> Iterator[Finding]:
    if knob.part.cut is None or knob.part.cut != bezel.part.cut:
        problem = f"{_word(knob)} is in the way of a bezel"
        yield from _crowded("knob-over-bezel", problem, in_space(knob, bezel, setting))


@rule(
    "front-keep-out",
    title="Knobs, levers and plugs in a space to be kept free",
    measures="gap between a knob, lever or plug and a keep-out such as the glareshield, less the panel's sway",
    looks_at=_between(Layer.BEFORE, Layer.KEEP_OUTS, "front_clearance"),
    severities=(Severity.ERROR,),
    limits=("front_clearance",),
)
def front_keep_out(knob: Piece, kept: Piece, setting: Setting) -> Iterator[Finding]:
    yield from _obstructs("front-keep-out", f"{_word(knob)} stands in a space to be kept free", knob, kept, setting)


@rule(
    "bezel-keep-out",
    title="Bezels in a space to be kept free",
    measures="gap between a bezel and a keep-out such as the glareshield, less the panel's sway",
    looks_at=_between(Layer.BEZELS, Layer.KEEP_OUTS, "front_clearance"),
    severities=(Severity.ERROR,),
    limits=("front_clearance",),
)
def bezel_keep_out(bezel: Piece, kept: Piece, setting: Setting) -> Iterator[Finding]:
    yield from _obstructs("bezel-keep-out", "Bezel stands in a space to be kept free", bezel, kept, setting)


@rule(
    "front-moving",
    title="Knobs, levers and plugs against what moves",
    measures="gap between a knob, lever or plug and the yoke, throttle or mixture over their whole travel",
    looks_at=_between(Layer.BEFORE, Layer.MOVING, "front_clearance"),
    severities=(Severity.ERROR,),
    limits=("front_clearance",),
)
def front_moving(knob: Piece, moving: Piece, setting: Setting) -> Iterator[Finding]:
    yield from _obstructs("front-moving", f"{_word(knob)} is in the way of a moving part", knob, moving, setting)


@rule(
    "bezel-moving",
    title="Bezels against what moves",
    measures="gap between a bezel and the yoke, throttle or mixture over their whole travel",
    looks_at=_between(Layer.BEZELS, Layer.MOVING, "front_clearance"),
    severities=(Severity.ERROR,),
    limits=("front_clearance",),
)
def bezel_moving(bezel: Piece, moving: Piece, setting: Setting) -> Iterator[Finding]:
    yield from _obstructs("bezel-moving", "Bezel is in the way of a moving part", bezel, moving, setting)


def _word(piece: Piece) -> str:
    return _WORD[piece.body] if piece.body else "Body"


def _crowded(rule_id: str, problem: str, near: Nearness) -> Iterator[Finding]:
    """In one place is an error, which only a lever that can be thrown the other way may be forgiven."""
    clearance = near.setting.profile.knob_gap
    bounds = (Bound(0.0, Severity.ERROR, "knob_gap"), Bound(clearance, Severity.WARNING, "knob_gap"))
    bound = missed(near.distance, *bounds)
    if bound is not None:
        may_stand = near.distance >= -TIE or BodyKind.LEVER in {near.a.body, near.b.body}
        yield near.finding(rule_id, problem, bound._replace(required=clearance), acceptable=may_stand)


def _obstructs(rule_id: str, problem: str, piece: Piece, other: Piece, setting: Setting) -> Iterator[Finding]:
    near = in_space(piece, other, setting)
    bound = Bound(setting.profile.front_clearance, Severity.ERROR, "front_clearance")
    if is_short(near.distance, bound.required):
        yield near.finding(rule_id, problem, bound)
