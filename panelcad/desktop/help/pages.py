"""The pages of help, in reading order. They are files of docs/, which travel with the package.

A link is written from docs/: 'help/select.md#nudge', 'rules.md#web'.
"""

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import Final

from panelcad.library.packaged import folder


def _rules() -> str:
    """With the rules that other packages bring."""
    from panelcad.checks.rule_page import rules_page  # noqa: PLC0415 - the rules load with the first check

    return rules_page()


def _keys() -> str:
    """With the keys as this platform writes them."""
    from panelcad.desktop.help.keys_page import keys_page  # noqa: PLC0415 - it needs the table of actions

    return keys_page(native=True)


_MADE: Final[dict[str, Callable[[], str]]] = {"rules.md": _rules, "help/keys.md": _keys}
"""Pages that are made anew for this copy of the program."""
GUIDE: Final = tuple(
    f"help/{name}.md"
    for name in (
        "first-panel",
        "select",
        "snapping",
        "library",
        "arrange",
        "arrangements",
        "outline",
        "around",
        "measure",
        "lettering",
        "views",
        "findings",
        "options",
        "release",
        "files",
        "keys",
    )
)
REFERENCE: Final = (
    "rules.md",
    "own-rules.md",
    "cutouts.md",
    "planning.md",
    "functions.md",
    "appearance.md",
    "cutting_file.md",
    "drawing.md",
    "project_file.md",
    "json.md",
    "samples.md",
    "scripting.md",
    "words.md",
)
FIRST: Final = GUIDE[0]
KEYS: Final = "help/keys.md"


@dataclass(frozen=True)
class Page:
    """`file` is its path from docs/."""

    file: str

    @property
    def markdown(self) -> str:
        """Raises `UnusableInput` where the installation lacks docs/, OSError where it lacks the page."""
        made = _MADE.get(self.file)
        return made() if made is not None else (root() / self.file).read_text(encoding="utf-8")

    @property
    def title(self) -> str:
        from panelcad.desktop.help.page_html import title  # noqa: PLC0415 - Markdown is read when help is asked for

        return title(self.markdown)


PAGES: Final = tuple(Page(file) for file in (*GUIDE, *REFERENCE))


def root() -> Path:
    """The folder docs/. Raises `UnusableInput`."""
    return folder("docs").resolve()


def rule_link(rule_id: str) -> str:
    return f"rules.md#{rule_id}"
