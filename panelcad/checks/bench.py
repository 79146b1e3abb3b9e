"""One plate on the bench: its parts, and what the rules about parts and pairs say of them.

A bench is filled once for a full check. A live check fills it again after each edit: parts that are still the same
records keep their findings, and only what is new is judged, alone and against its neighbours.
"""

import math
from collections.abc import Callable, Collection, Hashable, Iterable, Iterator
from dataclasses import dataclass
from functools import cached_property
from operator import attrgetter

from panelcad.checks.cures import FARTHEST
from panelcad.checks.judging import judged, worst
from panelcad.checks.parts import Layer, Part, Piece
from panelcad.checks.pieces import Rows, close_pairs, pieces_of
from panelcad.checks.registry import EachNeighbourhood, EachPair, EachPart, Rule
from panelcad.checks.report import Verdict
from panelcad.checks.setting import Setting
from panelcad.checks.sources import Source, sources
from panelcad.geometry.boxes import box_gap
from panelcad.model.kept import places_changed
from panelcad.model.layout import PlateLayout

Layers = dict[Layer, Rows]
Box = tuple[float, float, float, float]


@dataclass(frozen=True, eq=False)
class Hit:
    """What one rule says of one pair of parts."""

    a: Part
    b: Part
    verdicts: tuple[Verdict, ...]


@dataclass(frozen=True, eq=False)
class Trial:
    """What a move that was tried leaves, for as long as nothing changes near it."""

    missing: float
    """How many mm the move falls short; 0 where it cures and does no harm."""
    watched: Box
    """Where a change would change the answer, in mm."""


class Neighbourhood:
    """One part, the pieces near it, and what a rule said of them; asked again when they change."""

    def __init__(self, part: Part) -> None:
        self._part = part
        self._near: dict[int, Piece] = {}
        self._said: tuple[Verdict, ...] | None = None

    def add(self, piece: Piece) -> None:
        self._near[id(piece)] = piece
        self._said = None

    @property
    def has_spoken(self) -> bool:
        """Whether the rule was asked since something changed."""
        return self._said is not None

    def copy(self) -> "Neighbourhood":
        twin = Neighbourhood(self._part)
        twin._near, twin._said = dict(self._near), self._said
        return twin

    def forget(self, gone: set[int]) -> None:
        left = {key: piece for key, piece in self._near.items() if id(piece.part) not in gone}
        if len(left) < len(self._near):
            self._near, self._said = left, None

    def verdicts(self, rule: Rule, setting: Setting) -> tuple[Verdict, ...]:
        if self._said is None:
            near = tuple(sorted(self._near.values(), key=attrgetter("id", "near", "far")))
            self._said = judged(rule, self._part.source, near, setting)
        return self._said


class Bench:
    """Judges the parts of one plate in one setting."""

    def __init__(self, setting: Setting, rules: Iterable[Rule]) -> None:
        self.setting = setting
        self._rules = tuple(rules)
        self._laid: tuple[Source, ...] = ()
        self._known: dict[Source, Part] = {}
        self._alone: dict[int, tuple[Verdict, ...]] = {}
        self._hits: dict[int, list[Hit]] = {}
        self._near: dict[str, dict[int, Neighbourhood]] = {}
        self._layers: Layers = {layer: pieces_of(layer, ()) for layer in Layer}
        self._trials: dict[Hashable, Trial] = {}

    def trial(self, move: Hashable, moved: Collection[str], attempt: Callable[[], float]) -> Trial:
        """What this move of these parts leaves, attempted once for as long as nothing changes near it."""
        known = self._trials.get(move)
        if known is None:
            boxes = [_box(part) for part in self._known.values() if part.id in moved]
            known = self._trials[move] = Trial(attempt(), _grown(_around(boxes), FARTHEST + self._farthest_look))
        return known

    def verdicts_if(self, plate: PlateLayout) -> Iterator[Verdict]:
        """What would be said of the parts that are new if the plate were like this, one after the other."""
        lost, came = _differences(self._laid, sources(plate, self.setting))
        gone = [self._known[source] for source in lost]
        fresh = [source.make(self.setting) for source in came]
        new: Layers = {layer: pieces_of(layer, fresh) for layer in Layer}
        away = {id(part) for part in gone}
        for rule in self._rules:
            if isinstance(rule.looks_at, EachPair):
                pairs = self._close(rule.looks_at, new)
                staying = [(a, b) for a, b in pairs if id(a.part) not in away and id(b.part) not in away]
                for hit in self._hits_of(rule, staying):
                    yield from hit.verdicts
            elif isinstance(rule.looks_at, EachPart):
                for part in fresh:
                    if part.kind in rule.looks_at.kinds:
                        yield from judged(rule, part.source, self.setting)
        yield from self._neighbours_if(gone, new)

    def _neighbours_if(self, gone: list[Part], new: Layers) -> Iterator[Verdict]:
        """What would be said of new parts, and of those near old or new ones, among their neighbours."""
        looks = [(rule, rule.looks_at) for rule in self._rules if isinstance(rule.looks_at, EachNeighbourhood)]
        twin = Bench(self.setting, ())
        twin._near = {rule: {part: each.copy() for part, each in known.items()} for rule, known in self._near.items()}
        looked_at = {layer for _, look in looks for layer in (look.layer, *look.others)}
        twin._layers |= {layer: self._layers[layer].without(gone) for layer in looked_at}
        twin._forget_subjects(gone)
        for rule, look in looks:
            twin._note_neighbours(rule, look, new)
            for each in twin._near[rule.id].values():
                if not each.has_spoken:
                    yield from each.verdicts(rule, self.setting)

    def lay(self, plate: PlateLayout) -> None:
        """Put the plate's present parts on the bench and judge those that are new."""
        before, self._laid = self._laid, sources(plate, self.setting)
        lost, came = _differences(before, self._laid)
        gone = [self._known.pop(source) for source in lost]
        fresh = [source.make(self.setting) for source in came]
        self._known.update(zip(came, fresh, strict=True))
        self._forget(gone)
        if fresh:
            self.take(fresh)
        self._forget_trials([*fresh, *gone])

    def take(self, fresh: list[Part]) -> None:
        """Judge parts that were not on the bench before, alone and with what is there."""
        self._judge_alone(fresh)
        self._judge_near(fresh)

    def verdicts(self) -> Iterator[Verdict]:
        """All that is known of the parts on the bench."""
        for verdicts in self._alone.values():
            yield from verdicts
        for part_id, hits in self._hits.items():
            for hit in hits:
                if id(hit.a) == part_id:
                    yield from hit.verdicts
        for rule in self._rules:
            for each in self._near.get(rule.id, {}).values():
                yield from each.verdicts(rule, self.setting)

    def _forget(self, gone: list[Part]) -> None:
        for part in gone:
            self._alone.pop(id(part), None)
            for hit in self._hits.pop(id(part), ()):
                other = hit.b if hit.a is part else hit.a
                if id(other) in self._hits:
                    self._hits[id(other)].remove(hit)
        if gone:
            self._forget_subjects(gone)
        for layer in {layer for part in gone for layer in part.pieces}:
            self._layers[layer] = self._layers[layer].without(gone)

    @cached_property
    def _farthest_look(self) -> float:
        """How far off, in mm, a part may be that matters to what is said about another, be it by way of a third."""
        looks = [rule.looks_at for rule in self._rules]
        pairs = [look.reach(self.setting) for look in looks if isinstance(look, EachPair)]
        around = [look.reach(self.setting) for look in looks if isinstance(look, EachNeighbourhood)]
        return max(pairs, default=0.0) + 2 * max(around, default=0.0)

    def _forget_trials(self, changed: list[Part]) -> None:
        boxes = [_box(part) for part in changed] if self._trials else []
        for move, trial in list(self._trials.items()):
            if any(box_gap(trial.watched, box) == 0.0 for box in boxes):
                del self._trials[move]

    def _judge_alone(self, fresh: list[Part]) -> None:
        for rule in self._rules:
            if isinstance(rule.looks_at, EachPart):
                for part in fresh:
                    if part.kind in rule.looks_at.kinds:
                        self._note_alone(part, judged(rule, part.source, self.setting))

    def _note_alone(self, part: Part, verdicts: tuple[Verdict, ...]) -> None:
        if verdicts:
            self._alone[id(part)] = self._alone.get(id(part), ()) + verdicts

    def _forget_subjects(self, gone: list[Part]) -> None:
        """Forget the neighbourhoods of these parts, and these parts as neighbours."""
        ids = {id(part) for part in gone}
        for known in self._near.values():
            for part in ids & known.keys():
                del known[part]
            for each in known.values():
                each.forget(ids)

    def _judge_near(self, fresh: list[Part]) -> None:
        new: Layers = {layer: pieces_of(layer, fresh) for layer in Layer}
        for rule in self._rules:
            if isinstance(rule.looks_at, EachPair):
                self._note_pairs(rule, self._close(rule.looks_at, new))
            elif isinstance(rule.looks_at, EachNeighbourhood):
                self._note_neighbours(rule, rule.looks_at, new)
        for layer, rows in new.items():
            if len(rows):
                self._layers[layer] = self._layers[layer].joined(rows)

    def _close(self, look: EachPair, new: Layers) -> list[tuple[Piece, Piece]]:
        """Close pairs of which at least one piece is new."""
        reach = look.reach(self.setting)
        depth = look.depth_reach(self.setting) if look.depth_reach else None
        found = close_pairs(new[look.a], new[look.b], reach, depth)
        found += close_pairs(new[look.a], self._layers[look.b], reach, depth)
        if look.a is not look.b:
            found += close_pairs(self._layers[look.a], new[look.b], reach, depth)
            return found
        return [(a, b) if a.id <= b.id else (b, a) for a, b in found]

    def _note_neighbours(self, rule: Rule, look: EachNeighbourhood, new: Layers) -> None:
        """Find the neighbours of new parts, and new neighbours of old ones."""
        known = self._near.setdefault(rule.id, {})
        for piece in new[look.layer].pieces:
            if piece.part.kind is look.kind and id(piece.part) not in known:
                known[id(piece.part)] = Neighbourhood(piece.part)
        reach = look.reach(self.setting)
        for layer in look.others:
            found = close_pairs(new[look.layer], new[layer], reach)
            found += close_pairs(new[look.layer], self._layers[layer], reach)
            found += close_pairs(self._layers[look.layer], new[layer], reach)
            for subject, neighbour in found:
                if id(subject.part) in known:
                    known[id(subject.part)].add(neighbour)

    def _note_pairs(self, rule: Rule, pairs: list[tuple[Piece, Piece]]) -> None:
        for hit in self._hits_of(rule, pairs):
            for part in (hit.a, hit.b):
                self._hits.setdefault(id(part), []).append(hit)

    def _hits_of(self, rule: Rule, pairs: list[tuple[Piece, Piece]]) -> Iterator[Hit]:
        """What a rule says of these pairs, put together by their parts."""
        by_parts: dict[tuple[int, int], list[tuple[Piece, Piece]]] = {}
        for a, b in sorted(pairs, key=lambda pair: (pair[0].id, pair[1].id)):
            by_parts.setdefault(_ends(a, b), []).append((a, b))
        for together in by_parts.values():
            verdicts = worst(v for a, b in together for v in judged(rule, a, b, self.setting))
            if verdicts:
                yield Hit(together[0][0].part, together[0][1].part, verdicts)


def _differences(before: tuple[Source, ...], now: tuple[Source, ...]) -> tuple[list[Source], list[Source]]:
    """The sources that are only in the first of two rows, and those only in the second; none is twice in one row."""
    if len(before) == len(now):
        places = places_changed(before, now)
        before, now = tuple(before[place] for place in places), tuple(now[place] for place in places)
    first, second = set(before), set(now)
    return [source for source in before if source not in second], [source for source in now if source not in first]


def _box(part: Part) -> Box:
    """Around all pieces of a part; a box beyond everything where it has none."""
    return _around([piece.contour.bounds for pieces in part.pieces.values() for piece in pieces])


def _around(boxes: list[Box]) -> Box:
    if not boxes:
        return (math.inf, math.inf, -math.inf, -math.inf)
    low_x, low_y, high_x, high_y = zip(*boxes, strict=True)
    return (min(low_x), min(low_y), max(high_x), max(high_y))


def _grown(box: Box, by: float) -> Box:
    return (box[0] - by, box[1] - by, box[2] + by, box[3] + by)


def _ends(a: Piece, b: Piece) -> tuple[int, int]:
    low, high = sorted((a.part, b.part), key=attrgetter("kind", "id"))
    return id(low), id(high)
