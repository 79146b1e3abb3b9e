"""Judgements as plain data for JSON, documented in docs/json.md: kg, mm, A, minutes; money as exact text."""

from typing import Any

from panelcad.model.finding import Finding
from panelcad.outputs.plain import SHAPE
from panelcad.planning.balance import Balance
from panelcad.planning.compare import Comparison
from panelcad.planning.cost import Cost
from panelcad.planning.electrical.judge import Electrical
from panelcad.planning.envelope import LoadedCase
from panelcad.planning.failures import Outcome
from panelcad.planning.judge import Judgement
from panelcad.planning.redundancy import missing_minimums
from panelcad.planning.space import Space
from panelcad.planning.weight import Loading
from panelcad.planning.wording import cure_words, sentence


def comparison_as_plain(comparison: Comparison) -> dict[str, Any]:
    """All options of a comparison, and the rows that set them side by side."""
    return {
        "shape": SHAPE,
        "project": comparison.project.title,
        "options": [judgement_as_plain(judgement) for judgement in comparison.judgements],
        "rows": [
            {"topic": row.topic.value, "title": row.title, "differs": row.differs, "cells": [c.text for c in row.cells]}
            for row in comparison.rows
        ],
    }


def judgement_as_plain(judgement: Judgement) -> dict[str, Any]:
    """One option with its findings and figures; null is not known."""
    return {
        "shape": SHAPE,
        "project": judgement.equipment.project.title,
        "option": judgement.option.id,
        "name": judgement.option.name,
        "flight": judgement.equipment.flight.value if judgement.equipment.flight else None,
        "errors": len(judgement.errors),
        "findings": [
            {"topic": topic.value, **_finding(f, judgement)} for topic, fs in judgement.findings.items() for f in fs
        ],
        "accepted": [
            {"topic": topic.value, **_finding(each.finding, judgement)}
            | {"reason": each.acceptance.reason, "initials": each.acceptance.initials}
            for topic, accepted in judgement.accepted.items()
            for each in accepted
        ],
        "lapsed": [word.finding for word in judgement.lapsed],
        "units": [
            {"item": f.id, "name": f.name, "unit": f.unit.name, "place": f.place_words}
            for f in judgement.equipment.units
        ],
        "functions": [
            {"function": r.function.value, "providers": list(r.providers), "independent": r.independent}
            for r in judgement.matrix
        ],
        "functions_not_known_of": [item.id for item in judgement.equipment.nameless],
        "failures": [_outcome(outcome, judgement) for outcome in judgement.outcomes],
        "required": [
            {
                "id": r.requirement.id,
                "paragraph": r.requirement.paragraph,
                "state": r.state.value,
                "met_by": list(r.met_by),
            }
            for r in judgement.required
        ],
        "electrical": _electrical(judgement.electrical),
        "weight": _weight(judgement.balance),
        "cost": _cost(judgement.cost),
        "space": _space(judgement.space),
    }


def _finding(finding: Finding, judgement: Judgement) -> dict[str, Any]:
    return {
        "rule": finding.rule,
        "severity": finding.severity.value,
        "items": list(finding.items),
        "features": list(finding.features),
        "measure": finding.measure.value,
        "measured": finding.measured,
        "required": finding.required,
        "message": sentence(finding, judgement.equipment.project, judgement.option),
        "cure": cure_words(finding, judgement.equipment.project) or None,
        "source": finding.source,
        "identity": finding.identity,
    }


def _outcome(outcome: Outcome, judgement: Judgement) -> dict[str, Any]:
    kind = judgement.equipment.flight
    return {
        "failure": outcome.failure.id,
        "kind": outcome.failure.kind.value,
        "gone": [function.value for function in outcome.gone],
        "left": sorted(function.value for function in outcome.left),
        "fewer": [loss.function.value for loss in outcome.losses if not loss.is_total],
        "leaves_no": [m.name for m in missing_minimums(outcome, kind)] if kind else None,
    }


def _electrical(figures: Electrical | None) -> dict[str, Any] | None:
    if figures is None:
        return None
    lasts = figures.endurance
    return {
        "rating": figures.rating,
        "phases": [
            {
                "phase": r.phase.value,
                "continuous": r.continuous,
                "intermittent": r.intermittent,
                "unknown": list(r.unknown),
            }
            for r in figures.phases
        ],
        "battery_minutes": lasts.total_minutes if lasts else None,
        "circuits": [
            {
                "load": line.load.id,
                "bus": line.bus,
                "breaker": line.breaker,
                "gauge": line.gauge,
                "advised_gauge": line.advised_gauge,
                "length": line.length,
                "drop": line.drop,
            }
            for line in figures.schedule
        ],
    }


def _weight(figures: Balance) -> dict[str, Any]:
    change = figures.change
    return {
        "lines": [{"item": n.item, "what": n.what, "kg": n.kg, "arm": n.arm, "moment": n.moment} for n in change.lines],
        "old": _loading(change.old),
        "new": _loading(change.new),
        "useful_load": change.useful_load,
        "unknown": list(change.unknown),
        "extremes": [_case(case) for case in figures.after],
    }


def _case(case: LoadedCase) -> dict[str, Any]:
    return {"name": case.name, "inside": case.is_inside, "kg": case.loading.kg, "arm": case.loading.arm}


def _loading(loading: Loading | None) -> dict[str, Any] | None:
    return None if loading is None else {"kg": loading.kg, "arm": loading.arm, "moment": loading.moment}


def _cost(cost: Cost) -> dict[str, Any]:
    return {
        "currency": cost.currency,
        "lines": [{"name": n.name, "kind": n.kind.value, "amount": _money(n.amount)} for n in cost.lines],
        "hours": {task.value: str(hours) for task, hours in cost.hours_by_task().items()},
        "discount": str(cost.discount),
        "contingency": str(cost.contingency),
        "tax": str(cost.tax),
        "total": str(cost.total),
        "unknown": list(cost.unknown),
    }


def _money(amount: object) -> str | None:
    return None if amount is None else str(amount)


def _space(space: Space) -> dict[str, Any]:
    return {
        "fits": space.fits,
        "errors": space.errors,
        "faces_before": space.faces_before,
        "faces": space.faces,
        "not_placed": list(space.not_placed),
        "plates": [
            {
                "plate": p.plate,
                "area": p.area,
                "covered": p.covered,
                "free_width_share": p.free_width_share,
                "deepest": p.deepest,
                "stacks": [{"cut": s.cut, "height": s.height, "left": s.left} for s in p.stacks],
            }
            for p in space.plates
        ],
        "rooms": {room.cutout: room.count for room in space.rooms},
    }
