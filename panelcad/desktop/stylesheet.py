"""The style sheet: quiet surfaces, thin lines, room to breathe. Sizes are logical pixels."""

from pathlib import Path
from string import Template
from typing import TYPE_CHECKING, Final

if TYPE_CHECKING:
    from panelcad.desktop.theme import Theme

_ICONS: Final = Path(__file__).parent / "icons"
_SHEET: Final = Template("""
QMainWindow, QDialog { background: $ground; }
QMainWindow::separator { background: $line; width: 1px; height: 1px; }
QMainWindow::separator:hover { background: $accent; }
QMenuBar { background: $ground; padding: 2px 4px; border-bottom: 1px solid $line; }
QMenuBar::item { padding: 5px 9px; border-radius: 4px; background: transparent; }
QMenuBar::item:selected { background: $hovered; }
QMenu { background: $raised; border: 1px solid $line; padding: 5px; }
QMenu::item { padding: 5px 28px 5px 10px; border-radius: 4px; }
QMenu::item:selected { background: $chosen; color: $ink; }
QMenu::item:disabled { color: $disabled; }
QMenu::icon { padding-left: 6px; }
QMenu::separator { height: 1px; background: $line; margin: 5px 6px; }
QToolBar { background: $ground; border: none; border-bottom: 1px solid $line; padding: 3px 6px; spacing: 2px; }
QToolBar::separator { background: $line; width: 1px; margin: 5px 6px; }
QToolButton { border: 1px solid transparent; border-radius: 5px; padding: 4px; color: $ink; }
QToolButton:hover { background: $hovered; }
QToolButton:checked { background: $chosen; border-color: $accent; }
QToolButton:pressed { background: $chosen; }
QToolButton:focus, QPushButton:focus, QListView:focus, QTreeView:focus { border-color: $accent; }
QDockWidget { font-weight: 600; }
QWidget#pane-title { background: $ground; border-bottom: 1px solid $line; }
QToolButton[role="pane-close"], QToolButton[role="pane-float"] { padding: 3px; width: 14px; height: 14px;
    border: none; }
QToolButton[role="pane-close"] { image: url("$pane_close"); }
QToolButton[role="pane-float"] { image: url("$pane_float"); }
QDockWidget > QWidget { background: $ground; }
QTabBar { background: $ground; }
QTabBar::tab { padding: 6px 12px; color: $faint; border: none; border-bottom: 2px solid transparent; }
QTabBar::tab:selected { color: $ink; border-bottom-color: $accent; }
QTabBar::tab:hover { color: $ink; }
QTabWidget::pane { border: none; border-top: 1px solid $line; }
QLineEdit, QComboBox, QPlainTextEdit, QTextEdit, QSpinBox {
    background: $field; border: 1px solid $field_line; border-radius: 4px; padding: 3px 7px; min-height: 20px;
    selection-background-color: $accent; selection-color: $on_accent;
}
QLineEdit:focus, QComboBox:focus, QPlainTextEdit:focus, QTextEdit:focus, QSpinBox:focus { border: 1px solid $accent; }
QLineEdit:disabled, QComboBox:disabled { color: $disabled; border-color: $line; background: $ground; }
QLineEdit[wrong="true"] { border: 2px solid $wrong; }
QComboBox::drop-down { border: none; width: 22px; }
QComboBox::down-arrow { image: url("$chevron"); width: 12px; height: 12px; }
QComboBox:disabled::down-arrow { image: none; }
QSpinBox::up-button, QSpinBox::down-button { border: none; background: transparent; width: 20px; }
QSpinBox::up-arrow { image: url("$chevron_up"); width: 10px; height: 10px; }
QSpinBox::down-arrow { image: url("$chevron"); width: 10px; height: 10px; }
QSpinBox::up-arrow:off, QSpinBox::down-arrow:off { image: none; }
QComboBox QAbstractItemView { background: $raised; border: 1px solid $line; selection-background-color: $chosen;
    selection-color: $ink; outline: none; padding: 3px; }
QPushButton { background: $raised; border: 1px solid $field_line; border-radius: 5px; padding: 5px 14px;
    min-height: 18px; }
QPushButton:hover { background: $hovered; }
QPushButton[main="true"] { background: $accent; color: $on_accent; border-color: $accent; font-weight: 600; }
QPushButton[main="true"]:hover, QPushButton[main="true"]:focus { border-color: $ink; }
QPushButton[large="true"] { padding: 9px 14px; }
QCommandLinkButton { padding: 2px; }
QPushButton:default { background: $accent; color: $on_accent; border-color: $accent; }
QPushButton:disabled { color: $disabled; border-color: $line; background: $ground; }
QPushButton[quiet="true"] { border-color: transparent; background: transparent; color: $accent; padding: 4px 8px; }
QPushButton[quiet="true"]:hover { background: $hovered; }
QListView, QTreeView, QTableView { background: $raised; border: 1px solid $line; border-radius: 4px; outline: none; }
QListView::item, QTreeView::item { padding: 3px 4px; border-radius: 3px; color: $ink; }
QListView::item:hover, QTreeView::item:hover { background: $hovered; }
QListView::item:selected, QTreeView::item:selected { background: $chosen; color: $ink; }
QHeaderView::section { background: $ground; color: $faint; border: none; border-bottom: 1px solid $line; padding: 4px; }
QScrollArea { border: none; background: transparent; }
QScrollBar:vertical { background: transparent; width: 11px; margin: 0; }
QScrollBar:horizontal { background: transparent; height: 11px; margin: 0; }
QScrollBar::handle { background: $line; border-radius: 4px; margin: 2px; min-height: 28px; min-width: 28px; }
QScrollBar::handle:hover { background: $field_line; }
QScrollBar::add-line, QScrollBar::sub-line, QScrollBar::add-page, QScrollBar::sub-page { background: none; border: none;
    width: 0; height: 0; }
QStatusBar { background: $ground; border-top: 1px solid $line; color: $faint; }
QStatusBar::item { border: none; }
QStatusBar QLabel { padding: 2px 8px; color: $faint; }
QToolTip { background: $raised; color: $ink; border: 1px solid $line; padding: 4px 6px; }
QGraphicsView { border: none; }
QLabel[role="heading"] { font-weight: 600; }
QLabel[role="faint"] { color: $faint; }
QLabel[role="wrong"] { color: $wrong; }
QLabel[role="title"] { font-size: 22pt; font-weight: 600; }
QLabel[role="subtitle"] { font-size: 12pt; color: $faint; }
QFrame[role="caution"] { background: $caution_ground; border: none; border-bottom: 1px solid $line; }
QFrame[role="caution"] QLabel { color: $caution_ink; }
QFrame[role="caution"] QPushButton { background: transparent; border-color: transparent; color: $caution_ink;
    text-decoration: underline; padding: 2px 6px; }
QFrame[role="card"] { background: $raised; border: 1px solid $line; border-radius: 8px; }
QFrame[role="caution-card"] { background: $caution_ground; border: 1px solid $line; border-radius: 8px; }
QFrame[role="caution-card"] QLabel { color: $caution_ink; }
QFrame[role="rule"] { background: $line; max-height: 1px; border: none; }
""")


def stylesheet(theme: "Theme") -> str:
    """The style sheet in this theme's colours."""
    colours = {name: value for name, value in vars(theme).items() if isinstance(value, str)}
    shade = "dark" if theme.is_dark else "light"
    return _SHEET.substitute(
        colours,
        chevron=(_ICONS / f"chevron-{shade}.svg").as_posix(),
        chevron_up=(_ICONS / f"chevron-up-{shade}.svg").as_posix(),
        pane_close=(_ICONS / f"pane-close-{shade}.svg").as_posix(),
        pane_float=(_ICONS / f"pane-float-{shade}.svg").as_posix(),
    )
