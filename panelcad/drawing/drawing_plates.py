"""Which plates of an option a drawing is about, and what they are made of."""

from panelcad.drawing.describe import sheet_text
from panelcad.drawing.page import NO_MATERIAL
from panelcad.drawing.subject import Subject
from panelcad.model.layout import PlateLayout
from panelcad.model.part import worked_plates as worked_on


def worked_plates(subject: Subject) -> tuple[PlateLayout, ...]:
    """The plates that are made or reworked, or those chosen of them; all where none is, as of the panel as found."""
    shown = subject.plates or {plate.id for plate in worked_on(subject.option)}
    return tuple(plate for plate in subject.laid.plates if plate.plate.id in shown) or subject.laid.plates


def common_material(subject: Subject) -> str:
    """Alloy and thickness of all worked plates where they are the same, else where to look."""
    sheets = {sheet_text(plate.plate, subject.unit) for plate in worked_plates(subject)}
    return sheets.pop() if len(sheets) == 1 else NO_MATERIAL
