import json
from pathlib import Path
from typing import Any

import jsonschema
import pytest
from hypothesis import HealthCheck, given, settings

from panelcad.model.project import Project
from panelcad.store.project_file import to_bytes
from panelcad.store.schema import project_schema, schema_text
from tests import strategies
from tests.store.test_hostile_files import PLAIN

PUBLISHED = Path(__file__).parents[2] / "docs" / "project.schema.json"
ROOT = Path(__file__).parents[2]


def judge() -> jsonschema.Draft202012Validator:
    return jsonschema.Draft202012Validator(project_schema())


def test_the_published_schema_is_that_of_the_model() -> None:
    fresh = schema_text()
    assert PUBLISHED.read_text(encoding="utf-8") == fresh, "run: .venv/bin/python -m tests.store.test_schema"


def test_it_is_a_schema_as_the_standard_has_it() -> None:
    jsonschema.Draft202012Validator.check_schema(project_schema())


@settings(max_examples=10, deadline=None, suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large])
@given(strategies.projects())
def test_what_the_program_writes_fits_the_schema(project: Project) -> None:
    assert [error.message for error in judge().iter_errors(json.loads(to_bytes(project)))] == []


@pytest.mark.parametrize("file", sorted((ROOT / "sample_panels").glob("*.panel.json")), ids=lambda file: file.stem)
def test_the_samples_fit_the_schema(file: Path) -> None:
    assert [error.message for error in judge().iter_errors(json.loads(file.read_bytes()))] == []


@pytest.mark.parametrize(
    "changes", [{"format": 2}, {"unit": "ft"}, {"title": ""}, {"options": {}}, {"colour": "red"}, {"as_found": None}]
)
def test_other_content_does_not_fit(changes: dict[str, Any]) -> None:
    assert not judge().is_valid(PLAIN | changes)


if __name__ == "__main__":
    PUBLISHED.write_text(schema_text(), encoding="utf-8")
