"""One action for each tool of the tool table."""

from collections.abc import Callable

from panelcad.desktop.actions import Action
from panelcad.desktop.commands.file import has_panel
from panelcad.desktop.tools.table import TOOLS
from panelcad.desktop.window_parts import Parts


def _take(tool_id: str) -> Callable[[Parts], None]:
    def run(parts: Parts) -> None:
        parts.toolbox.take(tool_id)

    return run


def _is_held(tool_id: str) -> Callable[[Parts], bool]:
    return lambda parts: parts.toolbox.tool_id == tool_id


def actions() -> tuple[Action, ...]:
    return tuple(
        Action(
            f"tool.{kind.id}",
            kind.title,
            "&Tools",
            0,
            _take(kind.id),
            kind.shortcut,
            has_panel,
            _is_held(kind.id),
            icon=kind.icon,
            hint=kind.hint,
            on_bar=True,
            bar_group=2,
        )
        for kind in TOOLS
    )
