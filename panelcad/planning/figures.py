"""The figures of a judgement as short texts in the project's unit. What is not known says so."""

from decimal import Decimal
from typing import Final

from panelcad.model.finding import Severity
from panelcad.model.planning import LineKind
from panelcad.model.project import AS_FOUND
from panelcad.planning.cooling import RISE, airflow, panel_heat
from panelcad.planning.cost import Cost
from panelcad.planning.judge import Judgement, Topic
from panelcad.planning.redundancy import missing_minimums
from panelcad.planning.required import State
from panelcad.planning.room import MOST, USUAL
from panelcad.planning.space import PlateSpace
from panelcad.units import LengthUnit, format_length, format_mass, format_money, format_number, mass_unit

UNKNOWN: Final = "not known"


def is_as_found(judgement: Judgement) -> bool:
    return judgement.option.id == AS_FOUND


def unit_of(judgement: Judgement) -> LengthUnit:
    return judgement.equipment.project.unit


def capital(text: str) -> str:
    """The first letter large."""
    return text[:1].upper() + text[1:]


def counted(count: int, word: str) -> str:
    """'1 error', '2 errors', '3 advice'."""
    if word == "advice":
        return f"{count} advice"
    return f"{count} {word}{'' if count == 1 else 's'}"


def sources(count: int, independent: int) -> str:
    """'2', or '2, 1 independent' where they hang together."""
    return str(count) if count == independent else f"{count}, {independent} independent"


def unit_count(judgement: Judgement) -> str:
    units = judgement.equipment.units
    waiting = sum(1 for fitted in units if fitted.is_unplaced)
    parts = [str(len(units))]
    parts += [f"{waiting} not placed yet"] if waiting else []
    parts += [without_equipment(len(judgement.equipment.nameless))] if judgement.equipment.nameless else []
    return ", ".join(parts)


def without_equipment(count: int) -> str:
    """'1 item without equipment', '32 items without equipment'."""
    return f"{counted(count, 'item')} without equipment"


def not_known_of(judgement: Judgement) -> str:
    """The equipment that is named as no unit."""
    return "; ".join(item.name for item in judgement.equipment.nameless) or "nothing"


def bad_failures(judgement: Judgement) -> str:
    kind = judgement.equipment.flight
    if kind is None or judgement.equipment.nameless:
        return UNKNOWN
    return str(sum(1 for outcome in judgement.outcomes if missing_minimums(outcome, kind)))


def open_errors(judgement: Judgement) -> str:
    """'13 errors open: not to be cut as drawn', '' where there is none; the same words wherever an owner looks."""
    if not judgement.errors:
        return ""
    if is_as_found(judgement):
        meaning = "the panel as it is lacks something"
    else:
        fits = not judgement.count(Topic.SPACE, Severity.ERROR)
        meaning = "not ready to be built" if fits else "not to be cut as drawn"
    return f"{counted(len(judgement.errors), 'error')} open: {meaning}"


def flight(judgement: Judgement) -> str:
    kind = judgement.equipment.flight
    return kind.value if kind else "not stated"


def missing(judgement: Judgement) -> str:
    if judgement.equipment.flight is None:
        return UNKNOWN
    lacking = [result.requirement.title for result in judgement.required if result.state is State.MISSING]
    return "; ".join(lacking) or "nothing"


def worst_load(judgement: Judgement) -> str:
    found = judgement.electrical
    if found is None:
        return UNKNOWN
    more = f" and {counted(len(found.unknown), 'unknown load')}" if found.unknown else ""
    more += f" and {without_equipment(len(judgement.equipment.nameless))}" if judgement.equipment.nameless else ""
    return f"{found.worst.continuous:.1f} A in {found.worst.phase}{more}"


def alternator_share(judgement: Judgement) -> str:
    found = judgement.electrical
    if found is None or found.share is None:
        return UNKNOWN
    return f"{'at least ' if found.unknown else ''}{found.share:.0%} of {found.rating:g} A"


def heat(judgement: Judgement) -> str:
    """The heat of what sits on and behind the panel, and the air that carries it away."""
    found = panel_heat(judgement.equipment)
    if found is None:
        return UNKNOWN
    more = " at least" if found.unknown else ""
    return f"{more} {found.watts:.0f} W, {airflow(found.watts, RISE):.0f} cfm for {RISE:g} °C".strip()


def battery(judgement: Judgement) -> str:
    found = judgement.electrical
    if found is None or found.endurance is None or found.endurance.total_minutes is None:
        return UNKNOWN
    return f"{'at most ' if found.unknown else ''}{found.endurance.total_minutes:.0f} min"


def weight_difference(judgement: Judgement) -> str:
    change = judgement.balance.change
    text = signed_mass(change.known_mass_difference, unit_of(judgement))
    return f"{text} and {counted(len(change.unknown), 'unknown item')}" if change.unknown else text


def mass_change(judgement: Judgement) -> float | None:
    """The change of the empty weight in kg; None where a mass is not known."""
    change = judgement.balance.change
    return None if any(line.kg is None for line in change.lines) else change.known_mass_difference


def signed_mass(kg: float, unit: LengthUnit) -> str:
    text = format_mass(kg, mass_unit(unit), places=1)
    return f"+{text}" if kg > 0 and not text.startswith("0.0 ") else text


def new_weight(judgement: Judgement) -> str:
    new = judgement.balance.change.new
    return UNKNOWN if new is None else format_mass(new.kg, mass_unit(unit_of(judgement)), places=1)


def new_cg(judgement: Judgement) -> str:
    new = judgement.balance.change.new
    return UNKNOWN if new is None else format_arm(new.arm, unit_of(judgement))


def arm_number(mm: float, unit: LengthUnit) -> str:
    """As `format_arm` without the unit."""
    return format_number(mm, unit, places=2 if unit is LengthUnit.INCH else 0)


def format_arm(mm: float, unit: LengthUnit) -> str:
    """An arm to a hundredth of an inch or a whole millimetre."""
    return format_length(mm, unit, places=2 if unit is LengthUnit.INCH else 0)


def useful_load(judgement: Judgement) -> str:
    left = judgement.balance.change.useful_load
    return UNKNOWN if left is None else format_mass(left, mass_unit(unit_of(judgement)), places=1)


def equipment_cost(judgement: Judgement) -> str:
    text, nameless = money(judgement.cost.sum_of(LineKind.EQUIPMENT), judgement.cost), judgement.change.nameless
    return f"{text}: {without_equipment(len(nameless))}" if nameless else text


def labour(judgement: Judgement) -> str:
    found = judgement.cost
    amount = UNKNOWN if found.hourly_rate is None else format_money(found.sum_of(LineKind.LABOUR), found.currency)
    return f"{found.total_hours:f} h, {amount}"


def total(judgement: Judgement) -> str:
    return money(judgement.cost.total, judgement.cost)


def money(amount: Decimal, cost: Cost) -> str:
    """The amount, 'at least' before it where something is not known; where nothing is known, that it is not."""
    text = format_money(amount, cost.currency)
    if cost.is_whole:
        return text
    return f"at least {text}" if amount else UNKNOWN


def money_difference(amount: Decimal, cost: Cost) -> str:
    return format_money(amount, cost.currency) if amount else "the least"


def fits(judgement: Judgement) -> str:
    found = judgement.space
    if found.fits is None:
        return UNKNOWN
    if found.fits:
        return "yes"
    parts = [counted(found.errors, "error")] if found.errors else []
    parts += [f"{len(found.not_placed)} not placed yet"] if found.not_placed else []
    return f"no: {', '.join(parts)}"


def faces(judgement: Judgement) -> str:
    return f"{judgement.space.faces_before}, {judgement.space.faces}"


def covered(judgement: Judgement) -> str:
    return "; ".join(f"{plate.covered_share:.0%}" for plate in judgement.space.plates)


def depth(judgement: Judgement) -> str:
    """How deep the bodies of each plate reach, and what is left to a depth limit where some stand before one."""
    return "; ".join(_depth(plate, unit_of(judgement)) for plate in judgement.space.plates)


def _depth(plate: PlateSpace, unit: LengthUnit) -> str:
    deepest = format_length(plate.deepest, unit, places=1)
    if not plate.has_depth_limit:
        return deepest
    if plate.depth_left is None:
        return f"{deepest}, nothing before a depth limit"
    return f"{deepest}; {format_length(plate.depth_left, unit, places=1)} left where a depth limit is behind"


def free_width(judgement: Judgement) -> str:
    return "; ".join(f"{plate.free_width_share:.0%}" for plate in judgement.space.plates)


def stack_left(judgement: Judgement) -> str:
    unit = unit_of(judgement)
    left = [format_length(stack.left, unit) for plate in judgement.space.plates for stack in plate.stacks]
    return "; ".join(left) or "no stack"


def room(judgement: Judgement) -> str:
    """How many more of each usual size find a free place."""
    rooms = [
        f"{room.count}{' or more' if room.count == MOST else ''} {USUAL[room.cutout]}"
        for room in judgement.space.rooms
        if room.count
    ]
    return "; ".join(rooms) or "none of the usual sizes"
