"""Installed as a wheel outside the clone, the program finds what comes with it."""

import os
import subprocess
import sys
import zipfile
from pathlib import Path

import pytest

from panelcad.desktop.help.page_html import links
from panelcad.desktop.help.pages import PAGES

ROOT = Path(__file__).parent.parent


@pytest.fixture(scope="module")
def installed(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder that holds what the wheel installs and nothing of the clone."""
    folder = tmp_path_factory.mktemp("wheel")
    command = [sys.executable, "-m", "hatchling", "build", "-t", "wheel", "-d", str(folder / "dist")]
    subprocess.run(command, cwd=ROOT, check=True, capture_output=True)
    (wheel,) = (folder / "dist").glob("*.whl")
    with zipfile.ZipFile(wheel) as packed:
        packed.extractall(folder / "site")
    return folder / "site"


def run(installed: Path, *words: str) -> str:
    environment = os.environ | {"PYTHONPATH": str(installed), "PYTHONDONTWRITEBYTECODE": "1"}
    command = [sys.executable, "-P", "-m", "panelcad", *words]
    done = subprocess.run(command, cwd=installed.parent, env=environment, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    return done.stdout


def test_the_wheel_brings_its_cutouts(installed: Path) -> None:
    assert "altimeter-3-1-8" in run(installed, "cutouts", "altimeter")


def test_the_wheel_brings_its_samples_and_fonts(installed: Path) -> None:
    run(installed, "new", "copy.panel.json", "--sample", "tourer")
    assert (installed.parent / "copy.panel.json").stat().st_size > 0
    assert (installed / "panelcad" / "drawing" / "fonts" / "regular.ttf").is_file()


def test_the_wheel_brings_its_pages_of_help_and_no_scripts(installed: Path) -> None:
    docs = installed / "panelcad" / "packaged" / "docs"
    assert [page.file for page in PAGES if not (docs / page.file).is_file()] == []
    for page in PAGES:
        file = docs / page.file
        for link in links(file.read_text(encoding="utf-8")):
            path = link.partition("#")[0]
            assert not path or (file.parent / path).is_file(), f"{page.file}: {link}"
    assert list(docs.rglob("*.py")) == []


def test_the_wheel_is_what_runs(installed: Path) -> None:
    code = "import panelcad; print(panelcad.__file__)"
    environment = os.environ | {"PYTHONPATH": str(installed)}
    done = subprocess.run(
        [sys.executable, "-P", "-c", code],
        cwd=installed.parent,
        env=environment,
        capture_output=True,
        text=True,
        check=True,
    )
    assert Path(done.stdout.strip()).is_relative_to(installed)
