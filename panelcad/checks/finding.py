"""The pieces that rules make findings of."""

from typing import Any, NamedTuple

from panelcad.checks.parts import Piece
from panelcad.checks.setting import Setting
from panelcad.geometry.gap import TIE, Gap
from panelcad.model.finding import Severity
from panelcad.model.profile import limit_source


class Bound(NamedTuple):
    """A value that must be reached, how grave it is to miss it, and the profile's limit it comes from."""

    required: float
    severity: Severity
    limit: str


def is_short(measured: float, required: float) -> bool:
    """Whether a measured value misses its limit; an exact tie passes."""
    return measured < required - TIE


def missed(measured: float, *bounds: Bound) -> Bound | None:
    """The first of these bounds, the gravest first, that the measured value misses."""
    return next((bound for bound in bounds if is_short(measured, bound.required)), None)


def about(setting: Setting, *pieces: Piece) -> dict[str, Any]:
    """The fields of a finding that say what it is about."""
    return {
        "items": tuple(sorted({piece.owner for piece in pieces})),
        "features": tuple(sorted({piece.id for piece in pieces if piece.name})),
        "plate": setting.plate.id,
    }


def falls_short(gap: Gap, bound: Bound) -> dict[str, Any]:
    """The fields of a finding that say what was measured, in mm, what is required, where and why."""
    return {
        "severity": bound.severity,
        "measured": gap.distance,
        "required": bound.required,
        "where": (gap.a, gap.b),
        "source": str(limit_source(bound.limit)),
    }
