"""Small pictures of cutouts, drawn by the same painter as the panel."""

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QPainter, QPixmap

from panelcad.desktop.theme import Theme
from panelcad.drawing.display import Group
from panelcad.drawing.extent import extent
from panelcad.drawing.views.front import item_group
from panelcad.drawing.views.metal import cut_group
from panelcad.model.cutout import Cutout
from panelcad.model.hole import Face
from panelcad.model.layout import placed_cut, placed_item
from panelcad.model.plate import Cut
from panelcad.model.project import Item
from panelcad.outputs.qt_painter import paint

_AROUND = 0.06


def cutout_picture(cutout: Cutout, theme: Theme) -> tuple[Group, ...]:
    """A cutout alone, about its own origin: its metal and what covers it in front."""
    groups: list[Group] = []
    if cutout.openings or cutout.holes:
        cut = Cut(id="cut", name="cut", x=0.0, y=0.0, cutout=cutout.name)
        groups.append(cut_group(placed_cut(cut, cutout), theme.view, Face.FRONT))
    if cutout.bezel or cutout.bodies:
        item = Item(id="item", name="item", cutout=cutout.name)
        groups.append(item_group(placed_item(item, cutout, 2.0), theme.view))
    return tuple(groups)


def library_picture(cutout: Cutout, theme: Theme) -> tuple[Group, ...]:
    """What a cutout of the library is for, as it will look when it is fitted; its metal where nothing is fitted."""
    from panelcad.drawing.appearance_items import fitted_face  # noqa: PLC0415 - faces wait until the window is painted

    return (fitted_face(cutout),) if cutout.bezel or cutout.bodies else cutout_picture(cutout, theme)


def thumbnail(picture: tuple[Group, ...], size: QSize, pixel_ratio: float) -> QPixmap:
    """A picture fitted into so many logical pixels, on a clear ground."""
    pixmap = QPixmap(size * pixel_ratio)
    pixmap.setDevicePixelRatio(pixel_ratio)
    pixmap.fill(Qt.GlobalColor.transparent)
    x1, y1, x2, y2 = extent(picture)
    around = 1 + 2 * _AROUND
    scale = min(size.width() / max(x2 - x1, 1e-6), size.height() / max(y2 - y1, 1e-6)) / around
    painter = QPainter(pixmap)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.translate(size.width() / 2, size.height() / 2)
    painter.scale(scale, -scale)
    painter.translate(-(x1 + x2) / 2, -(y1 + y2) / 2)
    paint(painter, picture)
    painter.end()
    return pixmap
