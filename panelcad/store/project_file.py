"""Project files: JSON in the project's own unit, stable in order and formatting, carrying the cutouts they use."""

import codecs
import json
import stat
from pathlib import Path
from typing import Any, Final

from pydantic import ValidationError
from pydantic_core import from_json

from panelcad.errors import UnusableInput
from panelcad.model.base import in_file_unit
from panelcad.model.cutout import Cutout
from panelcad.model.faults import first_fault
from panelcad.model.project import Project
from panelcad.store.atomic import write_atomically
from panelcad.store.migrations import FORMAT, migrated
from panelcad.units import LengthUnit

SUFFIX: Final = ".panel.json"
LARGEST_FILE: Final = 64 * 1024 * 1024


def load(path: Path | str) -> Project:
    """Read a project file. Raises `UnusableInput` with one sentence: file, place, problem, what is expected."""
    file = Path(path)
    return from_bytes(content_of(file), str(file))


def save(project: Project, path: Path | str) -> None:
    """Write a project file; the old file stays whole until the new one is complete. Raises `UnusableInput`."""
    file = Path(path)
    try:
        write_atomically(file, to_bytes(project))
    except OSError as error:
        raise UnusableInput(
            str(file), "", f"it cannot be written ({error.strerror})", "a folder one may write in"
        ) from error


def to_bytes(project: Project) -> bytes:
    """The file's content: UTF-8, two blanks of indent, one final newline."""
    return (json.dumps(to_plain(project), indent=2, ensure_ascii=False) + "\n").encode()


def to_plain(project: Project) -> dict[str, Any]:
    """The project as plain data in its own unit; each cutout in the cutout's unit."""
    plain = project.model_dump(
        mode="json", context=in_file_unit(project.unit), exclude={"cutouts"}, exclude_defaults=False
    )
    cutouts = [cutout.model_dump(mode="json", context=in_file_unit(cutout.unit)) for cutout in project.cutouts]
    return {"format": FORMAT, **plain, "cutouts": cutouts}


def from_bytes(content: bytes, source: str) -> Project:
    """The project in a file's content; `source` is how messages name the file. Raises `UnusableInput`."""
    raw = migrated(_parsed(content, source), source)
    raw.pop("format")
    unit = _unit(raw.get("unit"), source, "unit")
    cutouts = tuple(_cutouts(raw.pop("cutouts", []), source))
    try:
        return Project.model_validate({**raw, "cutouts": cutouts}, context=in_file_unit(unit))
    except ValidationError as error:
        raise first_fault(error, source) from None


def content_of(file: Path) -> bytes:
    """The bytes of a project file. Raises `UnusableInput` where it is unreadable, no plain file, or far too long."""
    try:
        mode = file.stat().st_mode
        if not stat.S_ISREG(mode):
            what = "a folder" if stat.S_ISDIR(mode) else "not a plain file"
            raise UnusableInput(str(file), "", f"it is {what}", "a panelcad project file")
        with file.open("rb") as stream:
            content = stream.read(LARGEST_FILE + 1)
    except OSError as error:
        raise UnusableInput(str(file), "", f"it cannot be read ({error.strerror})", "a panelcad project file") from None
    if len(content) > LARGEST_FILE:
        raise UnusableInput(str(file), "", "it is longer than 64 MB", "a project file of at most 64 MB")
    return content


def _parsed(content: bytes, source: str) -> dict[str, Any]:
    try:
        raw = from_json(content.removeprefix(codecs.BOM_UTF8), allow_inf_nan=False)
    except ValueError as error:
        raise UnusableInput(source, "", f"it is not whole JSON text ({error})", "a panelcad project file") from None
    if not isinstance(raw, dict):
        raise UnusableInput(source, "", "it holds no project", "a JSON object with the key 'format'")
    return raw


def _cutouts(raw: Any, source: str) -> list[Cutout]:
    if not isinstance(raw, list):
        raise UnusableInput(source, "cutouts", "it is not a list", "a list of cutouts")
    return [_cutout(plain, source, f"cutouts {i}") for i, plain in enumerate(raw, 1)]


def _cutout(plain: Any, source: str, place: str) -> Cutout:
    if not isinstance(plain, dict):
        raise UnusableInput(source, place, "it is not a cutout", "a JSON object")
    unit = _unit(plain.get("unit"), source, f"{place}, unit")
    try:
        return Cutout.model_validate(plain, context=in_file_unit(unit))
    except ValidationError as error:
        raise first_fault(error, source, place) from None


def _unit(value: Any, source: str, place: str) -> LengthUnit:
    if not isinstance(value, str) or value not in set(LengthUnit):
        raise UnusableInput(source, place, f"{value!r:.40} is no unit", '"mm" or "in"')
    return LengthUnit(value)
