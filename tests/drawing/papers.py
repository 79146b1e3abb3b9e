"""Papers of the samples, and what stands where on a sheet."""

import math
from collections.abc import Iterator
from functools import cache

import shapely

from panelcad.checks.run import check
from panelcad.drawing.display import Colour, Group, Node, Path, Text
from panelcad.drawing.inks import Ink
from panelcad.drawing.layers import Layer
from panelcad.drawing.lettering import DESCENT, text_corners
from panelcad.drawing.sheet import Sheet
from panelcad.drawing.subject import Subject, subject
from panelcad.geometry.contour import Contour
from panelcad.geometry.segment import Line
from panelcad.geometry.track import Track
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


def crossed(sheet: Sheet) -> set[str]:
    """Texts that an edge, a dimension line or any other stroke runs through, those of the part itself left out.

    A stroke that was covered by an opaque fill before the text was written does not count.
    """
    texts_left, strokes, fills = [], [], []
    for order, node in enumerate(_leaves(sheet.nodes)):
        if isinstance(node, Text):
            texts_left.append((order, node, _ink(node)))
        elif isinstance(node, Path):
            strokes.extend((order, _line(outline)) for outline in node.outlines if node.pen is not None)
            if isinstance(node.fill, Colour) and node.fill.opacity == 255:
                fills.append((order, shapely.Polygon(_line(node.outlines[0]).coords)))
    tree, covers = shapely.STRtree([line for _, line in strokes]), shapely.STRtree([fill for _, fill in fills])
    found = set()
    for order, text, box in texts_left:
        last = max((fills[i][0] for i in covers.query(box, predicate="within") if fills[i][0] < order), default=-1)
        if any(strokes[i][0] > last for i in tree.query(box, predicate="intersects")):
            found.add(text.text)
    return found


def _leaves(nodes: tuple[Node, ...]) -> Iterator[Node]:
    for node in nodes:
        if isinstance(node, Group):
            if node.layer not in {"draft", Layer.ENGRAVING}:
                yield from _leaves(node.nodes)
        else:
            yield node


def _ink(text: Text) -> shapely.Polygon:
    """The box of a text's ink: from the baseline, or below it where letters reach down, to the top of a capital."""
    low = 0.0 if set("gjpqyQ,;()") & set(text.text) else DESCENT * text.height
    corners = text_corners(text)
    up = math.radians(text.rotation + 90.0)
    lifted = [corner.moved(low * math.cos(up), low * math.sin(up)) for corner in corners[:2]]
    return shapely.Polygon([*lifted, *corners[2:]]).buffer(-0.1, join_style="mitre")


def _line(outline: Contour | Track) -> shapely.LineString:
    points = [outline.segments[0].start]
    for segment in outline.segments:
        steps = 1 if isinstance(segment, Line) else math.ceil(abs(segment.sweep) * math.sqrt(segment.radius / 0.08))
        points.extend(segment.at(i / steps) for i in range(1, steps + 1))
    return shapely.LineString(points)
