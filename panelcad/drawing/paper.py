"""Sheets of paper and standard scales, lengths in mm, landscape.

Sizes: ISO 216 / ISO 5457 (A4 to A0) and ASME Y14.1 (A to E). Frames: ISO 5457:1999 leaves 20 mm at the left, for
filing, and 10 mm elsewhere (from memory); half an inch all around on ASME sheets (common practice).
"""

from dataclasses import dataclass
from enum import StrEnum
from typing import Final

from panelcad.drawing.display import Bounds
from panelcad.units import MM_PER_INCH, LengthUnit


class Series(StrEnum):
    ISO = "ISO"
    ANSI = "ANSI"


@dataclass(frozen=True)
class Paper:
    name: str
    width: float
    height: float
    series: Series

    @property
    def frame(self) -> Bounds:
        """The frame within which everything is drawn."""
        left, other = (20.0, 10.0) if self.series is Series.ISO else (12.7, 12.7)
        return left, other, self.width - other, self.height - other


def _iso(name: str, width: float, height: float) -> Paper:
    return Paper(name, width, height, Series.ISO)


def _ansi(name: str, width: float, height: float) -> Paper:
    return Paper(name, width * MM_PER_INCH, height * MM_PER_INCH, Series.ANSI)


PAPERS: Final = {
    Series.ISO: (
        _iso("A4", 297, 210),
        _iso("A3", 420, 297),
        _iso("A2", 594, 420),
        _iso("A1", 841, 594),
        _iso("A0", 1189, 841),
    ),
    Series.ANSI: (
        _ansi("ANSI A", 11, 8.5),
        _ansi("ANSI B", 17, 11),
        _ansi("ANSI C", 22, 17),
        _ansi("ANSI D", 34, 22),
        _ansi("ANSI E", 44, 34),
    ),
}
_USUAL: Final = {LengthUnit.MM: Series.ISO, LengthUnit.INCH: Series.ANSI}


def usual_series(unit: LengthUnit) -> Series:
    """ISO sheets for millimetres, ASME sheets for inches."""
    return _USUAL[unit]


def drawing_papers(series: Series) -> tuple[Paper, ...]:
    """The sheets a drawing may take, the usual A3 or ANSI B first, then the larger ones."""
    return PAPERS[series][1:]


def papers_up_to(series: Series, largest: Paper | None) -> tuple[Paper, ...]:
    """The drawing sheets that are no larger than this one, at least the usual one."""
    papers = drawing_papers(series)
    fitting = tuple(paper for paper in papers if largest is None or paper.width <= largest.width)
    return fitting or papers[:1]


def named_paper(name: str) -> Paper:
    """The paper of this name. Raises `KeyError`."""
    return {paper.name: paper for papers in PAPERS.values() for paper in papers}[name]


@dataclass(frozen=True)
class Scale:
    """`paper` mm on the sheet stand for `real` mm of the part."""

    paper: int
    real: int

    @property
    def factor(self) -> float:
        return self.paper / self.real

    def __str__(self) -> str:
        return f"{self.paper}:{self.real}"


FULL_SIZE: Final = Scale(1, 1)
STANDARD_SCALES: Final = (
    Scale(5, 1),
    Scale(2, 1),
    FULL_SIZE,
    *(Scale(1, real) for real in (2, 5, 10, 20, 50, 100)),
)
"""ISO 5455, largest first; part of its enlargements."""


def fitting_scale(size: tuple[float, float], room: tuple[float, float]) -> Scale | None:
    """The largest standard scale at which `size` fits into `room`, at most 2:1; None where even 1:100 is too large."""
    for scale in STANDARD_SCALES[1:]:
        if size[0] * scale.factor <= room[0] and size[1] * scale.factor <= room[1]:
            return scale
    return None
