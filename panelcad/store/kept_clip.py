"""What was copied last, kept for a later window: some platforms lose the clipboard with the window it was copied in."""

from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path

from panelcad.store.atomic import write_atomically


@dataclass(frozen=True)
class KeptClip:
    text: str
    when: datetime
    """When the window closed that it was copied in."""


def clip_file() -> Path:
    """Where this user's last copy is kept; it need not exist."""
    from platformdirs import user_data_path  # noqa: PLC0415 - only needed where there is a user

    return user_data_path("panelcad", appauthor=False) / "last-copy.json"


def keep_clip(text: str) -> None:
    """Keep what is on the clipboard. Raises OSError."""
    file = clip_file()
    file.parent.mkdir(parents=True, exist_ok=True)
    write_atomically(file, text.encode())


def forget_clip() -> None:
    """Something else was copied since. Raises OSError."""
    clip_file().unlink(missing_ok=True)


def kept_clip() -> KeptClip | None:
    """What was kept, or None. Raises OSError where it is there and cannot be read."""
    file = clip_file()
    if not file.exists():
        return None
    when = datetime.fromtimestamp(file.stat().st_mtime, tz=UTC)
    return KeptClip(file.read_text(encoding="utf-8"), when)
