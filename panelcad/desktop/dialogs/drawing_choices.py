"""How the drawing is made: where its sections run, its largest sheet, its ink."""

from collections.abc import Iterable, Sequence
from typing import Final

from PySide6.QtWidgets import QComboBox

from panelcad.desktop.choice_box import ChoiceBox
from panelcad.desktop.fields import TextField
from panelcad.desktop.panes.form import Form
from panelcad.drawing.paper import Series, drawing_papers
from panelcad.model.project import Option, Project
from panelcad.outputs.drawing import DrawingOptions, drawing_options
from panelcad.outputs.section_choices import chosen_sections

_ANY: Final = "any that is needed"
_INKS: Final = ("colour", "black")


class DrawingChoices:
    """Rows of a form, and the options they say."""

    def __init__(self, form: Form) -> None:
        form.heading("Drawing")
        self.sections = TextField("Sections")
        self.sections.setPlaceholderText("through what reaches deepest; or x=…, y=…, PLATE:x=…")
        self.sections.setToolTip("Lines such as x=3.25in, y=40mm or pedestal:x=0, with a semicolon between them")
        self.largest = _chooser(
            "Largest sheet", [_ANY, *(paper.name for each in Series for paper in drawing_papers(each))]
        )
        self.ink = _chooser("Ink", _INKS)
        form.row("&Sections", self.sections)
        form.row("&Largest sheet", self.largest)
        form.row("&Ink", self.ink)

    def options(self, project: Project, option: Option, plates: Sequence[str] = ()) -> DrawingOptions:
        """`plates` are the only ones that are drawn. Raises `PanelcadError` for a section that cannot be drawn."""
        words = [word for word in self.sections.text().split(";") if word.strip()]
        largest = self.largest.currentText() if self.largest.currentIndex() else ""
        return drawing_options(self.ink.currentText(), largest, chosen_sections(words, project, option, plates))


def _chooser(name: str, words: Iterable[str]) -> QComboBox:
    box = ChoiceBox()
    box.setAccessibleName(name)
    box.addItems(list(words))
    return box
