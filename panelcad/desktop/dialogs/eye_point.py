"""The pilot's centre line and eye point in figures."""

from typing import Final

from PySide6.QtWidgets import QWidget

from panelcad.desktop.canvas.overlay import Guide
from panelcad.desktop.dialogs.edit_dialog import EditDialog
from panelcad.desktop.dialogs.rows import length_row
from panelcad.desktop.help.topics import Dialog
from panelcad.desktop.workbench import Workbench
from panelcad.editing.eye import eye_or_first, place_eye
from panelcad.editing.snapping.on_plate import pilot_line
from panelcad.geometry.point import Point
from panelcad.model.layout import layout
from panelcad.model.project import Project
from panelcad.model.surroundings import Eye

_SAME: Final = 1e-6


def eye_point(bench: Workbench, parent: QWidget) -> None:
    """Ask where the pilot sits and where the eye is, in aircraft axes; one looks on from where one was."""
    project = bench.document.project
    dialog = EditDialog(bench, "The pilot's centre line and eye", "Set", parent, at=Dialog.EYE)
    fields = _Fields(dialog, eye_or_first(project))

    def change() -> Project:
        changed = fields.entered(project)
        bench.stage.scene.set_guides(_centre_line(bench, changed))
        return changed

    dialog.ask(change)
    bench.stage.scene.set_guides(())


class _Fields:
    """The eye goes sideways with the centre line while it stands on it."""

    def __init__(self, dialog: EditDialog, eye: Eye) -> None:
        dialog.form.words("From the datum; what is to its left is negative.", "faint")
        self.centre_line = length_row(dialog, "Pilot's &centre line", eye.centre_line)
        self.right = length_row(dialog, "Eye to the &right", eye.x)
        self.above = length_row(dialog, "Eye &above", eye.y)
        self.before = length_row(dialog, "Eye &before", -eye.z)
        dialog.form.words("Measure it in the aircraft, the seat where the pilot flies with it.", "faint")
        self._stands_on_it = abs(eye.x - eye.centre_line) < _SAME
        self.centre_line.textEdited.connect(self._follow)
        self.right.textEdited.connect(self._part)
        self._preview = dialog.preview

    def _follow(self, text: str) -> None:
        if self._stands_on_it:
            self.right.setText(text)
            self._preview()

    def _part(self, _: str) -> None:
        self._stands_on_it = False

    def entered(self, project: Project) -> Project:
        """Raises `UnreadableQuantity`."""
        return place_eye(project, self.right.mm, self.above.mm, -self.before.mm, self.centre_line.mm)


def _centre_line(bench: Workbench, project: Project) -> tuple[Guide, ...]:
    """The line as it would run over the plate; none in perspective."""
    stage = bench.stage
    if stage.view.place is not None:
        return ()
    plate = layout(project, project.option(bench.document.option_id)).plate(stage.plate_id)
    x, (_, bottom, _, top) = pilot_line(project, plate), plate.outline.bounds
    low, high = (stage.to_picture(Point(x, y)) for y in (bottom, top))
    return (Guide(low, high, "pilot's centre line"),)
