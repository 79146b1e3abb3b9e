"""Cutting files of whole stock sheets, each with the plates nested on it."""

from collections import defaultdict
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Final

from panelcad.errors import UnusableInput
from panelcad.geometry.contour import Contour, rectangle
from panelcad.geometry.point import Point
from panelcad.model.plate import Plate, PlateState
from panelcad.model.project import Option, Project
from panelcad.model.revision import stamp
from panelcad.outputs.dxf import whole_box
from panelcad.outputs.dxf_layers import Layer
from panelcad.outputs.dxf_name import FileNames
from panelcad.outputs.dxf_nest import Part, Stock, packed, part_plan, part_text
from panelcad.outputs.dxf_options import DxfOptions
from panelcad.outputs.dxf_plan import Label, Loop, Plan
from panelcad.outputs.dxf_words import HEIGHT, draft_labels, labels, stock_words
from panelcad.outputs.dxf_writer import dxf_bytes
from panelcad.store.atomic import write_atomically

_DEFAULTS: Final = DxfOptions()


@dataclass(frozen=True)
class StockSheet:
    """One stock sheet of `count`: what its file holds, in mm from its lower left corner; `plate` is one laid on it."""

    number: int
    count: int
    parts: tuple[Part, ...]
    plate: Plate
    plan: Plan


def export_nested_dxf(
    project: Project, option: Option, folder: Path | str, stock: Stock, options: DxfOptions = _DEFAULTS
) -> tuple[Path, ...]:
    """Write one cutting file a stock sheet with all new plates of the option; returns the files.

    The origin is the stock's lower left corner; plates of different sheet lie on different stock. Raises
    `UnusableInput` where a plate does not fit, or where a file cannot be written.
    """
    mark = options.stamp or stamp(project, option)
    files = []
    for sheet in stock_sheets(project, option, stock, options):
        file = Path(folder) / FileNames(project, option, mark, options).stock(sheet.number)
        write_stock_sheet(project, option, sheet, file, options)
        files.append(file)
    return tuple(files)


def write_stock_sheet(project: Project, option: Option, sheet: StockSheet, file: Path, options: DxfOptions) -> None:
    """Write the cutting file of one stock sheet. Raises `UnusableInput`."""
    mark = options.stamp or stamp(project, option)
    content = dxf_bytes(sheet.plan, whole_box(sheet.plan), options.version, options.unit or project.unit, mark.on)
    try:
        write_atomically(file, content)
    except OSError as error:
        problem = f"it cannot be written ({error.strerror})"
        raise UnusableInput(str(file), "", problem, "a folder one may write in") from error


def new_plates(option: Option) -> tuple[Plate, ...]:
    """The plates that are cut from stock."""
    return tuple(plate for plate in option.plates if plate.state is PlateState.NEW)


def stock_sheets(
    project: Project,
    option: Option,
    stock: Stock,
    options: DxfOptions = _DEFAULTS,
    plates: tuple[Plate, ...] | None = None,
) -> tuple[StockSheet, ...]:
    """The stock sheets that these plates need, all new ones where none are given. Raises `UnusableInput`."""
    mark = options.stamp or stamp(project, option)
    marked = replace(options, stamp=mark)
    laid = [
        parts
        for group in _of_one_sheet(plates or new_plates(option))
        for parts in packed(project, option, group, stock)
    ]
    if not laid:
        raise UnusableInput("", f"option {option.id}", "it has no new plate to lay on a stock sheet", "a new plate")
    sheets = []
    for number, parts in enumerate(laid, 1):
        on_it = tuple(option.plate(part.plate) for part in parts)
        told = (f"Stock: sheet {number} of {len(laid)}", *(part_text(part) for part in parts))
        box = (0.0, 0.0, stock.width, stock.height)
        words = (*labels(stock_words(project, option, on_it, told, marked), box), *draft_labels(mark, box))
        names = (_name_on(part, option) for part in parts)
        plan = Plan(loops=(Loop(Layer.REFERENCE, _edge(stock)),), labels=(*words, *names))
        for part in parts:
            plan = plan.joined(part_plan(project, option, part, marked))
        sheets.append(StockSheet(number, len(laid), parts, on_it[0], plan))
    return tuple(sheets)


def relaid(project: Project, option: Option, sheet: StockSheet, options: DxfOptions) -> Plan:
    """What the sheet's plates would hold where they lie, written with other options."""
    plan = Plan()
    for part in sheet.parts:
        plan = plan.joined(part_plan(project, option, part, options))
    return plan


def _of_one_sheet(plates: tuple[Plate, ...]) -> list[tuple[str, ...]]:
    """The plates by what sheet they are cut from, in their order."""
    groups: dict[tuple[str, float], list[str]] = defaultdict(list)
    for plate in plates:
        groups[plate.alloy, plate.thickness].append(plate.id)
    return [tuple(group) for group in groups.values()]


def _name_on(part: Part, option: Option) -> Label:
    """The plate's name in its lower left corner, for reference."""
    return Label(Layer.REFERENCE, option.plate(part.plate).name, Point(part.x + HEIGHT, part.y + HEIGHT), HEIGHT)


def _edge(stock: Stock) -> Contour:
    return rectangle(Point(stock.width / 2, stock.height / 2), stock.width, stock.height)
