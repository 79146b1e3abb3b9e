"""One action for each tool of the tool table."""

from collections.abc import Callable
from typing import Final

from panelcad.desktop.actions import Action
from panelcad.desktop.commands.file import has_panel
from panelcad.desktop.tools.section import turn_section
from panelcad.desktop.tools.table import TOOLS
from panelcad.desktop.window_parts import Parts


def _take(tool_id: str) -> Callable[[Parts], None]:
    def run(parts: Parts) -> None:
        parts.toolbox.take(tool_id)

    return run


def _is_held(tool_id: str) -> Callable[[Parts], bool]:
    return lambda parts: parts.toolbox.tool_id == tool_id


def _turn_section(parts: Parts) -> None:
    turn_section(parts.bench)


def _shows_section(parts: Parts) -> bool:
    return has_panel(parts) and parts.bench.section.is_shown


_TURN_SECTION: Final = Action(
    "tool.turn-section",
    "&Turn the section",
    "&Tools",
    1,
    _turn_section,
    "T",
    _shows_section,
    icon="section",
    hint="Upright becomes level, and the other way round",
)


def actions() -> tuple[Action, ...]:
    return (*_tools(), _TURN_SECTION)


def _tools() -> tuple[Action, ...]:
    return tuple(
        Action(
            f"tool.{kind.id}",
            kind.title,
            kind.menu,
            0 if kind.menu == "&Tools" else 3,
            _take(kind.id),
            kind.shortcut,
            has_panel,
            _is_held(kind.id),
            icon=kind.icon,
            hint=kind.hint,
            on_bar=kind.on_bar,
            bar_group=2,
        )
        for kind in TOOLS
    )
