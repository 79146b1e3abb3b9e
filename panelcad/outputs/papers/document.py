"""A paper before it is a PDF or a CSV: headings, words, grids and charts in reading order."""

from dataclasses import dataclass
from enum import StrEnum

from panelcad.drawing.charts.frame import Chart


class Tone(StrEnum):
    """How words or a row are meant."""

    PLAIN = "plain"
    GOOD = "good"
    ERROR = "error"
    WARNING = "warning"
    ADVICE = "advice"
    FAINT = "faint"
    TOTAL = "total"


@dataclass(frozen=True)
class Heading:
    text: str
    level: int = 1


@dataclass(frozen=True)
class Words:
    """A paragraph."""

    text: str
    tone: Tone = Tone.PLAIN


@dataclass(frozen=True)
class Column:
    """A grid's column: `share` is its part of the page's width, numbers stand at the right."""

    title: str
    share: float
    is_number: bool = False


@dataclass(frozen=True)
class Line:
    """A row of a grid. `tones` are those of its cells where they are not all alike."""

    cells: tuple[str, ...]
    tone: Tone = Tone.PLAIN
    tones: tuple[Tone, ...] = ()

    def tone_of(self, column: int) -> Tone:
        return self.tones[column] if self.tones else self.tone


@dataclass(frozen=True)
class Grid:
    """A table; `name` is how its CSV file is called."""

    name: str
    columns: tuple[Column, ...]
    lines: tuple[Line, ...]


@dataclass(frozen=True)
class Blank:
    """Boxes to be filled in by hand, 'Date', 'Signature', and what is signed to, which stays with them."""

    labels: tuple[str, ...]
    statement: str = ""


Block = Heading | Words | Grid | Chart | Blank


@dataclass(frozen=True)
class Document:
    """A paper about an option, or about all; `marking` stands in every page's foot."""

    name: str
    title: str
    subtitle: str
    marking: str
    blocks: tuple[Block, ...]

    @property
    def grids(self) -> tuple[Grid, ...]:
        return tuple(block for block in self.blocks if isinstance(block, Grid))
