"""What tools, panes and actions work with: the document, what is selected, what is judged, what is shown."""

from collections.abc import Callable, Collection
from typing import TYPE_CHECKING, Final

from PySide6.QtCore import QObject, Signal

from panelcad.desktop.canvas.view import PanelView
from panelcad.desktop.comparer import Comparer
from panelcad.desktop.document import Document
from panelcad.desktop.drawing_desk import DrawingDesk
from panelcad.desktop.equipment_judge import EquipmentJudge
from panelcad.desktop.judge import Judge
from panelcad.desktop.outline_desk import OutlineDesk
from panelcad.desktop.recall import Recall
from panelcad.desktop.section_line import SectionDesk
from panelcad.desktop.selection import Selection
from panelcad.desktop.settings import Settings
from panelcad.desktop.stage import LEFT_OUT_AT_FIRST, Stage
from panelcad.desktop.theme import Theme, theme_for
from panelcad.desktop.view_before import ViewBefore
from panelcad.editing.equip import say_by_cutout
from panelcad.editing.lookup import bundles
from panelcad.editing.made import Made
from panelcad.editing.openings import is_opening, openings
from panelcad.errors import PanelcadError
from panelcad.model.project import Project
from panelcad.units import LengthUnit

if TYPE_CHECKING:
    from panelcad.library.catalogue import Catalogue
    from panelcad.library.equipment import EquipmentLibrary

CLOSEST: Final = 12.0
"""The closest, in pixels a mm, that one is taken to a thing."""


class Workbench(QObject):
    """Signals: `told` a passing word for the status bar, `refused` one that says why something was not done;
    `tool_wanted` and `action_wanted` by their id, `place_wanted` with a cutout; `finding_chosen` by its identity, to go
    there, and `finding_marked` to choose it in the list; `reasons_wanted` for what speaks against the option's
    equipment; `theme_changed`, `catalogue_changed`.
    """

    told = Signal(str)
    refused = Signal(str)
    tool_wanted = Signal(str)
    action_wanted = Signal(str)
    place_wanted = Signal(object)
    finding_chosen = Signal(str)
    finding_marked = Signal(str)
    reasons_wanted = Signal()
    theme_changed = Signal()
    catalogue_changed = Signal()

    def __init__(self, document: Document, settings: Settings) -> None:
        super().__init__()
        self.document = document
        self.settings = settings
        self.theme: Theme = theme_for(settings.theme)
        self.selection = Selection()
        self._recall = Recall(document, self.selection)
        document.changed.connect(self._recall.note)
        self.judge = Judge(document)
        self.equipment_judge = EquipmentJudge(document)
        self.comparer = Comparer(document)
        self.stage = Stage(document, self.selection, self.judge, self.theme)
        document.changed.connect(lambda: self._recall.bring_back(self.stage.known_ids()))
        self.section = SectionDesk()
        self.stage.hide_layers(settings.left_out(LEFT_OUT_AT_FIRST))
        self.view = PanelView(self.stage.scene, self.theme)
        self.view.zoomed.connect(lambda _: self.stage.place_names())
        self.view_before = ViewBefore(self.view, self.stage)
        document.replaced.connect(self.view_before.forget)
        self.outline = OutlineDesk(self)
        self.drawing = DrawingDesk(self)
        self.reckoned_from = ""
        """The key of what positions were last reckoned from; '' until somebody chose."""
        self.flipped_from = ""
        """The option that was shown before one flipped to the panel as found."""
        self._catalogue: Catalogue | None = None
        self._equipment: EquipmentLibrary | None = None

    @property
    def unit(self) -> LengthUnit:
        return self.document.project.unit

    @property
    def catalogue(self) -> "Catalogue":
        """The packaged cutouts and the user's own, read when first asked for."""
        if self._catalogue is None:
            from panelcad.library.catalogue import whole_catalogue  # noqa: PLC0415 - read after the window is painted

            self._catalogue = whole_catalogue()
        return self._catalogue

    @property
    def equipment(self) -> "EquipmentLibrary":
        """The packaged units of equipment and the user's own, read when first asked for."""
        if self._equipment is None:
            from panelcad.library.equipment import packaged_equipment, whole_equipment  # noqa: PLC0415 - as above

            try:
                self._equipment = whole_equipment()
            except PanelcadError as fault:
                self.refused.emit(str(fault))
                self._equipment = packaged_equipment()
        return self._equipment

    def said(self, project: Project, ids: Collection[str]) -> Project:
        """The project where items just placed are the one unit of equipment that is mounted in their cutout."""
        return say_by_cutout(project, self.document.option_id, ids, self.equipment.by_cutout)

    def read_catalogue_again(self) -> None:
        self._catalogue = None
        self.catalogue_changed.emit()

    def take_theme(self, theme: Theme) -> None:
        self.theme = theme
        self.stage.take_theme(theme)
        self.view.themed(theme)
        self.theme_changed.emit()

    def edit(self, title: str, change: Callable[[Project, str], Project]) -> bool:
        """Apply a change of (project, option id) as one undo step; a refusal is told and leaves all as it was."""
        try:
            self.document.apply(title, change(self.document.project, self.document.option_id))
        except PanelcadError as refusal:
            self.refused.emit(str(refusal))
            return False
        return True

    def make(self, title: str, change: Callable[[Project, str], Made]) -> bool:
        """As `edit`, for a change that makes something; what was made is selected."""
        made: list[Made] = []

        def changed(project: Project, option_id: str) -> Project:
            made.append(change(project, option_id))
            return made[0].project

        done = self.edit(title, changed)
        if done:
            self.select_parts(made[0].ids)
        return done

    def select_parts(self, ids: Collection[str]) -> None:
        """Select what these ids stand for: an item and its cut are one; dimensions where there is nothing else. Plates
        are looked at, not selected.
        """
        plates = {plate.id for plate in self.document.option.plates}
        wanted = tuple(one for one in ids if one not in plates)
        anchors = tuple(bundle.anchor for bundle in bundles(self.document.option, wanted))
        self.selection.set(anchors or wanted)

    def mark_finding(self, identity: str) -> None:
        """A finding stands out on the panel and is the one that is chosen in the list."""
        self.stage.look_at_finding(identity)
        self.finding_marked.emit(identity)

    def take_tool(self, tool_id: str) -> None:
        self.tool_wanted.emit(tool_id)

    def zoom_to_selection(self) -> None:
        box = self.stage.scene.box(self.stage.whole(self.selection.ids)) if self.selection.ids else None
        if box is not None:
            with self.view_before.kept():
                self.view.show_box(box, CLOSEST)

    def name_of(self, part_id: str) -> str:
        """What people call a thing of the option."""
        from panelcad.checks.wording import names  # noqa: PLC0415 - only when something is named

        if is_opening(part_id):
            one = openings(self.document.option).get(part_id)
            return one.opening.purpose if one is not None else part_id
        return names(self.document.project, self.document.option).get(part_id, part_id)

    def selection_words(self) -> str:
        """What people call what is selected: its name, or how many things it is."""
        count = len(self.selection)
        return self.name_of(self.selection.current) if count == 1 else f"{count} things"
