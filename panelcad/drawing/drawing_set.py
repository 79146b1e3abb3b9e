"""Which sheets make up the drawing of an option, in their order."""

from panelcad.drawing.page import Page
from panelcad.drawing.sheets.front import front_page
from panelcad.drawing.subject import Subject
from panelcad.model.layout import PlateLayout
from panelcad.model.plate import PlateState


def drawing_pages(subject: Subject) -> list[Page]:
    plates = worked_plates(subject)
    return [front_page(subject, plate) for plate in plates]


def worked_plates(subject: Subject) -> tuple[PlateLayout, ...]:
    """The plates that are made or reworked; all where none is, as of the panel as found."""
    worked = tuple(plate for plate in subject.laid.plates if plate.plate.state is not PlateState.KEPT)
    return worked or subject.laid.plates
