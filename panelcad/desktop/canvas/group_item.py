"""One group of a display list on the scene: prepared once, replayed at every repaint."""

import math
from dataclasses import replace
from typing import Final

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QPainter, QPainterPath, QPainterPathStroker, QPixmapCache, QTransform
from PySide6.QtWidgets import QGraphicsRectItem, QStyleOptionGraphicsItem, QWidget

from panelcad.drawing.display import Bounds, Group, Measured, Path, Text, walk
from panelcad.drawing.extent import extent
from panelcad.drawing.layers import Layer
from panelcad.drawing.lettering import text_width
from panelcad.geometry.track import Track
from panelcad.outputs.qt_painter import outline_path, placement_transform, prepare

_HAIR: Final = 0.1
_LEAST_MARGIN_PX: Final = 2.0
_FINER: Final = 20.0
"""Units a mm in which areas are put together: a fortieth of a mm beside an arc is not seen at any zoom."""
_PIXMAPS_KB: Final = 256 * 1024
"""Room for kept pictures of a whole panel on a large screen; Qt's own limit of 10 MB is one panel at 1920 pixels."""


class GroupItem(QGraphicsRectItem):
    """Paints a group in mm, y up. `owner` is the id of what it shows.

    Its rectangle is what it covers with a margin around: Qt asks for that of many items at each repaint.
    """

    def __init__(self, group: Group) -> None:
        super().__init__()
        self.setPen(Qt.PenStyle.NoPen)
        self._mm_per_pixel = 1.0
        self.take(group)

    def take(self, group: Group) -> None:
        """Show another group from now on."""
        self.picture = group
        self.owner = group.owner
        self._prepared = prepare((group,))
        self._box = rect_of(_extent_or_nothing(group))
        self._margin_px = max(_LEAST_MARGIN_PX, _widest_pixel_text(group))
        self._outline: QPainterPath | None = None
        self._cover()
        self.update()

    def keep_pixmap(self, *, wanted: bool) -> None:
        """Paint it once for each zoom and copy it from then on, or replay its paths each time."""
        if wanted and QPixmapCache.cacheLimit() < _PIXMAPS_KB:
            QPixmapCache.setCacheLimit(_PIXMAPS_KB)
        mode = self.CacheMode.DeviceCoordinateCache if wanted else self.CacheMode.NoCache
        if self.cacheMode() is not mode:
            self.setCacheMode(mode)

    @property
    def is_line(self) -> bool:
        """Made of lines and words alone: what is pointed at exactly is meant before the areas that it lies over."""
        outlines = (outline for node in walk((self.picture,)) if isinstance(node, Path) for outline in node.outlines)
        return all(isinstance(outline, Track) for outline in outlines)

    @property
    def is_bare(self) -> bool:
        """Drawn with unfilled lines alone: what is behind it shows through."""
        return not any(isinstance(node, Path) and node.fill is not None for node in walk((self.picture,)))

    def has_line_at(self, spot: QRectF) -> bool:
        """Whether a line of its contours runs through a spot."""
        return self.outline.intersects(spot) and not self.outline.contains(spot)

    def is_touched(self, spot: QRectF, reach: float, mm_per_pixel: float) -> bool:
        """Whether a pointer at a spot means this; lines are met a little farther away, and by their words."""
        if not self.is_line:
            return self.outline.intersects(spot)
        wide = spot.adjusted(-reach, -reach, reach, reach)
        words = (_in_mm(text, mm_per_pixel) for text in _pixel_texts(self.picture))
        return self.outline.intersects(wide) or any(rect_of(extent((text,))).intersects(spot) for text in words)

    @property
    def box(self) -> QRectF:
        """What the group covers, in mm."""
        return self._box

    @property
    def outline(self) -> QPainterPath:
        """The area of all closed contours, for hits and highlights; along the lines where there are only lines."""
        if self._outline is None:
            self._outline = _along(self.picture) if self.is_line else _covered(_reach(self.picture))
        return self._outline

    def zoomed(self, mm_per_pixel: float) -> None:
        """Pens and lettering in pixels cover more mm the farther one is away.

        The box grows in steps of two, and each time the scene is told: its index crashes on a box that changed unseen.
        """
        step = 2.0 ** math.ceil(math.log2(mm_per_pixel))
        if step != self._mm_per_pixel:
            self._mm_per_pixel = step
            self._cover()

    def _cover(self) -> None:
        margin = self._margin_px * self._mm_per_pixel
        self.setRect(self._box.adjusted(-margin, -margin, margin, margin))

    def paint(self, painter: QPainter, option: QStyleOptionGraphicsItem, widget: QWidget | None = None) -> None:  # noqa: ARG002
        self._prepared.replay(painter)


def rect_of(bounds: Bounds) -> QRectF:
    x1, y1, x2, y2 = bounds
    return QRectF(x1, y1, x2 - x1, y2 - y1)


def bounds_of(rect: QRectF) -> Bounds:
    """Left, bottom, right, top in mm; Qt's top is the smaller y."""
    return rect.left(), rect.top(), rect.right(), rect.bottom()


def _extent_or_nothing(group: Group) -> Bounds:
    try:
        return extent((group,))
    except ValueError:
        return 0.0, 0.0, 0.0, 0.0


def _pixel_texts(group: Group) -> tuple[Text, ...]:
    return tuple(n for n in walk((group,)) if isinstance(n, Text) and n.measured is Measured.PIXELS)


def _widest_pixel_text(group: Group) -> float:
    return max((text_width(t.text, t.height, t.face) + t.height for t in _pixel_texts(group)), default=0.0)


def _in_mm(text: Text, mm_per_pixel: float) -> Text:
    """The text as large as it is on the screen now."""
    return replace(text, height=text.height * mm_per_pixel, measured=Measured.MM)


def _reach(group: Group) -> Group:
    """The part that says where the group is touched; the whole group where it has none, nowhere where it is empty."""
    return next((n for n in group.nodes if isinstance(n, Group) and n.layer == Layer.REACH), group)


def _along(group: Group) -> QPainterPath:
    """A hair's width along the lines that are touched, and what the words cover; nothing where nothing is touched."""
    hair = QPainterPathStroker()
    hair.setWidth(_HAIR)
    path, touched = QPainterPath(), _reach(group)
    if not touched.nodes:
        return path
    for node in walk((touched,)):
        if isinstance(node, Path):
            path.addPath(hair.createStroke(outline_path(node.outlines)))
    for node in walk((group,)):
        if isinstance(node, Text):
            path.addRect(rect_of(extent((node,))))
    return _simplified(path)


def _covered(group: Group) -> QPainterPath:
    path = QPainterPath()
    for node in group.nodes:
        if isinstance(node, Path):
            for outline in node.outlines:
                path.addPath(outline_path((outline,)))
        elif isinstance(node, Group):
            path.addPath(_covered(node))
        elif isinstance(node, Text):
            path.addRect(rect_of(extent((node,))))
        else:
            path.addRect(rect_of(node.bounds))
    path = placement_transform(group.placement).map(path) if group.placement else path
    return _simplified(path)


def _simplified(path: QPainterPath) -> QPainterPath:
    """The same area with fewer lines. Qt puts chords for arcs, within half a unit, so it is given a finer one."""
    finer, back = QTransform.fromScale(_FINER, _FINER), QTransform.fromScale(1 / _FINER, 1 / _FINER)
    return back.map(finer.map(path).simplified())
