"""The rules, and how a rule is made.

A rule is a small pure function that yields findings. It says whether it looks at one part, at a pair of pieces or at
the whole option, so that a live check re-judges only what an edit touched:

    @rule(
        "web",
        title="Web between cuts",
        measures="metal left between the contours of two cuts",
        looks_at=EachPair(Layer.CUTS, Layer.CUTS, reach=lambda setting: setting.profile.web_advised),
        severities=(Severity.ERROR, Severity.WARNING),
        limits=("web_advised", "web_least_thicknesses"),
    )
    def web(a: Piece, b: Piece, setting: Setting) -> Iterator[Finding]: ...
"""

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from enum import StrEnum
from importlib import import_module
from importlib.metadata import entry_points
from typing import Any, Final, TypeVar

from panelcad.checks.parts import Kind, Layer
from panelcad.checks.report import Verdict
from panelcad.checks.setting import Setting
from panelcad.model.finding import Severity
from panelcad.model.profile import limit_source

ENTRY_POINT_GROUP: Final = "panelcad.rules"
"""Other packages name a module here; importing it registers its rules."""

Judge = TypeVar("Judge", bound=Callable[..., Iterable[Verdict]])


class Scope(StrEnum):
    ITEM = "one part"
    PAIR = "a pair"
    NEIGHBOURHOOD = "one part among its neighbours"
    WHOLE = "the whole option"


@dataclass(frozen=True)
class EachPart:
    """The rule is called as `judge(source, setting)` for each part of these kinds."""

    kinds: tuple[Kind, ...]
    scope: Scope = Scope.ITEM


@dataclass(frozen=True)
class EachPair:
    """The rule is called as `judge(a, b, setting)` for pieces of two parts that are nearer than `reach` mm in plan.

    Of what it yields for the same two parts only the worst of each severity is kept.
    """

    a: Layer
    b: Layer
    reach: Callable[[Setting], float]
    depth_reach: Callable[[Setting], float] | None = None
    """How near in depth, in mm; None where depth plays no part."""
    scope: Scope = Scope.PAIR


@dataclass(frozen=True)
class EachNeighbourhood:
    """The rule is called as `judge(source, near, setting)` for each part of this kind that has pieces on `layer`.

    `near` are the pieces of other parts on the layers `others` that are nearer than `reach` mm in plan.
    """

    kind: Kind
    layer: Layer
    others: tuple[Layer, ...]
    reach: Callable[[Setting], float]
    scope: Scope = Scope.NEIGHBOURHOOD


@dataclass(frozen=True)
class TheWhole:
    """The rule is called as `judge(layout)` once."""

    guards_moves: bool = False
    """Whether a move that would cure something is not offered where it makes this rule find more."""
    over_all_plates: bool = False
    """Whether it guards moves by all plates, else by the plate in question and those near enough to be touched."""
    scope: Scope = Scope.WHOLE


FROM_THE_SEAT: Final = TheWhole(guards_moves=True, over_all_plates=True)
"""What the pilot sees, reads and reaches, wherever on the plates it is; no cure makes that worse."""

Look = EachPart | EachPair | EachNeighbourhood | TheWhole


@dataclass(frozen=True)
class Rule:
    """A registered rule. `limits` are the names of the profile's fields it reads."""

    id: str
    title: str
    measures: str
    looks_at: Look
    severities: tuple[Severity, ...]
    limits: tuple[str, ...]
    source: str
    judge: Callable[..., Iterable[Verdict]]

    @property
    def scope(self) -> Scope:
        return self.looks_at.scope


@dataclass(frozen=True)
class Loaded:
    """The rules, by id, and what could not be loaded: entry point and reason."""

    rules: tuple[Rule, ...]
    failures: tuple[tuple[str, str], ...]


_PILOT: Final = (
    "pilot_controls",
    "pilot_crossed_words",
    "pilot_field",
    "pilot_fingers",
    "pilot_hidden",
    "pilot_hidden_words",
    "pilot_lights",
    "pilot_reach",
    "pilot_reading",
    "pilot_t",
)
_BUILT_IN: Final = (
    "bends",
    "bezels",
    "bodies",
    "bundles",
    "compass",
    "contours",
    "corner",
    "coverage",
    "depth",
    "edge_distance",
    "fit",
    "front",
    "hardware",
    "net_section",
    "outline",
    "overlay",
    "plates_apart",
    "service",
    "sheet",
    "stack",
    "web",
)
_rules: dict[str, Rule] = {}
_failures: dict[str, str] = {}
_loaded: list[str] = []


def rule(  # noqa: PLR0913 - a rule states all of this
    rule_id: str,
    *,
    title: str,
    measures: str,
    looks_at: Look,
    severities: tuple[Severity, ...],
    limits: tuple[str, ...] = (),
    source: str = "",
) -> Callable[[Judge], Judge]:
    """A decorator that registers a rule. Raises `ValueError` where the id is taken or no source is known."""

    def register(judge: Judge) -> Judge:
        if rule_id in _rules:
            raise ValueError(f"there is a rule '{rule_id}' already")
        said = source or "; ".join(dict.fromkeys(str(limit_source(name)) for name in limits))
        if not said:
            raise ValueError(f"the rule '{rule_id}' needs a source or limits that have one")
        _rules[rule_id] = Rule(rule_id, title, measures, looks_at, severities, limits, said, judge)
        return judge

    return register


def all_rules() -> tuple[Rule, ...]:
    """Every rule, built in or from another package, sorted by id."""
    return load_rules().rules


def load_rules() -> Loaded:
    """As `all_rules`, with what could not be loaded."""
    if not _loaded:
        for name in _BUILT_IN + _PILOT:
            import_module(f"panelcad.checks.{name}")
        _load_from_others()
        _loaded.append("done")
    return Loaded(tuple(_rules[rule_id] for rule_id in sorted(_rules)), tuple(sorted(_failures.items())))


def _load_from_others() -> None:
    for point in entry_points(group=ENTRY_POINT_GROUP):
        try:
            point.load()
        except Exception as problem:  # noqa: BLE001 - another package may fail in any way; it is reported as not judged
            _failures[point.name] = f"{type(problem).__name__}: {problem}"


def listing() -> list[dict[str, Any]]:
    """Each rule as plain data: id, title, scope, what it measures, severities, limits with defaults, source."""
    from panelcad.model.profile import Profile  # noqa: PLC0415 - only for listings

    defaults = Profile()
    return [
        {
            "id": each.id,
            "title": each.title,
            "scope": each.scope.value,
            "measures": each.measures,
            "severities": [severity.value for severity in each.severities],
            "limits": {name: getattr(defaults, name) for name in each.limits},
            "limit_sources": {name: str(limit_source(name)) for name in each.limits},
            "source": each.source,
        }
        for each in all_rules()
    ]
