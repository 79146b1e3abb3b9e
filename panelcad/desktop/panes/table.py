"""The panes, in one table; another pane is one more line. Each is loaded and made when it is first shown."""

from dataclasses import dataclass
from enum import Enum
from importlib import import_module
from typing import Final

from PySide6.QtWidgets import QWidget

from panelcad.desktop.workbench import Workbench


class Side(Enum):
    LEFT = "left"
    RIGHT = "right"
    BOTTOM = "bottom"


@dataclass(frozen=True)
class PaneKind:
    """`share` is how much of its side's height the pane gets at first; 0 for one that is closed at first.

    `widget` names its class in a module of this folder.
    """

    id: str
    title: str
    side: Side
    share: int
    shortcut: str
    widget: str
    is_only_for_tool: bool = False
    """Shown while the tool that brings it is in hand, and then alone."""
    is_scrolled: bool = False
    """Scrolled where it is lower than all of it, so that panes beside and below may be as high as one likes."""

    def make(self, bench: Workbench) -> QWidget:
        module, _, name = self.widget.partition(".")
        made = getattr(import_module(f"panelcad.desktop.panes.{module}"), name)(bench)
        if not isinstance(made, QWidget):
            raise TypeError(f"{self.widget} is no widget")
        return made


PANES: Final = (
    PaneKind("library", "Library", Side.LEFT, 3, "Alt+1", "library.LibraryPane"),
    PaneKind("items", "On the panel", Side.LEFT, 2, "Alt+2", "items.ItemsPane"),
    PaneKind("properties", "Properties", Side.RIGHT, 3, "Alt+3", "properties.PropertiesPane"),
    PaneKind("findings", "Findings", Side.RIGHT, 3, "Alt+4", "findings.FindingsPane"),
    PaneKind("layers", "Layers", Side.RIGHT, 0, "Alt+9", "layers.LayersPane"),
    PaneKind("outline", "Outline", Side.RIGHT, 0, "Alt+8", "outline.OutlinePane", is_only_for_tool=True),
    PaneKind("drawing", "Next point", Side.RIGHT, 0, "Alt+0", "drawing.DrawingPane", is_only_for_tool=True),
    PaneKind("history", "What was done", Side.RIGHT, 0, "Alt+5", "history.HistoryPane"),
    PaneKind("equipment", "Equipment", Side.LEFT, 0, "Alt+7", "equipment.EquipmentPane", is_scrolled=True),
    PaneKind("section", "Section", Side.BOTTOM, 0, "F6", "section.SectionPane"),
    PaneKind("options", "Options side by side", Side.BOTTOM, 0, "Alt+6", "options.OptionsPane"),
)
