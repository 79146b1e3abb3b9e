"""A verification in words: what is wrong with the whole file, what it was held against, and every difference."""

import math
from collections.abc import Iterable, Iterator
from itertools import islice
from typing import Final

from panelcad.geometry.point import Point
from panelcad.intake.dxf_chains import JOIN
from panelcad.intake.dxf_curves import CHORD
from panelcad.intake.dxf_file import UnitFrom
from panelcad.model.fingerprint import option_fingerprint
from panelcad.model.layout import layout
from panelcad.model.part import part_text
from panelcad.model.revision import releases_of
from panelcad.outputs.dxf_words import DRAFT_TEXT, UNIT_NAME, left_out_text, piece_text
from panelcad.outputs.hole_names import HoleNames
from panelcad.outputs.verify import VerifyReport
from panelcad.outputs.verify_lettering_words import EngravingNames, lettering_notes, lettering_sentences, way_text
from panelcad.outputs.verify_lie import RIGHT
from panelcad.outputs.verify_lie_words import lie_text
from panelcad.outputs.verify_match import Difference, Differing, Seen
from panelcad.outputs.verify_vertices import MovedVertex, moved_vertices, strays_at
from panelcad.units import LengthUnit, decimals, format_length, format_number

_TOLD_MOVE: Final = 0.01
"""A resized hole that moved by less than this many mm is told as resized only."""
_MOST_TOLD: Final = 40
"""Differences told in a text for people; the JSON has them all."""
_MOST_NAMED: Final = 5
_MOST_VERTICES: Final = 3


def verify_text(report: VerifyReport) -> str:
    """The report as lines of text in the project's unit: what is wrong with the whole first, then the details."""
    first, details = of_whole_file(report), sentences(report)
    more = len(details) - _MOST_TOLD
    told = [*details[:_MOST_TOLD], *([f"... and {more} more, all of them with --json"] if more > 0 else [])]
    blocks = ([*first], [*_heading(report)], [*told], [*notes(report)], [verdict(report)])
    return "\n\n".join("\n".join(lines) for lines in blocks if lines) + "\n"


def verdict(report: VerifyReport) -> str:
    """One line: the same, or how many differences."""
    within = f"within {format_length(report.tolerance, report.project.unit, places=4)}"
    if report.is_foreign:
        return f"Differs: {_foreign(report)}."
    count = len(sentences(report))
    differences = f"{count} difference{'s' if count > 1 else ''}"
    agree = f"{_compared(report)} agree {within}"
    if report.lie != RIGHT:
        apart = f"{differences}; the rest of {agree}" if count else f"the same: {agree}"
        return f"Differs: {lie_text(report.lie, report.project.unit)}. Apart from that {apart}."
    return f"Differs: {differences}; the rest of {agree}." if count else f"The same: {agree}."


def _compared(report: VerifyReport) -> str:
    lines = report.lettering.count
    lettering = f" and {lines} {'line' if lines == 1 else 'lines'} of lettering" if lines else ""
    return f"{report.compared} contours{lettering}"


def of_whole_file(report: VerifyReport) -> tuple[str, ...]:
    """What concerns the whole file, one sentence each: mirrored, shifted, scaled, of something else, a part only."""
    return tuple(_of_whole_file(report))


def sentences(report: VerifyReport) -> tuple[str, ...]:
    """Every difference apart from those of the whole file, one sentence each; none for a file of something else."""
    return () if report.is_foreign else tuple(_sentences(report))


def notes(report: VerifyReport) -> tuple[str, ...]:
    """What is worth knowing of the file but makes no other part, one sentence each."""
    return tuple(f"note: {words}" for words in _notes(report))


def made_from(report: VerifyReport) -> str:
    """Which revision the file was made from, as the release log knows it."""
    fingerprint = report.claim.fingerprint
    if not fingerprint:
        return "not stated in the file"
    now = option_fingerprint(report.project, report.option)
    for entry in reversed(releases_of(report.project, report.option)):
        if entry.fingerprint == fingerprint:
            since = "the option is still as released" if fingerprint == now else "the option has changed since"
            draft = f"a draft, {DRAFT_TEXT}; of the geometry of " if report.claim.is_draft else ""
            return f"{draft}revision {entry.revision} of {entry.on}; {since}"
    if fingerprint == now:
        return "the option as it stands, which is not released"
    said = f"revision {report.claim.revision}, " if report.claim.revision else ""
    return f"{said}fingerprint {fingerprint}, which this project's release log does not know"


def _of_whole_file(report: VerifyReport) -> Iterator[str]:
    if report.is_foreign:
        yield _foreign(report)
        return
    if report.lie != RIGHT:
        yield lie_text(report.lie, report.project.unit)
    if report.written_as.around:
        yield f"a trial piece {piece_text(report.written_as)}"
    part = part_text(report.option, (laid.plate for laid in report.plates))
    if part:
        yield f"part of the option: {part}"
    if report.written_as.left_out:
        count = f"{report.compared} of {report.whole} cuts"
        yield f"part of the file only: {count}; {left_out_text(report.written_as)} left out by choice"


def _foreign(report: VerifyReport) -> str:
    agreeing = f"not of this project: {report.holes_agreeing} of {report.holes} holes agree"
    named = report.claim.project
    return f"{agreeing}; the file names project '{named}'" if named not in {"", report.project.title} else agreeing


def _heading(report: VerifyReport) -> Iterator[str]:
    plates = ", ".join(f"{laid.plate.name} ({laid.plate.id})" for laid in report.plates)
    nested = "plates nested on a stock sheet:" if len(report.plates) > 1 else "plate"
    yield f"File: {report.source}"
    yield f"Held to: option {report.option.name} ({report.option.id}), {nested} {plates}"
    yield f"Made from: {made_from(report)}"
    yield f"Unit: {UNIT_NAME[report.read_as.unit]}, {_unit_source(report)}"
    yield f"Read as: {report.written_as.face_up.value} face up, from the {report.written_as.origin.value}"
    finish = report.project.profile.finish_thickness
    if finish:
        thickness = format_length(finish, report.project.unit, places=4)
        yield f"Sizes: cut sizes, {thickness} of finish on each surface; finished sizes in brackets"
    else:
        yield "Sizes: finished sizes, which are the cut sizes"


def _unit_source(report: VerifyReport) -> str:
    if report.read_as.is_unit_guessed:
        return "which the file does not state"
    told = report.read_as.unit_from is UnitFrom.TOLD
    return "as told; the file states none" if told else f"as {_SOURCES[report.read_as.unit_from]}"


def _sentences(report: VerifyReport) -> Iterator[str]:
    unit, names = report.project.unit, HoleNames(layout(report.project, report.option))
    for each in report.differing:
        if each.kind is Difference.RESHAPED:
            moved = moved_vertices(each, report.tolerance) if len(report.plates) == 1 else ()
            yield _reshaped(each, unit, names, moved)
        else:
            yield _WORDS[each.kind](each, unit, names)
    for layer, at in report.open_ends:
        yield f"open: a chain on layer {layer} does not close at {_place(at, unit)}"
    for kind, layer in report.unreadable:
        yield f"unreadable: a {kind} on layer {layer} is neither line nor arc"
    yield from lettering_sentences(report.lettering, EngravingNames(report.project, report.option), unit)


def _notes(report: VerifyReport) -> Iterator[str]:
    unit, names, read = report.project.unit, HoleNames(layout(report.project, report.option)), report.read_as
    if report.is_foreign:
        return
    if read.header_says:
        said = f"unit: the file's header says {read.header_says}, which programs may believe"
        yield f"{said}; its numbers fit in {UNIT_NAME[read.unit]}"
    elif read.is_unit_guessed:
        yield f"unit: the file states none; read in {UNIT_NAME[read.unit]}, {_guess_text(report)}"
    elif read.has_unit_header and read.unit_from is UnitFrom.WORDS:
        yield "unit: the file's header states none; taken from the words on the file"
    if report.relayered:
        yield _relayered_text(report.relayered, names)
    if report.joined:
        within = format_length(JOIN, unit, places=4)
        yield f"pieces: {report.joined} contours are loose lines and arcs, joined where ends lie within {within}"
    if report.curved:
        within = format_length(CHORD, unit, places=5)
        yield f"curves: {report.curved} contours are splines or ellipses, read as chords within {within}"
    for each in report.doubled:
        yield f"doubled: {names.named(each.subject.name)} on layer {each.now.layer}, which would be cut twice"
    yield from lettering_notes(report.lettering, unit)


def _guess_text(report: VerifyReport) -> str:
    return "the project's" if report.read_as.unit is report.project.unit else "as it fits the project"


def _relayered_text(pairs: tuple[tuple[Seen, Seen], ...], names: HoleNames) -> str:
    """Layers that somebody threw together in one sentence, else each contour with its two layers."""
    there = sorted({other.layer for _, other in pairs})
    if len(pairs) > _MOST_NAMED and len(there) == 1:
        return f"layers: {len(pairs)} contours lie on layer {there[0]}, not on their own; matched by geometry alone"
    each = (f"{names.named(one.name)} on {other.layer}, not {one.layer}" for one, other in pairs)
    return f"layers: {_some(each, len(pairs))}"


def _some(words: Iterable[str], count: int) -> str:
    more = f"; and {count - _MOST_NAMED} more" if count > _MOST_NAMED else ""
    return "; ".join(islice(words, _MOST_NAMED)) + more


def _moved(each: Differing, unit: LengthUnit, names: HoleNames) -> str:
    return f"moved: {names.named(each.subject.name)} by {_way(each, unit)}"


def _resized(each: Differing, unit: LengthUnit, names: HoleNames) -> str:
    was, now = _size(each.subject, unit), _size(each.now, unit)
    moved = f", and moved by {_way(each, unit)}" if math.hypot(*each.moved) > _TOLD_MOVE else ""
    by = _fine(each.by, unit)
    return f"{each.kind.value}: {names.named(each.subject.name)} by {by}, from {was} to {now}{moved}"


def _reshaped(each: Differing, unit: LengthUnit, names: HoleNames, moved: tuple[MovedVertex, ...]) -> str:
    """Which vertices moved where they are few, else where it strays most."""
    told = f"reshaped: {names.named(each.subject.name)} strays by up to {_fine(each.by, unit)}"
    if moved and len(moved) <= _MOST_VERTICES:
        return f"{told}: {', '.join(f'V{one.number} moved {way_text(one.way, unit)}' for one in moved)}"
    at = strays_at(each)
    return f"{told}, most at {_place(at, unit)}" if at is not None else told


def _missing(each: Differing, unit: LengthUnit, names: HoleNames) -> str:
    subject = each.subject
    return f"missing: {names.named(subject.name)}, {_size(subject, unit)} at {_place(subject.middle, unit)}"


def _new(each: Differing, unit: LengthUnit, _names: HoleNames) -> str:
    return f"new: {_found_on(each.now, unit)}"


def _found_on(seen: Seen, unit: LengthUnit) -> str:
    return f"on layer {seen.layer}, {_size(seen, unit)} at {_place(seen.middle, unit)}"


def _way(each: Differing, unit: LengthUnit) -> str:
    x, y = (format_number(way, unit, places=decimals(unit) + 1) for way in each.moved)
    return f"x {x}, y {y} {unit.value}"


def _size(seen: Seen, unit: LengthUnit) -> str:
    """Cut size, and the finished size in brackets where a finish makes another of it."""
    text = _sides(*seen.size, unit)
    if seen.finish == 0.0:
        return text
    width, height = (side - 2 * seen.finish for side in seen.size)
    return f"{text} (finished {_sides(width, height, unit)})"


def _sides(width: float, height: float, unit: LengthUnit) -> str:
    one, other = (format_number(side, unit, places=decimals(unit) + 1) for side in (width, height))
    return f"{one} {unit.value}" if one == other else f"{one} x {other} {unit.value}"


def _place(at: Point, unit: LengthUnit) -> str:
    return f"x {format_number(at.x, unit)}, y {format_length(at.y, unit)}"


def _fine(mm: float, unit: LengthUnit) -> str:
    return format_length(mm, unit, places=decimals(unit) + 1)


_SOURCES: Final = {UnitFrom.HEADER: "the file's header says", UnitFrom.WORDS: "the words on the file say"}
_WORDS: Final = {
    Difference.MOVED: _moved,
    Difference.GREW: _resized,
    Difference.SHRANK: _resized,
    Difference.MISSING: _missing,
    Difference.NEW: _new,
}
