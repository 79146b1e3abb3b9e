"""Screws by the names that people say, with the holes they go through."""

import re
from typing import Final, NamedTuple

from panelcad.units import MM_PER_INCH, rounded

_NUMBERED: Final = re.compile(r"(?:#|no\.?)\s*(?P<number>\d{1,2})(?:-\d{2})?")
_METRIC: Final = re.compile(r"(?P<name>m\d{1,2})(?:\s*[x×]\s*\d?[.,]?\d+)?")
_CLOSE: Final = "close fit of drill charts"
_FREE: Final = "free fit of drill charts"
_NORMAL: Final = "ASME B18.2.8 normal"
_FINE: Final = "ISO 273 fine"
_MEDIUM: Final = "ISO 273 medium"


class Clearance(NamedTuple):
    """A hole in mm that a screw goes through, and the table it is from."""

    diameter: float
    table: str


class ScrewSize(NamedTuple):
    """`diameter` is the nominal one in mm; the holes from the tightest to the widest, one of them the usual one."""

    name: str
    diameter: float
    holes: tuple[Clearance, ...]
    usual: Clearance


def _numbered(number: int, close: float, free: float, normal: float) -> ScrewSize:
    """Holes in inches; the nominal diameter is 0.060 in and 0.013 in a number (ASME B1.1)."""
    fits = ((close, _CLOSE), (free, _FREE), (normal, _NORMAL))
    holes = tuple(Clearance(_inches(hole), table) for hole, table in fits)
    return ScrewSize(f"#{number}", _inches(0.060 + 0.013 * number), holes, holes[1])


def _metric(size: int, fine: float, medium: float) -> ScrewSize:
    holes = (Clearance(fine, _FINE), Clearance(medium, _MEDIUM))
    return ScrewSize(f"M{size}", float(size), holes, holes[1])


def _inches(length: float) -> float:
    return rounded(length * MM_PER_INCH)


SCREW_SIZES: Final = (
    _numbered(4, 0.116, 0.1285, 0.1285),
    _numbered(6, 0.144, 0.1495, 0.170),
    _numbered(8, 0.1695, 0.177, 0.196),
    _numbered(10, 0.196, 0.201, 0.221),
    _metric(3, 3.2, 3.4),
    _metric(4, 4.3, 4.5),
    _metric(5, 5.3, 5.5),
)
"""Close and free fits: drills of common shop charts; those of #4 from memory. Normal fits: drills #30, #18, #9 and #2
of ASME B18.2.8 as Machinery's Handbook gives them, #18 as the 0.170 in of instrument screws. ISO 273: M5 from memory.
"""


def named_screw(name: str) -> ScrewSize:
    """The screw of exactly this name. Raises KeyError."""
    return {size.name: size for size in SCREW_SIZES}[name]


def screw_size(text: str) -> ScrewSize | None:
    """The screw that is named, such as '#8', 'No. 8', '#8-32', 'M4' or 'M4x0.7'; None where none is.

    >>> screw_size("#8-32").name
    '#8'
    """
    typed = text.strip().casefold()
    numbered, metric = _NUMBERED.fullmatch(typed), _METRIC.fullmatch(typed)
    name = f"#{int(numbered['number'])}" if numbered else metric["name"].upper() if metric else ""
    return next((size for size in SCREW_SIZES if size.name == name), None)
