"""The scene: one item for each group of the display list, and what is laid over them.

It knows owners (ids), contours and colours; nothing of projects, files or rules.
"""

from collections import defaultdict
from collections.abc import Collection, Iterable, Iterator
from typing import Final

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QPainterPath
from PySide6.QtWidgets import QGraphicsScene

from panelcad.desktop.canvas.group_item import GroupItem, bounds_of
from panelcad.desktop.canvas.label import Labels
from panelcad.desktop.canvas.names import NameItems
from panelcad.desktop.canvas.overlay import Guide, Highlight, Mark, Overlay
from panelcad.desktop.theme import Theme
from panelcad.drawing.display import Bounds, Group, union
from panelcad.geometry.point import Point

_SPACE_AROUND: Final = 1.0
"""How far one may scroll beyond what is drawn, as a share of its larger side."""
_LEAST_SPACE: Final = 200.0
GHOST_HEIGHT: Final = 900_000.0


class PanelScene(QGraphicsScene):
    def __init__(self, theme: Theme) -> None:
        super().__init__()
        self.keeps_pixmaps = False
        self._items: dict[tuple[str, str, int], GroupItem] = {}
        self._shift = (frozenset[str](), 0.0, 0.0)
        self._hidden: frozenset[str] = frozenset()
        self._ghost: list[GroupItem] = []
        self._by_owner: defaultdict[str, list[GroupItem]] = defaultdict(list)
        self.mm_per_pixel = 1.0
        self.labels = Labels(self)
        self.names = NameItems(self)
        self.overlay = Overlay(self, self.labels, theme)
        self._selected: frozenset[str] = frozenset()
        self._hovered: frozenset[str] = frozenset()

    def show(self, picture: tuple[Group, ...]) -> None:
        """Draw this picture; items of groups that stayed the same are kept as they are."""
        self._unshift()
        wanted = dict(_keyed(_owned_groups(picture)))
        for key in self._items.keys() - wanted.keys():
            self.removeItem(self._items.pop(key))
        for depth, (key, group) in enumerate(wanted.items()):
            self._put(key, group).setZValue(depth)
        self._by_owner = defaultdict(list)
        for item in self._items.values():
            self._by_owner[item.owner].append(item)
        self._fit_scene()
        self._highlight()

    def _put(self, key: tuple[str, str, int], group: Group) -> GroupItem:
        item = self._items.get(key)
        if item is None:
            item = self._items[key] = GroupItem(group)
            item.zoomed(self.mm_per_pixel)
            item.setVisible(group.layer not in self._hidden)
            self.addItem(item)
        elif item.picture is not group and item.picture != group:
            item.take(group)
        item.keep_pixmap(wanted=self.keeps_pixmaps)
        return item

    def hide_layers(self, layers: Collection[str]) -> None:
        self._hidden = frozenset(layers)
        for item in self._items.values():
            item.setVisible(item.picture.layer not in self._hidden)
        self._highlight()

    def zoomed(self, mm_per_pixel: float) -> None:
        self.mm_per_pixel = mm_per_pixel
        for item in self._items.values():
            item.zoomed(mm_per_pixel)

    def themed(self, theme: Theme) -> None:
        self.overlay.themed(theme)
        self._highlight()

    # What is where

    @property
    def groups(self) -> tuple[GroupItem, ...]:
        return tuple(self._items.values())

    def box(self, owners: Collection[str] | None = None) -> Bounds | None:
        """The box in mm around what these owners show, around everything where none are given."""
        boxes = [bounds_of(i.box) for i in self.groups if i.isVisible() and (owners is None or i.owner in owners)]
        boxes = [box for box in boxes if box[2] > box[0] or box[3] > box[1]]
        return union(boxes) if boxes else None

    def owners_at(self, at: Point, reach: float) -> tuple[str, ...]:
        """The owners whose area is within `reach` mm of a point: lines first, then the smallest thing."""
        spot = QRectF(at.x - reach, at.y - reach, 2 * reach, 2 * reach)
        wide = spot.adjusted(-reach, -reach, reach, reach)
        hits = [item for item in self._at(wide) if item.is_touched(spot, reach, self.mm_per_pixel)]
        hits.sort(key=lambda item: (not item.is_line, item.box.width() * item.box.height()))
        return tuple(dict.fromkeys(item.owner for item in hits))

    def is_within_outline(self, owner: str, at: Point, reach: float) -> bool:
        """Whether what an owner shows is unfilled, and a place is more than `reach` mm from its lines."""
        spot = QRectF(at.x - reach, at.y - reach, 2 * reach, 2 * reach)
        items = [item for item in self._of((owner,)) if item.isVisible()]
        return all(item.is_bare for item in items) and not any(item.has_line_at(spot) for item in items)

    def owners_within(self, area: Bounds) -> tuple[str, ...]:
        """The owners that lie wholly in a box."""
        return tuple(o for o in self._owners() if _holds(area, self.box((o,))))

    def owners_touching(self, area: Bounds) -> tuple[str, ...]:
        """The owners that a box touches."""
        rect = QRectF(area[0], area[1], area[2] - area[0], area[3] - area[1])
        return tuple(dict.fromkeys(item.owner for item in self._at(rect) if item.outline.intersects(rect)))

    def _at(self, rect: QRectF) -> Iterator[GroupItem]:
        for item in self.items(rect):
            if isinstance(item, GroupItem) and item.isVisible() and item.owner and item.zValue() < GHOST_HEIGHT:
                yield item

    def _owners(self) -> tuple[str, ...]:
        return tuple(dict.fromkeys(item.owner for item in self.groups if item.owner and item.isVisible()))

    # What moves and what stands out

    def shift(self, owners: Collection[str], dx: float, dy: float) -> None:
        """Move the picture of these owners by mm, until the next picture is shown."""
        if self._shift[0] != frozenset(owners):
            self._unshift()
        self._shift = (frozenset(owners), dx, dy)
        for item in self._of(owners):
            item.setPos(QPointF(dx, dy))
        self.names.shift(owners, dx, dy)
        self._keep_names_whole()
        self.overlay.shift_highlights(owners, dx, dy)

    def _of(self, owners: Collection[str]) -> Iterator[GroupItem]:
        for owner in owners:
            yield from self._by_owner.get(owner, ())

    def _unshift(self) -> None:
        for item in self._of(self._shift[0]):
            item.setPos(QPointF(0.0, 0.0))
        self.names.shift(self._shift[0], 0.0, 0.0)
        self._shift = (frozenset(), 0.0, 0.0)

    def unshift(self) -> None:
        """Put the picture back where it was."""
        self._unshift()
        self._highlight()

    def select(self, owners: Iterable[str]) -> None:
        self._selected = frozenset(owners)
        self._highlight()

    def hover(self, owners: Iterable[str]) -> None:
        self._hovered = frozenset(owners)
        self._highlight()

    def set_ghost(self, groups: tuple[Group, ...]) -> None:
        """Draw these over the picture as something that is not there yet."""
        for item in self._ghost:
            self.removeItem(item)
        self._ghost = [GroupItem(group) for group in groups]
        for item in self._ghost:
            item.zoomed(self.mm_per_pixel)
            item.setZValue(GHOST_HEIGHT)
            item.setOpacity(0.75)
            self.addItem(item)

    def move_ghost(self, x: float, y: float) -> None:
        for item in self._ghost:
            item.setPos(QPointF(x, y))

    def show_names(self, groups: tuple[Group, ...]) -> None:
        """These names over the picture, each moved as its thing is moved now."""
        self.names.show(groups, self.mm_per_pixel)
        self.names.shift(*self._shift)
        self.keep_words_whole()

    def keep_words_whole(self) -> None:
        """Words over the picture are not cut off at the edge of the view, which shows another part of it."""
        self.labels.settle()
        self._keep_names_whole()

    def _keep_names_whole(self) -> None:
        view = next(iter(self.views()), None)
        if view is not None and self.names.are_there:
            self.names.keep_whole(bounds_of(view.mapToScene(view.viewport().rect()).boundingRect()))

    def set_marks(self, marks: tuple[Mark, ...]) -> None:
        self.overlay.set_marks(marks)

    def set_guides(self, guides: tuple[Guide, ...]) -> None:
        self.overlay.set_guides(guides)

    def _highlight(self) -> None:
        wanted: dict[str, Highlight] = dict.fromkeys(self._hovered, Highlight.HOVERED)
        wanted |= dict.fromkeys(self._selected, Highlight.SELECTED)
        self.overlay.set_highlights({owner: (self.area(owner), how) for owner, how in wanted.items()})
        if self._shift[0]:
            self.overlay.shift_highlights(*self._shift)

    def area(self, owner: str) -> QPainterPath:
        """What an owner covers, in mm."""
        path = QPainterPath()
        for item in self._of((owner,)):
            if item.isVisible():
                path.addPath(item.outline)
        return path

    def _fit_scene(self) -> None:
        box = self.box()
        if box is not None:
            self.setSceneRect(_with_space(box))

    def make_room(self, box: Bounds) -> None:
        """A view may scroll to this box too, such as to what is drawn beyond the sheet and is none of its parts yet."""
        if not self.sceneRect().contains(QRectF(box[0], box[1], box[2] - box[0], box[3] - box[1])):
            self.setSceneRect(self.sceneRect().united(_with_space(box)))


def _with_space(box: Bounds) -> QRectF:
    space = max(_LEAST_SPACE, _SPACE_AROUND * max(box[2] - box[0], box[3] - box[1]))
    return QRectF(box[0] - space, box[1] - space, box[2] - box[0] + 2 * space, box[3] - box[1] + 2 * space)


def _owned_groups(picture: tuple[Group, ...]) -> Iterator[Group]:
    """Groups with an owner, and groups without one that hold none either."""
    for group in picture:
        inner = [node for node in group.nodes if isinstance(node, Group) and node.owner]
        if group.owner or not inner or group.placement or group.clip:
            yield group
        else:
            yield from _owned_groups(tuple(inner))


def _keyed(groups: Iterable[Group]) -> Iterator[tuple[tuple[str, str, int], Group]]:
    seen: dict[tuple[str, str], int] = {}
    for group in groups:
        name = (group.owner, group.layer)
        seen[name] = seen.get(name, 0) + 1
        yield (*name, seen[name]), group


def _holds(area: Bounds, box: Bounds | None) -> bool:
    return box is not None and area[0] <= box[0] and area[1] <= box[1] and area[2] >= box[2] and area[3] >= box[3]
