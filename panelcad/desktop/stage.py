"""Shows the document on the scene: which plate, which view, what is selected, what is marked."""

from typing import Final

from PySide6.QtCore import QObject, Signal

from panelcad.desktop.canvas.badge import MarkKind
from panelcad.desktop.canvas.overlay import Mark
from panelcad.desktop.canvas.scene import PanelScene
from panelcad.desktop.document import Document
from panelcad.desktop.judge import Judge
from panelcad.desktop.selection import Selection
from panelcad.desktop.theme import Theme
from panelcad.desktop.views import ViewKind, view_kind
from panelcad.drawing.layers import Layer
from panelcad.editing.lookup import together
from panelcad.geometry.point import Point
from panelcad.model.finding import Finding
from panelcad.model.layout import Layout, layout
from panelcad.model.project import Option, Project

LEFT_OUT_AT_FIRST: Final[frozenset[str]] = frozenset({Layer.NUMBERS, Layer.NAMES})
"""Words over the picture, until somebody asks for them."""


class Stage(QObject):
    """`shown` after another picture is on the scene, `previewed` after one of a proposal; `plate_changed`,
    `view_changed` when one looks elsewhere.
    """

    shown = Signal()
    previewed = Signal()
    plate_changed = Signal()
    view_changed = Signal()

    def __init__(self, document: Document, selection: Selection, judge: Judge, theme: Theme) -> None:
        super().__init__()
        self._document, self._selection, self._judge = document, selection, judge
        self.theme = theme
        self.scene = PanelScene(theme)
        self.view: ViewKind = view_kind("front")
        self.hidden_layers: frozenset[str] = LEFT_OUT_AT_FIRST
        self.scene.hide_layers(self.hidden_layers)
        self._plate_id = ""
        self.marks_are_shown = True
        self.current_finding = ""
        document.changed.connect(self.refresh)
        document.option_changed.connect(self.refresh)
        document.replaced.connect(self.refresh)
        selection.changed.connect(self._show_selection)
        selection.hovered_changed.connect(self._show_hovered)
        judge.reported.connect(self.show_marks)

    @property
    def plate_id(self) -> str:
        """The plate that is shown; the option's first where the chosen one is not there."""
        return self._plate_of(self._document.option)

    def _plate_of(self, option: Option) -> str:
        plates = [plate.id for plate in option.plates]
        return self._plate_id if self._plate_id in plates else plates[0]

    def look_at_plate(self, plate_id: str) -> None:
        if plate_id != self.plate_id:
            self._plate_id = plate_id
            self.refresh()
            self.plate_changed.emit()

    def look_from(self, view_id: str) -> None:
        view = view_kind(view_id)
        if view is not self.view:
            self.view = view
            self.refresh()
            self.view_changed.emit()

    def hide_layers(self, layers: frozenset[str]) -> None:
        """Leave these layers out of every view, until others are named."""
        self.hidden_layers = layers
        self.scene.hide_layers(layers)
        self.place_names()

    def place_names(self) -> None:
        """Names stand where they fit at the zoom that is shown."""
        if self.view.names is not None and Layer.NAMES not in self.hidden_layers:
            self._show_names(self.layout())
        elif self.scene.names.are_there:
            self.scene.show_names(())

    def _show_names(self, laid: Layout) -> None:
        if self.view.names is not None and Layer.NAMES not in self.hidden_layers:
            from panelcad.drawing.views.names import Sight  # noqa: PLC0415 - loads when names are first shown

            sight = Sight(self.scene.mm_per_pixel, self.hidden_layers, self.scene.overlay.badge_boxes())
            self.scene.show_names(self.view.names(laid, self._plate_of(laid.option), self.theme, sight))

    def take_theme(self, theme: Theme) -> None:
        self.theme = theme
        self.scene.themed(theme)
        self.refresh()

    def layout(self) -> Layout:
        return layout(self._document.project, self._document.option)

    def refresh(self) -> None:
        """Show the document as it is now."""
        self.scene.keeps_pixmaps = self.view.keeps_pixmaps
        self.scene.show(self.view.draw(self.layout(), self.plate_id, self.theme))
        self.place_names()
        self._selection.keep_only(self.known_ids())
        self._show_selection()
        self.show_marks()
        self.shown.emit()

    def preview(self, project: Project) -> None:
        """Show a proposal; the next refresh shows the document again."""
        option = next(o for o in project.all_options if o.id == self._document.option_id)
        laid = layout(project, option)
        self.scene.show(self.view.draw(laid, self._plate_of(option), self.theme))
        self._show_names(laid)
        self.previewed.emit()

    def to_picture(self, at: Point) -> Point:
        """Where a place of the plate is on the picture."""
        if self.view.place is not None:
            return self.view.place(self.layout(), self.plate_id, at)
        return self.view.to_picture.point(at)

    def to_plate(self, at: Point) -> Point:
        """The place of the plate under a place of the picture; a mirror is its own inverse."""
        return self.view.to_picture.point(at)

    def shift(self, ids: frozenset[str], dx: float, dy: float) -> None:
        """Move the picture of these by mm of the plate."""
        self.scene.shift(ids, -dx if self.view.is_mirrored else dx, dy)

    def whole(self, ids: tuple[str, ...]) -> frozenset[str]:
        """These ids and what moves with them."""
        return together(self._document.option, ids).union(ids)

    def known_ids(self) -> set[str]:
        """The ids of all that can be selected."""
        from panelcad.editing.openings import openings  # noqa: PLC0415 - keeps the import list of this file short
        from panelcad.editing.parts import all_things  # noqa: PLC0415 - keeps the import list of this file short

        option = self._document.option
        things = {thing.id for thing in all_things(self._document.project, option)}
        return things | {mark.id for mark in option.marks()} | openings(option).keys()

    def _show_selection(self) -> None:
        self.scene.select(self.whole(self._selection.ids))

    def _show_hovered(self) -> None:
        hovered = self._selection.hovered
        self.scene.hover(self.whole((hovered,)) if hovered else ())

    # Findings

    def look_at_finding(self, identity: str) -> None:
        self.current_finding = identity
        self.show_marks()

    def show_marks(self) -> None:
        report = self._judge.report
        marks: tuple[Mark, ...] = ()
        if report is not None and self.marks_are_shown and self.view.shows_findings:
            found = [(finding, MarkKind(finding.severity.value)) for finding in report.findings]
            found += [(accepted.finding, MarkKind.ACCEPTED) for accepted in report.accepted]
            marks = tuple(self._mark(f, kind) for f, kind in found if f.plate == self.plate_id and f.where)
        if set(marks) != set(self.scene.overlay.marks):
            self.scene.set_marks(marks)
            self.place_names()

    def _mark(self, finding: Finding, kind: MarkKind) -> Mark:
        where = tuple(self.to_picture(Point(*point)) for point in finding.where)
        identity = finding.identity
        return Mark(identity, kind, where, finding.problem, stands_out=identity == self.current_finding)
