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
from panelcad.outputs.dxf_nest import Part, Stock, packed, part_plan, part_text
from panelcad.outputs.dxf_options import DxfOptions
from panelcad.outputs.dxf_plan import Label, Loop, Plan
from panelcad.outputs.dxf_words import HEIGHT, labels, stock_words
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
    sheets = stock_sheets(project, option, stock, options)
    return tuple(write_stock_sheet(project, option, sheet, Path(folder), options) for sheet in sheets)


def write_stock_sheet(project: Project, option: Option, sheet: StockSheet, folder: Path, options: DxfOptions) -> Path:
    """Write the cutting file of one stock sheet; returns the file. Raises `UnusableInput`."""
    mark = options.stamp or stamp(project, option)
    file = folder / f"{option.id}-{mark.revision or 'draft'}-stock-{sheet.number}.dxf"
    content = dxf_bytes(sheet.plan, whole_box(sheet.plan), options.version, options.unit or project.unit, mark.on)
    try:
        write_atomically(file, content)
    except OSError as error:
        problem = f"it cannot be written ({error.strerror})"
        raise UnusableInput(str(file), "", problem, "a folder one may write in") from error
    return file


def stock_sheets(
    project: Project, option: Option, stock: Stock, options: DxfOptions = _DEFAULTS
) -> tuple[StockSheet, ...]:
    """The stock sheets that the option's new plates need. Raises `UnusableInput`."""
    marked = replace(options, stamp=options.stamp or stamp(project, option))
    laid = [parts for group in _of_one_sheet(option) for parts in packed(project, option, group, stock)]
    if not laid:
        raise UnusableInput("", f"option {option.id}", "it has no new plate to lay on a stock sheet", "a new plate")
    sheets = []
    for number, parts in enumerate(laid, 1):
        plate = option.plate(parts[0].plate)
        told = (f"Stock: sheet {number} of {len(laid)}", *(part_text(part) for part in parts))
        words = labels(stock_words(project, option, plate, told, marked), (0.0, 0.0, stock.width, stock.height))
        names = (_name_on(part, option) for part in parts)
        plan = Plan(loops=(Loop(Layer.REFERENCE, _edge(stock)),), labels=(*words, *names))
        for part in parts:
            plan = plan.joined(part_plan(project, option, part, marked))
        sheets.append(StockSheet(number, len(laid), parts, plate, plan))
    return tuple(sheets)


def _of_one_sheet(option: Option) -> list[tuple[str, ...]]:
    """The new plates by what sheet they are cut from, in the option's order."""
    groups: dict[tuple[str, float], list[str]] = defaultdict(list)
    for plate in option.plates:
        if plate.state is PlateState.NEW:
            groups[plate.alloy, plate.thickness].append(plate.id)
    return [tuple(group) for group in groups.values()]


def _name_on(part: Part, option: Option) -> Label:
    """The plate's name in its lower left corner, for reference."""
    return Label(Layer.REFERENCE, option.plate(part.plate).name, Point(part.x + HEIGHT, part.y + HEIGHT), HEIGHT)


def _edge(stock: Stock) -> Contour:
    return rectangle(Point(stock.width / 2, stock.height / 2), stock.width, stock.height)
