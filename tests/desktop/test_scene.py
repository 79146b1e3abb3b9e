"""The scene by itself: what it knows of the boxes it shows."""

import math

from PySide6.QtCore import QRectF, Qt

from panelcad.desktop.canvas.scene import PanelScene
from panelcad.desktop.theme import LIGHT
from panelcad.drawing.display import Group, Path
from panelcad.geometry.contour import circle, rectangle
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


def test_the_outline_of_a_small_hole_is_round(qapp) -> None:
    """A screw's hole of 4.3 mm: the chord's sagitta is r - sqrt(area / pi) at most, for an area inside the circle."""
    scene, radius = PanelScene(LIGHT), 2.15
    scene.show((Group((Path((circle(Point(5.0, 5.0), 2 * radius),)),), "hole"),))
    (item,) = scene.groups
    (outline,) = item.outline.toSubpathPolygons()
    away = [math.hypot(outline[i].x() - 5.0, outline[i].y() - 5.0) for i in range(outline.count())]
    halves = [(outline[i] + outline[i + 1]) / 2 for i in range(outline.count() - 1)]
    assert max(away) < radius + 0.02
    assert min(math.hypot(half.x() - 5.0, half.y() - 5.0) for half in halves) > radius - 0.02
