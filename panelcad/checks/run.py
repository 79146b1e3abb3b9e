"""Checking an option: `check(project, option)` is the whole of it."""

from collections.abc import Iterable, Iterator, Mapping

from panelcad.checks.acceptance import sort_out
from panelcad.checks.bench import Bench
from panelcad.checks.finding import Curable
from panelcad.checks.judging import judged
from panelcad.checks.registry import Loaded, TheWhole, load_rules
from panelcad.checks.report import CheckReport, NotJudged, Unknown, Verdict, in_order
from panelcad.checks.setting import Setting
from panelcad.checks.trial import Trials
from panelcad.model.finding import Finding
from panelcad.model.layout import Layout, PlateLayout, layout
from panelcad.model.project import Option, Project


def check(project: Project, option: Option, rules: Loaded | None = None) -> CheckReport:
    """Every finding of every rule on one option.

    A rule that crashed is named in `not_judged`. `rules` stands for all registered rules where it is not given.
    """
    laid = layout(project, option)
    loaded = rules or load_rules()
    trials = {plate.plate.id: _trials(plate, laid, loaded) for plate in laid.plates}
    verdicts = [v for each in trials.values() for v in each.verdicts()]
    return reported(laid, [*verdicts, *cured(whole_verdicts(laid, loaded), trials)], loaded)


def setting_of(plate: PlateLayout, laid: Layout) -> Setting:
    """The setting of a plate of this layout."""
    return Setting(plate.plate, plate.outline, laid.project.profile, laid.project.surroundings)


def whole_verdicts(laid: Layout, loaded: Loaded) -> list[Verdict]:
    """What the rules about the whole option say."""
    return [v for rule in loaded.rules if isinstance(rule.looks_at, TheWhole) for v in judged(rule, laid)]


def reported(laid: Layout, verdicts: Iterable[Verdict], loaded: Loaded) -> CheckReport:
    """The report of these verdicts, acceptances applied."""
    every = list(verdicts)
    broken = {NotJudged(name, reason) for name, reason in loaded.failures}
    broken.update(verdict for verdict in every if isinstance(verdict, NotJudged))
    unknown = {verdict for verdict in every if isinstance(verdict, Unknown)}
    findings = in_order(verdict for verdict in every if isinstance(verdict, Finding))
    still_open, accepted, lapsed = sort_out(findings, laid)
    return CheckReport(
        laid.project,
        laid.option,
        tuple(still_open),
        accepted,
        lapsed,
        tuple(sorted(broken)),
        tuple(sorted(unknown)),
    )


def cured(verdicts: Iterable[Verdict], trials: Mapping[str, Trials]) -> Iterator[Verdict]:
    """Verdicts about the whole, with the cures that were tried on their plates; none without trials."""
    for verdict in verdicts:
        if not isinstance(verdict, Curable):
            yield verdict
        elif verdict.plate in trials:
            yield from trials[verdict.plate].with_cure(verdict)
        else:
            yield verdict.cured(None)


def _trials(plate: PlateLayout, laid: Layout, loaded: Loaded) -> Trials:
    bench = Bench(setting_of(plate, laid), loaded.rules)
    bench.lay(plate)
    return Trials(bench, plate, laid, loaded.rules)
