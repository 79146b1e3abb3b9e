"""Actions that put what is selected in order."""

from collections.abc import Callable
from typing import Final

from panelcad.desktop.actions import Action
from panelcad.desktop.commands.edit import has_selection
from panelcad.desktop.window_parts import Parts
from panelcad.editing.rotate import rotate_by


def _turn(degrees: float) -> Callable[[Parts], None]:
    def run(parts: Parts) -> None:
        bench = parts.bench
        ids = bench.selection.ids
        bench.edit("Turn", lambda project, option: rotate_by(project, option, ids, degrees))

    return run


ACTIONS: Final = (
    Action("arrange.turn-left", "Turn &left 90°", "&Arrange", 0, _turn(90.0), "Ctrl+L", has_selection, icon="rotate"),
    Action("arrange.turn-right", "Turn &right 90°", "&Arrange", 0, _turn(-90.0), "Ctrl+Shift+L", has_selection),
)
