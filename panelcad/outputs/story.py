"""An option told to its owner: what it adds and takes out, what it costs, weighs and draws, what is still open."""

from dataclasses import dataclass
from decimal import Decimal
from typing import Final

from panelcad.drawing.faces.registry import HARDWARE, kind_of
from panelcad.model.finding import Finding
from panelcad.model.fingerprint import option_fingerprint
from panelcad.model.function import Function
from panelcad.model.project import AS_FOUND, Item, Option, Project
from panelcad.outputs.instrument_words import instrument_words
from panelcad.planning import figures
from panelcad.planning.cost import Cost
from panelcad.planning.equipment import Equipment
from panelcad.planning.judge import Judgement, Topic, judge
from panelcad.planning.owner import critical_failures, sentences
from panelcad.planning.wording import sentence
from panelcad.planning.working import working
from panelcad.units import format_money

_FAILURES: Final = "Single failures that leave too little"
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
    """Texts about one option. Errors of the fit forbid cutting; the others are of equipment, loads and weight."""

    option: Option
    says: tuple[str, ...]
    adds: tuple[str, ...]
    takes_out: tuple[str, ...]
    small_added: tuple[str, ...]
    """Switches, breakers, lamps, jacks and blanks, by name."""
    instruments: tuple[Reading, ...]
    price: str
    price_lines: tuple[tuple[str, str], ...]
    figures: tuple[tuple[str, str], ...]
    """Titles and texts: weight, load, battery, what is required."""
    failures: tuple[str, ...]
    """A sentence for each single failure that leaves too little for the flight."""
    functions: dict[Function, int]
    """How many independent sources each function has."""
    fit_errors: tuple[str, ...]
    plan_errors: tuple[str, ...]
    """A sentence for each open error."""
    open_errors: str
    """How many errors are open and what that means; '' where none is."""
    fingerprint: str

    @property
    def failures_known(self) -> bool:
        """False where the kind of flight is not stated, so that nobody knows what must be left."""
        return dict(self.figures)[_FAILURES] != figures.UNKNOWN

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
    added, gone = _new_items(project.as_found, option), _new_items(option, project.as_found)
    fit, plan = _errors(judgement)
    return Story(
        option=option,
        says=tuple(sentences(judgement, found)) if project.units else (),
        adds=_added(added, gone, project),
        takes_out=_taken_out(added, gone, project),
        small_added=tuple(item.name for item in added if _is_small(item, project)),
        instruments=readings(judgement.equipment),
        price=_price(judgement),
        price_lines=_price_lines(judgement),
        figures=tuple((title, of(judgement)) for title, of in _FIGURES),
        failures=tuple(critical_failures(judgement)),
        functions={row.function: row.independent for row in judgement.matrix},
        fit_errors=fit,
        plan_errors=plan,
        open_errors=figures.open_errors(judgement),
        fingerprint=option_fingerprint(project, option),
    )


def _errors(judgement: Judgement) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """Sentences about errors of the fit, a rule that could not judge among them, and about all other errors."""
    of_fit = {finding.identity for finding in judgement.findings[Topic.SPACE]}
    told = [(error.identity in of_fit, _told(error, judgement)) for error in judgement.errors]
    return tuple(text for fit, text in told if fit), tuple(text for fit, text in told if not fit)


def _told(error: Finding, judgement: Judgement) -> str:
    return sentence(error, judgement.equipment.project, judgement.option)


def _load(judgement: Judgement) -> str:
    load, share = figures.worst_load(judgement), figures.alternator_share(judgement)
    return load if share == figures.UNKNOWN else f"{load}, {share}"


_FIGURES: Final = (
    ("Change of empty weight", figures.weight_difference),
    ("New empty weight", figures.new_weight),
    ("Useful load", figures.useful_load),
    ("Electrical load", _load),
    ("Battery alone lasts", figures.battery),
    ("Kind of flight", figures.flight),
    ("Required and missing", figures.missing),
    (_FAILURES, figures.bad_failures),
)


def readings(equipment: Equipment) -> tuple[Reading, ...]:
    """What each item on the panel is for, the small ones too."""
    project, found = equipment.project, []
    for item in equipment.option.items:
        if item.cutout is None or item.plate is None:
            continue
        unit = project.unit_named(item.unit) if item.unit else None
        kind = kind_of(item, project.cutout(item.cutout), unit)
        does = working(equipment).functions.get(item.id, frozenset()) if unit and unit.provides else None
        found.append(Reading(item.id, item.name, instrument_words(kind, item.name, does)))
    return tuple(found)


def _added(added: list[Item], gone: list[Item], project: Project) -> tuple[str, ...]:
    """What comes, in the order in which an owner sees and pays it, and what each thing replaces."""
    old = {item.id: item.name for item in gone}
    same = {item.name for item in gone}
    shown = sorted((i for i in added if not _is_small(i, project)), key=lambda item: _weight_for_owner(item, project))
    return tuple(_replacing(item, old.get(item.id) or (item.name if item.name in same else None)) for item in shown)


def _replacing(item: Item, before: str | None) -> str:
    if before is None:
        return item.name
    return f"{item.name} (replaces {'the old one' if before == item.name else before})"


def _taken_out(added: list[Item], gone: list[Item], project: Project) -> tuple[str, ...]:
    ids, names = {item.id for item in added}, {item.name for item in added}
    return tuple(
        f"{item.name} (replaced)" if item.id in ids or item.name in names else item.name
        for item in sorted(gone, key=lambda item: _weight_for_owner(item, project))
        if not _is_small(item, project)
    )


def _weight_for_owner(item: Item, project: Project) -> tuple[bool, Decimal]:
    """Sorts what is seen on the panel first, and what is dear before what is cheap; one without a price comes last."""
    unit = project.unit_named(item.unit) if item.unit else None
    price = unit.price if unit else None
    return item.plate is None, -(price or Decimal(0))


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
