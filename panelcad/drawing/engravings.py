"""The lines of lettering of a plate by their numbers, in one order on the placards' sheet and in the inspection."""

from panelcad.drawing.schedule import sort_key
from panelcad.drawing.subject import Subject
from panelcad.model.layout import PlateLayout
from panelcad.model.plate import Engraving


def numbered_engravings(subject: Subject, plate: PlateLayout) -> list[tuple[str, Engraving]]:
    """Each with its number, E1 first."""
    numbered = [(subject.numbers.engravings[each.id], each) for each in plate.plate.engravings]
    return sorted(numbered, key=lambda pair: sort_key(pair[0]))
