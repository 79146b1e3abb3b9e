"""A DXF file as anybody's program may have written it: closed contours, open chains, points and texts, in mm.

Lines, arcs, circles and polylines of model space are read, those in inserted blocks too, mirrored ones put upright.
"""

import io
import logging
import math
from dataclasses import dataclass, replace
from enum import Enum, StrEnum, auto
from pathlib import Path
from typing import TYPE_CHECKING, Final

from panelcad.errors import UnusableInput
from panelcad.geometry.contour import Chain, Contour, Rounded, Vertex, circle, closed_chain
from panelcad.geometry.point import Point, distance
from panelcad.geometry.segment import FULL_TURN, Arc
from panelcad.geometry.track import Track
from panelcad.intake.dxf_chains import Piece, chained
from panelcad.intake.dxf_curves import chords
from panelcad.intake.dxf_entities import Gathered, gather, layer_of
from panelcad.intake.dxf_unit import header_unit, other_unit, stated_unit, unit_in_words
from panelcad.units import LARGEST_LENGTH, LengthUnit

if TYPE_CHECKING:
    from ezdxf.document import Drawing

LARGEST_FILE: Final = 64 * 1024 * 1024
EXPECTED: Final = "a DXF drawing of closed lines, arcs, circles and polylines"
_MANY: Final = 24
"""A contour of more pieces than this, on a layer with splines or ellipses, was one of them."""
_ONE_CIRCLE: Final = 1e-4
"""Arcs whose centres and radii agree to this many mm and that go all around are one circle."""


class Curves(Enum):
    """What is done with splines and ellipses."""

    UNREADABLE = auto()
    CHORDS = auto()


class UnitFrom(StrEnum):
    """Where the unit of a file's numbers was learnt."""

    HEADER = "its header"
    WORDS = "the words on it"
    TOLD = "whoever reads it"


@dataclass(frozen=True)
class FoundContour:
    """`is_joined` where it was loose lines and arcs, `is_curved` where a spline or an ellipse was, now in chords."""

    layer: str
    contour: Contour
    is_joined: bool = False
    is_curved: bool = False


@dataclass(frozen=True)
class FoundTrack:
    """A chain that does not close."""

    layer: str
    track: Track


@dataclass(frozen=True)
class DxfFile:
    """What a drawing holds, in mm; `unreadable` names kinds and layers of entities that are neither line nor arc."""

    source: str
    unit: LengthUnit
    unit_from: UnitFrom
    version: str
    contours: tuple[FoundContour, ...]
    tracks: tuple[FoundTrack, ...]
    points: tuple[tuple[str, Point], ...]
    texts: tuple[str, ...]
    unreadable: tuple[tuple[str, str], ...]
    header_says: str = ""
    """A unit that the header states and that nobody cuts in, such as metres."""


def read_dxf(
    path: Path | str,
    unit: LengthUnit | None = None,
    curves: Curves = Curves.UNREADABLE,
    largest: float = LARGEST_LENGTH,
) -> DxfFile:
    """Read a drawing; `unit` is meant where the file states none, `largest` is the greatest coordinate in mm.

    Raises `UnusableInput` in one sentence.
    """
    file = Path(path)
    content = _content(file)
    drawing = _drawing(file, content)
    found = _gathered(file, drawing)
    stated, unit_from = _unit(file, content, found, unit)
    read = DxfFile(
        source=str(file),
        unit=stated,
        unit_from=unit_from,
        version=drawing.dxfversion,
        contours=(),
        tracks=(),
        points=tuple((layer, _point(at, stated)) for layer, at in found.points),
        texts=tuple(found.texts),
        unreadable=(),
        header_says=other_unit(content) or "",
    )
    read = _with_shapes(read, found, curves)
    _refuse_wild_numbers(read, largest)
    return read


def rescaled(drawing: DxfFile, factor: float) -> DxfFile:
    """The same drawing with every length times `factor`."""
    return replace(
        drawing,
        contours=tuple(replace(each, contour=_times(each.contour, factor)) for each in drawing.contours),
        tracks=tuple(FoundTrack(t.layer, Track(_times_each(t.track.vertices, factor))) for t in drawing.tracks),
        points=tuple((layer, Point(at.x * factor, at.y * factor)) for layer, at in drawing.points),
    )


def _times(contour: Contour, factor: float) -> Contour:
    if isinstance(contour, Rounded):
        return Rounded(tuple(Point(p.x * factor, p.y * factor) for p in contour.core), contour.radius * factor)
    return Chain(_times_each(contour.vertices, factor))


def _times_each(vertices: tuple[Vertex, ...], factor: float) -> tuple[Vertex, ...]:
    return tuple(Vertex(v.x * factor, v.y * factor, v.bulge) for v in vertices)


def unit_stated_in(path: Path | str) -> LengthUnit | None:
    """The unit a file states in its header or its words, None where it states none. Raises `UnusableInput`."""
    file = Path(path)
    content = _content(file)
    return stated_unit(content, _gathered(file, _drawing(file, content)).texts)


def _content(file: Path) -> bytes:
    try:
        size = file.stat().st_size
        if size > LARGEST_FILE:
            raise UnusableInput(str(file), "", f"it is {size // 1024**2} MB long", "a drawing of at most 64 MB")
        return file.read_bytes()
    except OSError as error:
        raise UnusableInput(str(file), "", f"it cannot be read ({error.strerror})", EXPECTED) from None


def _drawing(file: Path, content: bytes) -> "Drawing":
    """The document, small faults of other programs repaired where ezdxf can."""
    from ezdxf import recover  # noqa: PLC0415 - slow to load

    logging.getLogger("ezdxf").addHandler(logging.NullHandler())  # what it repaired is no message of ours
    if b"SECTION" not in content:
        raise UnusableInput(str(file), "", "it is no DXF file", EXPECTED)
    try:
        if content.startswith(b"AutoCAD Binary DXF"):
            return recover.readfile(file)[0]
        return recover.read(io.BytesIO(content))[0]
    except Exception as error:  # noqa: BLE001 - a damaged file makes ezdxf fail in any way
        problem = f"it is no whole DXF file ({error or type(error).__name__})"
        raise UnusableInput(str(file), "", problem, EXPECTED) from None


def _gathered(file: Path, drawing: "Drawing") -> Gathered:
    found = Gathered()
    for entity in drawing.modelspace():
        try:
            gather(entity, found)
        except Exception as error:  # noqa: BLE001 - as above
            place = f"{entity.dxftype()} on layer {layer_of(entity)}"
            raise UnusableInput(
                str(file), place, f"it is damaged ({error or type(error).__name__})", EXPECTED
            ) from None
    return found


def _unit(file: Path, content: bytes, found: Gathered, named: LengthUnit | None) -> tuple[LengthUnit, UnitFrom]:
    for unit, source in (
        (header_unit(content), UnitFrom.HEADER),
        (unit_in_words(found.texts), UnitFrom.WORDS),
        (named, UnitFrom.TOLD),
    ):
        if unit is not None:
            return unit, source
    other = other_unit(content)
    problem = f"its unit is {other}" if other else "it does not say its unit"
    raise UnusableInput(str(file), "", problem, "mm or in; name the unit that its numbers are in")


def _with_shapes(read: DxfFile, found: Gathered, curves: Curves) -> DxfFile:
    """The drawing with everything that was found in it, loose pieces joined where their ends meet."""
    contours = [FoundContour(layer, _ring(vertices, read.unit)) for layer, vertices in found.closed]
    pieces = {layer: [_scaled(piece, read.unit) for piece in loose] for layer, loose in found.pieces.items()}
    unreadable, curved = list(found.unreadable), set[str]()
    for curve in found.curves:
        points = chords(curve, read.unit) if curves is Curves.CHORDS else ()
        if points:
            pieces.setdefault(curve.layer, []).append(_scaled(Piece(points), read.unit))
            curved.add(curve.layer)
        else:
            unreadable.append((curve.kind, curve.layer))
    tracks: list[FoundTrack] = []
    for layer, loose in pieces.items():
        joined = chained(loose)
        contours += [_joined(layer, ring, may_be_curved=layer in curved) for ring in joined.closed]
        tracks += [FoundTrack(layer, Track(piece.vertices)) for piece in joined.open]
    return replace(read, contours=tuple(contours), tracks=tuple(tracks), unreadable=tuple(dict.fromkeys(unreadable)))


def _joined(layer: str, ring: tuple[Vertex, ...], *, may_be_curved: bool) -> FoundContour:
    is_curved = may_be_curved and len(ring) > _MANY
    return FoundContour(layer, _ring(ring, LengthUnit.MM), is_joined=not is_curved, is_curved=is_curved)


def _refuse_wild_numbers(read: DxfFile, largest: float) -> None:
    for found in read.contours:
        if not all(abs(edge) <= largest for edge in found.contour.bounds):
            raise UnusableInput(
                read.source, f"layer {found.layer}", "a contour has wild numbers", f"at most {largest / 1000:g} m"
            )


def _point(at: Point, unit: LengthUnit) -> Point:
    return Point(at.x * unit.mm, at.y * unit.mm)


def _scaled(piece: Piece, unit: LengthUnit) -> Piece:
    return Piece(_times_each(piece.vertices, unit.mm))


def _ring(vertices: tuple[Vertex, ...], unit: LengthUnit) -> Contour:
    """The contour through these vertices; arcs of one circle that go all around are that circle."""
    chain = closed_chain(_times_each(vertices, unit.mm))
    return _as_circle(chain) or chain


def _as_circle(chain: Chain) -> Contour | None:
    first = chain.segments[0]
    if not isinstance(first, Arc):
        return None
    arcs = [segment for segment in chain.segments if isinstance(segment, Arc)]
    is_one = len(arcs) == len(chain.segments) and all(
        distance(arc.centre, first.centre) <= _ONE_CIRCLE and abs(arc.radius - first.radius) <= _ONE_CIRCLE
        for arc in arcs
    )
    goes_around = abs(sum(arc.sweep for arc in arcs) - FULL_TURN) < 1e-6
    return circle(first.centre, 2 * first.radius) if is_one and goes_around and math.isfinite(first.radius) else None
