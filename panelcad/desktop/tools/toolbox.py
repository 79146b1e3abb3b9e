"""The tool in hand; the keys go to it."""

from PySide6.QtCore import QObject, Qt, Signal

from panelcad.desktop.tools.base import Tool
from panelcad.desktop.tools.place import PlaceTool
from panelcad.desktop.tools.resting import Resting
from panelcad.desktop.tools.table import make_tool
from panelcad.desktop.workbench import Workbench
from panelcad.model.cutout import Cutout

PLACING = "place"


class Toolbox(QObject):
    """`changed` when another tool is in hand."""

    changed = Signal()

    def __init__(self, bench: Workbench) -> None:
        super().__init__()
        self._bench = bench
        self.tool_id = ""
        self.tool: Tool | None = None
        bench.tool_wanted.connect(self.take)
        bench.place_wanted.connect(self.place)
        bench.stage.view_changed.connect(self._suit_view)
        bench.document.replaced.connect(lambda: self.take("select"))

    @property
    def pane(self) -> str:
        """The pane that comes with the tool in hand, or ''."""
        return self.tool.pane if self.tool is not None else ""

    def take(self, tool_id: str) -> None:
        """Put the tool away and take the one of this id."""
        self._hold(tool_id, make_tool(tool_id, self._bench))

    def place(self, cutout: Cutout) -> None:
        self._hold(PLACING, PlaceTool(self._bench, cutout))

    def _hold(self, tool_id: str, tool: Tool) -> None:
        if self.tool is not None:
            self.tool.put_away()
        self.tool_id, self.tool = tool_id, tool
        if not tool.works_in(self._bench.stage.view):
            self._bench.stage.look_from(tool.home)
        self._bench.view.tool = tool
        self._bench.view.viewport().setCursor(tool.cursor)
        self._bench.view.setFocus(Qt.FocusReason.OtherFocusReason)
        self._bench.told.emit("")
        tool.start()
        self.changed.emit()

    def _suit_view(self) -> None:
        """A tool that cannot work in the view is put away, or rests where it has begun something."""
        tool = self.tool
        if tool is None:
            return
        works = tool.works_in(self._bench.stage.view)
        if works or tool.own_step:
            self._bench.view.tool = tool if works else Resting(self._bench, tool)
        else:
            self.take("select")
