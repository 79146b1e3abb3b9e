"""Lay out a light aircraft's new instrument panel, check it, show it, and release it to the machinist.

The same functions serve the window, the command line and scripts (docs/scripting.md). Heavy libraries load where they
are first used.
"""

from pathlib import Path
from typing import TYPE_CHECKING

from panelcad.model.finding import Finding
from panelcad.model.layout import Layout
from panelcad.model.layout import layout as _layout
from panelcad.model.project import Option, Project
from panelcad.store.project_file import load, save

if TYPE_CHECKING:
    from panelcad.checks.report import CheckReport

__all__ = ["Project", "check", "export_drawing", "export_dxf", "layout", "load", "save", "sentence"]


def layout(project: Project, option: Option | str) -> Layout:
    """The option as contours and prisms in each plate's axes, in mm. Raises `UnknownName`."""
    return _layout(project, _chosen(project, option))


def check(project: Project, option: Option | str) -> "CheckReport":
    """What all rules find in an option. Raises `UnknownName`."""
    from panelcad.checks.run import check as judge  # noqa: PLC0415 - the rules load shapely

    return judge(project, _chosen(project, option))


def sentence(finding: Finding, project: Project, option: Option | str) -> str:
    """A finding in words, in the project's unit."""
    from panelcad.checks.wording import sentence as worded  # noqa: PLC0415

    return worded(finding, project, _chosen(project, option))


def export_dxf(project: Project, option: Option | str, plate: str, path: Path | str) -> None:
    """Write the cutting file of one plate. Raises `UnknownName`, `UnusableInput`."""
    from panelcad.outputs.dxf import export_dxf as write  # noqa: PLC0415 - loads ezdxf

    write(project, _chosen(project, option), plate, path)


def export_drawing(project: Project, option: Option | str, path: Path | str) -> None:
    """Write the drawing of an option as PDF. Raises `UnknownName`, `UnusableInput`."""
    from panelcad.outputs.drawing import export_drawing as write  # noqa: PLC0415 - loads reportlab

    write(project, _chosen(project, option), Path(path))


def _chosen(project: Project, option: Option | str) -> Option:
    return project.option(option) if isinstance(option, str) else option
