"""Older project files are brought to today's format step by step; newer ones are refused."""

from collections.abc import Callable
from typing import Any, Final

from panelcad.errors import UnusableInput

FORMAT: Final = 1
"""The format this program writes."""

_NO_FORMAT: Final = 10_000
"""A number that no format of this program will reach."""

Migration = Callable[[dict[str, Any]], dict[str, Any]]
_STEPS: Final[dict[int, Migration]] = {}
"""From each older format to the next: `_STEPS[1]` makes format 2 of format 1."""


def migrated(raw: dict[str, Any], source: str) -> dict[str, Any]:
    """The file's content in today's format. Raises `UnusableInput` for a foreign or a newer file."""
    version = raw.get("format")
    if not isinstance(version, int) or isinstance(version, bool) or not 1 <= version < _NO_FORMAT:
        raise UnusableInput(source, "format", "it is not a panelcad project", f"a whole number from 1 to {FORMAT}")
    if version > FORMAT:
        raise UnusableInput(
            source,
            "format",
            f"it was written by a newer panelcad (format {version})",
            f"at most format {FORMAT}",
        )
    for step in range(version, FORMAT):
        raw = _STEPS[step](raw)
    return {**raw, "format": FORMAT}
