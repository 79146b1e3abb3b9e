"""Fingerprints of geometry: the same plates, cuts, items and profile give the same one, whatever they are called.

A fingerprint is the SHA-256 of the canonical JSON of the records with every length as a whole number of nanometres,
shortened to sixteen hexadecimal digits in groups of four.
"""

import hashlib
import json
from collections.abc import Iterable
from typing import Any

from panelcad.model.base import Record, in_nanometres
from panelcad.model.layout import Feature
from panelcad.model.plate import Plate
from panelcad.model.profile import Profile
from panelcad.model.project import Item, Option, Project

_WORDS = {"name", "notes", "summary", "title", "words", "family", "source", "prefix"}
_EQUIPMENT = {"unit", "place", "arm", "circuit"}
_NOT_GEOMETRY = _WORDS | _EQUIPMENT
"""`unit` is a cutout's unit of length too: its lengths are in nanometres here, so it says nothing more."""


def option_fingerprint(project: Project, option: Option) -> str:
    """The fingerprint of an option's plates, cuts, items and profile."""
    return _fingerprint(_geometry(project, option.plates, option.items) | {"profile": _profile(project.profile)})


def plate_fingerprint(project: Project, option: Option, plate: Plate) -> str:
    """The fingerprint of one plate with its cuts and the items on it."""
    return _fingerprint(_geometry(project, (plate,), tuple(i for i in option.items if i.plate == plate.id)))


def feature_fingerprint(features: tuple[Feature, ...]) -> str:
    """The fingerprint of some contours' shapes, wherever they stand: it changes when one is resized or reshaped."""
    return _fingerprint([[f.id, round(f.contour.area * 1e6), round(f.contour.length * 1e6)] for f in features])


def record_fingerprint(records: Iterable[Record]) -> str:
    """The fingerprint of some records with all that they say, their names too."""
    return _fingerprint([record.model_dump(mode="json", context=in_nanometres()) for record in records])


def _geometry(project: Project, plates: tuple[Plate, ...], items: tuple[Item, ...]) -> dict[str, Any]:
    used = {cut.cutout for plate in plates for cut in plate.cuts} | {item.cutout for item in items}
    return {
        "plates": [_plain(plate) for plate in plates],
        "items": [_plain(item) for item in items],
        "cutouts": {cutout.name: _plain(cutout) for cutout in project.cutouts if cutout.name in used},
    }


def _profile(profile: Profile) -> Any:
    """Zones as the defaults are left out: they were no part of a profile once, and old papers must stay known."""
    plain = _plain(profile)
    return plain if profile.zones else {key: value for key, value in plain.items() if key != "zones"}


def _plain(record: Record) -> Any:
    return _without_words(record.model_dump(mode="json", context=in_nanometres()))


def _without_words(value: Any) -> Any:
    if isinstance(value, dict):
        return {key: _without_words(inner) for key, inner in value.items() if key not in _NOT_GEOMETRY}
    return [_without_words(inner) for inner in value] if isinstance(value, list) else value


def _fingerprint(value: Any) -> str:
    text = json.dumps(value, sort_keys=True, separators=(",", ":"), ensure_ascii=True)
    digest = hashlib.sha256(text.encode()).hexdigest()[:16].upper()
    return "-".join(digest[i : i + 4] for i in range(0, 16, 4))
