"""What differs of a file's lettering, in words: "engraving E7 'LIGHT': moved 0.2000 in right"."""

import math
from collections import defaultdict
from collections.abc import Callable, Iterator
from typing import Final

from panelcad.drawing.number_runs import runs
from panelcad.drawing.numbering import numbering, sort_key
from panelcad.geometry.point import Point
from panelcad.model.layout import layout
from panelcad.model.project import Option, Project
from panelcad.outputs.verify_lettering import Lettered, Lettering
from panelcad.outputs.verify_lie import RIGHT
from panelcad.outputs.verify_lie_words import lie_text
from panelcad.outputs.verify_match import Difference
from panelcad.units import LengthUnit, decimals, format_length, format_number

_MANY: Final = 3
"""More lines of lettering than this that moved the same way are told in one sentence."""
_STILL: Final = 1e-3
"""mm: a way shorter than this along an axis is not told."""


class EngravingNames:
    """The lines of lettering of an option by their ids: their numbers on the papers, and what they say."""

    def __init__(self, project: Project, option: Option) -> None:
        self._numbers = numbering(layout(project, option)).engravings
        self._texts = {line.id: line.text for plate in option.plates for line in plate.engravings}

    def named(self, line: str) -> str:
        """'engraving E7 'LIGHT''."""
        return f"engraving {self._numbers.get(line, line)} '{self._texts.get(line, '')}'"

    def listed(self, lines: list[str]) -> str:
        """'engravings E1 to E4, E7'."""
        return f"engravings {', '.join(runs(sorted((self._numbers[line] for line in lines), key=sort_key)))}"


def lettering_sentences(lettering: Lettering, names: EngravingNames, unit: LengthUnit) -> Iterator[str]:
    """How all of it lies, then every difference, one sentence each."""
    if lettering.lie != RIGHT:
        yield f"lettering as a whole: {lie_text(lettering.lie, unit)}"
    together = _moved_together(lettering)
    for lines in together:
        way = next(each.moved for each in lettering.differences if each.engraving == lines[0])
        yield f"{names.listed(lines)}: moved {way_text(way or Point(0.0, 0.0), unit)}"
    told = {line for lines in together for line in lines}
    for each in lettering.differences:
        if each.kind in _WORDS and not (each.kind is Difference.MOVED and each.engraving in told):
            yield _WORDS[each.kind](each, names, unit)


def lettering_notes(lettering: Lettering, unit: LengthUnit) -> Iterator[str]:
    """What makes no other part."""
    for each in lettering.differences:
        if each.kind is Difference.DOUBLED:
            yield f"doubled: {format_length(each.length, unit)} of strokes of lettering, which would be engraved twice"


def way_text(way: Point, unit: LengthUnit) -> str:
    """'0.2000 in right', '1.000 mm left and 0.500 mm up'."""
    ways = ((way.x, "right", "left"), (way.y, "up", "down"))
    words = [f"{_fine(abs(by), unit)} {plus if by > 0 else minus}" for by, plus, minus in ways if abs(by) >= _STILL]
    return " and ".join(words) or _fine(math.hypot(*way), unit)


def _moved_together(lettering: Lettering) -> list[list[str]]:
    """Lines that moved the same way, where they are many."""
    groups: dict[tuple[float, float], list[str]] = defaultdict(list)
    for each in lettering.differences:
        if each.kind is Difference.MOVED and each.moved is not None:
            groups[round(each.moved.x, 2), round(each.moved.y, 2)].append(each.engraving)
    return [lines for lines in groups.values() if len(lines) > _MANY]


def _moved(each: Lettered, names: EngravingNames, unit: LengthUnit) -> str:
    return f"{names.named(each.engraving)}: moved {way_text(each.moved or Point(0.0, 0.0), unit)}"


def _changed(each: Lettered, names: EngravingNames, unit: LengthUnit) -> str:
    name = names.named(each.engraving)
    if each.moved is not None:
        return f"{name}: {each.strokes} of {each.of} strokes moved {way_text(each.moved, unit)}"
    if each.strokes == each.of:
        return f"{name}: other strokes stand in its place"
    return f"{name}: {each.strokes} of {each.of} strokes missing or changed"


def _missing(each: Lettered, names: EngravingNames, unit: LengthUnit) -> str:
    return f"{names.named(each.engraving)}: missing at {_place(each.at, unit)}"


def _new(each: Lettered, names: EngravingNames, unit: LengthUnit) -> str:
    if each.engraving:
        return f"{names.named(each.engraving)}: is on the sheet already, and would be engraved again"
    length = format_length(each.length, unit)
    return f"new lettering: {length} of strokes at {_place(each.at, unit)}"


def _place(at: Point, unit: LengthUnit) -> str:
    return f"x {format_number(at.x, unit)}, y {format_length(at.y, unit)}"


def _fine(mm: float, unit: LengthUnit) -> str:
    return format_length(mm, unit, places=decimals(unit) + 1)


_WORDS: Final[dict[Difference, Callable[[Lettered, EngravingNames, LengthUnit], str]]] = {
    Difference.MOVED: _moved,
    Difference.RESHAPED: _changed,
    Difference.MISSING: _missing,
    Difference.NEW: _new,
}
