"""Actions on what is seen and how."""

from collections.abc import Callable
from typing import Final

from PySide6.QtGui import QKeySequence
from PySide6.QtWidgets import QApplication

from panelcad.desktop.actions import Action
from panelcad.desktop.canvas.view import PanelView
from panelcad.desktop.commands.edit import has_any
from panelcad.desktop.commands.file import has_panel
from panelcad.desktop.theme import ThemeChoice
from panelcad.desktop.views import VIEWS
from panelcad.desktop.window_parts import Parts

_Keys = QKeySequence.StandardKey
_STEP: Final = 1.25


def _drawing(parts: Parts) -> PanelView:
    """The drawing that the keyboard is on: the section, else the panel."""
    focus = QApplication.focusWidget()
    return focus if isinstance(focus, PanelView) else parts.bench.view


def _zoom_in(parts: Parts) -> None:
    _drawing(parts).zoom_by(_STEP)


def _zoom_out(parts: Parts) -> None:
    _drawing(parts).zoom_by(1 / _STEP)


def _zoom_all(parts: Parts) -> None:
    drawing = _drawing(parts)
    if drawing is not parts.bench.view:
        drawing.show_all()
        return
    with parts.bench.view_before.kept():
        drawing.show_all()


def _view_before(parts: Parts) -> None:
    if not parts.bench.view_before.go_back():
        parts.bench.told.emit(
            "This is the first view; zooming to a finding, to the selection or to all leaves one behind"
        )


def _zoom_selection(parts: Parts) -> None:
    parts.bench.zoom_to_selection()


_TRUE: Final = "True size, as this screen was measured"
_AS_THE_SCREEN_SAYS: Final = (
    "True size by what the screen says of itself; measure it once with a bank card under Edit, Preferences"
)


def _zoom_true(parts: Parts) -> None:
    """One mm on the panel is one mm on the screen, as far as the screen tells or was calibrated."""
    bench = parts.bench
    per_mm = bench.settings.pixels_per_mm or bench.view.physicalDpiX() / 25.4
    with bench.view_before.kept():
        bench.view.set_zoom(per_mm)
    bench.told.emit(_TRUE if bench.settings.pixels_per_mm else _AS_THE_SCREEN_SAYS)


def _toggle_grid(parts: Parts) -> None:
    parts.bench.settings.shows_grid = not parts.bench.settings.shows_grid


def _toggle_snap(parts: Parts) -> None:
    parts.bench.settings.snaps = not parts.bench.settings.snaps


def _look_from(view_id: str) -> Callable[[Parts], None]:
    def run(parts: Parts) -> None:
        parts.bench.stage.look_from(view_id)

    return run


def _is_seen(view_id: str) -> Callable[[Parts], bool]:
    return lambda parts: parts.bench.stage.view.id == view_id


def _theme(choice: ThemeChoice) -> Callable[[Parts], None]:
    def run(parts: Parts) -> None:
        parts.bench.settings.theme = choice

    return run


def _has_theme(choice: ThemeChoice) -> Callable[[Parts], bool]:
    return lambda parts: parts.bench.settings.theme is choice


def _put_panes_away(parts: Parts) -> None:
    parts.window.docks.put_away_or_back()


def _panes_as_at_first(parts: Parts) -> None:
    parts.window.docks.as_at_first()


_VIEWS: Final = tuple(
    Action(
        f"view.{kind.id}",
        f"&{kind.title}",
        "&View",
        0,
        _look_from(kind.id),
        kind.shortcut,
        has_panel,
        _is_seen(kind.id),
        hint=kind.hint,
    )
    for kind in VIEWS
)
_THEMES: Final = tuple(
    Action(
        f"view.theme-{choice.name.lower()}",
        f"Colours: {choice.value}",
        "&View",
        3,
        _theme(choice),
        checked=_has_theme(choice),
    )
    for choice in ThemeChoice
)
ACTIONS: Final = (
    *_VIEWS,
    Action(
        "view.all", "Zoom to &all", "&View", 1, _zoom_all, "Ctrl+0", has_panel, icon="fit", on_bar=True, bar_group=3
    ),
    Action("view.selection", "Zoom to &selection", "&View", 1, _zoom_selection, "Ctrl+9", has_any),
    Action(
        "view.before",
        "View &before",
        "&View",
        1,
        _view_before,
        "Ctrl+8",
        has_panel,
        hint="Back from a finding or from a zoom to what was seen before; the same again leads there",
        words="back previous former zoom",
    ),
    Action("view.true", "Zoom to &true size", "&View", 1, _zoom_true, "Ctrl+1", has_panel),
    Action("view.in", "Zoom &in", "&View", 1, _zoom_in, _Keys.ZoomIn, has_panel, icon="zoom-in"),
    Action("view.out", "Zoom &out", "&View", 1, _zoom_out, _Keys.ZoomOut, has_panel, icon="zoom-out"),
    Action(
        "view.grid",
        "&Grid",
        "&View",
        2,
        _toggle_grid,
        "Ctrl+G",
        has_panel,
        lambda parts: parts.bench.settings.shows_grid,
        icon="grid",
        on_bar=True,
        bar_group=3,
    ),
    Action(
        "view.snap",
        "S&napping",
        "&View",
        2,
        _toggle_snap,
        "Ctrl+Shift+G",
        has_panel,
        lambda parts: parts.bench.settings.snaps,
        icon="snap",
        hint="Things are caught by centres, edges, equal gaps and the grid; Alt suspends it",
        on_bar=True,
        bar_group=3,
    ),
    *_THEMES,
)
PANE_ACTIONS: Final = (
    Action(
        "view.panes-away",
        "Panes away and back",
        "&View",
        5,
        _put_panes_away,
        "F12",
        has_panel,
        hint="Leaves the panel alone in the window; the same again brings back the panes that were there",
        words="full canvas hide show",
    ),
    Action(
        "view.panes-first",
        "Panes as at first",
        "&View",
        5,
        _panes_as_at_first,
        None,
        has_panel,
        hint="Puts every pane where it was when panelcad was first opened",
        words="reset layout restore default",
    ),
)
