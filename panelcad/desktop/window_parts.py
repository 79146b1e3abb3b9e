"""What an action can lay its hands on."""

from dataclasses import dataclass
from typing import TYPE_CHECKING

from panelcad.desktop.asking import Asking
from panelcad.desktop.files import FileDesk
from panelcad.desktop.tools.toolbox import Toolbox
from panelcad.desktop.workbench import Workbench

if TYPE_CHECKING:
    from panelcad.desktop.main_window import MainWindow


@dataclass
class Parts:
    bench: Workbench
    toolbox: Toolbox
    desk: FileDesk
    asking: Asking
    window: "MainWindow"
