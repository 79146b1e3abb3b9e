"""Options: new ones, their names, taking one away, and setting them side by side."""

from typing import Final

from panelcad.desktop.actions import OPTION_MENU, Action
from panelcad.desktop.commands.file import has_panel
from panelcad.desktop.commands.placing import dialog
from panelcad.desktop.window_parts import Parts
from panelcad.editing.options import delete_option
from panelcad.model.project import AS_FOUND


def _remove(parts: Parts) -> None:
    """The option before it comes on the canvas; undo brings it back."""
    bench, document = parts.bench, parts.bench.document
    option = document.option
    known = [each.id for each in document.project.all_options]
    if bench.edit(f"Remove {option.name}", lambda project, _: delete_option(project, option.id)):
        document.look_at(known[known.index(option.id) - 1])


def _side_by_side(parts: Parts) -> None:
    dock = parts.window.docks.dock("options")
    dock.show()
    dock.raise_()
    dock.widget().setFocus()


def _is_an_option(parts: Parts) -> bool:
    return has_panel(parts) and parts.bench.document.option_id != AS_FOUND


ACTIONS: Final = (
    Action(
        "option.copy",
        "&New option from this one…",
        OPTION_MENU,
        0,
        dialog("option_name", "new_from_this"),
        None,
        has_panel,
        hint="A new option like the one on the canvas, to change and hold against it",
        words="copy option duplicate another second variant alternative",
    ),
    Action(
        "option.from_as_found",
        "New option from as &found…",
        OPTION_MENU,
        0,
        dialog("option_name", "new_from_as_found"),
        None,
        has_panel,
        hint="A new option that starts as the panel was found",
        words="add another second variant alternative existing",
    ),
    Action(
        "option.rename",
        "&Rename option…",
        OPTION_MENU,
        1,
        dialog("option_name", "rename"),
        None,
        has_panel,
        hint="Give the option on the canvas another name, and say in one line what it is",
        words="name title summary call",
    ),
    Action(
        "option.remove",
        "Re&move option",
        OPTION_MENU,
        1,
        _remove,
        None,
        _is_an_option,
        hint="Take the option on the canvas away; undo brings it back",
        words="delete discard drop",
    ),
    Action(
        "option.side_by_side",
        "Options &side by side",
        OPTION_MENU,
        2,
        _side_by_side,
        None,
        has_panel,
        hint="What each option does, draws, weighs and costs",
        words="compare comparison table difference against",
    ),
)
