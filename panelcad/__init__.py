"""Lay out a light aircraft's new instrument panel, check it, show it, and release it to the machinist.

The same functions serve the window, the command line and scripts (docs/scripting.md). Heavy libraries load where they
are first used.
"""

from collections.abc import Iterable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from panelcad.model.finding import Finding
from panelcad.model.layout import Layout
from panelcad.model.layout import layout as _layout
from panelcad.model.project import Option, Project
from panelcad.store.project_file import load, save

if TYPE_CHECKING:
    from panelcad.checks.report import CheckReport
    from panelcad.outputs.release import Released
    from panelcad.outputs.verify import VerifyReport
    from panelcad.planning.compare import Comparison
    from panelcad.planning.judge import Judgement

__all__ = [
    "Project",
    "check",
    "compare",
    "draft",
    "export_comparison",
    "export_drawing",
    "export_dxf",
    "export_inspection",
    "export_planning",
    "export_preview",
    "export_template",
    "layout",
    "load",
    "plan",
    "release",
    "save",
    "sentence",
    "verify",
]


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


def plan(project: Project, option: Option | str) -> "Judgement":
    """What an option's equipment does, needs, draws, weighs and costs. Raises `UnknownName`."""
    from panelcad.planning.judge import judge  # noqa: PLC0415 - the checks load shapely

    return judge(project, _chosen(project, option))


def compare(project: Project) -> "Comparison":
    """The panel as found and all options side by side."""
    from panelcad.planning.compare import compare as side_by_side  # noqa: PLC0415 - the checks load shapely

    return side_by_side(project)


def export_comparison(project: Project, path: Path | str) -> None:
    """Write the owner's report of all options as PDF. Raises `UnusableInput`."""
    from panelcad.outputs.papers.write import write_comparison  # noqa: PLC0415 - loads reportlab

    write_comparison(compare(project), Path(path))


def export_planning(project: Project, option: Option | str, folder: Path | str, on: str) -> tuple[Path, ...]:
    """Write the planning papers of an option, dated `on` (2026-03-01); the files written.

    Raises `UnknownName`, `UnusableInput`.
    """
    from panelcad.outputs.papers.write import write_option_papers  # noqa: PLC0415 - loads reportlab

    return write_option_papers(plan(project, option), Path(folder), on)


def export_dxf(
    project: Project, option: Option | str, plate: str, path: Path | str, choices: Iterable[str] = ()
) -> None:
    """Write the cutting file of one plate; `choices` are words such as 'R12', 'mm', 'back', 'relief'.

    Raises `UnknownName`, `UnusableInput`.
    """
    from panelcad.outputs.dxf import export_dxf as write  # noqa: PLC0415 - loads ezdxf
    from panelcad.outputs.dxf_choices import chosen_options  # noqa: PLC0415

    write(project, _chosen(project, option), plate, path, chosen_options(choices, project.unit))


def draft(  # noqa: PLR0913 - as the command has them
    project: Project,
    option: Option | str,
    folder: Path | str,
    *,
    plates: Iterable[str] = (),
    around: Iterable[str] = (),
    choices: Iterable[str] = (),
) -> tuple[Path, ...]:
    """Write cutting files marked as drafts, for a trial in scrap; with `around` one trial piece that holds these cuts.

    Plates, cuts and choices as the command has them. Raises `UnknownName`, `UnusableInput`.
    """
    from panelcad.outputs.dxf_choices import chosen_options  # noqa: PLC0415
    from panelcad.outputs.release import cutting_draft  # noqa: PLC0415 - loads ezdxf and reportlab
    from panelcad.outputs.release_papers import ReleaseOptions  # noqa: PLC0415

    options = ReleaseOptions(plates=tuple(plates), dxf=chosen_options(choices, project.unit))
    files, _ = cutting_draft(project, _chosen(project, option).id, folder, options, around)
    return files


def release(  # noqa: PLR0913 - as the command has them
    project: Project,
    option: Option | str,
    folder: Path | str,
    on: str,
    by: str = "",
    *,
    plates: Iterable[str] = (),
    choices: Iterable[str] = (),
) -> "Released":
    """Write the papers of an option, released on this day (YYYY-MM-DD); `.project` has the grown log.

    `plates` are ids or names, all that are cut where none is given; `choices` are words as for `export_dxf`.

    Raises `ReleaseRefused`, `UnknownName`, `UnusableInput`.
    """
    from panelcad.outputs.dxf_choices import chosen_options  # noqa: PLC0415
    from panelcad.outputs.release import release as issue  # noqa: PLC0415 - loads ezdxf and reportlab
    from panelcad.outputs.release_papers import ReleaseOptions  # noqa: PLC0415

    options = ReleaseOptions(by=by, plates=tuple(plates), dxf=chosen_options(choices, project.unit))
    return issue(project, _chosen(project, option).id, folder, on, options)


def verify(project: Project, path: Path | str) -> "VerifyReport":
    """Hold a DXF against the project. Raises `UnusableInput`."""
    from panelcad.outputs.verify import verify as hold  # noqa: PLC0415 - loads ezdxf

    return hold(project, path)


def export_drawing(  # noqa: PLR0913 - the choices of a drawing, by name
    project: Project,
    option: Option | str,
    path: Path | str,
    *,
    sections: Sequence[str] = (),
    largest: str = "",
    ink: str = "colour",
) -> None:
    """Write the drawing of an option as PDF, with `sections` such as 'x=3.25in', on sheets no larger than `largest`.

    `ink` is 'colour' or 'black'. Raises `UnknownName`, `UnusableInput`.
    """
    from panelcad.outputs.drawing import drawing_options  # noqa: PLC0415 - loads reportlab
    from panelcad.outputs.drawing import export_drawing as write  # noqa: PLC0415
    from panelcad.outputs.section_choices import chosen_sections  # noqa: PLC0415

    chosen = _chosen(project, option)
    write(project, chosen, Path(path), drawing_options(ink, largest, chosen_sections(sections, project, chosen)))


def export_preview(project: Project, folder: Path | str, width: int = 1920) -> tuple[Path, ...]:
    """Write what the owner is shown: PNG and SVG of every option by day and night, the proposal, the page.

    Pictures are `width` pixels wide; the files written, in order. Raises `UnusableInput`.
    """
    from panelcad.outputs.preview import PreviewOptions, write_preview  # noqa: PLC0415 - loads Qt and reportlab

    return write_preview(project, folder, PreviewOptions(width_px=width))


def export_template(project: Project, option: Option | str, plate: str, path: Path | str, paper: str = "") -> None:
    """Write the full-size template of one plate as PDF, on a paper such as 'A4' or 'Letter'.

    Raises `UnknownName`, `UnusableInput`.
    """
    from panelcad.outputs.template import export_template as write  # noqa: PLC0415 - loads reportlab
    from panelcad.outputs.template import template_options  # noqa: PLC0415

    write(project, _chosen(project, option), plate, path, template_options(paper))


def export_inspection(project: Project, option: Option | str, path: Path | str) -> None:
    """Write the first-article inspection: CSV where the path ends so, else PDF.

    Raises `UnknownName`, `UnusableInput`.
    """
    from panelcad.outputs import inspection  # noqa: PLC0415 - loads reportlab

    writers = {".csv": inspection.export_inspection_csv}
    writers.get(Path(path).suffix.lower(), inspection.export_inspection)(project, _chosen(project, option), path)


def _chosen(project: Project, option: Option | str) -> Option:
    return project.option(option) if isinstance(option, str) else option
