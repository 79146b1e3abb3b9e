"""A display list as SVG, in mm with y turned down. Letters are outlines: every reader shows the same picture."""

from collections import Counter
from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Final
from xml.sax.saxutils import escape, quoteattr

from panelcad.drawing.display import (
    RIM,
    Bounds,
    Cap,
    Colour,
    Fill,
    Group,
    LinearGradient,
    Measured,
    Node,
    Path,
    Pen,
    Picture,
    RadialGradient,
    Stop,
    Text,
    walk,
)
from panelcad.drawing.lettering import text_origin
from panelcad.geometry.contour import Rounded
from panelcad.geometry.placement import Placement
from panelcad.outputs.svg_path import letters, number, path_data

_SMALLEST_SHARED: Final = 4
"""Groups of fewer nodes than this are written out each time."""


class PlainInks:
    """How colours are written: here as they are, whatever the layer."""

    def paint(self, what: str, colour: Colour, _layer: str) -> str:
        """Attributes that give `what` ('fill', 'stroke', 'stop') a colour."""
        name = "stop-color" if what == "stop" else what
        text = f' {name}="{colour.text}"'
        if colour.opacity < 255:
            text += f' {what}-opacity="{number(colour.opacity / 255)}"'
        return text


def nothing_more(_group: Group) -> str:
    """No attributes beyond those every group gets."""
    return ""


@dataclass
class SvgPainter:
    """Writes nodes as SVG elements and collects what they share. One painter writes one document."""

    inks: PlainInks = field(default_factory=PlainInks)
    mm_per_px: float = 0.25
    places: int = 3
    prefix: str = ""
    more: Callable[[Group], str] = nothing_more
    write_text: Callable[[Text, str], str] | None = None
    owners: bool = True
    defs: list[str] = field(default_factory=list)
    _ids: dict[object, str] = field(default_factory=dict)
    _shared: dict[int, tuple[Group, str]] = field(default_factory=dict)
    _repeated: set[int] = field(default_factory=set)

    def expect(self, nodes: tuple[Node, ...]) -> None:
        """Look at what will be painted: groups that it holds more than once are written once and used."""
        times = Counter(id(node) for node in walk(nodes) if isinstance(node, Group))
        self._repeated |= {key for key, count in times.items() if count > 1}

    def paint(self, nodes: tuple[Node, ...]) -> str:
        """The elements of a display list."""
        return self._nodes(nodes, "")

    def _nodes(self, nodes: tuple[Node, ...], layer: str) -> str:
        return "".join(self._node(node, layer) for node in nodes)

    def _node(self, node: Node, layer: str) -> str:
        if isinstance(node, Group):
            return self._group(node, layer)
        if isinstance(node, Path):
            return self._path(node, layer)
        return self._text(node, layer) if isinstance(node, Text) else self._picture(node)

    def _group(self, group: Group, layer: str) -> str:
        if id(group) not in self._repeated or len(group.nodes) < _SMALLEST_SHARED or group.owner:
            return self._written(group, layer, "")
        known = self._shared.get(id(group))
        if known is None:
            name = self._next_id("g")
            self._shared[id(group)] = (group, name)
            self.defs.append(self._written(group, layer, f' id="{name}"'))
            return f'<use href="#{name}"/>'
        return f'<use href="#{known[1]}"/>'

    def _written(self, group: Group, layer: str, name: str) -> str:
        inner = self._nodes(group.nodes, group.layer or layer)
        title = f"<title>{escape(group.title)}</title>" if group.title and self.owners else ""
        if not inner:
            return ""
        attributes = name + self._attributes(group)
        return f"<g{attributes}>{title}{inner}</g>" if attributes or title else inner

    def _attributes(self, group: Group) -> str:
        text = self.more(group)
        if group.owner and self.owners:
            text += f" data-owner={quoteattr(group.owner)}"
        if group.opacity < 1.0:
            text += f' opacity="{number(group.opacity)}"'
        if group.placement is not None:
            text += f' transform="{self._transform(group.placement)}"'
        if group.clip is not None:
            text += f' clip-path="url(#{self._clip(group)})"'
        return text

    def _transform(self, at: Placement) -> str:
        text = f"translate({self._number(at.x)} {self._number(-at.y)})"
        if at.rotation:
            text += f"rotate({number(-at.rotation, 6)})"
        return text + ("scale(-1 1)" if at.mirrored else "")

    def _clip(self, group: Group) -> str:
        if group.clip is None:
            raise ValueError("a group with a clip is expected")
        data = path_data((group.clip,), self.places)
        return self._definition(("clip", data), lambda name: f'<clipPath id="{name}"><path d="{data}"/></clipPath>')

    def _path(self, path: Path, layer: str) -> str:
        if path.fill is None and path.pen is None:
            return ""
        fill = self._fill(path.fill, layer) if path.fill is not None else ' fill="none"'
        pen = self._pen(path.pen, layer) if path.pen is not None else ""
        outlines = path.outlines
        if len(outlines) == 1 and isinstance(outlines[0], Rounded) and outlines[0].is_circle:
            (centre,) = outlines[0].core
            x, y, r = self._number(centre.x), self._number(-centre.y), self._number(outlines[0].radius)
            return f'<circle cx="{x}" cy="{y}" r="{r}"{fill}{pen}/>'
        rule = ' fill-rule="evenodd"' if path.fill is not None and len(outlines) > 1 else ""
        return f'<path d="{path_data(outlines, self.places)}"{fill}{rule}{pen}/>'

    def _fill(self, fill: Fill, layer: str) -> str:
        if isinstance(fill, Colour):
            return self.inks.paint("fill", fill, layer)
        name = self._definition((fill, layer), lambda name: self._gradient(fill, layer, name))
        return f' fill="url(#{name})"'

    def _gradient(self, fill: LinearGradient | RadialGradient, layer: str, name: str) -> str:
        stops = "".join(self._stop(stop, layer) for stop in fill.stops)
        units = 'gradientUnits="userSpaceOnUse"'
        if isinstance(fill, LinearGradient):
            (x1, y1), (x2, y2) = ((self._number(p.x), self._number(-p.y)) for p in (fill.start, fill.end))
            where = f'x1="{x1}" y1="{y1}" x2="{x2}" y2="{y2}"'
            return f'<linearGradient id="{name}" {units} {where}>{stops}</linearGradient>'
        where = (
            f'cx="{self._number(fill.centre.x)}" cy="{self._number(-fill.centre.y)}" r="{self._number(fill.radius)}"'
        )
        return f'<radialGradient id="{name}" {units} {where}>{stops}</radialGradient>'

    def _stop(self, stop: Stop, layer: str) -> str:
        return f'<stop offset="{number(stop.share)}"{self.inks.paint("stop", stop.colour, layer)}/>'

    def _pen(self, pen: Pen, layer: str) -> str:
        text = self.inks.paint("stroke", pen.colour, layer) + f' stroke-width="{self._number(pen.width)}"'
        if pen.measured is Measured.PIXELS:
            text += ' vector-effect="non-scaling-stroke"'
        if pen.dashes:
            text += f' stroke-dasharray="{" ".join(self._number(dash) for dash in pen.dashes)}"'
        return text + (' stroke-linecap="round" stroke-linejoin="round"' if pen.cap is Cap.ROUND else "")

    def _text(self, text: Text, layer: str) -> str:
        if not text.text.strip():
            return ""
        if self.write_text is not None:
            return self.write_text(text, self.inks.paint("fill", text.colour, layer))
        scale = self.mm_per_px if text.measured is Measured.PIXELS else 1.0
        dx, dy = text_origin(text)
        data = letters(text.text, text.height * scale, text.face, self.places)
        at = f"translate({self._number(text.at.x)} {self._number(-text.at.y)})"
        at += f"rotate({number(-text.rotation, 6)})" if text.rotation else ""
        at += f"translate({self._number(dx * scale)} {self._number(-dy * scale)})"
        fill = self.inks.paint("fill", text.colour, layer)
        return f'<path transform="{at}" d="{data}"{fill}{self._rim(text, text.height * scale, layer)}/>'

    def _rim(self, text: Text, height: float, layer: str) -> str:
        if text.rim is None:
            return ""
        width = f' stroke-width="{self._number(2 * RIM * height)}" stroke-linejoin="round" paint-order="stroke"'
        return self.inks.paint("stroke", text.rim, layer) + width

    def _picture(self, picture: Picture) -> str:
        from base64 import b64encode  # noqa: PLC0415 - pictures are rare

        kind = "png" if picture.content.startswith(b"\x89PNG") else "jpeg"
        x, y = self._number(picture.at.x), self._number(-picture.at.y - picture.height)
        size = f'width="{self._number(picture.width)}" height="{self._number(picture.height)}"'
        data = b64encode(picture.content).decode()
        return f'<image x="{x}" y="{y}" {size} preserveAspectRatio="none" href="data:image/{kind};base64,{data}"/>'

    def _definition(self, key: object, make: Callable[[str], str]) -> str:
        if key not in self._ids:
            self._ids[key] = self._next_id("d")
            self.defs.append(make(self._ids[key]))
        return self._ids[key]

    def _next_id(self, letter: str) -> str:
        return f"{self.prefix}{letter}{len(self._ids) + len(self._shared) + 1}"

    def _number(self, value: float) -> str:
        return number(value, self.places)


def svg(nodes: tuple[Node, ...], bounds: Bounds, title: str, width_px: int | None = None) -> str:
    """A whole SVG document of what `bounds` (mm) shows: at true size, or `width_px` wide."""
    x1, y1, x2, y2 = bounds
    width, height = x2 - x1, y2 - y1
    painter = SvgPainter(mm_per_px=width / width_px if width_px else 25.4 / 96)
    painter.expect(nodes)
    body = painter.paint(nodes)
    size = (
        f'width="{width_px}" height="{round(width_px * height / width)}"'
        if width_px
        else f'width="{number(width)}mm" height="{number(height)}mm"'
    )
    box = f'viewBox="{number(x1)} {number(-y2)} {number(width)} {number(height)}"'
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" {size} {box} role="img" aria-label={quoteattr(title)}>'
        f"<title>{escape(title)}</title><defs>{''.join(painter.defs)}</defs>{body}</svg>\n"
    )
