"""A verification as plain data for JSON. Lengths are mm, places are in the plate's axes."""

from typing import Any

from panelcad.outputs.plain import SHAPE
from panelcad.outputs.verify import VerifyReport
from panelcad.outputs.verify_match import Differing, Seen
from panelcad.outputs.verify_words import made_from, sentences


def verify_as_plain(report: VerifyReport) -> dict[str, Any]:
    return {
        "shape": SHAPE,
        "file": report.source,
        "project": report.project.title,
        "option": report.option.id,
        "plates": [laid.plate.id for laid in report.plates],
        "made_from": made_from(report),
        "fingerprint": report.claim.fingerprint or None,
        "same": report.is_same,
        "compared": report.compared,
        "tolerance": report.tolerance,
        "scale": report.scale,
        "finish": report.project.profile.finish_thickness,
        "differences": [_difference(each) for each in report.differing],
        "open_ends": [{"layer": layer, "at": list(at)} for layer, at in report.open_ends],
        "unreadable": [{"kind": kind, "layer": layer} for kind, layer in report.unreadable],
        "messages": list(sentences(report)),
    }


def _difference(each: Differing) -> dict[str, Any]:
    return {
        "kind": each.kind.value,
        "feature": each.subject.name,
        "by": each.by,
        "expected": _seen(each.expected),
        "found": _seen(each.found),
    }


def _seen(seen: Seen | None) -> dict[str, Any] | None:
    return None if seen is None else {"at": list(seen.middle), "size": list(seen.size)}
