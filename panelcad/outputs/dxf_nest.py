"""Several plates laid on stock sheets, with a margin around and a gap between them: a packing of their boxes.

Grain runs along the stock's width; plates are turned by a quarter only where that is allowed.
"""

import math
import re
from dataclasses import dataclass
from enum import StrEnum
from itertools import product
from typing import Any, Final

from panelcad.errors import UnusableInput
from panelcad.geometry.gap import TIE
from panelcad.geometry.placement import Placement
from panelcad.model.layout import PlateLayout, layout
from panelcad.model.plate import Plate
from panelcad.model.profile import Profile
from panelcad.model.project import Option, Project
from panelcad.outputs.dxf_contents import plate_plan
from panelcad.outputs.dxf_finish import cut_outline
from panelcad.outputs.dxf_options import DxfOptions, FaceUp
from panelcad.outputs.dxf_plan import Plan
from panelcad.units import LengthUnit, format_length

_PER_MM: Final = 1000
"""The packer works in whole micrometres, each box rounded up."""
_PART: Final = re.compile(
    r"Part: (?P<plate>[a-z0-9._-]+), turned (?P<turned>0|90) degrees, "
    r"lower left at x (?P<x>-?\d+\.\d+), y (?P<y>-?\d+\.\d+) mm"
)
_WHOLE: Final = DxfOptions()


class Turning(StrEnum):
    """Whether a plate may lie across the stock; the good sheet's grain then runs the other way."""

    NONE = "none"
    QUARTER = "quarter turn"


@dataclass(frozen=True)
class Stock:
    """A stock sheet in mm: its size, the margin kept free along its edges, the gap between two plates."""

    width: float
    height: float
    margin: float = 6.35
    gap: float = 6.35
    turning: Turning = Turning.NONE


@dataclass(frozen=True)
class Part:
    """A plate on its stock: turned counter-clockwise by 0 or 90 degrees, the lower left of its box at x, y in mm."""

    plate: str
    turned: int
    x: float
    y: float


def stock_of(profile: Profile) -> Stock | None:
    """The stock that a shop's profile states; None where it states no size."""
    if profile.stock_width is None or profile.stock_height is None:
        return None
    return Stock(profile.stock_width, profile.stock_height, profile.stock_margin, profile.stock_margin)


def packed(project: Project, option: Option, plate_ids: tuple[str, ...], stock: Stock) -> tuple[tuple[Part, ...], ...]:
    """The parts of each stock sheet needed, in the option's order of plates.

    Raises `UnusableInput` for plates of different sheet, or one that does not fit the stock; `UnknownName`.
    """
    plates = [layout(project, option).plate(plate_id) for plate_id in plate_ids]
    _refuse_mixed_sheet([plate.plate for plate in plates], project.unit)
    boxes = {plate.plate.id: _box(plate, project) for plate in plates}
    for plate_id, box in boxes.items():
        _refuse_too_large(plate_id, box, stock, project.unit)
    return _sheets(boxes, stock)


def part_text(part: Part) -> str:
    """The line of a file that says where a part lies; `parts_in` reads it back."""
    return f"Part: {part.plate}, turned {part.turned} degrees, lower left at x {part.x:.6f}, y {part.y:.6f} mm"


def parts_in(texts: tuple[str, ...]) -> tuple[Part, ...]:
    """The parts that a file's lines name."""
    found = (_PART.match(text) for text in texts)
    return tuple(Part(m["plate"], int(m["turned"]), float(m["x"]), float(m["y"])) for m in found if m)


def part_plan(project: Project, option: Option, part: Part, options: DxfOptions = _WHOLE) -> Plan:
    """What a part's file would hold, where it lies on the stock. Raises `UnknownName`, `UnusableInput`."""
    plate = layout(project, option).plate(part.plate)
    return plate_plan(plate, project, options).placed(_placement(plate, project, part, options))


def _placement(plate: PlateLayout, project: Project, part: Part, options: DxfOptions) -> Placement:
    turned = Placement(rotation=part.turned, mirrored=options.face_up is FaceUp.BACK)
    left, bottom, _, _ = turned.contour(cut_outline(plate, project.profile.finish_thickness)).bounds
    return Placement(part.x - left, part.y - bottom, part.turned, turned.mirrored)


def _box(plate: PlateLayout, project: Project) -> tuple[float, float]:
    x1, y1, x2, y2 = cut_outline(plate, project.profile.finish_thickness).bounds
    return x2 - x1, y2 - y1


def _refuse_mixed_sheet(plates: list[Plate], unit: LengthUnit) -> None:
    first = plates[0]
    for plate in plates[1:]:
        if (plate.alloy, plate.thickness) != (first.alloy, first.thickness):
            sheets = (f"{each.alloy} {format_length(each.thickness, unit)}" for each in (first, plate))
            problem = f"plates '{first.id}' and '{plate.id}' are of different sheet ({', '.join(sheets)})"
            raise UnusableInput("", "", problem, "plates of one sheet on one stock")


def _refuse_too_large(plate: str, box: tuple[float, float], stock: Stock, unit: LengthUnit) -> None:
    room = (stock.width - 2 * stock.margin, stock.height - 2 * stock.margin)
    ways = [box] if stock.turning is Turning.NONE else [box, box[::-1]]
    if not any(way[0] <= room[0] + TIE and way[1] <= room[1] + TIE for way in ways):
        sizes = [" x ".join(format_length(side, unit) for side in pair) for pair in (box, room)]
        raise UnusableInput("", f"plate {plate}", f"its {sizes[0]} do not fit the stock", f"at most {sizes[1]}")


def _sheets(boxes: dict[str, tuple[float, float]], stock: Stock) -> tuple[tuple[Part, ...], ...]:
    """The packing that needs the fewest stock sheets, of several ways to go about it."""
    import rectpack  # noqa: PLC0415 - only needed where plates are nested

    ways = product(
        (rectpack.MaxRectsBssf, rectpack.MaxRectsBl, rectpack.MaxRectsBaf, rectpack.SkylineBl),
        (rectpack.SORT_AREA, rectpack.SORT_LSIDE, rectpack.SORT_SSIDE, rectpack.SORT_PERI),
    )
    tries = [_tried(boxes, stock, *way) for way in ways]
    return min(tries, key=len)


def _tried(boxes: dict[str, tuple[float, float]], stock: Stock, how: Any, order: Any) -> tuple[tuple[Part, ...], ...]:
    import rectpack  # noqa: PLC0415 - as above

    packer = rectpack.newPacker(pack_algo=how, sort_algo=order, rotation=stock.turning is Turning.QUARTER)
    for name, (width, height) in boxes.items():
        packer.add_rect(_up(width + stock.gap), _up(height + stock.gap), rid=name)
    room = (_down(side - 2 * stock.margin + stock.gap) for side in (stock.width, stock.height))
    packer.add_bin(*room, count=len(boxes))
    packer.pack()
    place = {name: number for number, name in enumerate(boxes)}
    sheets = ([_part(rect, boxes, stock) for rect in sheet] for sheet in packer)
    return tuple(tuple(sorted(parts, key=lambda part: place[part.plate])) for parts in sheets)


def _part(rect: Any, boxes: dict[str, tuple[float, float]], stock: Stock) -> Part:
    turned = 0 if rect.width == _up(boxes[rect.rid][0] + stock.gap) else 90
    return Part(rect.rid, turned, stock.margin + rect.x / _PER_MM, stock.margin + rect.y / _PER_MM)


def _up(mm: float) -> int:
    return math.ceil(round(mm * _PER_MM, 3))


def _down(mm: float) -> int:
    return math.floor(round(mm * _PER_MM, 3))
