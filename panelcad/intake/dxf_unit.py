"""The unit a DXF file states: in its raw header, or as text on its reference layer; never one that a reader filled in.

ezdxf gives a file without a header one of its own that says metres, so the file's own bytes are asked.
"""

import re
from typing import Final

from panelcad.units import LengthUnit

_OF_CODE: Final = {1: LengthUnit.INCH, 4: LengthUnit.MM}
"""DXF Reference, HEADER section, $INSUNITS."""
_OTHER_UNITS: Final = {2: "feet", 5: "centimetres", 6: "metres", 9: "mils", 13: "micrometres"}
_INSUNITS: Final = re.compile(rb"\$INSUNITS\s*\r?\n\s*70\s*\r?\n\s*(\d+)")
_WORDS: Final = {"millimetres": LengthUnit.MM, "inches": LengthUnit.INCH}


def stated_unit(content: bytes, texts: list[str]) -> LengthUnit | None:
    """The unit the header or a line 'Unit: inches' names; None where neither does, or for a unit nobody cuts in."""
    return header_unit(content) or unit_in_words(texts)


def header_unit(content: bytes) -> LengthUnit | None:
    """The unit the file's header states, if it is one that people cut in."""
    found = _INSUNITS.search(content)
    return _OF_CODE.get(int(found[1])) if found else None


def unit_in_words(texts: list[str]) -> LengthUnit | None:
    """The unit a line 'Unit: inches' names."""
    said = (text.removeprefix("Unit:").strip() for text in texts if text.startswith("Unit:"))
    return next((_WORDS[word] for word in said if word in _WORDS), None)


def other_unit(content: bytes) -> str | None:
    """The name of a unit the header states that is neither mm nor in."""
    found = _INSUNITS.search(content)
    return _OTHER_UNITS.get(int(found[1])) if found else None
