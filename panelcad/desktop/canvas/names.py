"""Names over the picture: they move with what they name, and are neither picked nor measured by."""

from collections import defaultdict
from collections.abc import Collection
from typing import Final

from PySide6.QtCore import QPointF
from PySide6.QtWidgets import QGraphicsScene

from panelcad.desktop.canvas.group_item import GroupItem, bounds_of
from panelcad.drawing.box import is_within
from panelcad.drawing.display import Bounds, Group

NAMES_HEIGHT: Final = 950_000.0


class NameItems:
    def __init__(self, scene: QGraphicsScene) -> None:
        self._scene = scene
        self._items: defaultdict[str, list[GroupItem]] = defaultdict(list)

    @property
    def shown(self) -> tuple[Group, ...]:
        return tuple(item.picture for items in self._items.values() for item in items if item.isVisible())

    @property
    def are_there(self) -> bool:
        """Whether any is shown, or would be were it not cut off."""
        return bool(self._items)

    def show(self, groups: tuple[Group, ...], mm_per_pixel: float) -> None:
        """These names and no others, placed for this zoom."""
        for items in self._items.values():
            for item in items:
                self._scene.removeItem(item)
        self._items.clear()
        for group in groups:
            item = GroupItem(group)
            item.zoomed(mm_per_pixel)
            item.setZValue(NAMES_HEIGHT)
            self._scene.addItem(item)
            self._items[group.owner].append(item)

    def keep_whole(self, seen: Bounds) -> None:
        """Those that the edge of what is seen would cut off are left out."""
        for items in self._items.values():
            for item in items:
                item.setVisible(is_within(bounds_of(item.box.translated(item.pos())), seen))

    def shift(self, owners: Collection[str], dx: float, dy: float) -> None:
        """Move the names of these by mm from where they were shown."""
        for owner in owners:
            for item in self._items.get(owner, ()):
                item.setPos(QPointF(dx, dy))
