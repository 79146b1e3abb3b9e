"""Room for fingers: edge to edge between controls of two kinds. Pairs without a published figure are not judged."""

from collections.abc import Iterator
from typing import Final

from panelcad.checks.finding import Bound, is_short
from panelcad.checks.nearness import in_plan
from panelcad.checks.parts import Layer, Piece
from panelcad.checks.registry import EachPair, rule
from panelcad.checks.setting import Setting
from panelcad.model.cutout import Control
from panelcad.model.finding import Finding, Severity

_TOGGLE, _BUTTON, _ROTARY = Control.TOGGLE, Control.PUSH_BUTTON, Control.ROTARY
_SELECTOR, _ROCKER, _KEY = Control.SELECTOR, Control.ROCKER, Control.KEY
LIMITS: Final = {
    frozenset((_TOGGLE,)): "toggle_toggle",
    frozenset((_TOGGLE, _BUTTON)): "toggle_button",
    frozenset((_TOGGLE, _ROTARY)): "toggle_rotary",
    frozenset((_TOGGLE, _SELECTOR)): "toggle_selector",
    frozenset((_TOGGLE, _KEY)): "toggle_key",
    frozenset((_BUTTON,)): "button_button",
    frozenset((_BUTTON, _ROTARY)): "button_rotary",
    frozenset((_BUTTON, _SELECTOR)): "button_selector",
    frozenset((_ROTARY,)): "rotary_rotary",
    frozenset((_ROTARY, _SELECTOR)): "rotary_selector",
    frozenset((_SELECTOR,)): "selector_selector",
    frozenset((_ROCKER,)): "rocker_rocker",
    frozenset((_KEY,)): "key_key",
}


def _reach(setting: Setting) -> float:
    return max(float(getattr(setting.profile, name)) for name in LIMITS.values())


@rule(
    "finger-room",
    title="Room for fingers between controls",
    measures="gap between the parts of two controls that a hand takes hold of, by their kinds",
    looks_at=EachPair(Layer.BEFORE, Layer.BEFORE, _reach),
    severities=(Severity.ADVICE,),
    limits=tuple(LIMITS.values()),
)
def finger_room(a: Piece, b: Piece, setting: Setting) -> Iterator[Finding]:
    kinds = frozenset(kind for piece in (a, b) if (kind := piece.part.source.cutout.control) is not None)
    both = all(piece.part.source.cutout.control is not None for piece in (a, b))
    name = LIMITS.get(kinds) if both else None
    if name is None:
        return
    bound = Bound(float(getattr(setting.profile, name)), Severity.ADVICE, name)
    near = in_plan(a, b, setting)
    if is_short(near.distance, bound.required):
        yield near.finding("finger-room", "Little room for fingers between two controls", bound)
