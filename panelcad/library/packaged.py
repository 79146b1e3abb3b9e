"""Folders of data that come with panelcad: beside the package in a clone, inside it in a wheel."""

from importlib.resources import files
from pathlib import Path

from panelcad.errors import UnusableInput


def folder(name: str) -> Path:
    """The folder `name` ("cutouts", "sample_panels"). Raises `UnusableInput` where the installation lacks it."""
    package = Path(str(files("panelcad")))
    for place in (package / "packaged" / name, package.parent / name):
        if place.is_dir():
            return place
    raise UnusableInput(
        str(package), "", f"its folder '{name}' is missing", "a whole clone, or panelcad installed from its wheel"
    )
