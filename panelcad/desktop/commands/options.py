"""Options: new ones, their names, taking one away, and setting them side by side."""

from typing import Final

from PySide6.QtWidgets import QLineEdit

from panelcad.desktop.actions import OPTION_MENU, Action
from panelcad.desktop.commands.file import has_panel
from panelcad.desktop.window_parts import Parts
from panelcad.desktop.workbench import Workbench
from panelcad.editing.options import NewOption, copy_option, delete_option, option_from_as_found, rename_option
from panelcad.errors import EditRefused
from panelcad.model.project import AS_FOUND, Project


def new_from_this(bench: Workbench) -> None:
    """A new option like the one on the canvas, which is then shown."""
    document = bench.document
    _take(bench, "New option", copy_option(document.project, document.option_id))


def _from_as_found(parts: Parts) -> None:
    _take(parts.bench, "New option", option_from_as_found(parts.bench.document.project))


def _take(bench: Workbench, title: str, made: NewOption) -> None:
    bench.document.apply(title, made.project)
    bench.document.look_at(made.option_id)
    bench.told.emit(f"'{bench.document.option.name}' is on the canvas now")


def _rename(parts: Parts) -> None:
    from panelcad.desktop.dialogs.edit_dialog import EditDialog  # noqa: PLC0415 - a dialog loads when it is opened
    from panelcad.desktop.help.topics import Dialog  # noqa: PLC0415

    bench, document = parts.bench, parts.bench.document
    option = document.option
    dialog = EditDialog(bench, "Rename option", "Rename", parts.window, at=Dialog.OPTION)
    name, summary = QLineEdit(option.name), QLineEdit(option.summary)
    for field, words in ((name, "Name"), (summary, "In one line")):
        field.setAccessibleName(words)
        field.textEdited.connect(dialog.preview)
    dialog.form.row("&Name", name)
    dialog.form.row("&In one line", summary)
    name.selectAll()
    before = document.project

    def renamed() -> Project:
        if not name.text().strip():
            raise EditRefused("An option needs a name.")
        return rename_option(before, option.id, name.text().strip(), summary.text().strip())

    dialog.ask(renamed)


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
        "&New option from this one",
        OPTION_MENU,
        0,
        lambda parts: new_from_this(parts.bench),
        None,
        has_panel,
        hint="A new option like the one on the canvas, to change and hold against it",
        words="copy option duplicate another second variant alternative",
    ),
    Action(
        "option.from_as_found",
        "New option from as &found",
        OPTION_MENU,
        0,
        _from_as_found,
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
        _rename,
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
