"""Choices about a cutting file in words, one word each, as people type them on a command line."""

from collections.abc import Iterable
from dataclasses import replace
from typing import Any, Final

from panelcad.errors import UnknownName, UnusableInput
from panelcad.outputs.dxf_options import (
    Content,
    CornerRelief,
    DxfOptions,
    DxfVersion,
    FaceUp,
    LeadIns,
    Origin,
    SmallHoles,
)
from panelcad.units import LengthUnit, format_length, parse_length

CHOICES: Final[dict[str, dict[str, Any]]] = {
    **{version.value: {"version": version} for version in DxfVersion},
    **{unit.value: {"unit": unit} for unit in LengthUnit},
    **{face.value: {"face_up": face} for face in FaceUp},
    "datum": {"origin": Origin.DATUM},
    "corner": {"origin": Origin.LOWER_LEFT},
    "relief": {"corner_relief": CornerRelief.ROUND},
    "lead-ins": {"lead_ins": LeadIns.POINTS},
    "marks": {"small_holes": SmallHoles.CENTRE_MARKS},
}
CUTTER: Final = "cutter="
"""Before the cutter's diameter, such as 'cutter=1/8 in'."""
LEFT_OUT: Final = {f"no-{content.value}": content for content in Content}
WORDS: Final = (*CHOICES, *LEFT_OUT, f"{CUTTER}LENGTH")
SMALLEST_CUTTER, LARGEST_CUTTER = 0.05, 25.4
"""mm: a jet or a beam is hardly thinner, and no cutter of a panel thicker."""


def chosen_options(words: Iterable[str], unit: LengthUnit = LengthUnit.MM) -> DxfOptions:
    """The options that the words choose, in their order: 'R12', 'mm', 'back', 'corner', 'relief', 'no-engraving', ...

    `unit` is that of a cutter's diameter that names none. Raises `UnknownName`, `UnusableInput`.
    """
    chosen = DxfOptions()
    known = {word.lower(): choice for word, choice in CHOICES.items()}
    for word in words:
        if word.lower().startswith(CUTTER):
            chosen = replace(chosen, cutter=cutter_diameter(word[len(CUTTER) :], unit))
        elif word.lower() in LEFT_OUT:
            chosen = replace(chosen, content=chosen.content - {LEFT_OUT[word.lower()]})
        elif word.lower() in known:
            chosen = replace(chosen, **known[word.lower()])
        else:
            raise UnknownName("choice for a cutting file", word, WORDS, all_told=True)
    return chosen


def cutter_diameter(text: str, unit: LengthUnit) -> float:
    """The diameter in mm of a cutter as typed. Raises `UnusableInput`."""
    diameter = parse_length(text, unit)
    if not SMALLEST_CUTTER <= diameter <= LARGEST_CUTTER:
        expected = (format_length(mm, unit) for mm in (SMALLEST_CUTTER, LARGEST_CUTTER))
        problem = "no cutter of a panel is so thin or so thick"
        raise UnusableInput("", f"cutter {text}", problem, "{} to {} across".format(*expected))
    return diameter
