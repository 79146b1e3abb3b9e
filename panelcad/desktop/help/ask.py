"""How one asks for help: F1 and a button in dialogs, F1 in the window."""

from collections.abc import Callable
from typing import TYPE_CHECKING

from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QApplication, QDialogButtonBox, QWidget

from panelcad.desktop.help.pages import FIRST, rule_link
from panelcad.desktop.help.topics import PANES, TOOLS, VIEWS, Dialog, lead, link_of

if TYPE_CHECKING:
    from panelcad.desktop.window_parts import Parts


def explained(dialog: QWidget, at: Dialog) -> None:
    """F1 in this dialog, and a button of its own where it has buttons, open its section."""
    ask = explained_by_key(dialog, at)
    for buttons in dialog.findChildren(QDialogButtonBox):
        button = buttons.addButton("Help", QDialogButtonBox.ButtonRole.HelpRole)
        button.setAutoDefault(False)
        button.setToolTip(f"What this does ({QKeySequence(QKeySequence.StandardKey.HelpContents).toString()})")
        button.clicked.connect(ask)


def explained_by_key(dialog: QWidget, at: Dialog) -> Callable[[], None]:
    """F1 in this dialog opens its section; what does so."""
    lead(dialog, at.value)

    def ask() -> None:
        from panelcad.desktop.help.window import open_help  # noqa: PLC0415 - help loads when it is first asked for

        open_help(link_of(dialog), dialog)

    QShortcut(QKeySequence(QKeySequence.StandardKey.HelpContents), dialog, ask)
    return ask


def link_for(parts: "Parts") -> str:
    """The section on what one is at: the pane that has the focus, else the tool in hand, else the view."""
    if not parts.window.shows_panel:
        return FIRST
    return _pane_link(parts) or _canvas_link(parts)


def _pane_link(parts: "Parts") -> str:
    focus = QApplication.focusWidget()
    for pane_id, link in PANES.items():
        dock = parts.window.docks.dock(pane_id)
        if focus is not None and dock.isAncestorOf(focus):
            rule = _chosen_rule(parts) if pane_id == "findings" else ""
            return rule_link(rule) if rule else link
    return ""


def _canvas_link(parts: "Parts") -> str:
    """What one does tells more than what one looks at, unless one only picks and moves."""
    view, tool = parts.bench.stage.view.id, parts.toolbox.tool_id
    return VIEWS[view] if tool == "select" and view != "front" else TOOLS[tool]


def _chosen_rule(parts: "Parts") -> str:
    """The rule of the finding that is chosen in the list."""
    from panelcad.desktop.panes.findings import FindingsPane  # noqa: PLC0415 - the pane is made by then

    pane = parts.window.docks.dock("findings").widget()
    finding = pane.chosen if isinstance(pane, FindingsPane) else None
    return finding.rule if finding is not None else ""
