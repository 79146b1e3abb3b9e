"""Findings about equipment, made in one line each."""

from panelcad.model.finding import Cure, Finding, Measure, Severity


def finding(  # noqa: PLR0913 - a finding says all of this
    rule: str,
    severity: Severity,
    items: tuple[str, ...],
    problem: str,
    source: str,
    *,
    features: tuple[str, ...] = (),
    measure: Measure = Measure.COUNT,
    measured: float | None = None,
    required: float | None = None,
    acceptable: bool = True,
    more_is_worse: bool = False,
    advice: str = "",
    advised: float | None = None,
) -> Finding:
    """A finding about the whole option; what it measures, and what is advised instead, is in the unit of `measure`.

    `advice` may hold '{value}', the place of what is advised.
    """
    cure = Cure(item=min(items, default=""), advice=advice, value=advised, measure=measure) if advice else None
    return Finding(
        rule=rule,
        severity=severity,
        items=tuple(sorted(items)),
        features=features,
        plate="",
        problem=problem,
        measure=measure,
        measured=measured,
        required=required,
        source=source,
        acceptable=acceptable,
        more_is_worse=more_is_worse,
        cure=cure,
    )


def unknown(rule: str, problem: str, *items: str) -> Finding:
    """A warning that something is not known; unknown is never safe."""
    return finding(rule, Severity.WARNING, items, problem, "arithmetic on what was entered; unknown is never safe")
