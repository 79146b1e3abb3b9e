"""Weight and balance: what comes out and goes in, the new empty weight, moment and CG, after AC 43.13-1B chapter 10.

Masses in kg, arms in mm from the weighing datum (positive aft), moments in kg·mm.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import Final

from panelcad.model.equipment import Place
from panelcad.model.planning import WeightAndBalance
from panelcad.planning.equipment import Change, Equipment, Fitted, change
from panelcad.units import KG_PER_POUND

HEAVY: Final = 5000 * KG_PER_POUND
HEAVIEST: Final = 50_000 * KG_PER_POUND
NEGLIGIBLE_CHORD_SHARE: Final = 0.0005
"""AC 43.13-1B paragraph 10-2c: a CG change below 0.05 % MAC needs no new papers (fixed wing)."""


@dataclass(frozen=True)
class Mass:
    """A mass at an arm; a removed one is negative (FAA general handbook, equipment change)."""

    kg: float
    arm: float

    @property
    def moment(self) -> float:
        return self.kg * self.arm


@dataclass(frozen=True)
class Loading:
    """Total mass and moment."""

    kg: float
    moment: float

    @property
    def arm(self) -> float:
        """The CG: total moment over total weight (AC 43.13-1B paragraph 10-2i). Raises ZeroDivisionError for none."""
        return self.moment / self.kg

    def plus(self, masses: Iterable[Mass]) -> "Loading":
        """With these masses added."""
        more = list(masses)
        return Loading(self.kg + sum(m.kg for m in more), self.moment + sum(m.moment for m in more))


NOTHING: Final = Loading(0.0, 0.0)


def negligible_mass(empty: float) -> float:
    """The change of an empty weight in kg that needs no new papers: 1, 2 or 5 lb (AC 43.13-1B paragraph 10-2c)."""
    pounds = 1.0 if empty < HEAVY else 2.0 if empty <= HEAVIEST else 5.0
    return pounds * KG_PER_POUND


def chord_share(arm: float, leading_edge: float, chord: float) -> float:
    """The CG as a share of the mean aerodynamic chord, from its leading edge."""
    return (arm - leading_edge) / chord


def ballast(loading: Loading, wanted_arm: float, ballast_arm: float) -> float:
    """The ballast in kg that brings the CG to `wanted_arm` (AC 43.13-1B figure 10-19)."""
    return loading.kg * (wanted_arm - loading.arm) / (ballast_arm - wanted_arm)


def least_fuel_of_power(horsepower: float) -> float:
    """The fuel in kg of the extreme cases: half a pound for each METO horsepower (AC 43.13-1B figure 10-10)."""
    return horsepower / 2.0 * KG_PER_POUND


@dataclass(frozen=True)
class WeightLine:
    """A line of the revision: something removed (negative), installed or moved; None where it is not known."""

    item: str
    name: str
    what: str
    kg: float | None
    arm: float | None
    place: str

    @property
    def moment(self) -> float | None:
        return None if self.kg is None or self.arm is None else self.kg * self.arm

    @property
    def is_known(self) -> bool:
        return self.kg is not None and self.arm is not None


@dataclass(frozen=True)
class WeightChange:
    """The revision of an empty weight. `new` is None where the old one, or a mass or an arm, is not known."""

    lines: tuple[WeightLine, ...]
    old: Loading | None
    new: Loading | None
    useful_load: float | None

    @property
    def unknown(self) -> tuple[str, ...]:
        """Ids of the items whose mass or arm is not known."""
        return tuple(dict.fromkeys(line.item for line in self.lines if not line.is_known))

    @property
    def known_difference(self) -> Loading:
        """Mass and moment of the lines that are known."""
        return NOTHING.plus(
            Mass(line.kg, line.arm) for line in self.lines if line.kg is not None and line.arm is not None
        )

    @property
    def known_mass_difference(self) -> float:
        """Mass of all lines whose mass is known, in kg."""
        return sum(line.kg for line in self.lines if line.kg is not None)


def weight_change(equipment: Equipment) -> WeightChange:
    """What an option does to the empty weight."""
    sheet = equipment.project.planning.weight
    lines = tuple(_lines(change(equipment.project, equipment.option), sheet))
    old = empty_loading(sheet)
    complete = old is not None and all(line.is_known for line in lines)
    new = None
    if complete and old is not None:
        new = old.plus(Mass(line.kg, line.arm) for line in lines if line.kg is not None and line.arm is not None)
        new = new if new.kg > 0 else None
    most = sheet.most_mass if sheet else None
    return WeightChange(lines, old, new, None if most is None or new is None else most - new.kg)


def empty_loading(sheet: WeightAndBalance | None) -> Loading | None:
    """The empty aircraft as last weighed; None where it is not entered."""
    if sheet is None or sheet.empty_mass is None or sheet.empty_arm is None:
        return None
    return Loading(sheet.empty_mass, sheet.empty_mass * sheet.empty_arm)


def arm_of(fitted: Fitted, sheet: WeightAndBalance | None) -> float | None:
    """The item's own arm, or the panel's for what belongs on the panel; None where neither is entered."""
    if fitted.item.arm is not None:
        return fitted.item.arm
    on_panel = fitted.place in {Place.PANEL, Place.BEHIND_PANEL}
    return sheet.panel_arm if sheet is not None and on_panel else None


def _lines(work: Change, sheet: WeightAndBalance | None) -> Iterator[WeightLine]:
    for fitted in work.removed:
        yield _line(fitted, "removed", sheet, sign=-1.0)
    for fitted in work.installed:
        yield _line(fitted, "installed", sheet)
    for before, after in work.kept:
        if arm_of(before, sheet) != arm_of(after, sheet):
            yield _line(before, "moved from", sheet, sign=-1.0)
            yield _line(after, "moved to", sheet)
    for item in work.nameless:
        yield WeightLine(item.id, item.name, "installed", None, item.arm, Place.PANEL.value)


def _line(fitted: Fitted, what: str, sheet: WeightAndBalance | None, sign: float = 1.0) -> WeightLine:
    kg = None if fitted.unit.mass is None else sign * fitted.unit.mass
    return WeightLine(fitted.id, fitted.name, what, kg, arm_of(fitted, sheet), fitted.place.value)
