"""Moves that would cure a finding are tried before one is offered: it must not harm anything else.

What moves together is judged again at its new place, against all its new neighbours and the edge, until something is
found that was not there before. The smallest move that leaves neither the finding nor a new or worse one is the
cure, unless it is far longer than what is missing; a move that falls short is lengthened by what is still missing.
Where the finding is between two neighbours of a row of like things, their pitch is what is wrong: one pitch for all of
the row is tried before any move of one thing. A control's label goes along, as it does when the move is made.
"""

import heapq
import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from functools import cached_property
from typing import Final

from panelcad.checks.bench import Bench
from panelcad.checks.cures import FARTHEST, farthest_for, missing_of, rounded_up
from panelcad.checks.finding import Curable
from panelcad.checks.judging import crashed, judged
from panelcad.checks.moved import Shifts, moved, with_labels
from panelcad.checks.registry import Rule, TheWhole
from panelcad.checks.report import NotJudged, Verdict, gravity
from panelcad.checks.standing import frame_of
from panelcad.editing.labels_along import labels_of
from panelcad.geometry.gap import TIE
from panelcad.geometry.point import Point
from panelcad.geometry.space import Spot
from panelcad.model.finding import Cure, Finding
from panelcad.model.kept import kept_with
from panelcad.model.layout import Layout, PlateLayout
from panelcad.model.like_row import LikeRow, row_with
from panelcad.model.plate import CutState, PlateState

_MOST_TRIES: Final = 8
_LEAST_STEP: Final = 0.1
"""mm; a move that falls short is lengthened by no less."""
_NOISE: Final = 1e-3
"""A measured value that gets worse by less than this many mm is none the worse."""

Found = dict[str, Finding]


@dataclass(frozen=True)
class Company:
    """The ids that move together, and the one that is told to."""

    leader: str
    ids: frozenset[str]


class Trials:
    """Tries moves on one plate as it is laid out now."""

    def __init__(self, bench: Bench, plate: PlateLayout, laid: Layout, rules: Iterable[Rule]) -> None:
        self._bench = bench
        self._plate = plate
        self._laid = laid
        self._guards = tuple(r for r in rules if isinstance(r.looks_at, TheWhole) and r.looks_at.guards_moves)
        self._before: Found | None = None

    def verdicts(self) -> Iterator[Verdict]:
        """What the bench says, each finding with the cure that does no harm, or none."""
        for verdict in self._bench.verdicts():
            if isinstance(verdict, Curable):
                yield from self.with_cure(verdict)
            else:
                yield verdict

    def with_cure(self, finding: Curable) -> Iterator[Verdict]:
        """A finding stands where its moves cannot be worked out, and its rule counts as one that crashed."""
        try:
            yield finding.cured(self._cure(finding))
        except Exception as problem:  # noqa: BLE001 - a rule's measure may fail in any way at a place it was not at
            yield finding.cured(None)
            yield crashed(finding.rule, problem)

    def _cure(self, finding: Curable) -> Cure | None:
        """The pitch of the row, if that is what is wrong, or else a move."""
        return self._pitch(finding) or self._move(finding)

    def _pitch(self, finding: Finding) -> Cure | None:
        """The pitch of the row in which these two are neighbours, made wider as long as that helps."""
        row = row_with(self._laid.option, finding.items)
        missing = missing_of(finding)
        if row is None or math.isinf(missing) or not self._is_free(self._with_cuts(row.ids)):
            return None
        pitch, missed = row.pitch, math.inf
        for _ in range(_MOST_TRIES):
            if missing >= missed or (pitch + missing - row.pitch) * (len(row.ids) - 1) / 2 > FARTHEST:
                return None
            pitch, missed = rounded_up(pitch + max(missing, _LEAST_STEP), self._laid.project.unit), missing
            missing = self._missing(finding, self._spread(row, pitch))
            if missing <= TIE:
                return Cure(item=row.ids[0], row=row.ids, pitch=pitch)
        return None

    def _spread(self, row: LikeRow, pitch: float) -> Shifts:
        """How far each item of the row and its cut move to this pitch."""
        by = {item_id: (dx, dy) for item_id, dx, dy in row.shifts(pitch)}
        cuts = {each.item.cut: by[each.item.id] for each in self._plate.items if each.item.id in by}
        return by | {cut: shift for cut, shift in cuts.items() if cut is not None}

    def _with_cuts(self, ids: Iterable[str]) -> frozenset[str]:
        wanted = frozenset(ids)
        return wanted | {each.item.cut for each in self._plate.items if each.item.id in wanted and each.item.cut}

    def _move(self, finding: Curable) -> Cure | None:
        """The smallest of its moves that cures it and harms nothing, made longer as long as that helps."""
        queue = [
            (math.hypot(move.dx, move.dy), math.inf, number, move)
            for number, move in enumerate(finding.moves)
            if self._may_move(self._company(move.item, finding), finding)
        ]
        heapq.heapify(queue)
        farthest = farthest_for(missing_of(finding))
        for _ in range(_MOST_TRIES):
            if not queue or queue[0][0] > farthest:
                break
            length, missed, number, move = heapq.heappop(queue)
            told = rounded_up(length, self._laid.project.unit)
            share = told / math.hypot(move.dx, move.dy)
            company = self._company(move.item, finding)
            cure = Cure(item=company.leader, dx=move.dx * share, dy=move.dy * share)
            missing = self._missing(finding, dict.fromkeys(company.ids, (cure.dx, cure.dy)))
            if missing <= TIE:
                return cure
            longer = told + max(missing, _LEAST_STEP)
            if missing < missed and longer <= farthest:
                heapq.heappush(queue, (longer, missing, number, move))
        return None

    def _missing(self, finding: Finding, shifts: Shifts) -> float:
        """How many mm the move falls short of curing without harm; infinite where no longer one would do."""
        there = moved(self._plate, shifts)
        move = (finding.identity, *sorted(shifts.items()))
        trial = self._bench.trial(move, shifts.keys(), lambda: self._tried(finding, there))
        if trial.missing > TIE:
            return trial.missing
        return self._left_of_the_whole(finding, with_labels(there, shifts, self._labels))

    @cached_property
    def _labels(self) -> dict[str, str]:
        """The label of each control of the plate that goes along with it."""
        return labels_of(self._laid.project, self._laid.option, [each.item.id for each in self._plate.items])

    def _tried(self, finding: Finding, there: PlateLayout) -> float:
        """By how many mm the first thing misses that would still be found, or that would be new or worse."""
        if self._before is None:
            self._before = _worst(self._bench.verdicts())
        for verdict in self._bench.verdicts_if(there):
            if isinstance(verdict, NotJudged):
                return math.inf
            if isinstance(verdict, Finding):
                identity = verdict.identity
                if identity == finding.identity or _is_worse(verdict, self._before.get(identity)):
                    return missing_of(verdict)
        return 0.0

    def _left_of_the_whole(self, finding: Finding, there: PlateLayout) -> float:
        """What rules about the whole still find, or find new or worse: first near by, then as seen from the seat."""
        return self._left(self._near_guard, finding, there) or self._left(self._seat_guard, finding, there)

    def _left(self, guard: "_Guard", finding: Finding, there: PlateLayout) -> float:
        plates = tuple(there if plate is self._plate else plate for plate in guard.laid.plates)
        after = guard.found(replace(guard.laid, plates=plates))
        worse = [
            found
            for identity, found in after.items()
            if _is_the_same(found, finding) or _is_worse(found, guard.before.get(identity))
        ]
        return max((missing_of(found) for found in worse), default=0.0)

    @cached_property
    def _near_guard(self) -> "_Guard":
        return _Guard([rule for rule in self._guards if not _is_over_all(rule)], self._around)

    @cached_property
    def _seat_guard(self) -> "_Guard":
        return _Guard([rule for rule in self._guards if _is_over_all(rule)], self._laid)

    @cached_property
    def _around(self) -> Layout:
        """The plate with those that lie on it, or near enough to be touched."""
        plates = self._laid.plates
        near = [each for each in plates if each is self._plate or _may_meet(each, self._plate)]
        wanted = {each.plate.id for each in near} | {each.plate.over for each in near}
        return replace(self._laid, plates=tuple(each for each in plates if each.plate.id in wanted))

    def _company(self, owner: str, finding: Finding) -> Company:
        """An item takes its cut along; a unit of a stack the whole stack, unless it stands in its own stack's way."""
        item = next((each.item for each in self._plate.items if each.item.id == owner), None)
        cut = owner if item is None else item.cut
        sharers = [each.item.id for each in self._plate.items if each.item.cut == cut] if cut else []
        if item is None:
            return Company(owner, frozenset((owner, *sharers)))
        if cut is None or len(sharers) == 1:
            return Company(owner, frozenset((owner, *([cut] if cut else []))))
        if set(finding.items) <= set(sharers):
            return Company(owner, frozenset((owner,)))
        return Company(cut, frozenset((cut, *sharers)))

    def _may_move(self, company: Company, finding: Curable) -> bool:
        """Whether nothing of it is locked, or metal that is cut already, and what the finding needs stays behind."""
        return (finding.is_alone or not company.ids >= set(finding.items)) and self._is_free(company.ids)

    def _is_free(self, ids: frozenset[str]) -> bool:
        """Whether nothing of these is locked, or metal that is cut already."""
        if ids & set(self._laid.option.locked) or self._plate.plate.state is PlateState.KEPT:
            return False
        is_new = self._plate.plate.state is PlateState.NEW
        return all(is_new or c.cut.state is CutState.NEW for c in self._plate.cuts if c.cut.id in ids)


def _is_over_all(rule: Rule) -> bool:
    return isinstance(rule.looks_at, TheWhole) and rule.looks_at.over_all_plates


@dataclass(frozen=True)
class _Guard:
    """Rules about the whole, and the plates they judge as they are laid out now."""

    rules: list[Rule]
    laid: Layout

    @cached_property
    def before(self) -> Found:
        return self.found(self.laid)

    def found(self, laid: Layout) -> Found:
        return _worst(verdict for rule in self.rules for verdict in judged(rule, laid))


def _may_meet(a: PlateLayout, b: PlateLayout) -> bool:
    """Whether the balls about two plates and all that they carry come near each other."""
    (at_a, reach_a), (at_b, reach_b) = _ball(a), _ball(b)
    return at_a.to(at_b).length < reach_a + reach_b + 2 * FARTHEST


def _ball(plate: PlateLayout) -> tuple[Spot, float]:
    return kept_with(plate, "ball about", lambda: _ball_about(plate))


def _ball_about(plate: PlateLayout) -> tuple[Spot, float]:
    x1, y1, x2, y2 = plate.outline.bounds
    depths = [abs(end) for item in plate.items for body in item.bodies for end in (body.near, body.far)]
    middle = frame_of(plate.plate).on_face(Point((x1 + x2) / 2, (y1 + y2) / 2))
    return middle, math.hypot(x2 - x1, y2 - y1) / 2 + max(depths, default=0.0)


def _worst(verdicts: Iterable[Verdict]) -> Found:
    """The worst finding of each identity."""
    found: Found = {}
    for verdict in verdicts:
        if isinstance(verdict, Finding):
            other = found.setdefault(verdict.identity, verdict)
            found[verdict.identity] = min(other, verdict, key=gravity)
    return found


def _is_the_same(found: Finding, as_before: Finding) -> bool:
    """Whether it is still there; one that is less grave now stands at its next limit, and the first is cured."""
    return found.identity == as_before.identity and found.severity is as_before.severity


def _is_worse(found: Finding, was: Finding | None) -> bool:
    if was is None:
        return True
    (grave, miss, _), (was_grave, was_miss, _) = gravity(found), gravity(was)
    return grave < was_grave or (grave == was_grave and miss < was_miss - _NOISE)
