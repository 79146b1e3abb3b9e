"""The lines of lettering of a plate by their numbers, in one order on the placards' sheet and in the inspection."""

from panelcad.drawing.number_runs import runs
from panelcad.drawing.numbering import sort_key
from panelcad.drawing.subject import Subject
from panelcad.model.found import dropped_lettering, standing_lettering
from panelcad.model.layout import PlateLayout
from panelcad.model.plate import Engraving


def numbered_engravings(subject: Subject, plate: PlateLayout) -> list[tuple[str, Engraving]]:
    """Each with its number, E1 first."""
    numbered = [(subject.numbers.engravings[each.id], each) for each in plate.plate.engravings]
    return sorted(numbered, key=lambda pair: sort_key(pair[0]))


def standing(subject: Subject, plate: PlateLayout) -> frozenset[str]:
    """The numbers of the lines that are on the sheet already."""
    there = standing_lettering(subject.project, plate.plate)
    return frozenset(subject.numbers.engravings[line] for line in there)


def removed_words(subject: Subject, plate: PlateLayout) -> str:
    """Which lines of old lettering are to be removed, by what they say; empty where none is."""
    lines = dropped_lettering(subject.project, plate)
    return f"Old lettering to be removed: {', '.join(line.text for line in lines)}." if lines else ""


def standing_words(subject: Subject, plate: PlateLayout) -> str:
    """Which lines of lettering stay as they are, in a sentence; empty where all are engraved."""
    numbers = sorted(standing(subject, plate), key=sort_key)
    if not numbers:
        return ""
    return f"Lettering that is there already and is not engraved again: {', '.join(runs(numbers))}."
