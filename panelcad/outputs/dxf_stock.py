"""Cutting files of whole stock sheets, each with the plates nested on it."""

from collections import defaultdict
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from typing import Final

from panelcad.errors import UnusableInput
from panelcad.geometry.contour import Contour, rectangle
from panelcad.geometry.point import Point
from panelcad.model.plate import PlateState
from panelcad.model.project import Option, Project
from panelcad.model.revision import stamp
from panelcad.outputs.dxf import whole_box
from panelcad.outputs.dxf_layers import Layer
from panelcad.outputs.dxf_nest import Stock, packed, part_plan, part_text
from panelcad.outputs.dxf_options import DxfOptions
from panelcad.outputs.dxf_plan import Loop, Plan
from panelcad.outputs.dxf_words import labels, stock_words
from panelcad.outputs.dxf_writer import dxf_bytes
from panelcad.store.atomic import write_atomically

_DEFAULTS: Final = DxfOptions()


def export_nested_dxf(
    project: Project, option: Option, folder: Path | str, stock: Stock, options: DxfOptions = _DEFAULTS
) -> tuple[Path, ...]:
    """Write one cutting file a stock sheet with all new plates of the option; returns the files.

    The origin is the stock's lower left corner; plates of different sheet lie on different stock. Raises
    `UnusableInput` where a plate does not fit, or where a file cannot be written.
    """
    mark = options.stamp or stamp(project, option)
    files = []
    for number, plan in enumerate(nested_plans(project, option, stock, replace(options, stamp=mark)), 1):
        file = Path(folder) / f"{option.id}-{mark.revision or 'draft'}-stock-{number}.dxf"
        content = dxf_bytes(plan, whole_box(plan), options.version, options.unit or project.unit, mark.on)
        try:
            write_atomically(file, content)
        except OSError as error:
            problem = f"it cannot be written ({error.strerror})"
            raise UnusableInput(str(file), "", problem, "a folder one may write in") from error
        files.append(file)
    return tuple(files)


def nested_plans(project: Project, option: Option, stock: Stock, options: DxfOptions = _DEFAULTS) -> Iterator[Plan]:
    """What the file of each stock sheet holds, in mm from the stock's lower left corner."""
    mark = options.stamp or stamp(project, option)
    sheets = [parts for group in _of_one_sheet(option) for parts in packed(project, option, group, stock)]
    if not sheets:
        raise UnusableInput("", f"option {option.id}", "it has no new plate to lay on a stock sheet", "a new plate")
    for number, parts in enumerate(sheets, 1):
        plan = Plan(loops=(Loop(Layer.REFERENCE, _edge(stock)),))
        for part in parts:
            plan = plan.joined(part_plan(project, option, part, options))
        told = (f"Stock: sheet {number} of {len(sheets)}", *(part_text(part) for part in parts))
        lines = stock_words(project, option, option.plate(parts[0].plate), told, replace(options, stamp=mark))
        yield plan.joined(Plan(labels=tuple(labels(lines, (0.0, 0.0, stock.width, stock.height)))))


def _of_one_sheet(option: Option) -> list[tuple[str, ...]]:
    """The new plates by what sheet they are cut from, in the option's order."""
    groups: dict[tuple[str, float], list[str]] = defaultdict(list)
    for plate in option.plates:
        if plate.state is PlateState.NEW:
            groups[plate.alloy, plate.thickness].append(plate.id)
    return [tuple(group) for group in groups.values()]


def _edge(stock: Stock) -> Contour:
    return rectangle(Point(stock.width / 2, stock.height / 2), stock.width, stock.height)
