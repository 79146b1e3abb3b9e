"""Makes the pictures in docs/drawing.md: `python docs/sheet_pictures.py` from the clone's root."""

from io import BytesIO
from pathlib import Path

from pypdfium2 import PdfDocument

import panelcad
from panelcad.drawing.sheet import Sheet
from panelcad.drawing.tiles import PRINTERS
from panelcad.library.samples import sample_file
from panelcad.outputs.drawing import drawing_sheets, drawn_subject
from panelcad.outputs.inspection import inspection_sheets
from panelcad.outputs.pdf import Properties, write_pdf_to
from panelcad.outputs.template import TemplateOptions, template_pages

FOLDER = Path(__file__).parent / "pictures"
WIDTH = 1400
SHOWN = {
    "Panel front": "sheet-front",
    "Hole schedule": "sheet-schedule",
    "View from behind": "sheet-behind",
    "Sections": "sheet-sections",
    "Placards and engraving": "sheet-placards",
    "Notes and findings": "sheet-notes",
}


def main() -> None:
    project = panelcad.load(sample_file("trainer"))
    subject = drawn_subject(project, project.option("day-night"))
    for sheet in drawing_sheets(subject):
        for document, name in SHOWN.items():
            if document in sheet.title and not (FOLDER / f"{name}.png").exists():
                picture(sheet, name, WIDTH)
    picture(inspection_sheets(subject)[0], "sheet-inspection", WIDTH)
    pages = template_pages(subject, project.option("day-night").plates[0].id, TemplateOptions(PRINTERS["A4"]))
    picture(pages[0], "template-overview", WIDTH // 2)
    picture(pages[1], "template-page", WIDTH // 2)


def picture(sheet: Sheet, name: str, width: int) -> None:
    """Write one sheet as a PNG so many pixels wide."""
    stream = BytesIO()
    write_pdf_to(stream, [sheet], Properties(sheet.title))
    page = PdfDocument(stream.getvalue())[0]
    page.render(scale=width / page.get_width()).to_pil().save(FOLDER / f"{name}.png", optimize=True)


if __name__ == "__main__":
    for old in FOLDER.glob("sheet-*.png"):
        old.unlink()
    main()
