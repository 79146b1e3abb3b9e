"""Recovery copies: what is not saved yet is kept in the user's data folder and found again after a crash.

A copy is matched by content, never by date: one that holds the same as its file is not worth a question.
"""

import json
from collections.abc import Iterator
from dataclasses import dataclass
from enum import Enum
from pathlib import Path
from typing import Any, Final

from panelcad.errors import UnusableInput
from panelcad.model.project import Project
from panelcad.store.atomic import write_atomically
from panelcad.store.on_disk import digest
from panelcad.store.open_note import claim, other_holder, release
from panelcad.store.project_file import content_of, from_bytes, to_bytes, to_plain

REST: Final = 2.0
"""Seconds after the last change until it is in a recovery copy."""
LATEST: Final = 5.0
"""Seconds after the first change that is in no copy until it is in one, however fast others follow."""
_SUFFIX: Final = ".recovery.json"
_FORMAT: Final = 1


class Match(Enum):
    """How a recovery copy stands to the file it was made for."""

    NEVER_SAVED = "the project was never saved"
    FILE_AS_IT_WAS = "the file is as it was before the unsaved changes"
    FILE_CHANGED = "the file was changed by something else since"
    FILE_GONE = "the file is gone"


@dataclass(frozen=True)
class Recovered:
    """Unsaved work found again: the copy, the project in it, the file it belongs to, and how that file stands."""

    copy: Path
    project: Project
    file: Path | None
    match: Match
    option: str = ""
    """The id of the option that was looked at, '' where it is not known."""


@dataclass(frozen=True)
class Search:
    """What a look for unsaved work found, and the copies that could not be read, each with the reason."""

    recovered: tuple[Recovered, ...]
    unreadable: tuple[tuple[Path, str], ...]


def recovery_folder() -> Path:
    """Where this user's recovery copies are."""
    from platformdirs import user_data_path  # noqa: PLC0415 - only needed where there is a user

    return user_data_path("panelcad", appauthor=False) / "recovery"


class Autosave:
    """The recovery copy of one window. `session` names the window; no two may share one."""

    def __init__(self, session: str, folder: Path | None = None) -> None:
        self._session = session
        self._copy = (folder or recovery_folder()) / f"{session}{_SUFFIX}"
        self._kept: tuple[Project, str] | None = None

    @property
    def copy(self) -> Path:
        return self._copy

    def keep(self, project: Project, file: Path | None, base: str | None, option: str = "") -> None:
        """Write the copy unless it holds this very project; `base` is the digest of the file's content as last seen.

        `option` is the id of the option that is looked at.

        Raises `UnusableInput` where the data folder cannot be written.
        """
        if self._kept is not None and self._kept[0] is project and self._kept[1] == option:
            return
        note = {"recovery": _FORMAT, "file": str(file.resolve()) if file else None, "base": base, "option": option}
        content = json.dumps({**note, "project": to_plain(project)}, ensure_ascii=False).encode()
        try:
            self._copy.parent.mkdir(parents=True, exist_ok=True)
            write_atomically(self._copy, content)
        except OSError as error:
            raise UnusableInput(
                str(self._copy), "", f"it cannot be written ({error.strerror})", "a data folder one may write in"
            ) from error
        self._kept = (project, option)
        self.still_here()

    def still_here(self) -> None:
        """Renew the sign that this window is running, so that no other takes its copy for one left by a crash."""
        claim(self._copy, self._session)

    def forget(self) -> None:
        """Take the copy away: what it held is saved, or was given up on purpose."""
        self._kept = None
        self._copy.unlink(missing_ok=True)
        release(self._copy, self._session)


def search(session: str, folder: Path | None = None) -> Search:
    """Unsaved work that no running window looks after. Copies that hold the same as their file are taken away."""
    found: list[Recovered] = []
    unreadable: list[tuple[Path, str]] = []
    for copy in _left_behind(folder or recovery_folder(), session):
        try:
            recovered = _recovered(copy)
        except UnusableInput as error:
            unreadable.append((copy, str(error)))
            continue
        if recovered is None:
            copy.unlink(missing_ok=True)
        else:
            found.append(recovered)
    return Search(tuple(found), tuple(unreadable))


def discard(copy: Path) -> None:
    """Take a copy away that nobody wants."""
    copy.unlink(missing_ok=True)


def _left_behind(folder: Path, session: str) -> Iterator[Path]:
    for copy in sorted(folder.glob(f"*{_SUFFIX}")):
        if other_holder(copy, session) is None and copy.name != f"{session}{_SUFFIX}":
            yield copy


def _recovered(copy: Path) -> Recovered | None:
    """The unsaved work in a copy; None where its file holds the same. Raises `UnusableInput`."""
    raw = _note(copy)
    project = from_bytes(json.dumps(raw["project"]).encode(), str(copy))
    option = str(raw.get("option", ""))
    if raw["file"] is None:
        return Recovered(copy, project, None, Match.NEVER_SAVED, option)
    file = Path(raw["file"])
    try:
        content = file.read_bytes()
    except OSError:
        return Recovered(copy, project, file, Match.FILE_GONE, option)
    if content == to_bytes(project):
        return None
    match = Match.FILE_AS_IT_WAS if digest(content) == raw["base"] else Match.FILE_CHANGED
    return Recovered(copy, project, file, match, option)


def _note(copy: Path) -> dict[str, Any]:
    raw = _parsed(copy)
    if not isinstance(raw, dict) or raw.get("recovery") != _FORMAT or not isinstance(raw.get("project"), dict):
        raise UnusableInput(str(copy), "", "it is no recovery copy", "a copy made by this panelcad")
    if not isinstance(raw.get("file"), str | None) or not isinstance(raw.get("base"), str | None):
        raise UnusableInput(str(copy), "file", "it is not usable", "the name of the file it was made for")
    return raw


def _parsed(copy: Path) -> Any:
    try:
        return json.loads(content_of(copy))
    except (ValueError, RecursionError) as error:
        raise UnusableInput(str(copy), "", f"it is not whole JSON text ({error})", "a recovery copy") from None
