"""A cutout of the user's own, as a person with callipers enters it, and the cutout it makes."""

import re
import unicodedata
from dataclasses import dataclass, field
from enum import StrEnum
from typing import Any, Final

from pydantic import TypeAdapter, ValidationError

from panelcad.errors import UnusableInput
from panelcad.model.cutout import Bezel, Body, BodyKind, Cutout, Mounting, Opening
from panelcad.model.faults import first_fault
from panelcad.model.hole import BoltCircle, HoleForm, HoleGroup, Spot
from panelcad.model.shape import Shape
from panelcad.model.source import Source, Standing
from panelcad.units import LengthUnit

Sizes = dict[str, float]
SHAPES: Final[dict[str, tuple[str, ...]]] = {
    "circle": ("diameter",),
    "rectangle": ("width", "height", "corner_radius"),
    "slot": ("length", "width"),
    "flatted circle": ("diameter", "flat_depth"),
    "keyed circle": ("diameter", "key_width", "key_depth"),
}
"""The shapes that are entered by their dimensions; any other comes from a drawing."""
_SHAPE: Final[TypeAdapter[Shape]] = TypeAdapter(Shape)


class ScrewPattern(StrEnum):
    NONE = "none"
    RING = "on a circle"
    CORNERS = "at four corners"
    SIDES = "left and right"


@dataclass(frozen=True)
class Screws:
    """`across` is the circle's diameter or the distance from left to right, `up` the distance between rows, in mm."""

    pattern: ScrewPattern = ScrewPattern.NONE
    across: float = 0.0
    up: float = 0.0
    count: int = 4
    hole: float = 0.0
    fastener: float = 0.0

    def group(self, source: Source) -> HoleGroup | None:
        """The holes, None where there are none. Raises pydantic's `ValidationError`."""
        if self.pattern is ScrewPattern.NONE:
            return None
        form = HoleForm(diameter=self.hole, fastener=self.fastener)
        ring, spots = None, self._spots()
        if self.pattern is ScrewPattern.RING:
            ring = BoltCircle(diameter=self.across, count=self.count, first_angle=180.0 / self.count)
        return HoleGroup(form=form, bolt_circle=ring, spots=spots, source=source)

    def _spots(self) -> tuple[Spot, ...]:
        x, y = self.across / 2, self.up / 2
        corners = (Spot(x=-x, y=-y), Spot(x=x, y=-y), Spot(x=x, y=y), Spot(x=-x, y=y))
        sides = (Spot(x=-x, y=0.0), Spot(x=x, y=0.0))
        return {ScrewPattern.CORNERS: corners, ScrewPattern.SIDES: sides}.get(self.pattern, ())


@dataclass(frozen=True)
class Sketch:
    """Lengths in mm. A shape is None where there is no such part; `source` says where the dimensions are from."""

    title: str
    unit: LengthUnit
    mounting: Mounting = Mounting.FRONT
    opening: Shape | None = None
    screws: Screws = field(default_factory=Screws)
    bezel: Shape | None = None
    bezel_thickness: float = 0.0
    case: Shape | None = None
    case_depth: float = 0.0
    connector_room: float = 0.0
    source: str = ""


def shape_of(kind: str, sizes: Sizes) -> Shape:
    """The shape of this kind and these dimensions in mm. Raises `UnusableInput`."""
    try:
        return _SHAPE.validate_python({"kind": kind, **sizes})
    except ValidationError as error:
        raise first_fault(error, "", kind) from None


def name_of(title: str) -> str:
    """What files call a cutout of this title.

    >>> name_of("Stick timer, 2½ in")
    'own-stick-timer-2-1-2-in'
    """
    apart = "".join(f" {char}" if unicodedata.category(char) == "No" else char for char in title)
    plain = unicodedata.normalize("NFKD", apart).casefold().replace("⁄", "-").encode("ascii", "ignore").decode()
    return "-".join(("own", *re.findall(r"[a-z0-9]+", plain)))[:100]


def cutout_of(sketch: Sketch) -> Cutout:
    """The cutout that a sketch describes. Raises `UnusableInput` with what is wrong."""
    if not re.search(r"\w", sketch.title):
        raise UnusableInput("", "title", "it is empty", "what you call the cutout")
    if not sketch.source.strip():
        raise UnusableInput("", "source", "it is empty", "where the dimensions are from, such as 'measured'")
    try:
        return Cutout.model_validate(_record(sketch, Source(standing=Standing.USER, text=sketch.source)))
    except ValidationError as error:
        raise first_fault(error, "") from None


def _record(sketch: Sketch, source: Source) -> dict[str, Any]:
    group = sketch.screws.group(source)
    return {
        "name": name_of(sketch.title),
        "title": sketch.title,
        "family": f"own-{sketch.unit.value}",
        "unit": sketch.unit,
        "mounting": sketch.mounting,
        "openings": (Opening(shape=sketch.opening, source=source),) if sketch.opening else (),
        "holes": (group,) if group else (),
        "bezel": _bezel(sketch, source),
        "bodies": tuple(_bodies(sketch, source)),
    }


def _bezel(sketch: Sketch, source: Source) -> Bezel | None:
    return Bezel(shape=sketch.bezel, thickness=sketch.bezel_thickness, source=source) if sketch.bezel else None


def _bodies(sketch: Sketch, source: Source) -> list[Body]:
    """The case, and the room for connector and harness behind all of it."""
    if sketch.case is None:
        return []
    kind = BodyKind.TRAY if sketch.mounting is Mounting.TRAY else BodyKind.CASE
    bodies = [Body(kind=kind, shape=sketch.case, far=sketch.case_depth, source=source)]
    if sketch.connector_room:
        end = sketch.case_depth + sketch.connector_room
        bodies.append(Body(kind=BodyKind.CONNECTOR, shape=sketch.case, near=sketch.case_depth, far=end, source=source))
    return bodies
