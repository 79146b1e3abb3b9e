"""Papers of the samples, and what stands where on a sheet."""

from collections.abc import Iterator
from functools import cache

import shapely

from panelcad.checks.run import check
from panelcad.drawing.display import Group, Node, Text
from panelcad.drawing.inks import Ink
from panelcad.drawing.lettering import text_corners
from panelcad.drawing.sheet import Sheet
from panelcad.drawing.subject import Subject, subject
from panelcad.library.samples import sample_file, sample_names
from panelcad.model.project import Option, Project
from panelcad.model.revision import stamp
from panelcad.outputs.drawing import drawing_sheets
from panelcad.store.project_file import load

ALL_OPTIONS = [(name, option.id) for name in sample_names() for option in load(sample_file(name)).all_options]


def shown(project: Project, option: Option, ink: Ink = Ink.COLOUR) -> Subject:
    return subject(check(project, option), stamp(project, option), ink)


@cache
def sample(name: str, option: str) -> Subject:
    project = load(sample_file(name))
    return shown(project, project.option(option))


@cache
def drawing(name: str, option: str) -> tuple[Sheet, ...]:
    """The drawing set of a sample's option, made once for all tests."""
    return tuple(drawing_sheets(sample(name, option)))


def texts(nodes: tuple[Node, ...]) -> Iterator[Text]:
    """Every text that is meant to be read, the mark across a draft left out; no sheet places a group anew."""
    for node in nodes:
        if isinstance(node, Text):
            yield node
        elif isinstance(node, Group) and node.layer != "draft":
            assert node.placement is None
            yield from texts(node.nodes)


def overlapping(sheet: Sheet) -> list[tuple[str, str]]:
    """Pairs of texts whose boxes share more than a hundredth of a square millimetre."""
    found = list(texts(sheet.nodes))
    boxes = [shapely.Polygon(text_corners(text)) for text in found]
    pairs = shapely.STRtree(boxes).query(boxes, predicate="intersects").T
    return [(found[a].text, found[b].text) for a, b in pairs if a < b and boxes[a].intersection(boxes[b]).area > 0.01]


def outside(sheet: Sheet, margin: float) -> list[str]:
    """Texts that reach nearer to the paper's edge than `margin`."""
    paper = shapely.box(margin, margin, sheet.width - margin, sheet.height - margin)
    return [text.text for text in texts(sheet.nodes) if not paper.covers(shapely.Polygon(text_corners(text)))]
