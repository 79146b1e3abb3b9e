"""A cutout described in a form, with a live picture, kept in the user's own library."""

from typing import Final

from pydantic import ValidationError
from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QCheckBox,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QScrollArea,
    QVBoxLayout,
    QWidget,
)

from panelcad.desktop.choice_box import ChoiceBox
from panelcad.desktop.dialogs.answers import Answers
from panelcad.desktop.dialogs.entries import LengthEntry
from panelcad.desktop.dialogs.fitted import FittedDialog
from panelcad.desktop.dialogs.own.bodies import BodiesTable
from panelcad.desktop.dialogs.own.contour import ContourFromDxf
from panelcad.desktop.dialogs.own.holes import HolesEntry
from panelcad.desktop.dialogs.own.notice import CaseNotice
from panelcad.desktop.dialogs.own.picture import CutoutPicture
from panelcad.desktop.dialogs.shape_entry import ShapeEntry
from panelcad.desktop.help.ask import explained
from panelcad.desktop.help.topics import Dialog
from panelcad.desktop.panes.form import Form
from panelcad.desktop.shape_kinds import CUTTABLE, DESCRIBABLE
from panelcad.desktop.workbench import Workbench
from panelcad.editing.ids import fresh_id
from panelcad.errors import PanelcadError
from panelcad.model.cutout import Bezel, Cutout, Mounting, Opening
from panelcad.model.faults import first_fault
from panelcad.model.shape import Circle, Shape
from panelcad.model.source import Source, Standing
from panelcad.units import LengthUnit

_MEASURED: Final = "measured on the part"
_UNNAMED: Final = "not named yet"
_FIRST: Final = {LengthUnit.INCH: 2.25 * 25.4, LengthUnit.MM: 57.0}
_FIRST_BEZEL: Final = {LengthUnit.INCH: 2.5 * 25.4, LengthUnit.MM: 63.0}


class OwnCutout(FittedDialog):
    """`like` is a cutout to begin with: the pattern for a new one, or one of the user's own that is changed."""

    def __init__(
        self, bench: Workbench, parent: QWidget, like: Cutout | None = None, *, is_changed: bool = False
    ) -> None:
        super().__init__(parent)
        self._bench, self._like, self._is_changed = bench, like, is_changed
        self._unit = like.unit if like is not None else bench.unit
        self._cutout: Cutout | None = None
        self.setWindowTitle("Change our own cutout" if is_changed else "A cutout of our own")
        self.form = Form()
        self._add_names()
        self._add_metal()
        self._add_equipment()
        self.form.line_up()
        self.form.end()
        self.picture = CutoutPicture(bench.theme)
        self.problem = QLabel()
        self.problem.setProperty("role", "wrong")
        self.problem.setWordWrap(True)
        self.notice = CaseNotice(self._unit)
        self._lay_out()
        self.name.setFocus(Qt.FocusReason.TabFocusReason)
        self._refresh()

    # Rows

    def _add_names(self) -> None:
        self.name = self._text("&Title", self._like.title if self._like else "")
        self.words = self._text("&Words to find it by", ", ".join(self._like.words) if self._like else "")
        self.source = self._text("Where the &figures are from", self._source_text())
        self.mounting = ChoiceBox()
        self.mounting.setAccessibleName("Mounting")
        for kind in Mounting:
            self.mounting.addItem(kind.value, kind)
        self.mounting.setCurrentIndex(self.mounting.findData(self._like.mounting if self._like else Mounting.FRONT))
        self.mounting.activated.connect(lambda _: self._refresh())
        self.form.row("&Mounting", self.mounting)

    def _source_text(self) -> str:
        """Figures taken over from the library are not measured ones."""
        like = self._like
        if like is None:
            return _MEASURED
        if not like.family.startswith("own-"):
            return f"begun from '{like.title}' of the library; check each figure"
        parts = (*like.openings, *like.holes, *((like.bezel,) if like.bezel else ()), *like.bodies)
        return str(parts[0].source.text)

    def _add_metal(self) -> None:
        like = self._like
        self.form.line()
        self.form.heading("Metal")
        first = like.openings[0].shape if like and like.openings else Circle(diameter=_FIRST[self._unit])
        self.has_opening = self._tick("An &opening", is_on=like is None or bool(like.openings))
        self.opening = ShapeEntry(self.form, self._unit, first, DESCRIBABLE)
        self.opening.edited.connect(self._refresh)
        self.from_dxf = ContourFromDxf(self._unit)
        self.from_dxf.taken.connect(self._take_contour)
        self.form.add(self.from_dxf)
        self.holes = HolesEntry(self.form, self._unit, like.holes if like else ())
        self.holes.edited.connect(self._refresh)
        self.own_web = self._length("Least metal of its ow&n", like.own_web if like else 0.0)

    def _add_equipment(self) -> None:
        like = self._like
        self.form.line()
        self.form.heading("Equipment")
        bezel = like.bezel if like else None
        self.has_bezel = self._tick("A be&zel", is_on=bezel is not None)
        shape = bezel.shape if bezel else Circle(diameter=_FIRST_BEZEL[self._unit])
        self.bezel = ShapeEntry(self.form, self._unit, shape, CUTTABLE, "Its sha&pe")
        self.bezel.edited.connect(self._refresh)
        self.thickness = self._length("Stands out by", bezel.thickness if bezel else 0.0)
        self.bodies = BodiesTable(self._unit, like.bodies if like else (), self._opening_shape)
        self.bodies.edited.connect(self._refresh)
        self.form.words("Depths are from the face it is mounted on; knobs and levers stand toward the pilot.", "faint")
        self.form.add(self.bodies)

    def _text(self, title: str, text: str) -> QLineEdit:
        field = QLineEdit(text)
        field.setCursorPosition(0)
        field.setAccessibleName(title.replace("&", ""))
        field.textEdited.connect(lambda _: self._refresh())
        self.form.row(title, field)
        return field

    def _length(self, title: str, mm: float) -> LengthEntry:
        entry = LengthEntry(title.replace("&", ""), mm, self._unit)
        entry.edited.connect(self._refresh)
        self.form.row(f"{title}, {self._unit.value}", entry)
        return entry

    def _tick(self, title: str, *, is_on: bool) -> QCheckBox:
        box = QCheckBox(title)
        box.setChecked(is_on)
        box.toggled.connect(lambda _: self._refresh())
        self.form.add(box)
        return box

    def _lay_out(self) -> None:
        area = QScrollArea()
        area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        area.setWidget(self.form)
        area.setWidgetResizable(True)
        area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        area.setMinimumWidth(560)
        side = QVBoxLayout()
        side.addWidget(self.picture, 1)
        side.addWidget(self.notice)
        side.addWidget(self.problem)
        row = QHBoxLayout()
        row.addWidget(area, 3)
        row.addLayout(side, 2)
        buttons = Answers(self, "&Keep in our library", self._keep)
        self.keep = buttons.verb
        column = QVBoxLayout(self)
        column.addLayout(row, 1)
        column.addWidget(buttons)
        explained(self, Dialog.OWN_CUTOUT)
        self.resize(900, 620)

    # What the form says

    @property
    def cutout(self) -> Cutout | None:
        """The cutout that the form describes, None while it describes none."""
        return self._cutout

    def _refresh(self) -> None:
        """Show what is described, even before it is named, and in one sentence why it is no cutout yet."""
        self._show_ticked()
        title, drawn = self.name.text().strip(), None
        try:
            drawn = self._described(title or _UNNAMED)
            self._cutout, words = (drawn, "") if title else (None, "It has no title yet: say what people call it.")
        except ValidationError as error:
            self._cutout, words = None, str(first_fault(error, ""))
        except PanelcadError as refusal:
            self._cutout, words = None, str(refusal)
        self.problem.setText(words)
        self.notice.speak_of(drawn)
        self.picture.show_cutout(drawn)
        self.keep.setEnabled(self._cutout is not None)

    def _show_ticked(self) -> None:
        """Only what is there has rows."""
        has_opening, has_bezel = self.has_opening.isChecked(), self.has_bezel.isChecked()
        self.opening.set_shown(is_shown=has_opening)
        self.from_dxf.setVisible(has_opening)
        self.bezel.set_shown(is_shown=has_bezel)
        self.form.set_row_shown(self.thickness, is_shown=has_bezel)

    def _described(self, title: str) -> Cutout:
        """Raises `PanelcadError`, or pydantic's error where the parts make no cutout."""
        source = Source(standing=Standing.USER, text=self.source.text().strip() or _MEASURED)
        like = self._like
        openings = (self._opening(source), *(like.openings[1:] if like else ())) if self.has_opening.isChecked() else ()
        words = tuple(dict.fromkeys(word.strip() for word in self.words.text().split(",") if word.strip()))
        kept = dict(like) if like is not None else {}
        return Cutout.model_validate(
            kept
            | {
                "name": self._id(title),
                "title": title,
                "family": f"own-{self._unit.value}",
                "unit": self._unit,
                "words": words,
                "mounting": Mounting(self.mounting.currentData()),
                "openings": openings,
                "holes": self.holes.groups(source),
                "own_web": self.own_web.mm,
                "bezel": self._bezel(source) if self.has_bezel.isChecked() else None,
                "bodies": self.bodies.bodies(source),
            }
        )

    def _id(self, title: str) -> str:
        """A cutout that is changed keeps its name, so that it is not doubled."""
        if self._like is not None and self._is_changed:
            return self._like.name
        return fresh_id(title, self._bench.catalogue.cutouts)

    def _opening(self, source: Source) -> Opening:
        old = self._like.openings[0] if self._like and self._like.openings else None
        place = {"x": old.x, "y": old.y, "rotation": old.rotation, "purpose": old.purpose} if old else {}
        return Opening.model_validate({"shape": self.opening.shape(), "source": source, **place})

    def _opening_shape(self) -> Shape | None:
        """None while there is none."""
        try:
            return self.opening.shape() if self.has_opening.isChecked() else None
        except PanelcadError:
            return None

    def _bezel(self, source: Source) -> Bezel:
        old = self._like.bezel if self._like else None
        place = {"x": old.x, "y": old.y} if old else {}
        return Bezel.model_validate(
            {"shape": self.bezel.shape(), "thickness": self.thickness.mm, "source": source, **place}
        )

    def _take_contour(self, shape: Shape) -> None:
        self.opening.show_shape(shape)
        self._refresh()

    def _keep(self) -> None:
        from panelcad.desktop.dialogs.own.keep import keep_cutout  # noqa: PLC0415 - writes where something is kept

        if self._cutout is None:
            return
        try:
            keep_cutout(self._cutout)
        except PanelcadError as refusal:
            self.problem.setText(str(refusal))
            return
        self._bench.read_catalogue_again()
        self.accept()
