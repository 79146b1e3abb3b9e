"""What a cutting file says of itself: option, plate, revision, fingerprint, and how it was written."""

import re
from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import Any, Final

from panelcad.errors import UnreadableQuantity
from panelcad.outputs.dxf_nest import Part, parts_in
from panelcad.outputs.dxf_options import Content, CornerRelief, DxfOptions, FaceUp, Origin, SmallHoles
from panelcad.outputs.dxf_words import NOT_RELEASED, PIECE
from panelcad.units import LengthUnit, parse_length

_NAMED: Final = re.compile(r"\(([a-z0-9][a-z0-9._-]*)\)")
_FINGERPRINT: Final = re.compile(r"\b([0-9A-F]{4}(?:-[0-9A-F]{4}){3})\b")
_ESCAPED: Final = re.compile(r"\\U\+([0-9A-F]{4})", re.IGNORECASE)


@dataclass(frozen=True)
class Claim:
    """Empty strings where the file does not say; `options` None where it does not say how it lies."""

    project: str = ""
    option: str = ""
    plate: str = ""
    revision: str = ""
    is_draft: bool = False
    fingerprint: str = ""
    plate_fingerprint: str = ""
    options: DxfOptions | None = None
    parts: tuple[Part, ...] = ()
    """The plates of a nested file and where they lie."""


def claim(texts: tuple[str, ...]) -> Claim:
    """The claim in a file's texts, whatever else somebody wrote there."""
    said = _said(texts)
    return Claim(
        project=said.get("Project", ""),
        option=_first(_NAMED, said.get("Option", "")),
        plate=_first(_NAMED, said.get("Plate", "")),
        revision="" if said.get("Revision", "not").startswith("not") else said["Revision"],
        is_draft=NOT_RELEASED in said,
        fingerprint=_first(_FINGERPRINT, said.get("Fingerprint", "")),
        plate_fingerprint=_first(_FINGERPRINT, said.get("Plate fingerprint", "")),
        options=_options(said) if "Face" in said else None,
        parts=parts_in(texts),
    )


def _said(texts: tuple[str, ...]) -> dict[str, str]:
    lines = (line.partition(": ") for line in texts)
    return {key.strip(): _ESCAPED.sub(lambda m: chr(int(m[1], 16)), value) for key, colon, value in lines if colon}


def _first(pattern: re.Pattern[str], text: str) -> str:
    found = pattern.findall(text)
    return str(found[-1]) if found else ""


def _options(said: dict[str, str]) -> DxfOptions:
    options = DxfOptions()
    for key, read in _READERS.items():
        if key in said:
            options = replace(options, **read(said[key]))
    return options


def _content(text: str) -> dict[str, Any]:
    return {"content": frozenset(each for each in Content if each.value in text)}


def _relief(text: str) -> dict[str, Any]:
    """Relief, and the cutter it is for where that can be read."""
    _, _, cutter = text.rpartition("cutter of ")
    try:
        return {"corner_relief": CornerRelief.ROUND, "cutter": parse_length(cutter, LengthUnit.MM)}
    except UnreadableQuantity:
        return {"corner_relief": CornerRelief.ROUND}


def _piece(text: str) -> dict[str, Any]:
    names, _, _ = text.removeprefix("around ").partition(";")
    return {"around": tuple(name.strip() for name in names.split(","))}


_READERS: Final[dict[str, Callable[[str], dict[str, Any]]]] = {
    "Face": lambda text: {"face_up": FaceUp.BACK if "BACK" in text.upper() else FaceUp.FRONT},
    "Origin": lambda text: {"origin": Origin.DATUM if text.startswith("datum") else Origin.LOWER_LEFT},
    "Content": _content,
    "Corner relief": _relief,
    PIECE: _piece,
    "Small holes": lambda _: {"small_holes": SmallHoles.CENTRE_MARKS},
}
