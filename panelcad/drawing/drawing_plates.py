"""Which plates of an option a drawing is about."""

from panelcad.drawing.subject import Subject
from panelcad.model.layout import PlateLayout
from panelcad.model.plate import PlateState


def worked_plates(subject: Subject) -> tuple[PlateLayout, ...]:
    """The plates that are made or reworked; all where none is, as of the panel as found."""
    worked = tuple(plate for plate in subject.laid.plates if plate.plate.state is not PlateState.KEPT)
    return worked or subject.laid.plates
