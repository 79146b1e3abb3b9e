"""Do the units of an option belong together? Needs, controllers, roles that two units fight for, renewed senders."""

from collections.abc import Iterator
from typing import Final

from panelcad.library.equipment import packaged_equipment
from panelcad.model.equipment import Need, Strength
from panelcad.model.finding import Finding, Severity
from panelcad.model.function import Function
from panelcad.planning.equipment import Change, Equipment, Fitted, change
from panelcad.planning.report import finding
from panelcad.planning.working import is_met, meets, others

ONE_ONLY: Final = frozenset(
    {
        Function.TRANSPONDER,
        Function.ADSB_OUT,
        Function.AUDIO_SELECTION,
        Function.INTERCOM,
        Function.AUTOPILOT_ROLL,
        Function.AUTOPILOT_PITCH,
        Function.AUTOPILOT_TRIM,
        Function.ELT,
    }
)
"""Functions of which only one unit may act at a time (common practice)."""
_PRACTICE: Final = "common practice"
_MAKERS: Final = "installation practice: a unit works only with what its maker says it needs"


def judge_belonging(equipment: Equipment) -> Iterator[Finding]:
    """Needs that nothing meets, circles of needs, roles that two units fight for, senders that stay old."""
    for fitted in equipment.units:
        for need in fitted.unit.needs:
            if need.strength is Strength.RENEWED:
                continue
            if not is_met(need, others(equipment.units, fitted), equipment):
                yield _unmet(fitted, need)
    yield from _fights(equipment)
    for circle in circles(equipment):
        yield finding(
            "circular-needs",
            Severity.ERROR,
            circle,
            "These units need each other in a circle to start",
            _MAKERS,
            acceptable=False,
        )
    yield from _old_senders(equipment, change(equipment.project, equipment.option))


def _unmet(fitted: Fitted, need: Need) -> Finding:
    if need.strength is not Strength.REQUIRED:
        return finding(
            "need-advised",
            Severity.ADVICE,
            (fitted.id,),
            f"Nothing in the option gives it the {need.words} it should have",
            _PRACTICE,
            features=(need.words,),
            advice=put_in(need),
        )
    rule = "no-controller" if need.controller else "need"
    whole = not need.for_functions or set(need.for_functions) >= set(fitted.unit.provides)
    words = f"Nothing in the option gives it the {need.words} it needs"
    if not whole:
        words = f"Without {need.words} it gives no {', '.join(need.for_functions)}"
    severity = Severity.ERROR if whole else Severity.WARNING
    return finding(rule, severity, (fitted.id,), words, _MAKERS, features=(need.words,), advice=put_in(need))


def put_in(need: Need) -> str:
    """Which units of the library would meet a need: the first three, or '' where none does."""
    units = packaged_equipment().units.values()
    titles = [u.title for u in units if need.supply in u.supplies or need.controller in u.controls]
    return f"put in, for example: {'; '.join(titles[:3])}" if titles else ""


def _fights(equipment: Equipment) -> Iterator[Finding]:
    for function in Function:
        providers = equipment.providers(function)
        if function in ONE_ONLY and len(providers) > 1:
            yield finding(
                "one-role",
                Severity.WARNING,
                tuple(fitted.id for fitted in providers),
                f"Only one unit may act as {function} at a time",
                _PRACTICE,
                features=(function.value,),
                measured=float(len(providers)),
                required=1.0,
                more_is_worse=True,
            )


def circles(equipment: Equipment) -> tuple[tuple[str, ...], ...]:
    """Ids of units that can only start after each other: what is left when all that can start have started."""
    waiting = list(equipment.units)
    started: list[Fitted] = []
    while ready := [f for f in waiting if _can_start(f, started, waiting, equipment)]:
        started.extend(ready)
        waiting = [f for f in waiting if f not in ready]
    stuck = {f.id: _waits_for(f, waiting) for f in waiting}
    return tuple(sorted({_circle(start, stuck) for start in stuck} - {()}))


def _can_start(fitted: Fitted, started: list[Fitted], waiting: list[Fitted], equipment: Equipment) -> bool:
    """Every required need is met by what has started, or by nothing at all, which is another finding."""
    rest = others(waiting, fitted)
    return all(
        is_met(need, started, equipment) or not is_met(need, rest, equipment) for need in _needed_to_start(fitted)
    )


def _needed_to_start(fitted: Fitted) -> list[Need]:
    return [n for n in fitted.unit.needs if n.strength is Strength.REQUIRED and n.supply and not n.for_functions]


def _waits_for(fitted: Fitted, waiting: list[Fitted]) -> tuple[str, ...]:
    needs = _needed_to_start(fitted)
    return tuple(f.id for f in others(waiting, fitted) if any(meets(f, n.supply, n.controller) for n in needs))


def _circle(start: str, waits_for: dict[str, tuple[str, ...]]) -> tuple[str, ...]:
    """The ids of the circle that leads back to `start`, sorted; empty where none does."""
    reached = _reach(start, waits_for)
    if start not in reached:
        return ()
    return tuple(sorted(one for one in reached if start in _reach(one, waits_for)))


def _reach(start: str, waits_for: dict[str, tuple[str, ...]]) -> set[str]:
    reached: set[str] = set()
    front = set(waits_for[start])
    while front - reached:
        reached |= front
        front = {after for one in front for after in waits_for[one]}
    return reached


def _old_senders(equipment: Equipment, work: Change) -> Iterator[Finding]:
    """Advice where a new unit needs senders renewed with it, and those of the aircraft as found stay."""
    installed = {fitted.id for fitted in work.installed}
    for fitted in work.installed:
        for need in fitted.unit.needs:
            if need.strength is not Strength.RENEWED:
                continue
            suppliers = [f for f in others(equipment.units, fitted) if meets(f, need.supply, need.controller)]
            there = bool(suppliers) or need.supply in equipment.supplied
            if there and not any(f.id in installed for f in suppliers):
                yield finding(
                    "old-senders",
                    Severity.ADVICE,
                    (fitted.id, *(f.id for f in suppliers)),
                    f"A new engine monitor is only as good as its {need.words}: renew them with it",
                    _PRACTICE,
                    features=(need.words,),
                )
