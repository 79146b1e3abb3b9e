"""What must be there before an action can be done, told when its key is pressed too early."""

from collections.abc import Mapping
from typing import Final

from panelcad.desktop.actions import Action, Test
from panelcad.desktop.commands.arrange import has_group, has_locked, has_three
from panelcad.desktop.commands.edit import can_redo, can_undo, has_any, has_selection, has_two
from panelcad.desktop.commands.panel import has_standing
from panelcad.desktop.commands.placing import has_unit

_NEEDS: Final[Mapping[Test, str]] = {
    has_any: "select something",
    has_selection: "select something",
    has_two: "select two things or more",
    has_three: "select three things or more",
    has_group: "select something that is grouped",
    has_locked: "select something that is locked",
    has_unit: "select one unit of a stack",
    has_standing: "select one obstacle, keep-out, depth limit or moving part",
}
_NOTHING_LEFT: Final[Mapping[Test, str]] = {can_undo: "nothing to take back", can_redo: "nothing to do again"}


def why_not_now(action: Action) -> str:
    """A sentence on an action that cannot be done now."""
    if action.enabled in _NOTHING_LEFT:
        return f"{action.plain_title}: {_NOTHING_LEFT[action.enabled]}"
    need = _NEEDS.get(action.enabled)
    return f"{action.plain_title}: {need} first" if need else f"{action.plain_title}: not possible now"
