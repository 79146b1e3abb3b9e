"""The proposal as one PDF: the panel as found, every option with its pictures and price, the comparison, signatures."""

from pathlib import Path

from panelcad.drawing.cautions import SHORT
from panelcad.drawing.paper import PAPERS, Paper, usual_series
from panelcad.drawing.sheet import Sheet
from panelcad.model.project import Project
from panelcad.outputs.pdf import Properties, write_pdf
from panelcad.outputs.proposal_comparison import comparison_pages
from panelcad.outputs.proposal_decision import decision_page
from panelcad.outputs.proposal_pages import (
    Body,
    footer,
    header,
    open_pages,
    option_page,
    overview,
)
from panelcad.outputs.story import Story, stories


def export_proposal(project: Project, path: Path | str) -> None:
    """Write the proposal; an older file stays whole until the new one is complete."""
    told = stories(project)
    title = f"Proposal: {project.title}"
    about = Properties(title, project.drawn_by or project.shop, "Proposal for an instrument panel")
    write_pdf(Path(path), proposal_sheets(project, told), about)


def proposal_sheets(project: Project, told: tuple[Story, ...]) -> list[Sheet]:
    """The pages on A4 or, in a project in inches, on US letter size, landscape."""
    paper = PAPERS[usual_series(project.unit)][0]
    bodies = [
        *overview(project, told, paper),
        *(body for each in told for body in _about(project, each, paper)),
        *comparison_pages(told, paper),
        decision_page(project, told, paper),
    ]
    return [_sheet(project, body, i, len(bodies)) for i, body in enumerate(bodies, 1)]


def _about(project: Project, told: Story, paper: Paper) -> list[Body]:
    """An option's pages; the panel as found is on the first page by day."""
    by_day = [] if told.is_as_found else [option_page(project, told, paper)]
    return [*by_day, *open_pages(project, told, paper)]


def _sheet(project: Project, body: Body, number: int, count: int) -> Sheet:
    paper = PAPERS[usual_series(project.unit)][0]
    nodes = (
        *header(project, body.title, paper),
        *body.nodes,
        *footer(SHORT, f"{number} / {count}", paper),
    )
    return Sheet(paper.width, paper.height, nodes, f"{number} {body.title}")
