"""A limit of a profile: its default, what it is called, and where it comes from."""

from typing import Any

from pydantic import Field

from panelcad.model.source import Standing


def limit(default: float | None, title: str, standing: Standing, source: str) -> Any:
    """A profile's field; lengths in mm."""
    return Field(default=default, title=title, json_schema_extra={"standing": standing.value, "source": source})
