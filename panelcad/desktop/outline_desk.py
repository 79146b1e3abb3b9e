"""The outline that is being drawn: which plate's, which of its corners is picked, and changes to it as undo steps."""

from collections.abc import Callable
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Signal

from panelcad.editing.outline import edges, outline_of, set_outline
from panelcad.editing.sharp_outline import SharpOutline, redrawn, sharpened
from panelcad.geometry.point import distance
from panelcad.geometry.segment import Segment
from panelcad.model.project import Project
from panelcad.model.shape import Outline

if TYPE_CHECKING:
    from panelcad.desktop.workbench import Workbench

Change = Callable[[SharpOutline, int], SharpOutline]


class OutlineDesk(QObject):
    """`changed` when another corner is picked or the outline is another one."""

    changed = Signal()

    def __init__(self, bench: "Workbench") -> None:
        super().__init__()
        self._bench = bench
        self._corner = 0
        bench.stage.shown.connect(self.changed)
        self.is_picked = False
        """A person picked the corner; else it is the first."""
        bench.stage.plate_changed.connect(self._forget)
        bench.document.replaced.connect(self._forget)

    @property
    def outline(self) -> SharpOutline:
        """That of the plate that is shown, by its corners as if they were sharp and what they are rounded by."""
        return sharpened(self._finished)

    @property
    def _finished(self) -> Outline:
        return outline_of(self._bench.document.option.plate(self._bench.stage.plate_id).outline)

    @property
    def corner(self) -> int:
        """The number of the picked corner; the edge that leaves it bears the same number."""
        return min(self._corner, len(self.outline.radii) - 1)

    @property
    def edge(self) -> Segment:
        """The edge that leaves the picked corner, as if no corner were rounded."""
        return self.outline.edges[self.corner]

    @property
    def finished_edge(self) -> int:
        """The number, in the finished outline, of what rounding leaves of the edge that leaves the picked corner."""
        middle = self.edge.at(0.5)
        finished = edges(self._finished)
        return min(range(len(finished)), key=lambda i: distance(finished[i].nearest(middle), middle))

    def pick(self, corner: int) -> None:
        self._corner, self.is_picked = corner, True
        self.changed.emit()

    def _forget(self) -> None:
        self._corner, self.is_picked = 0, False
        self.changed.emit()

    def change(self, title: str, change: Change) -> bool:
        """Change the outline at the picked corner; a refusal is told."""
        return self._bench.edit(title, lambda project, option: self.changed_project(project, option, change))

    def changed_project(self, project: Project, option_id: str, change: Change) -> Project:
        """The project with the outline changed at the picked corner. Raises `EditRefused`."""
        plate_id = self._bench.stage.plate_id
        outline = outline_of(project.option(option_id).plate(plate_id).outline)
        changed = redrawn(outline, lambda whole: change(whole, self.corner))
        return set_outline(project, option_id, plate_id, changed)
