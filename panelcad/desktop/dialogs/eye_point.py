"""The eye point in figures."""

from PySide6.QtWidgets import QWidget

from panelcad.desktop.dialogs.edit_dialog import EditDialog, LengthEntry
from panelcad.desktop.help.topics import Dialog
from panelcad.desktop.tools.eye import PILOT_VIEW
from panelcad.desktop.workbench import Workbench
from panelcad.editing.eye import eye_or_first, place_eye


def eye_point(bench: Workbench, parent: QWidget) -> None:
    """Ask where the pilot's eye is, in aircraft axes."""
    project, unit = bench.document.project, bench.unit
    bench.stage.look_from(PILOT_VIEW)
    eye = eye_or_first(project)
    dialog = EditDialog(bench, "The pilot's eye point", "Set", parent, at=Dialog.EYE)
    fields = (
        LengthEntry("Eye to the right of the datum", eye.x, unit),
        LengthEntry("Eye above the datum", eye.y, unit),
        LengthEntry("Eye from the panel", -eye.z, unit),
    )
    for word, field in zip(("&Right of datum", "&Above datum", "&Before datum"), fields, strict=True):
        dialog.form.row(f"{word}, {unit.value}", field)
        field.edited.connect(dialog.preview)
    dialog.form.words("Measure it in the aircraft, the seat where the pilot flies with it.", "faint")
    right, above, before = fields
    dialog.ask(lambda: place_eye(project, right.mm, above.mm, -before.mm))
