"""The properties of a dimension or a note."""

from panelcad.desktop.choice_box import ChoiceBox
from panelcad.desktop.fields import LengthField, TextField
from panelcad.desktop.panes.form import Form
from panelcad.desktop.workbench import Workbench
from panelcad.editing.marks import revise_mark
from panelcad.model.layout import layout
from panelcad.model.marked import measured
from panelcad.model.markup import Along, Dimension, DrawingNote
from panelcad.model.project import Project
from panelcad.units import format_length

Mark = Dimension | DrawingNote


class OneMark(Form):
    def __init__(self, bench: Workbench, mark_id: str) -> None:
        super().__init__()
        self._bench, self._mark_id = bench, mark_id
        mark = self._mark(bench.document.project)
        self.title = self.heading("")
        self.text = TextField("Words")
        self.along = ChoiceBox()
        self.length = LengthField("Length", bench.unit)
        self.length.refused.connect(bench.refused)
        self.across, self.up = LengthField("x", bench.unit), LengthField("y", bench.unit)
        if isinstance(mark, Dimension):
            self._add_dimension()
        else:
            self.row("Word&s", self.text)
            self.row("Hei&ght", self.length)
            self._add_place()
            self.text.committed.connect(lambda words: self._revise("Change a note", text=words))
            self.length.committed.connect(lambda mm: self._revise("Change a note", height=mm))
        self.words("Del takes it away.", "faint")
        self.end()
        self.refresh(bench.document.project)

    def _add_place(self) -> None:
        for letter, field in (("x", self.across), ("y", self.up)):
            self.row(f"&{letter}", field)
            field.refused.connect(self._bench.refused)
        self.across.committed.connect(lambda mm: self._revise("Move a note", x=mm))
        self.up.committed.connect(lambda mm: self._revise("Move a note", y=mm))

    def _add_dimension(self) -> None:
        self.along.setAccessibleName("Measured")
        for along in Along:
            self.along.addItem(along.value, along)
        self.row("&Measured", self.along)
        self.row("Sta&nds off", self.length)
        self.along.activated.connect(
            lambda _: self._revise("Change a dimension", along=Along(self.along.currentData()))
        )
        self.length.committed.connect(lambda mm: self._revise("Change a dimension", offset=mm))

    def _mark(self, project: Project) -> Mark | None:
        """None where a proposal has taken it away."""
        option = project.option(self._bench.document.option_id)
        marks: tuple[Mark, ...] = (*option.dimensions, *option.drawing_notes)
        return next((mark for mark in marks if mark.id == self._mark_id), None)

    def refresh(self, project: Project) -> None:
        """Show the mark as it is in this project."""
        mark = self._mark(project)
        if isinstance(mark, DrawingNote):
            self.title.setText("Note")
            self.text.show_text(mark.text)
            self.length.show_value(mark.height)
            self.across.show_value(mark.x)
            self.up.show_value(mark.y)
        elif mark is not None:
            plate = layout(project, project.option(self._bench.document.option_id)).plate(mark.plate)
            self.title.setText(format_length(measured(plate, mark).value, self._bench.unit))
            self.along.setCurrentIndex(self.along.findData(mark.along))
            self.length.show_value(mark.offset)

    def _measure(self, along: Along) -> None:
        self._revise("Change a dimension", along=along)

    def _revise(self, title: str, **changes: object) -> None:
        if not self._bench.edit(title, lambda project, option: revise_mark(project, option, self._mark_id, **changes)):
            self.refresh(self._bench.document.project)
