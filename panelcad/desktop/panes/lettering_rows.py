"""The words of lettering in the metal and how high they stand, at the end of its properties."""

from typing import Any

from panelcad.desktop.fields import LengthField, TextField
from panelcad.desktop.panes.form import Form
from panelcad.desktop.workbench import Workbench
from panelcad.editing.plates import revise_part
from panelcad.model.plate import Engraving


class LetteringRows:
    def __init__(self, form: Form, bench: Workbench, lettering: Engraving) -> None:
        self._bench, self._shown = bench, lettering
        self.text = TextField("Words")
        self.height = LengthField("Height of a capital", bench.unit)
        form.row("Word&s", self.text)
        form.row(f"Hei&ght, {bench.unit.value}", self.height)
        self.text.committed.connect(lambda words: self._revise(text=words.strip()))
        self.height.committed.connect(lambda mm: self._revise(height=mm))
        self.height.refused.connect(bench.refused)

    def show(self, lettering: Engraving) -> None:
        """The lettering as it is now."""
        self._shown = lettering
        self.text.show_text(lettering.text)
        self.height.show_value(lettering.height)

    def _revise(self, **changes: Any) -> None:
        """A refusal is told, and the fields say again what stands there."""
        name = self._shown.id
        if not self._bench.edit(
            "Change lettering", lambda project, option: revise_part(project, option, name, **changes)
        ):
            self.show(self._shown)
