"""The scene by itself: what it knows of the boxes it shows."""

from PySide6.QtCore import QRectF, Qt

from panelcad.desktop.canvas.scene import PanelScene
from panelcad.desktop.theme import LIGHT
from panelcad.drawing.display import Group, Path
from panelcad.geometry.contour import rectangle
from panelcad.geometry.point import Point


def test_the_index_of_the_scene_knows_a_box_that_grew_with_the_zoom(qapp) -> None:
    """A box that changes unseen leaves its item in the index after it is gone, and Qt crashes on it."""
    scene = PanelScene(LIGHT)
    scene.setBspTreeDepth(8)
    scene.show((Group((Path((rectangle(Point(5.0, 5.0), 10.0, 10.0),)),), "square"),))
    (item,) = scene.groups
    assert item in scene.items(QRectF(5, 5, 1, 1), Qt.ItemSelectionMode.IntersectsItemBoundingRect)
    scene.zoomed(16.0)
    beside = QRectF(35.0, 5.0, 1.0, 1.0)
    assert item.boundingRect().intersects(beside)
    assert item in scene.items(beside, Qt.ItemSelectionMode.IntersectsItemBoundingRect)
