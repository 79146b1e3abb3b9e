"""The list of keyboard shortcuts, read from the table of actions."""

from PySide6.QtWidgets import QDialogButtonBox, QHeaderView, QTreeWidget, QTreeWidgetItem, QVBoxLayout, QWidget

from panelcad.desktop.actions import MENUS, all_actions
from panelcad.desktop.dialogs.fitted import FittedDialog

_POINTER = (
    ("Zoom at the pointer", "Wheel"),
    ("Pan", "Middle button, or Space and drag"),
    ("Scroll sideways", "Shift+Wheel"),
    ("Add to the selection", "Shift+Click"),
    ("Add or take out", "Ctrl+Click"),
    ("Select what lies wholly in a box", "Drag to the right"),
    ("Select what a box touches", "Drag to the left"),
    ("Keep a drag straight", "Shift"),
    ("Suspend snapping", "Alt"),
    ("Nudge finely, coarsely", "Arrows, Shift+Arrows"),
    ("Put things back", "Esc"),
)


def show_shortcuts(parent: QWidget) -> None:
    dialog = FittedDialog(parent)
    dialog.setWindowTitle("Keyboard shortcuts")
    dialog.resize(520, 560)
    column = QVBoxLayout(dialog)
    column.addWidget(_tree())
    buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Close)
    buttons.rejected.connect(dialog.reject)
    column.addWidget(buttons)
    dialog.exec()


def _tree() -> QTreeWidget:
    tree = QTreeWidget()
    tree.setHeaderLabels(["Action", "Keys"])
    tree.setRootIsDecorated(False)
    tree.setAccessibleName("Keyboard shortcuts")
    for menu in MENUS:
        rows = [(a.plain_title, a.keys) for a in all_actions() if a.menu == menu and a.keys]
        _add(tree, menu.replace("&", ""), rows)
    _add(tree, "Pointer", list(_POINTER))
    tree.expandAll()
    tree.header().setSectionResizeMode(0, QHeaderView.ResizeMode.Stretch)
    tree.header().setSectionResizeMode(1, QHeaderView.ResizeMode.ResizeToContents)
    return tree


def _add(tree: QTreeWidget, title: str, rows: list[tuple[str, str]]) -> None:
    if rows:
        head = QTreeWidgetItem(tree, [title, ""])
        head.addChildren([QTreeWidgetItem(list(row)) for row in rows])
