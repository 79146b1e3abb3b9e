"""Choices about a cutting file in words, one word each, as people type them on a command line."""

from collections.abc import Iterable
from dataclasses import replace
from typing import Any, Final

from panelcad.errors import UnknownName
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
from panelcad.units import LengthUnit

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
LEFT_OUT: Final = {f"no-{content.value}": content for content in Content}


def chosen_options(words: Iterable[str], options: DxfOptions | None = None) -> DxfOptions:
    """The options that the words choose, in their order: 'R12', 'mm', 'back', 'corner', 'relief', 'no-engraving', ...

    Raises `UnknownName`.
    """
    chosen = options or DxfOptions()
    known = {word.lower(): choice for word, choice in CHOICES.items()}
    for word in words:
        if word.lower() in LEFT_OUT:
            chosen = replace(chosen, content=chosen.content - {LEFT_OUT[word.lower()]})
        elif word.lower() in known:
            chosen = replace(chosen, **known[word.lower()])
        else:
            raise UnknownName("choice for a cutting file", word, (*CHOICES, *LEFT_OUT))
    return chosen
