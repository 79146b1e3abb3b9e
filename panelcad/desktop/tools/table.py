"""The tools of the tool bar, in one table; another tool is one more line."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Final

from panelcad.desktop.tools.base import Tool
from panelcad.desktop.tools.course import COURSES
from panelcad.desktop.tools.dimension import DimensionTool
from panelcad.desktop.tools.draw_box import DRAWINGS
from panelcad.desktop.tools.eye import EyeTool
from panelcad.desktop.tools.measure import MeasureTool
from panelcad.desktop.tools.outline import OutlineTool
from panelcad.desktop.tools.pan import PanTool
from panelcad.desktop.tools.section import SectionTool
from panelcad.desktop.tools.select import SelectTool
from panelcad.desktop.tools.split import SplitTool
from panelcad.desktop.tools.words import WORDINGS
from panelcad.desktop.workbench import Workbench


@dataclass(frozen=True)
class ToolKind:
    """One that is not on the bar is reached by its key, the menus and the command search."""

    id: str
    title: str
    icon: str
    shortcut: str
    hint: str
    make: Callable[[Workbench], Tool]
    menu: str = "&Tools"
    on_bar: bool = True


TOOLS: Final = (
    ToolKind("select", "&Select and move", "select", "V", "Pick, box and move things", SelectTool),
    ToolKind("eye", "&Eye point", "eye", "E", "Move the pilot's eye and see the panel from there", EyeTool),
    ToolKind("outline", "&Outline", "outline", "O", "Shape the plate: corners, bows, rounded corners", OutlineTool),
    ToolKind("dimension", "&Dimension", "", "D", "A distance that stays on the drawing", DimensionTool, on_bar=False),
    *(ToolKind(one.id, one.title, "", one.shortcut, one.hint, one.tool, on_bar=False) for one in WORDINGS),
    *(
        ToolKind(f"draw-{one.id}", one.title, "", one.shortcut, one.hint, one.tool, menu="Pane&l", on_bar=False)
        for one in DRAWINGS
    ),
    *(
        ToolKind(f"course-{one.id}", one.title, "", one.shortcut, one.hint, one.tool, menu="Pane&l", on_bar=False)
        for one in COURSES
    ),
    ToolKind(
        "split",
        "Split along a li&ne",
        "",
        "Shift+S",
        "Two plates of one along any straight line",
        SplitTool,
        menu="Pane&l",
        on_bar=False,
    ),
    ToolKind("pan", "&Pan", "pan", "H", "Move the view", PanTool),
    ToolKind("section", "Se&ction", "section", "S", "Drag the line of the section", SectionTool),
    ToolKind("measure", "&Measure", "measure", "M", "Distances between edges and centres", MeasureTool),
)


def make_tool(tool_id: str, bench: Workbench) -> Tool:
    """The tool of this id. Raises KeyError."""
    return {kind.id: kind for kind in TOOLS}[tool_id].make(bench)
