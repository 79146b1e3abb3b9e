"""Which plates of an option a drawing is about, and what they are made of."""

from panelcad.drawing.describe import sheet_text
from panelcad.drawing.page import NO_MATERIAL
from panelcad.drawing.subject import Subject
from panelcad.model.layout import PlateLayout
from panelcad.model.plate import PlateState


def worked_plates(subject: Subject) -> tuple[PlateLayout, ...]:
    """The plates that are made or reworked; all where none is, as of the panel as found."""
    worked = tuple(plate for plate in subject.laid.plates if plate.plate.state is not PlateState.KEPT)
    return worked or subject.laid.plates


def common_material(subject: Subject) -> str:
    """Alloy and thickness of all worked plates where they are the same, else where to look."""
    sheets = {sheet_text(plate.plate, subject.unit) for plate in worked_plates(subject)}
    return sheets.pop() if len(sheets) == 1 else NO_MATERIAL
