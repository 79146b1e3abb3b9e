"""Read a TOML file whole, or say in one sentence why not."""

import tomllib
from pathlib import Path
from typing import Any, Final

from panelcad.errors import UnusableInput

LARGEST_FILE: Final = 4 * 1024 * 1024


def read_toml(file: Path, kind: str) -> dict[str, Any]:
    """The content of a file; `kind` is what messages expect it to be. Raises `UnusableInput`."""
    try:
        if file.stat().st_size > LARGEST_FILE:
            raise UnusableInput(str(file), "", "it is longer than 4 MB", kind)
        return tomllib.loads(file.read_bytes().decode())
    except OSError as error:
        raise UnusableInput(str(file), "", f"it cannot be read ({error.strerror})", kind) from None
    except (ValueError, RecursionError) as error:  # TOMLDecodeError and UnicodeDecodeError are both ValueErrors
        raise UnusableInput(str(file), "", f"it is not whole TOML text ({error})", kind) from None
