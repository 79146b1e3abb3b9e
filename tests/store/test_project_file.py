from pathlib import Path

from hypothesis import HealthCheck, given, settings

from panelcad.model.project import Project
from panelcad.store.project_file import from_bytes, load, save, to_bytes, to_plain
from panelcad.units import LengthUnit
from tests import builders, strategies


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large])
@given(strategies.projects())
def test_what_is_saved_and_loaded_is_the_same_project_and_the_same_file(project: Project) -> None:
    content = to_bytes(project)
    again = from_bytes(content, "a file")
    assert again == project
    assert to_bytes(again) == content


def test_a_file_in_inches_holds_inches_and_a_cutout_its_own_unit() -> None:
    project = builders.project(builders.sheet(cuts=(builders.cut("c", 25.4, 3.175),)), unit=LengthUnit.INCH)
    plain = to_plain(project)
    cut = plain["options"][0]["plates"][0]["cuts"][0]
    assert (plain["unit"], cut["x"], cut["y"]) == ("in", 1.0, 0.125)
    assert plain["cutouts"][0]["openings"][0]["shape"]["diameter"] == 79.375
    assert from_bytes(to_bytes(project), "a file") == project


def test_a_file_says_its_format_first_and_is_stable_text(tmp_path: Path) -> None:
    path = tmp_path / "Müllers Flugzeug.panel.json"
    save(builders.project(title="Für Müller"), path)
    text = path.read_text(encoding="utf-8")
    assert text.startswith('{\n  "format": 1,\n  "title": "Für Müller",\n  "unit": "mm",\n')
    assert text.endswith("}\n")
    save(load(path), path)
    assert path.read_text(encoding="utf-8") == text
