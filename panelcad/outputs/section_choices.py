"""Sections of the drawing in words, as people type them: 'x=3.25in', 'y=40', 'pedestal:x=0'."""

import re
from collections.abc import Iterable, Sequence
from typing import Final

from panelcad.drawing.subject import PlateSection
from panelcad.drawing.views.section import SectionLine
from panelcad.errors import UnusableInput
from panelcad.geometry.across import Across
from panelcad.model.part import chosen_plates
from panelcad.model.plate import Plate
from panelcad.model.project import Option, Project
from panelcad.units import LengthUnit, format_exact, parse_length

_WORD: Final = re.compile(r"^\s*(?:(?P<plate>.+):)?\s*(?P<axis>[xyXY])\s*=\s*(?P<at>.+)$")
_WAYS: Final = {"x": Across.VERTICAL, "y": Across.HORIZONTAL}
_EXPECTED: Final = "such as x=3.25in for an upright section, y=40mm for a level one, or pedestal:x=0 for another plate"


def chosen_sections(
    words: Iterable[str], project: Project, option: Option, plates: Sequence[str] = ()
) -> tuple[PlateSection, ...]:
    """The sections that the words ask for; where no plate is named, of the first that is made or reworked.

    `plates` are the ids or names of the only plates that are drawn; none for all that are worked on. Raises
    `UnusableInput`, `UnknownName`.
    """
    drawn = chosen_plates(option, plates)
    return tuple(_section(word, project, option, drawn) for word in words)


def section_word(section: PlateSection, unit: LengthUnit) -> str:
    """The words that ask for a section: 'panel:x=3.25in'."""
    axis = next(axis for axis, way in _WAYS.items() if way is section.line.across)
    return f"{section.plate}:{axis}={format_exact(section.line.at, unit)}{unit.value}"


def _section(word: str, project: Project, option: Option, drawn: tuple[Plate, ...]) -> PlateSection:
    found = _WORD.match(word)
    if found is None:
        raise UnusableInput("", f"section '{word}'", "it is not read", _EXPECTED)
    plate = option.plate(found["plate"].strip()) if found["plate"] else _first(option, drawn)
    if drawn and plate not in drawn:
        names = ", ".join(each.id for each in drawn)
        raise UnusableInput("", f"section '{word}'", f"{plate.name} is not drawn", f"a plate that is: {names}")
    line = SectionLine(_WAYS[found["axis"].lower()], parse_length(found["at"], project.unit))
    if not line.chords(plate.outline.contour()):
        raise UnusableInput("", f"section '{word}'", f"it misses {plate.name}", "a line through the plate")
    return PlateSection(plate.id, line)


def _first(option: Option, drawn: tuple[Plate, ...]) -> Plate:
    return drawn[0] if drawn else option.plates[0]
