"""Sections of the drawing in words, as people type them: 'x=3.25in', 'y=40', 'pedestal:x=0'."""

import re
from collections.abc import Iterable
from typing import Final

from panelcad.drawing.subject import PlateSection
from panelcad.drawing.views.section import SectionLine
from panelcad.errors import UnusableInput
from panelcad.geometry.across import Across
from panelcad.model.plate import Plate, PlateState
from panelcad.model.project import Option, Project
from panelcad.units import LengthUnit, format_exact, parse_length

_WORD: Final = re.compile(r"^\s*(?:(?P<plate>.+):)?\s*(?P<axis>[xyXY])\s*=\s*(?P<at>.+)$")
_WAYS: Final = {"x": Across.VERTICAL, "y": Across.HORIZONTAL}
_EXPECTED: Final = "such as x=3.25in for an upright section, y=40mm for a level one, or pedestal:x=0 for another plate"


def chosen_sections(words: Iterable[str], project: Project, option: Option) -> tuple[PlateSection, ...]:
    """The sections that the words ask for; where no plate is named, of the first that is made or reworked.

    Raises `UnusableInput`, `UnknownName`.
    """
    return tuple(_section(word, project, option) for word in words)


def section_word(section: PlateSection, unit: LengthUnit) -> str:
    """The words that ask for a section: 'panel:x=3.25in'."""
    axis = next(axis for axis, way in _WAYS.items() if way is section.line.across)
    return f"{section.plate}:{axis}={format_exact(section.line.at, unit)}{unit.value}"


def _section(word: str, project: Project, option: Option) -> PlateSection:
    found = _WORD.match(word)
    if found is None:
        raise UnusableInput("", f"section '{word}'", "it is not read", _EXPECTED)
    plate = option.plate(found["plate"].strip()) if found["plate"] else _first(option)
    line = SectionLine(_WAYS[found["axis"].lower()], parse_length(found["at"], project.unit))
    if not line.chords(plate.outline.contour()):
        raise UnusableInput("", f"section '{word}'", f"it misses {plate.name}", "a line through the plate")
    return PlateSection(plate.id, line)


def _first(option: Option) -> Plate:
    return next((plate for plate in option.plates if plate.state is not PlateState.KEPT), option.plates[0])
