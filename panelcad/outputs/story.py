"""An option told to its owner: what it adds and takes out, what it costs, weighs and draws, what is still open."""

from dataclasses import dataclass
from typing import Final

from panelcad.drawing.faces.kind import reading
from panelcad.drawing.faces.registry import HARDWARE, kind_of
from panelcad.model.finding import Severity
from panelcad.model.fingerprint import option_fingerprint
from panelcad.model.function import Function
from panelcad.model.project import AS_FOUND, Item, Option, Project
from panelcad.planning import figures
from panelcad.planning.cost import Cost
from panelcad.planning.judge import Judgement, Topic, judge
from panelcad.planning.owner import sentences
from panelcad.units import format_money

UNKNOWN: Final = "not known"
SMALL: Final = frozenset(HARDWARE) - {"engine-controls", "outlets", "key-switches", "vents"}
"""Families that an owner counts rather than reads one by one."""


@dataclass(frozen=True)
class Reading:
    """An instrument and what its owner reads about it."""

    item: str
    name: str
    text: str


@dataclass(frozen=True)
class Story:
    """Texts about one option. `cut_errors` forbid cutting; `plan_errors` are of equipment, loads and weight."""

    option: Option
    says: tuple[str, ...]
    adds: tuple[str, ...]
    takes_out: tuple[str, ...]
    small_added: int
    instruments: tuple[Reading, ...]
    price: str
    price_lines: tuple[tuple[str, str], ...]
    figures: tuple[tuple[str, str], ...]
    """Titles and texts: weight, load, battery, what is required."""
    functions: dict[Function, int]
    """How many independent sources each function has."""
    cut_errors: int
    plan_errors: int
    fingerprint: str

    @property
    def is_as_found(self) -> bool:
        return self.option.id == AS_FOUND


def stories(project: Project) -> tuple[Story, ...]:
    """The panel as found, then every option."""
    judgements = tuple(judge(project, option) for option in project.all_options)
    return tuple(story(judgement, judgements[0]) for judgement in judgements)


def story(judgement: Judgement, found: Judgement) -> Story:
    """Everything an owner reads about an option, beside the panel as found."""
    project, option = judgement.equipment.project, judgement.option
    added = _new_items(project.as_found, option)
    return Story(
        option=option,
        says=tuple(sentences(judgement, found)) if project.units else (),
        adds=_names(added, project),
        takes_out=_names(_new_items(option, project.as_found), project),
        small_added=sum(_is_small(item, project) for item in added),
        instruments=readings(project, option),
        price=_price(judgement),
        price_lines=_price_lines(judgement),
        figures=tuple((title, of(judgement)) for title, of in _FIGURES),
        functions={row.function: row.independent for row in judgement.matrix},
        cut_errors=_cut_errors(judgement),
        plan_errors=sum(judgement.count(topic, Severity.ERROR) for topic in Topic if topic is not Topic.SPACE),
        fingerprint=option_fingerprint(project, option),
    )


def _cut_errors(judgement: Judgement) -> int:
    """Open errors of the geometry; a rule that could not judge counts as one."""
    report = judgement.report
    return sum(f.severity is Severity.ERROR for f in report.findings) + len(report.not_judged)


def _load(judgement: Judgement) -> str:
    load, share = figures.worst_load(judgement), figures.alternator_share(judgement)
    return load if share == figures.UNKNOWN else f"{load}, {share}"


_FIGURES: Final = (
    ("Empty weight", figures.weight_difference),
    ("Useful load", figures.useful_load),
    ("Electrical load", _load),
    ("Battery alone lasts", figures.battery),
    ("Kind of flight", figures.flight),
    ("Required and missing", figures.missing),
    ("Single failures that leave too little", figures.bad_failures),
)


def readings(project: Project, option: Option) -> tuple[Reading, ...]:
    """What each item on the panel is for, the small ones too."""
    found = []
    for item in option.items:
        if item.cutout is None or item.plate is None:
            continue
        unit = project.unit_named(item.unit) if item.unit else None
        kind = kind_of(item, project.cutout(item.cutout), unit)
        found.append(Reading(item.id, item.name, reading(kind, item.name)))
    return tuple(found)


def _names(items: list[Item], project: Project) -> tuple[str, ...]:
    return tuple(item.name for item in items if not _is_small(item, project))


def _new_items(before: Option, after: Option) -> list[Item]:
    """Items of `after` that `before` has not: another id, another unit or another cutout is another thing."""
    known = {(item.id, item.unit, item.cutout) for item in before.items}
    return [item for item in after.items if (item.id, item.unit, item.cutout) not in known]


def _is_small(item: Item, project: Project) -> bool:
    return item.cutout is not None and project.cutout(item.cutout).family in SMALL


def _price(judgement: Judgement) -> str:
    if figures.is_as_found(judgement):
        return "nothing"
    return figures.total(judgement) if judgement.cost.lines else UNKNOWN


def _price_lines(judgement: Judgement) -> tuple[tuple[str, str], ...]:
    """Sums by kind, discount, contingency, tax and total; empty where there is nothing to add up."""
    quote = judgement.cost
    if figures.is_as_found(judgement) or not quote.lines:
        return ()
    kinds = dict.fromkeys(line.kind for line in quote.lines)
    sums = [(kind.value.capitalize(), quote.sum_of(kind)) for kind in kinds]
    more = [("Discount", -quote.discount), ("Contingency", quote.contingency), ("Tax", quote.tax)]
    lines = [(name, format_money(amount, quote.currency)) for name, amount in (*sums, *more) if amount]
    return (*lines, ("Total", figures.total(judgement)), *_not_known(quote))


def _not_known(quote: Cost) -> tuple[tuple[str, str], ...]:
    return (("Not known", f"{len(quote.unknown)} prices or hours"),) if quote.unknown else ()
