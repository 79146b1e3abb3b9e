"""What all commands share: the program they belong to, its exit codes and consoles, and how a fault is told."""

import json
import sys
import traceback
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from datetime import datetime
from pathlib import Path
from typing import Annotated, Any, Final

import typer
from rich.console import Console
from rich.markup import escape

from panelcad.errors import PanelcadError, ReleaseRefused, UnusableInput
from panelcad.version import __version__

NOTHING_WRONG: Final = 0
ERRORS_FOUND: Final = 1
UNUSABLE: Final = 2
FAULT: Final = 3

out = Console(soft_wrap=True, highlight=False)
err = Console(stderr=True, soft_wrap=True, highlight=False)
COLOURS: Final = {"error": "bold red", "warning": "yellow", "advice": "cyan"}

CAUTION: Final = (
    "A planning aid; it approves nothing. Check every dimension against the equipment maker's installation manual and "
    "the aircraft, and try a paper or scrap template, before anything is cut."
)

PLANNING_CAUTION: Final = (
    "Arithmetic on what was entered; unknown is never safe. Built-in equipment is generic; its weights, currents and "
    "prices are invented. A planning aid; it approves nothing."
)


class _OpensFiles(typer.core.TyperGroup):
    """`panelcad` and `panelcad FILE` open the window."""

    def parse_args(self, ctx: Any, args: list[str]) -> list[str]:
        opens = not args or (not args[0].startswith("-") and args[0] not in self.commands)
        rest: list[str] = super().parse_args(ctx, ["open", *args] if opens else args)
        return rest


app = typer.Typer(
    cls=_OpensFiles,
    add_completion=False,
    rich_markup_mode="rich",
    pretty_exceptions_enable=False,
    no_args_is_help=False,
    invoke_without_command=True,
    help="Lay out a light aircraft's new instrument panel, check it, and release it to the machinist. "
    "`panelcad FILE` opens the window. " + CAUTION,
)


@app.callback()
def common(
    version: Annotated[bool, typer.Option("--version", help="Say which panelcad this is.", is_eager=True)] = False,  # noqa: FBT002
) -> None:
    """Options before any command."""
    if version:
        out.print(f"panelcad {__version__}")
        raise typer.Exit


File = Annotated[Path, typer.Argument(metavar="FILE", help="A panelcad project file.", show_default=False)]
OptionName = Annotated[
    str | None, typer.Option("--option", metavar="NAME", help="Which option; all of them if left out.")
]
AsJson = Annotated[bool, typer.Option("--json", help="Print JSON (docs/json.md) instead of text.")]


def command_name(command: Any) -> str:
    return command.name or str(getattr(command.callback, "__name__", ""))


def command_names() -> Iterator[str]:
    """In the order of the help text."""
    return map(command_name, app.registered_commands)


def exit_for(has_errors: bool) -> None:  # noqa: FBT001 - private
    raise typer.Exit(ERRORS_FOUND if has_errors else NOTHING_WRONG)


def make_folder(folder: Path) -> None:
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        problem = f"the folder cannot be made ({error.strerror})"
        raise UnusableInput(str(folder), "", problem, "a folder one may write in") from error


def today() -> str:
    """The day it is here, as YYYY-MM-DD."""
    return datetime.now().astimezone().date().isoformat()


def print_json(value: Any) -> None:
    sys.stdout.write(json.dumps(value, indent=2, ensure_ascii=False) + "\n")


@contextmanager
def progress(what: str) -> Iterator[Callable[[str], None]]:
    """A turning mark on a terminal's error stream while the work lasts, told of each step; nothing elsewhere."""
    if err.is_terminal:
        with err.status(f"{what} …") as status:
            yield lambda step: status.update(f"{what}: {step} …")
    else:
        yield lambda _: None


def main() -> None:
    """Run a command; what panelcad cannot use becomes one sentence on the error stream and exit code 2."""
    try:
        app()
    except ReleaseRefused as refusal:
        err.print(escape(str(refusal)))
        sys.exit(ERRORS_FOUND)
    except (PanelcadError, OSError) as error:
        err.print(f"[bold red]panelcad:[/] {escape(str(error))}")
        sys.exit(UNUSABLE)
    except Exception:  # noqa: BLE001 - shown in full; its own exit code keeps it apart from 'errors found'
        traceback.print_exc()
        err.print(
            "[bold red]panelcad:[/] this is a fault of the program; nothing it printed before should be relied on"
        )
        sys.exit(FAULT)
