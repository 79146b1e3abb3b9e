"""The page of docs/help that lists every key, made from the actions: `python -m panelcad.desktop.help.keys_page`."""

import os
from collections.abc import Iterator
from pathlib import Path
from typing import Final

from PySide6.QtGui import QKeySequence

from panelcad.desktop.actions import MENUS, all_actions
from panelcad.desktop.panes.table import PANES

PAGE: Final = Path("docs") / "help" / "keys.md"
_HEAD: Final = """\
# Keys

This page is made from the program's own table of actions (`python -m panelcad.desktop.help.keys_page` writes it). In
the window it shows the keys as your system writes them.

Menus open with Alt and the underlined letter of their title. In dialogs and panes Alt and the underlined letter of a
field go to that field. Tab goes through the fields from above; Enter presses the button that Tab came to, else it does
what the coloured button says; Esc leaves all as it was.

## Where a key works

- **A single letter**, with or without Shift, takes up a tool while the keyboard is on the panel or on the section. In
  a list, table or box it goes to the row that begins with what you type, as lists do everywhere; in a field it is
  written.
- **Arrows** nudge what is selected while the keyboard is on the panel. On the section they nudge along the panel, not
  into its depth. In a list they go from row to row.
- **Delete** takes away what is selected while the keyboard is on the panel, on the section or in the list *On the
  panel*, where the rows are what is selected. In the other lists it does nothing.
- **Esc** in a list, a pane or the tool bar puts the keyboard back on the panel; a field that was typed in takes its old
  value back first.
- **Keys with Ctrl or Alt, and F1 to F12**, work wherever the keyboard is. Zooming is that of the drawing the keyboard
  is on.

A tool goes to a view in which it works, and is put away in one in which it does not; an outline that is begun waits.
What cannot be done now is grey in its menu, and its key only says what it needs.

## Find an action

When you know what you want but not where it is: `{find}`, type a few words of it, and Enter does it. What cannot be
done now says so, and Enter says what it needs. Panes and sections of this help are found there too.
"""
_PANES: Final = "Panes"
_POINTER: Final = (
    ("Zoom at the pointer", "wheel"),
    ("Move the view", "middle button and drag, or Space and drag"),
    ("Scroll sideways", "Shift and wheel"),
    ("Add to the selection", "Shift and click"),
    ("Add to the selection, or take out of it", "Ctrl and click"),
    ("Select what lies wholly in a box", "drag to the right from a free place"),
    ("Select what a box touches", "drag to the left from a free place"),
    ("Select what lies below", "double-click"),
    ("Keep a drag straight", "Shift while dragging"),
    ("Suspend snapping", "Alt or Ctrl while dragging or placing"),
    ("Nudge finely", "arrow keys"),
    ("Nudge coarsely", "Shift and arrow keys"),
    ("Put things back, leave a tool", "Esc"),
    ("Move the eye nearer or farther", "Page up, Page down with the eye tool"),
    ("Turn what is selected", "drag the round handle beside it; Alt or Ctrl turns freely"),
    ("Turn by an angle in figures", "type them while turning by the handle; Enter finishes"),
    ("Bring a unit past its neighbours in its stack", "drag it up or down inside the stack"),
    ("Move a whole stack by one of its units", "drag it sideways or out, or with Shift, Alt or Ctrl"),
    ("An arc for the next edge", "A while drawing point by point"),
    ("Take the last point back", "Backspace while drawing point by point"),
    ("Label the controls that are selected", "L while some are selected"),
    ("What one can do here", "right button"),
)
_GO_TO_PANE: Final = """\
The key of a pane opens it and puts the keyboard there; once it is there, the same key closes the pane. Within a pane
Tab goes on. An underlined letter is that of one field or button of the whole window."""
_HELP: Final = (
    ("Find", QKeySequence.StandardKey.Find),
    ("Next place", QKeySequence.StandardKey.FindNext),
    ("Place before", QKeySequence.StandardKey.FindPrevious),
    ("Back", QKeySequence.StandardKey.Back),
    ("Forward", QKeySequence.StandardKey.Forward),
    ("Close", QKeySequence.StandardKey.Cancel),
)


def keys_page(*, native: bool = False) -> str:
    """The whole page as Markdown; keys as this platform writes them, or as most do."""
    find = next(action.shortcut or "" for action in all_actions() if action.id == "help.find")
    return "\n".join((_HEAD.format(find=_text(find, native=native)), *_sections(native=native)))


def _sections(*, native: bool) -> Iterator[str]:
    for menu in MENUS:
        rows = [
            (a.plain_title, _text(a.shortcut, native=native)) for a in all_actions() if a.menu == menu and a.shortcut
        ]
        yield from _table(f"{menu.replace('&', '')} menu", rows)
    yield from _table(_PANES, [(pane.title, _text(pane.shortcut, native=native)) for pane in PANES])
    yield from _table("Pointer and canvas", list(_POINTER))
    yield from _table("In the window of help", [(title, _text(keys, native=native)) for title, keys in _HELP])


def _table(title: str, rows: list[tuple[str, str]]) -> Iterator[str]:
    if rows:
        yield f"## {title}"
        yield ""
        if title == _PANES:
            yield _GO_TO_PANE
            yield ""
        yield "| what | keys |"
        yield "| --- | --- |"
        yield from (f"| {what} | {keys} |" for what, keys in rows)
        yield ""


def _text(keys: QKeySequence.StandardKey | str, *, native: bool) -> str:
    form = QKeySequence.SequenceFormat.NativeText if native else QKeySequence.SequenceFormat.PortableText
    return QKeySequence(keys).toString(form)


def _write() -> None:
    """Without a screen: only the names of keys are asked for."""
    from PySide6.QtGui import QGuiApplication  # noqa: PLC0415 - only to know the standard keys

    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    application = QGuiApplication([])
    PAGE.write_text(keys_page(), encoding="utf-8")
    application.quit()


if __name__ == "__main__":
    _write()
