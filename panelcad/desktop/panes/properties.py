"""Properties of what is selected; they follow while it moves."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFrame, QScrollArea

from panelcad.desktop.fields import CommittingField
from panelcad.desktop.panes.many_things import ManyThings
from panelcad.desktop.panes.one_mark import OneMark
from panelcad.desktop.panes.one_opening import OneOpening
from panelcad.desktop.panes.one_thing import OneThing
from panelcad.desktop.panes.whole_panel import WholePanel
from panelcad.desktop.workbench import Workbench
from panelcad.editing.depths import shape_of
from panelcad.editing.openings import is_opening, openings
from panelcad.editing.parts import standing_around
from panelcad.model.plate import Cut
from panelcad.model.project import Item, Project

Sheet = OneThing | OneMark | OneOpening | ManyThings | WholePanel


class PropertiesPane(QScrollArea):
    def __init__(self, bench: Workbench) -> None:
        super().__init__()
        self.setAccessibleName("Properties")
        self._bench = bench
        self._shows: tuple[object, ...] = ()
        self.setWidgetResizable(True)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        bench.selection.changed.connect(self.rebuild)
        bench.stage.shown.connect(self.rebuild)
        bench.document.proposed.connect(self._follow)
        self.rebuild()

    @property
    def sheet(self) -> Sheet:
        """The sheet that is shown."""
        shown = self.widget()
        if not isinstance(shown, Sheet):
            raise TypeError("no sheet is shown")
        return shown

    def rebuild(self) -> None:
        """Another sheet where something else is selected, else the same one with its values as they are now."""
        document = self._bench.document
        stands_for = (self._bench.selection.ids, document.option_id, self._bench.stage.plate_id, self._bench.unit)
        shows = (*stands_for, self._cutout(), self._shape())
        if shows != self._shows:
            self._shows = shows
            self._put(self._made())
        else:
            self.sheet.refresh(document.project)

    def _cutout(self) -> str | None:
        """The cutout of the one thing that is selected: another one in its place has other facts and other meanings."""
        option, current = self._bench.document.option, self._bench.selection.current
        cuts = (cut for plate in option.plates for cut in plate.cuts)
        things: tuple[Item | Cut, ...] = (*option.items, *cuts)
        return next((thing.cutout for thing in things if thing.id == current), None)

    def _shape(self) -> str:
        """The kind of shape of the opening, or thing around the panel, that is selected: each has its own figures."""
        current = self._bench.selection.current
        around = standing_around(self._bench.document.project.surroundings)
        one = openings(self._bench.document.option).get(current)
        if one is not None:
            return one.opening.shape.kind
        return next((shape_of(thing).kind for thing in around if thing.id == current), "")

    def _put(self, sheet: Sheet) -> None:
        """After Enter in a field the keyboard is on the canvas again, unless the field wants a button pressed."""
        self.setWidget(sheet)
        if not isinstance(sheet, ManyThings):
            for field in sheet.findChildren(CommittingField):
                field.done.connect(self._bench.view.setFocus)

    def _made(self) -> Sheet:
        option = self._bench.document.option
        drawn = {mark.id for mark in option.dimensions} | {mark.id for mark in option.drawing_notes}
        if is_opening(self._bench.selection.current):
            return OneOpening(self._bench, self._bench.selection.current)
        if len(self._bench.selection) == 1:
            if self._bench.selection.current in drawn:
                return OneMark(self._bench, self._bench.selection.current)
            return OneThing(self._bench, self._bench.selection.current)
        return ManyThings(self._bench) if self._bench.selection.ids else WholePanel(self._bench)

    def _follow(self, project: Project) -> None:
        sheet = self.sheet
        if isinstance(sheet, OneThing):
            sheet.follow(project)
        elif isinstance(sheet, OneMark | OneOpening):
            sheet.refresh(project)
