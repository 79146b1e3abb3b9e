"""What an option costs: equipment, labour, sheet metal, sundries, discount, contingency, taxes; exact to the hundredth.

A price or hours nobody entered are not in a sum; they are named, and the total is then a least total.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from decimal import Decimal
from typing import Final

from panelcad.model.equipment import LabourTask
from panelcad.model.finding import Finding, Severity
from panelcad.model.function import Function, Supply
from panelcad.model.planning import CostSettings, LineKind
from panelcad.planning.equipment import Change, Equipment, Fitted, change
from panelcad.planning.report import finding, unknown
from panelcad.units import hundredths

ZERO: Final = Decimal(0)
PERCENT: Final = Decimal("0.01")


@dataclass(frozen=True)
class HoursLine:
    """Hours of one task: for an item, or of the option where `item` is empty. None where nobody entered them."""

    item: str
    name: str
    task: LabourTask
    hours: Decimal | None


@dataclass(frozen=True)
class QuoteLine:
    """A line of the quote, in the project's currency; None where the amount is not known."""

    item: str
    name: str
    kind: LineKind
    amount: Decimal | None


@dataclass(frozen=True)
class Cost:
    """An option's quote. Sums are over what is known; `unknown` names what is not."""

    currency: str
    hourly_rate: Decimal | None
    lines: tuple[QuoteLine, ...]
    hours: tuple[HoursLine, ...]
    discount: Decimal
    contingency: Decimal
    tax: Decimal
    unknown: tuple[str, ...]

    def sum_of(self, kind: LineKind) -> Decimal:
        """The lines of one kind together; a credit is negative."""
        return sum((line.amount for line in self.lines if line.kind is kind and line.amount is not None), ZERO)

    @property
    def net(self) -> Decimal:
        """Before tax."""
        return sum((self.sum_of(kind) for kind in LineKind), ZERO) - self.discount + self.contingency

    @property
    def total(self) -> Decimal:
        return self.net + self.tax

    @property
    def total_hours(self) -> Decimal:
        return sum((line.hours for line in self.hours if line.hours is not None), ZERO)

    @property
    def is_whole(self) -> bool:
        """False where something is not known, so that the total is only the least it can be."""
        return not self.unknown

    def hours_by_task(self) -> dict[LabourTask, Decimal]:
        """Hours of each task that has any, in the tasks' order."""
        sums = {task: sum((h.hours for h in self.hours if h.task is task and h.hours), ZERO) for task in LabourTask}
        return {task: hours for task, hours in sums.items() if hours}


def cost(equipment: Equipment) -> Cost:
    """The quote of an option: what it installs and removes against the aircraft as found."""
    settings, own = equipment.project.planning.costs, equipment.option.planning.costs
    work = change(equipment.project, equipment.option)
    hours = (*_hours(work), *(HoursLine("", task.task.value, task.task, task.hours) for task in own.labour))
    lines = tuple(_lines(work, hours, equipment))
    discount = _rounded_share(_sum(lines, LineKind.EQUIPMENT), own.equipment_discount)
    base = sum((_sum(lines, kind) for kind in LineKind if kind is not LineKind.CREDIT), ZERO) - discount
    contingency = _rounded_share(base, own.contingency)
    return Cost(
        currency=settings.currency,
        hourly_rate=settings.hourly_rate,
        lines=lines,
        hours=hours,
        discount=discount,
        contingency=contingency,
        tax=_tax(lines, discount, contingency, settings),
        unknown=tuple(_unknown(lines, hours)),
    )


def _lines(work: Change, hours: tuple[HoursLine, ...], equipment: Equipment) -> Iterator[QuoteLine]:
    settings = equipment.project.planning.costs
    for fitted in work.installed:
        yield QuoteLine(fitted.id, fitted.name, LineKind.EQUIPMENT, price_in(settings, fitted))
    for item in work.nameless:
        yield QuoteLine(item.id, item.name, LineKind.EQUIPMENT, None)
    known = sum((line.hours for line in hours if line.hours is not None), ZERO)
    if hours:
        amount = None if settings.hourly_rate is None else hundredths(known * settings.hourly_rate)
        yield QuoteLine("", "Labour", LineKind.LABOUR, amount)
    for line in equipment.option.planning.costs.lines:
        sign = -1 if line.kind is LineKind.CREDIT else 1
        yield QuoteLine("", line.name, line.kind, hundredths(sign * line.amount))


def price_in(settings: CostSettings, fitted: Fitted) -> Decimal | None:
    """The unit's price in the project's currency; None where price or rate of exchange is not entered."""
    price, currency = fitted.unit.price, fitted.unit.currency
    rates = {exchange.currency: exchange.rate for exchange in settings.exchange} | {settings.currency: Decimal(1)}
    return None if price is None or currency not in rates else hundredths(price * rates[currency])


def _hours(work: Change) -> Iterator[HoursLine]:
    for fitted in work.removed:
        removal = [labour for labour in fitted.unit.labour or () if labour.task is LabourTask.REMOVAL]
        hours = removal[0].hours if removal else None
        yield HoursLine(fitted.id, fitted.name, LabourTask.REMOVAL, hours)
    for fitted in work.installed:
        if fitted.unit.labour is None:
            yield HoursLine(fitted.id, fitted.name, LabourTask.INSTALLATION, None)
        for labour in fitted.unit.labour or ():
            if labour.task is not LabourTask.REMOVAL:
                yield HoursLine(fitted.id, fitted.name, labour.task, labour.hours)


def _sum(lines: Iterable[QuoteLine], kind: LineKind) -> Decimal:
    return sum((line.amount for line in lines if line.kind is kind and line.amount is not None), ZERO)


def _rounded_share(amount: Decimal, percent: Decimal) -> Decimal:
    return hundredths(amount * percent * PERCENT)


def _tax(lines: tuple[QuoteLine, ...], discount: Decimal, contingency: Decimal, settings: CostSettings) -> Decimal:
    """Equipment, sundries and contingency at the equipment's rate; labour and sheet metal at the labour's."""
    goods = _sum(lines, LineKind.EQUIPMENT) - discount + _sum(lines, LineKind.SUNDRIES) + contingency
    work = _sum(lines, LineKind.LABOUR) + _sum(lines, LineKind.SHEET_METAL)
    return _rounded_share(goods, settings.equipment_tax) + _rounded_share(work, settings.labour_tax)


def _unknown(lines: tuple[QuoteLine, ...], hours: tuple[HoursLine, ...]) -> Iterator[str]:
    names = [line.name for line in lines if line.amount is None]
    names += [f"hours of {line.task}: {line.name}" for line in hours if line.hours is None]
    yield from dict.fromkeys(names)


def judge_cost(equipment: Equipment) -> Iterator[Finding]:
    """What the quote lacks: prices, hours, and tests that the work calls for."""
    quote = cost(equipment)
    unpriced = [line.item for line in quote.lines if line.amount is None and line.item]
    if unpriced:
        yield unknown("price-unknown", "The price is not known and in no sum", *unpriced)
    if quote.hourly_rate is None and quote.hours:
        yield unknown("rate-unknown", "The hourly rate is not entered, so labour is in no sum")
    without_hours = sorted({line.item for line in quote.hours if line.hours is None})
    if without_hours:
        yield unknown("hours-unknown", "The hours are not entered and in no sum", *without_hours)
    yield from _tests_called_for(equipment, quote)


def _tests_called_for(equipment: Equipment, quote: Cost) -> Iterator[Finding]:
    quoted = set(quote.hours_by_task())
    for task, items, problem, source in tests_called_for(change(equipment.project, equipment.option)):
        if items and task not in quoted:
            yield finding("test-not-quoted", Severity.WARNING, items, problem, source, features=(task.value,))


def tests_called_for(work: Change) -> tuple[tuple[LabourTask, tuple[str, ...], str, str], ...]:
    """Tests that the work makes necessary: task, the items that call for it, words, source."""
    touched = (*work.removed, *work.installed)
    return (
        (
            LabourTask.PITOT_STATIC_TEST,
            tuple(f.id for f in touched if _opens_static_lines(f)),
            "Static lines are opened, and the quote has no altimeter and static system test",
            "14 CFR 91.411(a)(2)",
        ),
        (
            LabourTask.TRANSPONDER_TEST,
            tuple(f.id for f in touched if _reports_altitude(f)),
            "Transponder or encoder is changed, and the quote has no transponder test",
            "14 CFR 91.413(b)",
        ),
        (
            LabourTask.COMPASS_SWING,
            tuple(f.id for f in touched),
            "The electrical system or panel is changed, and the quote has no compass swing",
            "AC 43.13-1B paragraph 12-37a",
        ),
    )


def _opens_static_lines(fitted: Fitted) -> bool:
    return any(need.supply is Supply.PITOT_STATIC for need in fitted.unit.needs) or (
        Supply.PITOT_STATIC in fitted.unit.supplies
    )


def _reports_altitude(fitted: Fitted) -> bool:
    return Function.TRANSPONDER in fitted.unit.provides or Supply.PRESSURE_ALTITUDE in fitted.unit.supplies
