"""Which sheets make up the drawing of an option, in their order."""

from collections.abc import Iterator

from panelcad.drawing.drawing_plates import worked_plates
from panelcad.drawing.page import Page
from panelcad.drawing.sheets.behind import behind_page, clearance_pages, has_all_clearances
from panelcad.drawing.sheets.engraving import engraving_pages
from panelcad.drawing.sheets.equipment import equipment_pages
from panelcad.drawing.sheets.findings import note_pages
from panelcad.drawing.sheets.front import front_page
from panelcad.drawing.sheets.schedule import schedule_pages
from panelcad.drawing.sheets.section import section_pages
from panelcad.drawing.subject import Subject


def drawing_pages(subject: Subject) -> list[Page]:
    return list(_pages(subject))


def _pages(subject: Subject) -> Iterator[Page]:
    plates = worked_plates(subject)
    yield from (front_page(subject, plate) for plate in plates)
    for plate in plates:
        yield from schedule_pages(subject, plate)
    for plate in plates:
        behind = behind_page(subject, plate)
        yield behind
        if not has_all_clearances(subject, plate, behind.paper):
            yield from clearance_pages(subject, plate)
    for plate in plates:
        yield from section_pages(subject, plate)
    for plate in plates:
        yield from engraving_pages(subject, plate)
    yield from equipment_pages(subject)
    yield from note_pages(subject)
