"""A plan as the bytes of an ASCII DXF file: the same plan gives the same bytes."""

import io
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import UTC, datetime
from threading import Lock
from typing import TYPE_CHECKING, Final

from panelcad.drawing.display import Bounds
from panelcad.geometry.contour import Contour, Rounded, Vertex
from panelcad.geometry.point import Point
from panelcad.outputs.dxf_layers import COLOUR, MEANING, Layer
from panelcad.outputs.dxf_options import DxfVersion
from panelcad.outputs.dxf_plan import Label, Loop, Mark, Plan, Stroke
from panelcad.units import LengthUnit

if TYPE_CHECKING:
    from ezdxf.document import Drawing
    from ezdxf.layouts.layout import Modelspace

_INSUNITS: Final = {LengthUnit.INCH: 1, LengthUnit.MM: 4}
"""DXF Reference, HEADER section, $INSUNITS."""
_MEASUREMENT: Final = {LengthUnit.INCH: 0, LengthUnit.MM: 1}
_R12: Final = "AC1009"
_PLACES: Final = 9
"""Decimals of a coordinate in the file's unit: a millionth of a micrometre, below which floats only add noise."""
_UNDATED: Final = "2000-01-01"
_ONE_AT_A_TIME: Final = Lock()


def dxf_bytes(plan: Plan, box: Bounds, version: DxfVersion, unit: LengthUnit, on: str) -> bytes:
    """The file's content. `box` in mm becomes its extents, `on` (YYYY-MM-DD or empty) its date."""
    from ezdxf.document import Drawing  # noqa: PLC0415 - slow to load, and needed only where a file is written

    with _fixed_metadata():
        document = Drawing.new(version.value)
        _set_unit(document, unit)
        _fill(document, plan, unit)
        _set_extents(document, box, unit)
        return _written(document, datetime.fromisoformat(on or _UNDATED).replace(tzinfo=UTC))


@contextmanager
def _fixed_metadata() -> Iterator[None]:
    """Neither the clock nor chance gets into a document made meanwhile; one thread at a time."""
    from ezdxf import options  # type: ignore[attr-defined]  # noqa: PLC0415 - slow to load

    with _ONE_AT_A_TIME:
        before = options.write_fixed_meta_data_for_testing
        options.write_fixed_meta_data_for_testing = True
        try:
            yield
        finally:
            options.write_fixed_meta_data_for_testing = before


def _set_unit(document: "Drawing", unit: LengthUnit) -> None:
    """State the unit in both places that readers look at; R12 has neither, there the reference layer names it."""
    if document.dxfversion > _R12:
        document.units = _INSUNITS[unit]
        document.header["$MEASUREMENT"] = _MEASUREMENT[unit]


def _fill(document: "Drawing", plan: Plan, unit: LengthUnit) -> None:
    used = {part.layer for part in plan.parts}
    for layer in Layer:
        if layer in used:
            entry = document.layers.add(layer.value, color=COLOUR[layer])
            if document.dxfversion >= "AC1018":
                entry.description = MEANING[layer]
    pen = _Pen(document.modelspace(), unit)
    for loop in plan.loops:
        pen.loop(loop)
    for stroke in plan.strokes:
        pen.stroke(stroke)
    for mark in plan.marks:
        pen.mark(mark)
    for label in plan.labels:
        pen.label(label)


class _Pen:
    """Draws a plan's parts into a model space, from mm to the file's unit."""

    def __init__(self, space: "Modelspace", unit: LengthUnit) -> None:
        self._space = space
        self._unit = unit

    def loop(self, loop: Loop) -> None:
        contour = loop.contour
        if isinstance(contour, Rounded) and contour.is_circle:
            attributes = {"layer": loop.layer.value}
            self._space.add_circle(self._at(contour.core[0]), self._length(contour.radius), dxfattribs=attributes)
        else:
            self._polyline(_vertices(contour), loop.layer, closed=True)

    def stroke(self, stroke: Stroke) -> None:
        vertices = stroke.track.vertices
        if len(vertices) == 2 and not vertices[0].bulge:
            start, end = (self._at(vertex.point) for vertex in vertices)
            self._space.add_line(start, end, dxfattribs={"layer": stroke.layer.value})
        else:
            self._polyline(vertices, stroke.layer, closed=False)

    def mark(self, mark: Mark) -> None:
        self._space.add_point(self._at(mark.at), dxfattribs={"layer": mark.layer.value})

    def label(self, label: Label) -> None:
        text = self._space.add_text(
            _plain(label.text), height=self._length(label.height), dxfattribs={"layer": label.layer.value}
        )
        text.set_placement(self._at(label.at))

    def _polyline(self, vertices: tuple[Vertex, ...], layer: Layer, *, closed: bool) -> None:
        points = [(*self._at(vertex.point), vertex.bulge) for vertex in vertices]
        attributes = {"layer": layer.value}
        if self._space.doc.dxfversion == _R12:
            self._space.add_polyline2d(points, format="xyb", close=closed, dxfattribs=attributes)
        else:
            self._space.add_lwpolyline(points, format="xyb", close=closed, dxfattribs=attributes)

    def _at(self, point: Point) -> tuple[float, float]:
        return self._length(point.x), self._length(point.y)

    def _length(self, mm: float) -> float:
        return round(mm / self._unit.mm, _PLACES) + 0.0


def _vertices(contour: Contour) -> tuple[Vertex, ...]:
    return contour.chain.vertices if isinstance(contour, Rounded) else contour.vertices


def _set_extents(document: "Drawing", box: Bounds, unit: LengthUnit) -> None:
    x1, y1, x2, y2 = (edge / unit.mm for edge in box)
    space = document.modelspace()
    space.reset_extents((x1, y1, 0.0), (x2, y2, 0.0))
    space.reset_limits((x1, y1), (x2, y2))
    document.set_modelspace_vport(height=max(y2 - y1, (x2 - x1) / 1.5) * 1.1, center=((x1 + x2) / 2, (y1 + y2) / 2))


def _written(document: "Drawing", on: datetime) -> bytes:
    """As `Drawing.write`, with the release's date in place of the clock's.

    Letters outside ASCII are escaped by `_plain`, so that no reader has to guess the file's code page.
    """
    from ezdxf.lldxf.tagwriter import TagWriter  # noqa: PLC0415 - comes with ezdxf
    from ezdxf.tools.juliandate import juliandate  # noqa: PLC0415 - comes with ezdxf

    document.commit_pending_changes()
    document.update_all()
    _sort_classes(document)
    for name in ("$TDCREATE", "$TDUCREATE", "$TDUPDATE", "$TDUUPDATE"):
        document.header[name] = juliandate(on)
    stream = io.StringIO()
    handles = bool(document.header.get("$HANDLING", 0)) or document.dxfversion > _R12
    document.export_sections(TagWriter(stream, dxfversion=document.dxfversion, write_handles=handles))
    return stream.getvalue().encode("ascii")


def _sort_classes(document: "Drawing") -> None:
    """Put the classes in the order of their names: ezdxf takes some from a set, whose order is chance."""
    classes = document.classes.classes
    ordered = sorted(classes.items())
    classes.clear()
    classes.update(ordered)


def _plain(text: str) -> str:
    r"""ASCII with DXF's own \U+XXXX for every other letter (DXF Reference, string group codes); no line breaks."""
    units = text.replace("\n", " ").encode("utf-16-be")
    codes = (int.from_bytes(units[i : i + 2]) for i in range(0, len(units), 2))
    return "".join(chr(code) if 32 <= code < 127 else f"\\U+{code:04X}" for code in codes)
