"""The properties of an opening of the sheet itself: what it is for, how large it is, and where."""

from collections.abc import Callable

from pydantic import ValidationError

from panelcad.desktop.fields import LengthField, TextField
from panelcad.desktop.panes.form import Form
from panelcad.desktop.shape_kinds import CUTTABLE, sizes_of
from panelcad.desktop.workbench import Workbench
from panelcad.editing.openings import openings, revise_opening
from panelcad.errors import EditRefused
from panelcad.model.cutout import Opening
from panelcad.model.faults import plain_sentence
from panelcad.model.project import Project
from panelcad.model.shape import Shape

_KINDS = {kind.key: kind for kind in CUTTABLE}


class OneOpening(Form):
    """Another shape is given in the dialog that the last line leads to."""

    def __init__(self, bench: Workbench, part_id: str) -> None:
        super().__init__()
        self._bench, self._part_id = bench, part_id
        self.heading("Opening of the sheet")
        self.purpose = TextField("Purpose")
        self.row("&Purpose", self.purpose)
        self.purpose.committed.connect(self._take_purpose)
        self.across, self.up = (
            self._length("&x, middle", self._take_place),
            self._length("&y, middle", self._take_place),
        )
        opening = self._opening(bench.document.project)
        self._kind = _KINDS.get(opening.shape.kind) if opening is not None else None
        self.sizes = tuple(self._length(word, self._take_sizes) for word in (self._kind.sizes if self._kind else ()))
        self.words("A double-click in it gives all of it in figures; Del takes it away.", "faint")
        self.end()
        self.refresh(bench.document.project)

    def _length(self, word: str, take: Callable[[], None]) -> LengthField:
        field = LengthField(word.replace("&", ""), self._bench.unit)
        self.row(f"{word}, {self._bench.unit.value}", field)
        field.refused.connect(self._bench.refused)
        field.committed.connect(lambda _: take())
        return field

    def _opening(self, project: Project) -> Opening | None:
        """None where a proposal has taken it away."""
        one = openings(project.option(self._bench.document.option_id)).get(self._part_id)
        return one.opening if one is not None else None

    def refresh(self, project: Project) -> None:
        """Show the opening as it is in this project."""
        opening = self._opening(project)
        if opening is None:
            return
        self.purpose.show_text(opening.purpose)
        self.across.show_value(opening.x)
        self.up.show_value(opening.y)
        for field, mm in zip(self.sizes, sizes_of(opening.shape), strict=False):
            field.show_value(mm)

    def _take_purpose(self, words: str) -> None:
        self._revise(lambda: {"purpose": words.strip()})

    def _take_place(self) -> None:
        self._revise(lambda: {"x": self.across.value, "y": self.up.value})

    def _take_sizes(self) -> None:
        self._revise(lambda: {"shape": self._shape()})

    def _shape(self) -> Shape:
        if self._kind is None:
            raise EditRefused("A free contour has no sizes.")
        return self._kind.make(*(field.value for field in self.sizes))

    def _revise(self, changes: Callable[[], dict[str, object]]) -> None:
        """A refusal is told, and the fields say again what is there."""

        def revised(project: Project, option_id: str) -> Project:
            try:
                return revise_opening(project, option_id, self._part_id, **changes())
            except ValidationError as error:
                raise EditRefused(plain_sentence(error)) from error

        if not self._bench.edit("Change an opening", revised):
            self.refresh(self._bench.document.project)
