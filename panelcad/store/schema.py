"""The JSON schema of project files, made from the model, for people and programs that read or write them."""

import json
from typing import Any, Final

from panelcad.model.project import Project
from panelcad.store.migrations import FORMAT

DIALECT: Final = "https://json-schema.org/draft/2020-12/schema"


def project_schema() -> dict[str, Any]:
    """JSON Schema 2020-12 of the files this program writes; what refers to something else in the file is not in it."""
    made = Project.model_json_schema(mode="validation")
    properties = {"format": {"const": FORMAT, "description": "The format of the file."}, **made.pop("properties")}
    required = ["format", *made.pop("required")]
    head = {"$schema": DIALECT, "title": "panelcad project", "description": "docs/project_file.md explains it."}
    return {**head, **{key: value for key, value in made.items() if key not in head}, "required": required} | {
        "properties": properties
    }


def schema_text() -> str:
    """As it stands in docs/project.schema.json."""
    return json.dumps(project_schema(), indent=1, ensure_ascii=False) + "\n"
