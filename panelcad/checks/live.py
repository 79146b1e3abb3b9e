"""Checking again after each edit, judging only what the edit touched. Always equal to a full check."""

from collections.abc import Iterator

from panelcad.checks.bench import Bench
from panelcad.checks.registry import Loaded, load_rules
from panelcad.checks.report import CheckReport, Verdict
from panelcad.checks.run import cured, reported, setting_of, whole_verdicts
from panelcad.checks.trial import Trials
from panelcad.model.layout import Layout, PlateLayout, layout
from panelcad.model.project import Project


class LiveChecker:
    """Keeps what is known of the option checked last. Not for several threads at once.

    `rules` stands for all registered rules where it is not given.
    """

    def __init__(self, rules: Loaded | None = None) -> None:
        self._rules = rules or load_rules()
        self._benches: dict[str, Bench] = {}

    def update(self, project: Project, option_id: str, *, with_cures: bool = True) -> CheckReport:
        """The report on this option of the project as it is now. Raises `UnknownName`.

        Without cures no moves are tried: the same findings, and sooner, for tries take longer than to judge one edit.
        """
        laid = layout(project, project.option(option_id))
        self._benches = {plate.plate.id: self._bench(plate, laid) for plate in laid.plates}
        trials = {plate.plate.id: self._trials(plate, laid) for plate in laid.plates} if with_cures else {}
        verdicts = [v for each in trials.values() for v in each.verdicts()] if with_cures else [*self._without_cures()]
        return reported(laid, [*verdicts, *cured(whole_verdicts(laid, self._rules), trials)], self._rules)

    def _trials(self, plate: PlateLayout, laid: Layout) -> Trials:
        return Trials(self._benches[plate.plate.id], plate, laid, self._rules.rules)

    def _without_cures(self) -> Iterator[Verdict]:
        verdicts = (verdict for bench in self._benches.values() for verdict in bench.verdicts())
        return cured(verdicts, {})

    def _bench(self, plate: PlateLayout, laid: Layout) -> Bench:
        """The plate's bench, its parts laid; an empty one where the sheet itself or the limits changed."""
        setting = setting_of(plate, laid)
        bench = self._benches.get(plate.plate.id)
        if bench is None or not bench.setting.is_same(setting):
            bench = Bench(setting, self._rules.rules)
        bench.lay(plate)
        return bench
