"""The commands. Each one reads its arguments, calls the same functions a script would, and prints what came of it."""

from typing import Final

from panelcad.cli import cutting, drafts, judging, limits, papers, planning, projects
from panelcad.cli.base import app, command_name, command_names, main

_IN_THE_ORDER_OF_THE_JOB: Final = (
    *("open", "new", "list", "cutouts", "check", "rules", "limits", "compare", "plan", "preview"),
    *("draft", "release", "verify", "revise"),
)
app.registered_commands.sort(key=lambda command: _IN_THE_ORDER_OF_THE_JOB.index(command_name(command)))

__all__ = ["app", "command_names", "cutting", "drafts", "judging", "limits", "main", "papers", "planning", "projects"]
