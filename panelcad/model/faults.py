"""A validation error as one sentence for a person: where in the file, what is wrong, what is expected."""

from difflib import get_close_matches
from functools import cache
from typing import Any

from pydantic import ValidationError

from panelcad.errors import UnusableInput
from panelcad.model.project import Project


def first_fault(error: ValidationError, source: str, place: str = "") -> UnusableInput:
    """The first fault of a file, and how many more there are."""
    faults = error.errors(include_url=False)
    fault = faults[0]
    where = ", ".join(part for part in (place, _place(fault["loc"])) if part)
    more = f" (and {len(faults) - 1} more faults)" if len(faults) > 1 else ""
    problem, expected = _problem(fault)
    return UnusableInput(source, where, problem, expected + more)


def plain_sentence(error: ValidationError) -> str:
    """The first fault as it is told to somebody who filled in a field."""
    fault = error.errors(include_url=False)[0]
    field = str(fault["loc"][-1] if fault["loc"] else "").replace("_", " ")
    if fault["type"] == "string_too_short" and field:
        return f"{'An' if field[0] in 'aeiou' else 'A'} {field} is needed."
    if fault["type"] == "greater_than" and field:
        return f"{field.capitalize()} must be larger than {fault['ctx']['gt']:g}."
    return str(first_fault(error, ""))


def _place(location: tuple[int | str, ...]) -> str:
    """('options', 0, 'plates', 1) as people count: 'options 1, plates 2'."""
    words: list[str] = []
    for step in location:
        if isinstance(step, int) and words:
            words[-1] += f" {step + 1}"
        else:
            words.append(str(step) if str(step).isprintable() else repr(step))
    return ", ".join(words)


def _problem(fault: Any) -> tuple[str, str]:
    given = f"{fault['input']!r:.60}"
    kind = fault["type"]
    if kind == "missing":
        return "it is missing", "a value"
    if kind == "extra_forbidden":
        name = str(fault["loc"][-1])
        close = get_close_matches(name, _known_keys(), n=1)
        return "this key is not known", f"'{close[0]}'" if close else "a key of this record"
    if kind == "value_error":
        return _own_words(str(fault["ctx"]["error"]))
    return f"{given} is not usable", _expectation(fault["msg"])


def _own_words(message: str) -> tuple[str, str]:
    """A model's own sentence: 'X is expected' tells what, anything else tells what is wrong."""
    for ending in (" is expected", " are expected"):
        if message.endswith(ending):
            return "it is not usable", message.removesuffix(ending)
    return message, "a file whose parts name each other rightly"


def _expectation(message: str) -> str:
    words = message.removeprefix("Input should be ")
    return words[:1].lower() + words[1:]


def _keys(schema: Any) -> set[str]:
    if isinstance(schema, dict):
        own = set(schema.get("properties", {}))
        return own.union(*(_keys(value) for value in schema.values())) if schema else own
    if isinstance(schema, list):
        return set().union(*(_keys(value) for value in schema)) if schema else set()
    return set()


@cache
def _known_keys() -> list[str]:
    """Every key of a project file; only asked for where a file is faulty."""
    return sorted(_keys(Project.model_json_schema()))
