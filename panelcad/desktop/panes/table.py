"""The panes, in one table; another pane is one more line."""

from collections.abc import Callable
from dataclasses import dataclass
from enum import Enum
from typing import Final

from PySide6.QtWidgets import QWidget

from panelcad.desktop.panes.equipment import EquipmentPane
from panelcad.desktop.panes.findings import FindingsPane
from panelcad.desktop.panes.history import HistoryPane
from panelcad.desktop.panes.items import ItemsPane
from panelcad.desktop.panes.library import LibraryPane
from panelcad.desktop.panes.options import OptionsPane
from panelcad.desktop.panes.outline import OutlinePane
from panelcad.desktop.panes.properties import PropertiesPane
from panelcad.desktop.panes.section import SectionPane
from panelcad.desktop.workbench import Workbench


class Side(Enum):
    LEFT = "left"
    RIGHT = "right"
    BOTTOM = "bottom"


@dataclass(frozen=True)
class PaneKind:
    """`share` is how much of its side's height the pane gets at first; 0 for one that is closed at first."""

    id: str
    title: str
    side: Side
    share: int
    shortcut: str
    make: Callable[[Workbench], QWidget]


PANES: Final = (
    PaneKind("library", "Library", Side.LEFT, 3, "Alt+1", LibraryPane),
    PaneKind("items", "On the panel", Side.LEFT, 2, "Alt+2", ItemsPane),
    PaneKind("properties", "Properties", Side.RIGHT, 3, "Alt+3", PropertiesPane),
    PaneKind("findings", "Findings", Side.RIGHT, 3, "Alt+4", FindingsPane),
    PaneKind("outline", "Outline", Side.RIGHT, 0, "Alt+8", OutlinePane),
    PaneKind("history", "What was done", Side.RIGHT, 0, "Alt+5", HistoryPane),
    PaneKind("equipment", "Equipment", Side.LEFT, 0, "Alt+7", EquipmentPane),
    PaneKind("section", "Section", Side.BOTTOM, 0, "F6", SectionPane),
    PaneKind("options", "Options side by side", Side.BOTTOM, 0, "Alt+6", OptionsPane),
)
