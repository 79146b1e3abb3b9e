"""The commands that help, README and docs show are there, take what is written, and work as written."""

import re
import shlex
import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
import typer
from typer.testing import CliRunner

from panelcad.cli import app, command_names
from panelcad.library.samples import sample_file

ROOT = Path(__file__).parent.parent
PAGES = sorted([ROOT / "README.md", *(ROOT / "docs").rglob("*.md")])
GROUP = typer.main.get_group(app)
NOT_RUN_HERE = {"open", "preview"}
"""A window, and pictures that take long: the tests of the window and of the preview run them."""


def examples() -> Iterator[list[str]]:
    """In the order of the job: a file that one example needs is written by one before it."""
    for name in (name for name in command_names() if name not in NOT_RUN_HERE):
        yield shlex.split(GROUP.commands[name].epilog.removeprefix("Example: panelcad "))


def test_every_example_of_help_works_as_written(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    shutil.copy(sample_file("tourer"), "tourer.panel.json")
    Path("our-shop.toml").write_text('name = "Our shop"\nunit = "in"\n[limits]\nweb_advised = 0.3\n', encoding="utf-8")
    codes = {}
    for words in examples():
        if words[0] == "verify":
            shutil.copy(next(Path("papers").rglob("*.dxf")), "from-the-machinist.dxf")
        done = CliRunner().invoke(app, words, catch_exceptions=False)
        codes[words[0]] = done.exit_code
    assert codes == {name: 0 for name in command_names() if name not in NOT_RUN_HERE} | {"compare": 1}  # it has errors


def shown() -> Iterator[tuple[str, list[str]]]:
    """Each command of a block of code or between backquotes, without what is said beside it, and its page."""
    for page in PAGES:
        text = page.read_text(encoding="utf-8")
        blocks = re.findall(r"```\n(.*?)```", text, re.DOTALL)
        lines = "\n".join([*blocks, *re.findall(r"^    (panelcad .*)$", text, re.MULTILINE)]).splitlines()
        lines += re.findall(r"`(panelcad [^`\n]+)`", text)
        for line in lines:
            if line.startswith("panelcad "):
                words = re.split(r"  +|;", line)[0].removeprefix("panelcad").replace("[", "").replace("]", "").split()
                yield page.name, words


def test_every_command_that_is_shown_takes_what_is_written() -> None:
    found = list(shown())
    assert len(found) > 20
    for page, words in found:
        if not words or words[0] == "FILE" or words[0].endswith(".json"):
            continue  # the window
        assert words[0] in command_names(), f"{page}: {words}"
        taken = {name for option in GROUP.commands[words[0]].params for name in option.opts}
        assert {word for word in words if word.startswith("--")} <= taken, f"{page}: {words}"


def test_readme_names_every_command() -> None:
    named = {words[0] for page, words in shown() if page == "README.md" and words}
    assert set(command_names()) - named == {"open"}
