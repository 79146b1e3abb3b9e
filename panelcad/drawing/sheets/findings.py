"""Notes for the machinist, and what the checks found: accepted with reasons, open, or not judged."""

from collections.abc import Iterator, Sequence
from typing import Final

from panelcad.checks.facts import sheet_facts
from panelcad.checks.profile_file import differences
from panelcad.checks.wording import fault, unknown_sentences
from panelcad.drawing.datum_words import datum_on_part
from panelcad.drawing.describe import contour_text, sheet_text
from panelcad.drawing.drawing_plates import common_material, worked_plates
from panelcad.drawing.engravings import removed_words, standing_words
from panelcad.drawing.page import Page
from panelcad.drawing.schedule import holes
from panelcad.drawing.sheets.finish_notes import finish_notes
from panelcad.drawing.sheets.listing import Listing, listing_pages
from panelcad.drawing.subject import Subject
from panelcad.drawing.table import Column, Row
from panelcad.geometry.across import Across
from panelcad.model.alloy import KG_PER_LB
from panelcad.model.layout import PlateLayout
from panelcad.model.plate import Plate, PlateState
from panelcad.model.project import Project
from panelcad.model.release import Release
from panelcad.model.revision import issues_of, releases_of
from panelcad.units import LengthUnit, format_angle

_COLUMNS: Final = (Column("No.", 10.0), Column("Note", 160.0), Column("By the shop", 40.0, is_blank=True))


def note_pages(subject: Subject) -> list[Page]:
    """Notes and findings, as many sheets as they need."""
    rows = (*_shop_notes(subject), *_finding_rows(subject))
    words = ("Findings are of the geometry that bears the fingerprint in the title block.",)
    title, material = subject.project.title, common_material(subject)
    listing = Listing("Notes and findings", title, words, _COLUMNS, rows, abreast=2, material=material)
    return listing_pages(subject, listing)


def _shop_notes(subject: Subject) -> Iterator[Row]:
    yield Row(("NOTES", "", ""), is_heading=True)
    notes = [*_metal_notes(subject), *finish_notes(subject)]
    for number, (words, blank) in enumerate(notes, 1):
        yield Row((str(number), words, blank))


def _metal_notes(subject: Subject) -> Iterator[tuple[str, str]]:
    project = subject.project
    if subject.part:
        yield f"These papers are a part of the option: {subject.part}.", ""
    for plate in (each.plate for each in worked_plates(subject)):
        yield f"{plate.name}: {sheet_text(plate, subject.unit)}; {plate.role.value}, {_made(plate)}. {plate.notes}", ""
        yield from _bend_notes(subject, plate)
    yield (
        f"Dimensions in {subject.unit_word}; general tolerance {subject.tolerance} unless the schedule says else.",
        "",
    )
    yield from ((words, "") for words in subject.notes)
    yield from ((words, "") for words in _sheet_words(subject))
    yield _size_note(project, subject), ""
    for laid in worked_plates(subject):
        yield from ((f"{laid.plate.name}: {words}", "") for words in _of_a_used_sheet(subject, laid))
    for laid in worked_plates(subject):
        datum, on_part = subject.datum_of(laid.plate), datum_on_part(laid, subject.unit)
        yield f"{laid.plate.name}: datum {datum}. X to the right and Y up as the pilot sees it. {on_part}", ""
    if project.notes:
        yield project.notes, ""


def _made(plate: Plate) -> str:
    """'new, make one' or 'reworked'."""
    return f"{plate.state.value}, make one" if plate.state is PlateState.NEW else plate.state.value


def _of_a_used_sheet(subject: Subject, laid: PlateLayout) -> Iterator[str]:
    """What is enlarged, and what lettering stays or goes."""
    for hole in holes(subject, laid):
        if hole.was is not None:
            was = contour_text(hole.was.contour, subject.unit)
            yield f"hole {hole.number} is there as {was} and is enlarged; its old contour is dashed on the front."
    lettering = standing_words(subject, laid), removed_words(subject, laid)
    yield from (words for words in lettering if words)


def _sheet_words(subject: Subject) -> Iterator[str]:
    """The mass of each worked sheet before and after, and what is left of it along its weakest lines."""
    names = {each.plate.id: each.plate.name for each in worked_plates(subject)}
    for facts in sheet_facts(subject.laid):
        if facts.plate not in names:
            continue
        if facts.cut is not None and facts.uncut is not None:
            yield f"{names[facts.plate]}: {_mass(facts.uncut, subject)} uncut, {_mass(facts.cut, subject)} when cut."
        for line in facts.weakest:
            axis = "X" if line.across is Across.VERTICAL else "Y"
            yield (
                f"{names[facts.plate]}: along the weakest {line.across.value} line, {axis} {subject.number(line.at)}, "
                f"{line.share:.0%} of the uncut sheet is left. No judgement of strength."
            )


def _mass(kg: float, subject: Subject) -> str:
    return f"{kg / KG_PER_LB:.2f} lb" if subject.unit is LengthUnit.INCH else f"{kg:.3f} kg"


def _bend_notes(subject: Subject, plate: Plate) -> Iterator[tuple[str, str]]:
    if plate.bends:
        shape = "the outline is a flat pattern" if plate.is_flat_pattern else "the outline is NOT a flat pattern"
        yield f"{plate.name} is bent; {shape}.", ""
    for number, bend in enumerate(plate.bends, 1):
        ends = f"from {_spot(subject, bend.x1, bend.y1)} to {_spot(subject, bend.x2, bend.y2)}"
        turn = f"{format_angle(bend.angle)}, inside radius {subject.number(bend.inside_radius)}"
        yield f"Bend B{number} of {plate.name}, {ends}: {turn}, {bend.direction}.", ""


def _spot(subject: Subject, x: float, y: float) -> str:
    return f"X {subject.number(x)} Y {subject.number(y)}"


def _size_note(project: Project, subject: Subject) -> str:
    coat = project.profile.finish_thickness
    if not coat:
        return "Sizes are finished sizes; no allowance for the cutter's width is made in the cutting file."
    thick = subject.length(coat)
    return (
        f"Sizes are finished sizes. For a finish of {thick} on each surface the cutting file makes cuts larger and the "
        "outline smaller by that amount; no allowance for the cutter's width is made."
    )


def _finding_rows(subject: Subject) -> Iterator[Row]:
    report = subject.report
    if subject.option.drawing_notes:
        yield from _section("NOTES ON THE FRONT", list(_drawing_notes(subject)))
    yield from _section("REVISIONS", list(_revisions(subject)))
    yield from _section("ACCEPTED FINDINGS", _accepted(subject))
    opened = [(f.severity.value, fault(f, subject.project, subject.option)) for f in report.findings]
    yield from _section("OPEN FINDINGS", [(f"{severity.capitalize()}. {words}", "open") for severity, words in opened])
    yield from _section("NOT KNOWN, AND SO NOT JUDGED", [(said, "unknown") for said in unknown_sentences(report)])
    limits = [(each.text(subject.unit), "limit") for each in differences(subject.project.profile)]
    yield from _section("LIMITS OTHER THAN THE DEFAULTS", limits)
    yield from _section(
        "NOT JUDGED", [(f"Rule {each.rule}: {each.reason}", "not judged") for each in report.not_judged]
    )


def _drawing_notes(subject: Subject) -> Iterator[tuple[str, str]]:
    names = {plate.id: plate.name for plate in subject.option.plates}
    for note in subject.option.drawing_notes:
        yield f"{names[note.plate]}, at {_spot(subject, note.x, note.y)}: {note.text}", ""


def _revisions(subject: Subject) -> Iterator[tuple[str, str]]:
    for entry in releases_of(subject.project, subject.option):
        changed = " ".join(entry.changes) or "first release."
        yield f"{entry.revision}: {changed}{_issued(subject, entry)}", f"{entry.on} {entry.by}".strip()


def _issued(subject: Subject, entry: Release) -> str:
    """Which plates of an earlier revision left the shop; of its own a paper says nothing, for more may follow."""
    if entry.revision == subject.stamp.revision:
        return ""
    plates = dict.fromkeys(plate for each in issues_of(subject.project, entry) for plate in each.plates)
    return f" Issued: {', '.join(plates)}." if plates else ""


def _accepted(subject: Subject) -> list[tuple[str, str]]:
    rows = []
    for each in subject.report.accepted:
        word = each.acceptance
        words = fault(each.finding, subject.project, subject.option)
        rows.append((f"{words} Reason: {word.reason}", f"{word.initials}, {word.on}"))
    return rows


def _section(title: str, rows: Sequence[tuple[str, str]]) -> Iterator[Row]:
    yield Row((title if rows else f"{title}: none", "", ""), is_heading=True)
    for number, (words, mark) in enumerate(rows, 1):
        yield Row((str(number), words, mark))
