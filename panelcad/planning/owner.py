"""What an option means to the owner, in plain words."""

from collections.abc import Iterator
from typing import Final

from panelcad.model.function import Function
from panelcad.planning.failures import FailureKind, Outcome
from panelcad.planning.figures import format_arm, is_as_found, new_weight, signed_mass, total
from panelcad.planning.judge import Judgement
from panelcad.planning.redundancy import FunctionRow, missing_minimums


def gained(judgement: Judgement, found: Judgement) -> tuple[Function, ...]:
    """Functions the option has and the panel as found has not."""
    before, after = _provided(found), _provided(judgement)
    return tuple(function for function in after if function not in before)


def lost(judgement: Judgement, found: Judgement) -> tuple[Function, ...]:
    """Functions the panel as found has and the option has not."""
    return gained(found, judgement)


def more_independent(judgement: Judgement, found: Judgement) -> tuple[Function, ...]:
    """Functions that were there and have more independent sources now."""
    before, after = _provided(found), _provided(judgement)
    return tuple(f for f, row in after.items() if f in before and row.independent > before[f].independent)


def fewer_independent(judgement: Judgement, found: Judgement) -> tuple[Function, ...]:
    """Functions that are still there and have fewer independent sources now."""
    return more_independent(found, judgement)


def _provided(judgement: Judgement) -> dict[Function, FunctionRow]:
    return {row.function: row for row in judgement.matrix if row.providers}


def sentences(judgement: Judgement, found: Judgement) -> Iterator[str]:
    """What the option adds, gives up, doubles, costs and weighs; one sentence each, nothing where there is nothing."""
    if is_as_found(judgement):
        yield "This is the panel before any work, to hold the options against."
        return
    for words, functions in (
        ("It adds", tuple(gained(judgement, found))),
        ("It has more independent sources than before of", more_independent(judgement, found)),
        ("It gives up", tuple(explained(f) for f in lost(judgement, found))),
        ("It has fewer independent sources than before of", _drops(judgement, found)),
    ):
        if functions:
            yield f"{words} {listed(functions)}."
    yield from _not_known(judgement, found)
    yield f"It costs {total(judgement)}{_because(judgement)}."
    yield _weight_sentence(judgement)


def _drops(judgement: Judgement, found: Judgement) -> tuple[str, ...]:
    """'course deviation (1 instead of 2)'."""
    before, after = _provided(found), _provided(judgement)
    return tuple(
        f"{f} ({after[f].independent} instead of {before[f].independent})" for f in fewer_independent(judgement, found)
    )


def explained(function: Function) -> str:
    """The function, and what it is good for where its name does not say so."""
    meaning = _MEANINGS.get(function)
    return f"{function} ({meaning})" if meaning else function.value


_MEANINGS: Final = {
    Function.ADF: "a needle that points to radio beacons",
    Function.DME: "the distance to a ground station",
    Function.NAV: "following ground beacons and landing aids by radio",
    Function.GLIDE_SLOPE: "the height to fly on an instrument landing",
    Function.MARKER_BEACON: "lamps that light up over beacons before the runway",
    Function.COURSE_DEVIATION: "a needle that shows how far off course one is",
    Function.SUCTION: "a gauge of the vacuum that drives air-driven gyros",
    Function.MANIFOLD_PRESSURE: "how hard the engine works",
    Function.ALTITUDE_REPORTING: "the height that the transponder sends to radar",
    Function.ADSB_OUT: "sending one's own place to others",
    Function.ADSB_IN: "receiving the place of others",
    Function.MAGNETIC_DIRECTION: "the compass",
    Function.SLIP: "the ball",
}
"""What an owner who is no engineer reads beside a name. Common practice."""


def _not_known(judgement: Judgement, found: Judgement) -> Iterator[str]:
    """Of which equipment nobody has said what it does; without it a list of what is gained and lost is not whole."""
    if names := tuple(item.name for item in judgement.equipment.nameless):
        yield f"Functions not known of {listed(names)}; what they give is not counted."
    stays = {item.id for item in judgement.equipment.nameless}
    if out := tuple(item.name for item in found.equipment.nameless if item.id not in stays):
        yield f"Functions not known of {listed(out)} in the panel as found; what goes with them is not known."


def _because(judgement: Judgement) -> str:
    unknown = judgement.cost.unknown
    return f"; not known: {', '.join(unknown)}" if unknown else ""


def _weight_sentence(judgement: Judgement) -> str:
    change = judgement.balance.change
    unit = judgement.equipment.project.unit
    text = f"It changes the empty weight by {signed_mass(change.known_mass_difference, unit)}"
    if change.new is not None:
        text = f"{text} to {new_weight(judgement)}"
    if change.old is None or change.new is None:
        return f"{text}; the new centre of gravity is not known."
    return (
        f"{text} and moves the empty CG from {format_arm(change.old.arm, unit)} to {format_arm(change.new.arm, unit)}."
    )


def listed(words: tuple[str, ...]) -> str:
    """'a, b and c'."""
    *first, last = words
    return f"{', '.join(first)} and {last}" if first else last


def failure_sentences(judgement: Judgement) -> Iterator[str]:
    """What each single failure takes away for good, the ones that leave too little for the flight first."""
    kind = judgement.equipment.flight
    bad = {id(o): missing_minimums(o, kind) for o in judgement.outcomes} if kind else {}
    ranked = sorted(judgement.outcomes, key=lambda outcome: not bad.get(id(outcome)))
    for outcome in ranked:
        if outcome.gone:
            missing = bad.get(id(outcome), ())
            ending = (
                f" That leaves no {listed(tuple(m.name.removeprefix('one ') for m in missing))}." if missing else ""
            )
            yield f"{_failed(outcome)}: no more {listed(outcome.gone)}.{ending}"


def critical_failures(judgement: Judgement) -> Iterator[str]:
    """One sentence for each single failure that leaves too little for the flight: what fails, what is not left."""
    kind = judgement.equipment.flight
    if kind is None:
        return
    for outcome in judgement.outcomes:
        missing = missing_minimums(outcome, kind)
        if missing:
            names = listed(tuple(f"no {m.name.removeprefix('one ')}" for m in missing))
            yield f"{_failed(outcome)}: {names} left."


def _failed(outcome: Outcome) -> str:
    name = outcome.failure.name
    if outcome.failure.kind is FailureKind.ALTERNATOR:
        return f"{name} fails and what is not kept is shed"
    return f"{name} fails"
