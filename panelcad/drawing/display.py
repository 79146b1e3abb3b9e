"""The display list: what a view draws, in mm, y up. Painters replay it; none of them knows what an instrument is.

Nodes are paths, texts and pictures; groups hold nodes and carry an owner's id for hit-testing and repainting, a layer,
a clip, an opacity and a placement. A list never changes while it is painted.
"""

from collections.abc import Iterator
from dataclasses import dataclass, field
from enum import StrEnum
from typing import Final, NamedTuple

from panelcad.geometry.contour import Contour
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point
from panelcad.geometry.track import Track

Bounds = tuple[float, float, float, float]


class Colour(NamedTuple):
    """Red, green, blue and opacity, 0 to 255 each."""

    red: int
    green: int
    blue: int
    opacity: int = 255

    @staticmethod
    def parse(text: str) -> "Colour":
        """From '#rrggbb' or '#rrggbbaa'. Raises ValueError."""
        digits = text.removeprefix("#")
        if len(digits) not in {6, 8}:
            raise ValueError(f"'{text}' is no colour; '#rrggbb' or '#rrggbbaa' is expected")
        return Colour(*(int(digits[i : i + 2], 16) for i in range(0, len(digits), 2)))

    @property
    def text(self) -> str:
        """'#rrggbb', the opacity left out."""
        return f"#{self.red:02x}{self.green:02x}{self.blue:02x}"

    def faded(self, share: float) -> "Colour":
        return self._replace(opacity=round(self.opacity * share))


class Stop(NamedTuple):
    """A colour at a share (0 to 1) of a gradient's way."""

    share: float
    colour: Colour


@dataclass(frozen=True)
class LinearGradient:
    start: Point
    end: Point
    stops: tuple[Stop, ...]


@dataclass(frozen=True)
class RadialGradient:
    centre: Point
    radius: float
    stops: tuple[Stop, ...]


Fill = Colour | LinearGradient | RadialGradient


class Measured(StrEnum):
    """Whether a pen or a letter keeps its size on the panel or on the screen."""

    MM = "mm"
    PIXELS = "px"


class Cap(StrEnum):
    FLAT = "flat"
    ROUND = "round"


@dataclass(frozen=True)
class Pen:
    """`dashes` are lengths on, off, on, ... in the unit of the width."""

    colour: Colour
    width: float
    measured: Measured = Measured.MM
    dashes: tuple[float, ...] = ()
    cap: Cap = Cap.FLAT


@dataclass(frozen=True)
class Path:
    """Contours and tracks drawn as one: filled by the even-odd rule, then stroked."""

    outlines: tuple[Contour | Track, ...]
    fill: Fill | None = None
    pen: Pen | None = None

    @property
    def bounds(self) -> Bounds:
        """The box of the geometry; a pen in mm adds half its width."""
        half = self.pen.width / 2 if self.pen and self.pen.measured is Measured.MM else 0.0
        x1, y1, x2, y2 = union(outline.bounds for outline in self.outlines)
        return x1 - half, y1 - half, x2 + half, y2 + half


class Along(StrEnum):
    LEFT = "left"
    CENTRE = "centre"
    RIGHT = "right"


class Across(StrEnum):
    BASELINE = "baseline"
    CLEAR = "clear"
    MIDDLE = "middle"
    TOP = "top"


class Face(StrEnum):
    """The packaged fonts."""

    REGULAR = "regular"
    BOLD = "bold"


@dataclass(frozen=True)
class Text:
    """One line of text. `height` is the height of a capital letter (h of ISO 3098), not the em.

    `MIDDLE` and `TOP` are the middle and top of a capital; `CLEAR` keeps the letters clear of a line through the place.
    A `rim` of another colour, `RIM` of the height wide, is drawn around the letters where they must be read over lines.
    """

    text: str
    at: Point
    height: float
    colour: Colour
    along: Along = Along.LEFT
    across: Across = Across.BASELINE
    rotation: float = 0.0
    face: Face = Face.REGULAR
    measured: Measured = Measured.MM
    rim: Colour | None = None


RIM: Final = 0.2
"""Width of a text's rim as a share of its height."""


@dataclass(frozen=True)
class Picture:
    """A PNG or JPEG stretched over a rectangle whose lower left corner is `at`."""

    content: bytes
    at: Point
    width: float
    height: float

    @property
    def bounds(self) -> Bounds:
        return self.at.x, self.at.y, self.at.x + self.width, self.at.y + self.height


@dataclass(frozen=True)
class Group:
    """Nodes drawn in order. `owner` is the id of the cut, item or plate they show, empty where there is none."""

    nodes: tuple["Node", ...]
    owner: str = ""
    layer: str = ""
    clip: Contour | None = None
    opacity: float = 1.0
    placement: Placement | None = None
    title: str = field(default="", compare=False)


Node = Path | Text | Picture | Group


def union(boxes: "Iterator[Bounds] | list[Bounds]") -> Bounds:
    """The box around all boxes. Raises ValueError where there are none."""
    columns = list(zip(*boxes, strict=True))
    if not columns:
        raise ValueError("nothing is drawn")
    return min(columns[0]), min(columns[1]), max(columns[2]), max(columns[3])


def walk(nodes: tuple[Node, ...]) -> Iterator[Node]:
    """Every node, groups before what they hold."""
    for node in nodes:
        yield node
        if isinstance(node, Group):
            yield from walk(node.nodes)
