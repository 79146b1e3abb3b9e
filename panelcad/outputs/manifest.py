"""The manifest of a release: a SHA-256 checksum a file, as `sha256sum --check` reads it."""

import hashlib
from pathlib import Path
from typing import Final

MANIFEST: Final = "manifest.sha256"


def manifest_text(files: list[Path], heading: list[str]) -> str:
    """One line a file, in the files' order, under comment lines."""
    lines = [f"# {line}" for line in heading]
    return "\n".join([*lines, *(f"{checksum(file)}  {file.name}" for file in files)]) + "\n"


def checksum(file: Path) -> str:
    """SHA-256 in hexadecimal."""
    return hashlib.sha256(file.read_bytes()).hexdigest()


def faults_of(folder: Path) -> tuple[str, ...]:
    """The files that a folder's manifest names and that are missing or differ. Raises OSError without a manifest."""
    lines = (folder / MANIFEST).read_text("utf-8").splitlines()
    entries = [line.split("  ", 1) for line in lines if line and not line.startswith("#")]
    return tuple(name for digest, name in entries if not (folder / name).is_file() or checksum(folder / name) != digest)


def differing_files(new: Path, old: Path) -> tuple[str, ...]:
    """Names of files that both folders hold with different content, the manifest last."""
    both = sorted((file.name for file in new.iterdir() if (old / file.name).exists()), key=_papers_first)
    return tuple(name for name in both if (new / name).read_bytes() != (old / name).read_bytes())


def _papers_first(name: str) -> tuple[bool, str]:
    return name == MANIFEST, name
