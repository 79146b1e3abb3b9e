"""The commands. Each one reads its arguments, calls the same functions a script would, and prints what came of it."""

from panelcad.cli import cutting, judging, papers, planning, projects
from panelcad.cli.base import app, command_names, main

__all__ = ["app", "command_names", "cutting", "judging", "main", "papers", "planning", "projects"]
