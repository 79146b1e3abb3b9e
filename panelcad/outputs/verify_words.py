"""A verification in words: what it was held against, which revision it is of, and every difference."""

import math
from collections.abc import Iterator
from typing import Final

from panelcad.geometry.point import Point
from panelcad.model.fingerprint import option_fingerprint
from panelcad.model.revision import releases_of
from panelcad.outputs.verify import VerifyReport
from panelcad.outputs.verify_match import Difference, Differing, Seen
from panelcad.units import LengthUnit, decimals, format_length, format_number

_TOLD_MOVE: Final = 0.01
"""A resized hole that moved by less than this many mm is told as resized only."""


def verify_text(report: VerifyReport) -> str:
    """The report as lines of text in the project's unit."""
    return "\n".join([*_heading(report), "", *sentences(report), verdict(report)]) + "\n"


def verdict(report: VerifyReport) -> str:
    """One line: the same, or how many differences."""
    within = f"within {format_length(report.tolerance, report.project.unit, places=4)}"
    if report.is_same:
        return f"The same: {report.compared} contours agree {within}."
    count = len(sentences(report))
    differences = f"{count} difference{'s' if count > 1 else ''}"
    return f"Differs: {differences}; the rest of {report.compared} contours agree {within}."


def sentences(report: VerifyReport) -> tuple[str, ...]:
    """Every difference, one sentence each."""
    return tuple(_sentences(report))


def made_from(report: VerifyReport) -> str:
    """Which revision the file was made from, as the release log knows it."""
    fingerprint = report.claim.fingerprint
    if not fingerprint:
        return "not stated in the file"
    now = option_fingerprint(report.project, report.option)
    for entry in reversed(releases_of(report.project, report.option)):
        if entry.fingerprint == fingerprint:
            since = "the option is still as released" if fingerprint == now else "the option has changed since"
            return f"revision {entry.revision} of {entry.on}; {since}"
    if fingerprint == now:
        return "the option as it stands, which is not released"
    said = f"revision {report.claim.revision}, " if report.claim.revision else ""
    return f"{said}fingerprint {fingerprint}, which this project's release log does not know"


def _heading(report: VerifyReport) -> Iterator[str]:
    plates = ", ".join(f"{laid.plate.name} ({laid.plate.id})" for laid in report.plates)
    nested = "plates nested on a stock sheet:" if len(report.plates) > 1 else "plate"
    yield f"File: {report.source}"
    yield f"Held to: option {report.option.name} ({report.option.id}), {nested} {plates}"
    yield f"Made from: {made_from(report)}"
    yield f"Read as: {report.written_as.face_up.value} face up, from the {report.written_as.origin.value}"
    finish = report.project.profile.finish_thickness
    if finish:
        thickness = format_length(finish, report.project.unit, places=4)
        yield f"Sizes: cut sizes, {thickness} of finish on each surface; finished sizes in brackets"
    else:
        yield "Sizes: finished sizes, which are the cut sizes"


def _sentences(report: VerifyReport) -> Iterator[str]:
    unit = report.project.unit
    if report.scale != 1.0:
        yield _SCALE[report.scale > 1.0]
    for each in report.differing:
        yield _WORDS[each.kind](each, unit)
    for layer, at in report.open_ends:
        yield f"open: a chain on layer {layer} does not close at {_place(at, unit)}"
    for kind, layer in report.unreadable:
        yield f"unreadable: a {kind} on layer {layer} is neither line nor arc"
    if report.lettering_differs:
        expected, found = (format_length(way, unit) for way in (report.engraved_expected, report.engraved_found))
        yield f"lettering: {expected} of strokes expected, {found} found"


def _moved(each: Differing, unit: LengthUnit) -> str:
    return f"moved: {each.subject.name} by {_way(each, unit)}"


def _resized(each: Differing, unit: LengthUnit) -> str:
    was, now = _size(each.subject, unit), _size(each.now, unit)
    moved = f", and moved by {_way(each, unit)}" if math.hypot(*each.moved) > _TOLD_MOVE else ""
    return f"{each.kind.value}: {each.subject.name} by {_fine(each.by, unit)}, from {was} to {now}{moved}"


def _reshaped(each: Differing, unit: LengthUnit) -> str:
    return f"reshaped: {each.subject.name} strays by up to {_fine(each.by, unit)}"


def _lone(each: Differing, unit: LengthUnit) -> str:
    subject = each.subject
    return f"{each.kind.value}: {subject.name}, {_size(subject, unit)} at {_place(subject.middle, unit)}"


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


_SCALE: Final = {
    True: "scale: the file is 25.4 times too small: its numbers are inches, but it passes for millimetres",
    False: "scale: the file is 25.4 times too large: its numbers are millimetres, but it passes for inches",
}
_WORDS: Final = {
    Difference.MOVED: _moved,
    Difference.GREW: _resized,
    Difference.SHRANK: _resized,
    Difference.RESHAPED: _reshaped,
    Difference.MISSING: _lone,
    Difference.NEW: _lone,
    Difference.DOUBLED: _lone,
}
