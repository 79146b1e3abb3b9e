"""The box around what a display list draws, in mm."""

from panelcad.drawing.display import Bounds, Group, Measured, Node, Text, union
from panelcad.drawing.lettering import text_bounds
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point


def extent(nodes: tuple[Node, ...]) -> Bounds:
    """The box around all nodes; text measured in pixels counts as its anchor. Raises ValueError where none is drawn."""
    return union([box for node in nodes for box in _boxes(node)])


def _boxes(node: Node) -> list[Bounds]:
    if isinstance(node, Group):
        inner = [box for child in node.nodes for box in _boxes(child)]
        if node.clip is not None:
            inner = [_within(box, node.clip.bounds) for box in inner]
        return [_placed(box, node.placement) for box in inner] if node.placement else inner
    if isinstance(node, Text):
        if node.measured is Measured.PIXELS:
            return [(node.at.x, node.at.y, node.at.x, node.at.y)]
        return [text_bounds(node)]
    return [node.bounds]


def _within(box: Bounds, clip: Bounds) -> Bounds:
    """The part of a box that a clip's box leaves; a box outside becomes the nearest point of the clip's."""
    x1, y1, x2, y2 = clip
    return (min(max(box[0], x1), x2), min(max(box[1], y1), y2), max(min(box[2], x2), x1), max(min(box[3], y2), y1))


def _placed(box: Bounds, placement: Placement) -> Bounds:
    x1, y1, x2, y2 = box
    corners = [placement.point(Point(x, y)) for x, y in ((x1, y1), (x2, y1), (x2, y2), (x1, y2))]
    return union([(p.x, p.y, p.x, p.y) for p in corners])
