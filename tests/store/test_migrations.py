from pathlib import Path
from typing import Any

import pytest

from panelcad.errors import UnusableInput
from panelcad.store import migrations
from panelcad.store.migrations import FORMAT, migrated
from panelcad.store.project_file import from_bytes, load, to_bytes

OLD_FILES = sorted((Path(__file__).parent / "old_files").glob("*.panel.json"))


def test_there_is_an_old_file_of_every_format() -> None:
    assert {path.name.split("-")[1].split(".")[0] for path in OLD_FILES} == {str(i) for i in range(1, FORMAT + 1)}


@pytest.mark.parametrize("path", OLD_FILES, ids=lambda path: path.stem)
def test_an_old_file_opens_and_is_whole_after_saving(path: Path) -> None:
    project = load(path)
    assert project.option("new").item("altimeter").cut == "altimeter-cut"
    assert from_bytes(to_bytes(project), "again") == project


@pytest.fixture
def three_formats(monkeypatch: pytest.MonkeyPatch) -> None:
    def second(raw: dict[str, Any]) -> dict[str, Any]:
        return {**raw, "steps": [*raw.get("steps", []), 2]}

    def third(raw: dict[str, Any]) -> dict[str, Any]:
        return {**raw, "steps": [*raw["steps"], 3]}

    monkeypatch.setattr(migrations, "FORMAT", 3)
    monkeypatch.setattr(migrations, "_STEPS", {1: second, 2: third})


@pytest.mark.usefixtures("three_formats")
def test_steps_are_gone_one_by_one_from_the_files_own_format() -> None:
    assert migrated({"format": 1}, "x") == {"format": 3, "steps": [2, 3]}
    assert migrated({"format": 2, "steps": []}, "x") == {"format": 3, "steps": [3]}
    assert migrated({"format": 3}, "x") == {"format": 3}


@pytest.mark.usefixtures("three_formats")
def test_a_newer_file_is_refused_with_the_format_it_needs() -> None:
    with pytest.raises(UnusableInput, match=r"newer panelcad \(format 4\); expected at most format 3"):
        migrated({"format": 4}, "x")
