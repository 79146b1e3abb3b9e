"""The pieces that rules make findings of."""

from collections.abc import Callable
from typing import Any, NamedTuple, Self

from pydantic import PrivateAttr

from panelcad.checks.parts import Piece
from panelcad.checks.setting import Setting
from panelcad.geometry.gap import TIE
from panelcad.geometry.point import Point
from panelcad.model.finding import Cure, Finding, Severity
from panelcad.model.layout import Feature, PlacedItem
from panelcad.model.profile import Profile, limit_source


class Curable(Finding):
    """A finding that some moves would cure, each by itself; the check makes a cure of one that harms nothing else."""

    _work_out: Callable[[], tuple[Cure, ...]] = PrivateAttr(default=tuple)
    _moves: tuple[Cure, ...] | None = PrivateAttr(default=None)
    _is_alone: bool = PrivateAttr(default=False)

    def by(self, moves: Callable[[], tuple[Cure, ...]], *, is_alone: bool = False) -> Self:
        """The same finding, with what works out the moves when somebody asks.

        One `is_alone` is of one thing in its place, not between things of which one has to stay.
        """
        self._work_out, self._is_alone = moves, is_alone
        return self

    @property
    def is_alone(self) -> bool:
        return self._is_alone

    @property
    def moves(self) -> tuple[Cure, ...]:
        """The shortest first."""
        if self._moves is None:
            self._moves = self._work_out()
        return self._moves

    def cured(self, cure: Cure | None) -> "Tried":
        """The finding with this cure, or with none of its moves."""
        return Tried.model_construct(**{name: getattr(self, name) for name in Finding.model_fields} | {"cure": cure})


class Tried(Finding):
    """A finding that some moves would cure, and the one of them that harms nothing else; no cure where all do harm."""


class Bound(NamedTuple):
    """A value that must be reached, how grave it is to miss it, and why: the profile's limit, or a reason in words."""

    required: float
    severity: Severity
    limit: str

    @property
    def why(self) -> str:
        """The source as people read it."""
        return str(limit_source(self.limit)) if self.limit in Profile.model_fields else self.limit


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


def of_features(setting: Setting, *features: Feature) -> dict[str, Any]:
    """The fields of a finding about contours of the sheet, and where they are."""
    return {
        "items": tuple(sorted({feature.owner for feature in features})),
        "features": tuple(sorted(feature.id for feature in features)),
        "plate": setting.plate.id,
        "where": tuple(feature.centre for feature in features[:2]),
    }


def of_items(setting: Setting, *items: PlacedItem, at: Point | None = None) -> dict[str, Any]:
    """The fields of a finding about items, and where they are."""
    places = tuple(Point(item.placement.x, item.placement.y) for item in items[:1])
    return {
        "items": tuple(sorted(item.item.id for item in items)),
        "plate": setting.plate.id,
        "where": (at,) if at is not None else places,
    }


def short_of(measured: float, bound: Bound) -> dict[str, Any]:
    """The fields of a finding that compare a measured value with a bound."""
    return {
        "severity": bound.severity,
        "measured": measured,
        "required": bound.required,
        "source": bound.why,
    }
