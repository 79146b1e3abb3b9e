"""The properties of one thing: its name, where it stands, how it is turned, and what is known of it."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QApplication, QCheckBox, QHBoxLayout, QLabel, QWidget

from panelcad.desktop.fields import AngleField, LengthField, TextField
from panelcad.desktop.panes.around_rows import AroundRows
from panelcad.desktop.panes.facts import facts
from panelcad.desktop.panes.form import Form
from panelcad.desktop.panes.from_box import FromBox
from panelcad.desktop.panes.lettering_rows import LetteringRows
from panelcad.desktop.panes.meaning_rows import MeaningRows
from panelcad.desktop.panes.references import Reference, references
from panelcad.desktop.panes.unit_choice import UnitChoice
from panelcad.desktop.workbench import Workbench
from panelcad.editing.groups import lock, unlock
from panelcad.editing.parts import STANDING, Thing, all_things
from panelcad.editing.placards import placards
from panelcad.editing.places import place_of
from panelcad.editing.rename import rename
from panelcad.editing.rotate import rotate_to
from panelcad.editing.taken_along import bring_to
from panelcad.geometry.point import Point
from panelcad.model.layout import layout
from panelcad.model.plate import AttachScrew, Cut, Engraving
from panelcad.model.project import Item, Project
from panelcad.planning.nameless import is_equipment


class OneThing(Form):
    def __init__(self, bench: Workbench, part_id: str) -> None:
        super().__init__()
        self._bench = bench
        self._part_id = part_id
        self._origin = Point(0.0, 0.0)
        thing = self._thing(bench.document.project)
        called = "Words" if self._is_placard(thing) else "Name"
        self.name = TextField(called)
        if not isinstance(thing, AttachScrew | Engraving):
            self.row(f"&{called}", self.name)
        self.name.committed.connect(self._rename)
        self._add_position()
        self.lettering = LetteringRows(self, bench, thing) if isinstance(thing, Engraving) else None
        self.around = AroundRows(self, bench, thing) if isinstance(thing, STANDING) else None
        self.unit = self._add_unit(thing)
        self.meaning = self._add_meaning(thing)
        self._add_facts(thing)
        self.end()
        self.refresh(bench.document.project)

    def _is_placard(self, thing: Thing | None) -> bool:
        """Whether what it is called is what stands on it."""
        return isinstance(thing, Item) and bool(
            placards(self._bench.document.project, self._bench.document.option, (thing.id,))
        )

    def _add_position(self) -> None:
        unit = self._bench.unit
        self.across, self.up = LengthField("x", unit), LengthField("y", unit)
        self.turn = AngleField("Rotation in degrees")
        self.origin = FromBox()
        self.row("F&rom", self.origin)
        self.row("&x, middle", _with_unit(self.across, unit.value))
        self.row("&y, middle", _with_unit(self.up, unit.value))
        self.row("T&urned", _with_unit(self.turn, "°"))
        self.locked = QCheckBox("Locked in place")
        self.row("", self.locked)
        self.locked.clicked.connect(lambda _: self._lock_or_free())
        for field in (self.across, self.up, self.turn):
            field.refused.connect(self._bench.refused)
        self.across.committed.connect(lambda _: self._move())
        self.up.committed.connect(lambda _: self._move())
        self.turn.committed.connect(self._turn)
        self.origin.closed.connect(lambda: self.across.setFocus(Qt.FocusReason.ShortcutFocusReason))
        self.origin.activated.connect(lambda _: self._reckon())
        self.origin.typed.connect(self._begin)

    def _reckon(self) -> None:
        """From another place, for what is selected next too; the figure that is typed next is x."""
        self._bench.reckoned_from = str(self.origin.currentData())
        self.refresh(self._bench.document.project)
        if self.across.hasFocus():
            self.across.selectAll()

    def _begin(self, key: QKeyEvent) -> None:
        """A figure typed at the choice is x."""
        self.across.setFocus(Qt.FocusReason.ShortcutFocusReason)
        self.across.selectAll()
        QApplication.sendEvent(self.across, key)

    def _add_unit(self, thing: Thing | None) -> UnitChoice | None:
        """For what is equipment; controls and hardware of the panel are none unless somebody said so."""
        if not isinstance(thing, Item) or thing.cutout is None:
            return None
        project = self._bench.document.project
        if thing.unit is None and not is_equipment(thing, project.cutout(thing.cutout)):
            return None
        made = UnitChoice(self._bench)
        self.row("E&quipment", made)
        return made

    def _add_meaning(self, thing: Thing | None) -> MeaningRows | None:
        if not isinstance(thing, Item) or thing.cutout is None:
            return None
        return MeaningRows(self, self._bench, thing, self._bench.document.project.cutout(thing.cutout))

    def _add_facts(self, thing: Thing | None) -> None:
        if not isinstance(thing, Item | Cut) or thing.cutout is None:
            return
        cutout = self._bench.document.project.cutout(thing.cutout)
        self.line()
        self.heading(cutout.title)
        for fact in facts(cutout, self._bench.unit):
            self.words(f"{fact.what}: {fact.figure}")
            self.words(fact.source, "faint")

    def _thing(self, project: Project) -> Thing | None:
        """None where a proposal has taken it away."""
        option = project.option(self._bench.document.option_id)
        return next((thing for thing in all_things(project, option) if thing.id == self._part_id), None)

    def refresh(self, project: Project) -> None:
        """Show the thing as it is in this project."""
        thing = self._thing(project)
        if thing is not None:
            self.name.show_text(str(getattr(thing, "name", "")))
            self.locked.setChecked(self._part_id in project.option(self._bench.document.option_id).locked)
            self._origin = self._reference(project).origin
            self.follow(project)
        if self.lettering is not None and isinstance(thing, Engraving):
            self.lettering.show(thing)
        if self.unit is not None and isinstance(thing, Item):
            self.unit.show_item(thing)
        if self.meaning is not None and isinstance(thing, Item):
            self.meaning.show(thing)

    def follow(self, project: Project) -> None:
        """Show where the thing stands in a proposal; what it is reckoned from stays where it was."""
        thing = self._thing(project)
        if thing is None:
            return
        place, start = place_of(thing), self._origin
        self.across.show_value(place.x - start.x)
        self.up.show_value(place.y - start.y)
        self.turn.show_value(place.rotation)
        self.turn.setEnabled(not isinstance(thing, AttachScrew))
        if self.around is not None and isinstance(thing, STANDING):
            self.around.show(thing)

    def _reference(self, project: Project) -> Reference:
        laid = layout(project, project.option(self._bench.document.option_id))
        known = references(laid, self._bench.stage.plate_id, self._part_id)
        entries = [(reference.words, reference.key) for reference in known]
        shown = [(self.origin.itemText(i), self.origin.itemData(i)) for i in range(self.origin.count())]
        chosen = self.origin.currentData() or self._bench.reckoned_from
        if entries != shown:
            self.origin.clear()
            for words, key in entries:
                self.origin.addItem(words, key)
            self.origin.setCurrentIndex(max(0, self.origin.findData(chosen)))
        return next((one for one in known if one.key == self.origin.currentData()), known[0])

    def _rename(self, name: str) -> None:
        if not self._bench.edit("Rename", lambda project, option: rename(project, option, self._part_id, name)):
            self.refresh(self._bench.document.project)

    def _move(self) -> None:
        x, y = self._origin.x + self.across.value, self._origin.y + self.up.value
        what = f"Move {self._bench.name_of(self._part_id)}"
        if not self._bench.edit(what, lambda project, option: bring_to(project, option, self._part_id, x, y)):
            self.refresh(self._bench.document.project)

    def _lock_or_free(self) -> None:
        title, change = ("Lock", lock) if self.locked.isChecked() else ("Unlock", unlock)
        self._bench.edit(title, lambda project, option: change(project, option, (self._part_id,)))
        self.refresh(self._bench.document.project)

    def _turn(self, degrees: float) -> None:
        what = f"Turn {self._bench.name_of(self._part_id)}"
        if not self._bench.edit(what, lambda project, option: rotate_to(project, option, self._part_id, degrees)):
            self.refresh(self._bench.document.project)


def _with_unit(field: QWidget, unit: str) -> QWidget:
    holder = QWidget()
    row = QHBoxLayout(holder)
    row.setContentsMargins(0, 0, 0, 0)
    row.setSpacing(6)
    row.addWidget(field, 1)
    label = QLabel(unit)
    label.setProperty("role", "faint")
    label.setMinimumWidth(18)
    row.addWidget(label)
    holder.setFocusProxy(field)
    return holder
