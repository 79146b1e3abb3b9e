"""The options' pictures for the page: drawn once, what they share defined once, every instrument reachable."""

from dataclasses import dataclass, field
from html import escape

from panelcad.drawing.appearance import Look
from panelcad.drawing.appearance_items import REACH
from panelcad.drawing.appearance_panel import unlit_panel
from panelcad.drawing.display import Bounds, Face, Group, Path, Text, union
from panelcad.drawing.extent import extent
from panelcad.drawing.lettering import em_size, text_origin
from panelcad.geometry.placement import Placement
from panelcad.geometry.track import Track
from panelcad.model.layout import layout
from panelcad.model.project import Option, Project
from panelcad.outputs.page.inks import DayAndNight
from panelcad.outputs.svg_painter import SvgPainter
from panelcad.outputs.svg_path import number, path_data

_MARGIN = 8.0


@dataclass
class Pictures:
    """The pictures of some options, with one frame around them all."""

    defs: str
    style: str
    bounds: Bounds
    bodies: dict[str, str] = field(default_factory=dict)


def pictures(project: Project, options: tuple[Option, ...]) -> Pictures:
    """SVG of every option, in the order given."""
    views = {option.id: unlit_panel(layout(project, option), Look()) for option in options}
    inks = DayAndNight()
    items = {item.id: item.name for option in options for item in option.items}
    painter = SvgPainter(
        inks=inks, places=2, more=lambda group: _reachable(group, items), write_text=_lettering, owners=False
    )
    painter.expect(tuple(group for view in views.values() for group in view))
    bodies = {name: painter.paint(view) for name, view in views.items()}
    x1, y1, x2, y2 = union([extent(view) for view in views.values()])
    frame = (x1 - _MARGIN, y1 - _MARGIN, x2 + _MARGIN, y2 + _MARGIN)
    return Pictures("".join(painter.defs), inks.style(), frame, bodies)


def _reachable(group: Group, items: dict[str, str]) -> str:
    """What lets a finger, a key or a screen reader find an instrument."""
    if group.owner not in items:
        return ""
    name = escape(items[group.owner], quote=True)
    return (
        f' class="item" tabindex="0" role="button" data-item="{group.owner}" aria-label="{name}"'
        f' data-outline="{_outline(group)}"'
    )


def _outline(group: Group) -> str:
    """Path data of what an item covers, in the axes of its plate: the frame around it when it is chosen."""
    reach = next(node for node in group.nodes if isinstance(node, Group) and node.layer == REACH)
    at = reach.placement or Placement(0.0, 0.0)
    paths = (node for node in reach.nodes if isinstance(node, Path))
    return path_data(tuple(at.contour(o) for path in paths for o in path.outlines if not isinstance(o, Track)), 1)


def _lettering(text: Text, fill: str) -> str:
    """A text in the page's own font, placed as every painter places it."""
    dx, dy = text_origin(text)
    size = number(em_size(text.height, text.face), 2)
    bold = ' class="b"' if text.face is Face.BOLD else ""
    if not text.rotation:
        where = f'x="{number(text.at.x + dx, 2)}" y="{number(-text.at.y - dy, 2)}"'
    else:
        turn = f"translate({number(text.at.x, 2)} {number(-text.at.y, 2)})rotate({number(-text.rotation, 2)})"
        where = f'x="{number(dx, 2)}" y="{number(-dy, 2)}" transform="{turn}"'
    return f'<text {where} font-size="{size}"{bold}{fill}>{escape(text.text)}</text>'


def svg_of(shown: Pictures, option: Option) -> str:
    """One option's picture, without what it shares with the others."""
    x1, y1, x2, y2 = shown.bounds
    box = f"{number(x1, 1)} {number(-y2, 1)} {number(x2 - x1, 1)} {number(y2 - y1, 1)}"
    label = escape(f"The panel: {option.name}", quote=True)
    return f'<svg viewBox="{box}" role="group" aria-label="{label}">{shown.bodies[option.id]}</svg>'
