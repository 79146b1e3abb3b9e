"""The figures of a thing that stands around the panel, in its properties: what it is, its size and its depth."""

from typing import Any

from pydantic import ValidationError
from PySide6.QtWidgets import QComboBox

from panelcad.desktop.choice_box import ChoiceBox
from panelcad.desktop.fields import LengthField
from panelcad.desktop.panes.form import Form
from panelcad.desktop.shape_kinds import PLAIN, sizes_of
from panelcad.desktop.sight import Sight
from panelcad.desktop.workbench import Workbench
from panelcad.editing.around import revise_standing
from panelcad.editing.depths import covered, depth_measures, shape_of
from panelcad.editing.parts import Standing
from panelcad.errors import EditRefused
from panelcad.model.faults import plain_sentence
from panelcad.model.project import Project
from panelcad.model.shape import Shape
from panelcad.model.surroundings import KeepOut, Obstacle, ObstacleKind

_KINDS = {kind.key: kind for kind in PLAIN}


class AroundRows:
    """Another shape, and the ways of a moving part, are given in the dialog that the last line names."""

    def __init__(self, form: Form, bench: Workbench, thing: Standing) -> None:
        self._form, self._bench, self._shown = form, bench, thing
        self.kind = self._choice("&Kind", ObstacleKind) if isinstance(thing, Obstacle) else None
        self.sizes = self._add_sizes(shape_of(thing))
        measures = depth_measures(thing)
        form.line()
        form.heading(f"Depth, {measures.where}")
        self.depths = tuple(self._length(word, self._take_depths) for word in measures.words)
        self.sight = self._choice("Fro&m the eye", Sight) if isinstance(thing, KeepOut) else None
        form.words("Ctrl+Enter gives all of it in figures.", "faint")
        for box, take in ((self.kind, self._take_kind), (self.sight, self._take_sight)):
            if box is not None:
                box.activated.connect(take)
        self.show(thing)

    def _choice(self, word: str, values: type[ObstacleKind] | type[Sight]) -> QComboBox:
        box = ChoiceBox()
        box.setMinimumContentsLength(8)
        box.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
        for value in values:
            box.addItem(str(value.value), value)
        self._form.row(word, box)
        return box

    def _add_sizes(self, shape: Shape) -> tuple[LengthField, ...]:
        kind = _KINDS.get(shape.kind)
        if kind is None:
            self._form.words("A free contour.", "faint")
            return ()
        return tuple(self._length(word, self._take_sizes) for word in kind.sizes)

    def _length(self, word: str, take: Any) -> LengthField:
        field = LengthField(word, self._bench.unit)
        self._form.row(f"{word}, {self._bench.unit.value}", field)
        field.refused.connect(self._bench.refused)
        field.committed.connect(lambda _: take())
        return field

    def show(self, thing: Standing) -> None:
        """The thing as it is now."""
        self._shown = thing
        for field, mm in zip(self.sizes, sizes_of(shape_of(thing)), strict=False):
            field.show_value(mm)
        for field, mm in zip(self.depths, depth_measures(thing).read(thing), strict=True):
            field.show_value(mm)
        if self.kind is not None and isinstance(thing, Obstacle):
            self.kind.setCurrentIndex(self.kind.findData(thing.kind))
        if self.sight is not None and isinstance(thing, KeepOut):
            self.sight.setCurrentIndex(self.sight.findData(Sight.HIDES if thing.is_solid else Sight.CLEAR))

    def _take_sizes(self) -> None:
        kind = _KINDS[shape_of(self._shown).kind]
        values = [field.value for field in self.sizes]

        def sized(project: Project) -> Project:
            try:
                shape = kind.make(*values)
            except ValidationError as error:
                raise EditRefused(plain_sentence(error)) from error
            return revise_standing(project, self._shown.id, shape=shape)

        self._take(sized)

    def _take_depths(self) -> None:
        figures = tuple(field.value for field in self.depths)
        changes = depth_measures(self._shown).changes(figures, covered(self._shown))
        self._take(lambda project: revise_standing(project, self._shown.id, **changes))

    def _take_kind(self) -> None:
        if self.kind is not None:
            chosen = ObstacleKind(self.kind.currentData())
            self._take(lambda project: revise_standing(project, self._shown.id, kind=chosen))

    def _take_sight(self) -> None:
        if self.sight is not None:
            is_solid = self.sight.currentData() is Sight.HIDES
            self._take(lambda project: revise_standing(project, self._shown.id, is_solid=is_solid))

    def _take(self, change: Any) -> None:
        """A refusal is told, and the fields say again what stands there."""
        if not self._bench.edit(f"Change {self._shown.name}", lambda project, _: change(project)):
            self.show(self._shown)
