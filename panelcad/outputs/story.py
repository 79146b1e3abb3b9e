"""An option told to its owner: what it adds and takes out, what it costs, weighs and draws, what is still open."""

from dataclasses import dataclass
from typing import Final

from panelcad.checks.run import check
from panelcad.drawing.faces.kind import reading
from panelcad.drawing.faces.registry import HARDWARE, kind_of
from panelcad.model.equipment import Phase
from panelcad.model.finding import Severity
from panelcad.model.fingerprint import option_fingerprint
from panelcad.model.function import Function
from panelcad.model.project import AS_FOUND, Item, Option, Project
from panelcad.planning.cost import Cost, cost
from panelcad.planning.electrical.capacity import rating, utilisation
from panelcad.planning.electrical.loads import loads, phase_load
from panelcad.planning.equipment import Equipment, equipment
from panelcad.planning.redundancy import matrix
from panelcad.planning.weight import weight_change
from panelcad.units import format_mass, format_money, mass_unit

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
    """Texts about one option. `open_errors` counts findings that forbid cutting."""

    option: Option
    adds: tuple[str, ...]
    takes_out: tuple[str, ...]
    small_added: int
    instruments: tuple[Reading, ...]
    price: str
    price_lines: tuple[tuple[str, str], ...]
    weight: str
    load: str
    functions: dict[Function, int]
    open_errors: int
    fingerprint: str


def story(project: Project, option: Option) -> Story:
    """Everything an owner reads about an option."""
    units = equipment(project, option)
    quote = cost(units) if option.id != AS_FOUND else None
    added, small = _added(project, option)
    report = check(project, option)
    return Story(
        option=option,
        adds=added,
        takes_out=_added_names(option, project.as_found, project),
        small_added=small,
        instruments=readings(project, option),
        price=_price(quote),
        price_lines=_price_lines(quote),
        weight=_weight(units) if option.id != AS_FOUND else "as it is",
        load=_load(units),
        functions={row.function: row.independent for row in matrix(units)},
        open_errors=sum(f.severity is Severity.ERROR for f in report.findings) + len(report.not_judged),
        fingerprint=option_fingerprint(project, option),
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


def _added(project: Project, option: Option) -> tuple[tuple[str, ...], int]:
    names = _added_names(project.as_found, option, project)
    small = [item for item in _new_items(project.as_found, option) if _is_small(item, project)]
    return names, len(small)


def _added_names(before: Option, after: Option, project: Project) -> tuple[str, ...]:
    return tuple(item.name for item in _new_items(before, after) if not _is_small(item, project))


def _new_items(before: Option, after: Option) -> list[Item]:
    """Items of `after` that `before` has not: another id, another unit or another cutout is another thing."""
    known = {(item.id, item.unit, item.cutout) for item in before.items}
    return [item for item in after.items if (item.id, item.unit, item.cutout) not in known]


def _is_small(item: Item, project: Project) -> bool:
    return item.cutout is not None and project.cutout(item.cutout).family in SMALL


def _price(quote: Cost | None) -> str:
    if quote is None:
        return "nothing"
    if not quote.lines:
        return UNKNOWN
    total = format_money(quote.total, quote.currency)
    return total if quote.is_whole else f"at least {total}; {len(quote.unknown)} prices or hours are not known"


def _price_lines(quote: Cost | None) -> tuple[tuple[str, str], ...]:
    """Sums by kind, discount, contingency, tax and total; empty where there is nothing to add up."""
    if quote is None or not quote.lines:
        return ()
    kinds = dict.fromkeys(line.kind for line in quote.lines)
    sums = [(kind.value.capitalize(), quote.sum_of(kind)) for kind in kinds]
    more = [("Discount", -quote.discount), ("Contingency", quote.contingency), ("Tax", quote.tax)]
    lines = [*sums, *((name, amount) for name, amount in more if amount), ("Total", quote.total)]
    return tuple((name, format_money(amount, quote.currency)) for name, amount in lines)


def _weight(units: Equipment) -> str:
    change = weight_change(units)
    if not change.lines:
        return UNKNOWN
    difference = change.known_mass_difference
    text = format_mass(abs(difference), mass_unit(units.project.unit), places=1)
    said = f"{text} heavier" if difference > 0 else f"{text} lighter"
    return said if not change.unknown else f"{said}, {len(change.unknown)} weights or arms are not known"


def _load(units: Equipment) -> str:
    system = units.system
    if system is None:
        return UNKNOWN
    phase = phase_load(loads(units), Phase.CRUISE)
    rated = rating(system)
    text = f"{phase.continuous:.1f} A in cruise"
    if rated:
        text += f", {utilisation(phase.continuous, rated):.0%} of {rated:g} A"
    return text if not phase.unknown else f"{text}; {len(phase.unknown)} currents are not known"
