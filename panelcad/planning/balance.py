"""The weight and balance judgement: what is not known, and loadings outside the envelope."""

from collections.abc import Iterator
from dataclasses import dataclass

from panelcad.model.finding import Finding, Measure, Severity
from panelcad.model.planning import WeightAndBalance
from panelcad.planning.envelope import LoadedCase, extremes, limits_at
from panelcad.planning.equipment import Equipment
from panelcad.planning.report import finding, unknown
from panelcad.planning.weight import (
    NEGLIGIBLE_CHORD_SHARE,
    Loading,
    WeightChange,
    chord_share,
    empty_loading,
    negligible_mass,
    weight_change,
)

_EXTREMES = "AC 43.13-1B paragraph 10-17: extremes of loading against the limits"
_CHANGE = "AC 43.13-1B paragraph 10-2c"


@dataclass(frozen=True)
class Balance:
    """An option's revision and what it means for the loading extremes, before and after."""

    sheet: WeightAndBalance | None
    change: WeightChange
    before: tuple[LoadedCase, ...]
    after: tuple[LoadedCase, ...]

    @property
    def is_negligible(self) -> bool | None:
        """Whether the change needs no new papers; None where it is not known."""
        old, new = self.change.old, self.change.new
        if old is None or new is None:
            return None
        return is_negligible(old, new, self.sheet.chord if self.sheet else None)


def is_negligible(old: Loading, new: Loading, chord: float | None) -> bool:
    """Whether mass and CG changed so little that no new papers are needed; without a chord only the mass counts."""
    light = abs(new.kg - old.kg) <= negligible_mass(old.kg) + 1e-9
    if not chord:
        return light
    shift = chord_share(new.arm, 0.0, chord) - chord_share(old.arm, 0.0, chord)
    return light and abs(shift) < NEGLIGIBLE_CHORD_SHARE


def balance(equipment: Equipment) -> Balance:
    """The weight and balance figures of an option."""
    sheet = equipment.project.planning.weight
    revision = weight_change(equipment)
    old = empty_loading(sheet)
    before = extremes(sheet, old) if sheet is not None and old is not None else ()
    after = extremes(sheet, revision.new) if sheet is not None and revision.new is not None else ()
    return Balance(sheet, revision, before, after)


def judge_balance(equipment: Equipment) -> Iterator[Finding]:
    """Loadings outside the envelope or too heavy, and what is not known."""
    figures = balance(equipment)
    if figures.change.unknown:
        yield unknown("weight-unknown", "Mass or arm is not known, so there is no new CG", *figures.change.unknown)
    if figures.sheet is None or figures.change.old is None:
        yield unknown("empty-weight-unknown", "The empty weight and its arm are not entered, so there is no new CG")
        return
    if figures.change.new is None and not figures.change.unknown:
        yield finding(
            "nothing-left",
            Severity.ERROR,
            (),
            "More weight is removed than the aircraft has",
            _CHANGE,
            acceptable=False,
        )
    if not figures.sheet.envelope or not figures.sheet.stations:
        yield unknown("envelope-unknown", "CG envelope or loading stations are not entered, so extremes are not judged")
    for case in figures.after:
        yield from _outside(case, figures.sheet)


def _outside(case: LoadedCase, sheet: WeightAndBalance) -> Iterator[Finding]:
    if case.is_inside is not False:
        return
    if sheet.most_mass is not None and case.loading.kg > sheet.most_mass + 1e-9:
        yield _out(case, "is too heavy", Measure.MASS, case.loading.kg, sheet.most_mass)
        return
    limits = limits_at(sheet.envelope, case.loading.kg)
    if limits is None:
        yield _out(case, "is outside the envelope's range of weights", Measure.MASS, case.loading.kg, None)
    elif case.loading.arm < limits[0]:
        yield _out(case, "has its CG ahead of the forward limit", Measure.ARM, case.loading.arm, limits[0])
    else:
        yield _out(case, "has its CG behind the aft limit", Measure.ARM, case.loading.arm, limits[1])


def _out(case: LoadedCase, words: str, measure: Measure, measured: float, limit: float | None) -> Finding:
    return finding(
        "loading",
        Severity.ERROR,
        (),
        f"The {case.name} loading {words}",
        _EXTREMES,
        features=(case.name,),
        measure=measure,
        measured=measured,
        required=limit,
        acceptable=False,
        more_is_worse=measure is Measure.MASS or limit is None or measured > limit,
    )
