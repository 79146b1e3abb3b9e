"""A verification as plain data for JSON. Lengths are mm, places are in the plate's axes."""

from typing import Any

from panelcad.outputs.plain import SHAPE
from panelcad.outputs.verify import VerifyReport
from panelcad.outputs.verify_lettering import Lettered
from panelcad.outputs.verify_lie import RIGHT, Lie
from panelcad.outputs.verify_match import Differing, Seen
from panelcad.outputs.verify_words import made_from, notes, of_whole_file, sentences


def verify_as_plain(report: VerifyReport) -> dict[str, Any]:
    return {
        "shape": SHAPE,
        "file": report.source,
        "project": report.project.title,
        "option": report.option.id,
        "plates": [laid.plate.id for laid in report.plates],
        "made_from": made_from(report),
        "fingerprint": report.claim.fingerprint or None,
        "unit": report.read_as.unit.value,
        "unit_from": "guess" if report.read_as.is_unit_guessed else report.read_as.unit_from.name.lower(),
        "same": report.is_same,
        "compared": report.compared,
        "whole": report.whole,
        "left_out": [each.value for each in report.written_as.left_out],
        "holes": report.holes,
        "holes_agreeing": report.holes_agreeing,
        "foreign": report.is_foreign,
        "lie": _lie(report.lie),
        "tolerance": report.tolerance,
        "finish": report.project.profile.finish_thickness,
        "differences": [_difference(each) for each in report.differing],
        "doubled": [_difference(each) for each in report.doubled],
        "lettering": {
            "compared": report.lettering.count,
            "lie": _lie(report.lettering.lie),
            "differences": [_lettered(each) for each in report.lettering.differences],
        },
        "open_ends": [{"layer": layer, "at": list(at)} for layer, at in report.open_ends],
        "unreadable": [{"kind": kind, "layer": layer} for kind, layer in report.unreadable],
        "messages": [*of_whole_file(report), *sentences(report)],
        "notes": list(notes(report)),
    }


def _lie(lie: Lie) -> dict[str, Any] | None:
    """How the whole is off; null where it lies as it should."""
    if lie == RIGHT:
        return None
    return {
        "scaled": lie.was_scaled,
        "mirrored": lie.mirrored or None,
        "turned": lie.turned,
        "shifted": list(lie.shift),
    }


def _difference(each: Differing) -> dict[str, Any]:
    return {
        "kind": each.kind.value,
        "feature": each.subject.name or f"on layer {each.subject.layer}",
        "by": each.by,
        "expected": _seen(each.expected),
        "found": _seen(each.found),
    }


def _lettered(each: Lettered) -> dict[str, Any]:
    return {
        "kind": each.kind.value,
        "engraving": each.engraving or None,
        "at": list(each.at),
        "moved": None if each.moved is None else list(each.moved),
        "strokes": each.strokes,
        "of": each.of,
    }


def _seen(seen: Seen | None) -> dict[str, Any] | None:
    return None if seen is None else {"at": list(seen.middle), "size": list(seen.size)}
