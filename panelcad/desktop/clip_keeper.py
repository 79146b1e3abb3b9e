"""The clipboard beyond the life of a window: kept when the last owner closes, given up when anything else is copied."""

from contextlib import suppress

from PySide6.QtGui import QGuiApplication

from panelcad.editing.clip import Clip, from_text
from panelcad.errors import PanelcadError
from panelcad.store.kept_clip import forget_clip, keep_clip, kept_clip


def keep_at_close() -> None:
    """Keep what was copied here where the clipboard still holds it; what holds something else has the last word.

    An empty clipboard says nothing. A folder that cannot be written leaves things as the platform has them.
    """
    if is_empty():
        return
    text = QGuiApplication.clipboard().text()
    with suppress(OSError):
        if _as_clip(text) is not None:
            keep_clip(text)
        else:
            forget_clip()


def something_was_copied() -> None:
    """What was kept before is older than this; an emptied clipboard is no copy. At close it is tried again."""
    if not is_empty():
        with suppress(OSError):
            forget_clip()


def is_empty() -> bool:
    """Whether the clipboard holds nothing of any kind, as it does after the program that filled it has ended."""
    held = QGuiApplication.clipboard().mimeData()
    return held is None or not held.formats()


def to_paste() -> tuple[Clip | None, str]:
    """What can be pasted, and words on it where they are needed."""
    clip = _as_clip(QGuiApplication.clipboard().text())
    if clip is not None or not is_empty():
        return clip, "" if clip is not None else "The clipboard holds nothing that belongs on a panel"
    try:
        kept = kept_clip()
    except OSError as fault:
        return None, f"The clipboard is empty, and what was copied last cannot be read: {fault}"
    clip = _as_clip(kept.text) if kept is not None else None
    if kept is None or clip is None:
        return None, "The clipboard is empty"
    when = f"{kept.when.astimezone():%Y-%m-%d %H:%M}"
    return clip, f"The clipboard was empty: pasted what was copied in the window that closed at {when}"


def _as_clip(text: str) -> Clip | None:
    try:
        return from_text(text)
    except PanelcadError:
        return None
