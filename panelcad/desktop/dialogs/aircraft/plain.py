"""Between records of the model and the rows of tables."""

from collections.abc import Iterable, Mapping, Sequence
from typing import Any

from panelcad.editing.ids import fresh_id
from panelcad.model.base import Record
from panelcad.model.planning import AircraftLoad


def as_rows(records: Iterable[Record]) -> list[dict[str, Any]]:
    """Each record's fields by name."""
    return [dict(record) for record in records]


def load_row(load: AircraftLoad) -> dict[str, Any]:
    """A load with its draw and circuit beside its own fields."""
    draw = {"continuous": load.draw.continuous, "peak": load.draw.peak} if load.draw else {}
    return {**dict(load), **draw, **dict(load.circuit)}


def load_record(row: Mapping[str, Any], buses: Iterable[Mapping[str, Any]]) -> dict[str, Any]:
    """The load of a row; its bus may be typed by name."""
    ids = {bus["name"]: bus["id"] for bus in buses}
    known = {key: row[key] for key in ("continuous", "peak") if row.get(key) is not None}
    bus = row.get("bus")
    circuit = {
        "bus": ids.get(bus, bus) if bus else None,
        "breaker": row.get("breaker"),
        "after_failure": row["after_failure"],
    }
    if "wire" in row:
        circuit["wire"] = row["wire"]
    own = {key: row[key] for key in ("id", "name", "provides", "duty", "phases") if key in row}
    return {**own, "draw": known or None, "circuit": circuit}


def named(rows: Iterable[Mapping[str, Any]], also: Mapping[str, str] | None = None) -> tuple[dict[str, Any], ...]:
    """The rows, each with an id: its own, or one made of its name. What feeds a bus may be typed by name."""
    taken: set[str] = set()
    found: list[dict[str, Any]] = []
    for row in rows:
        made = row.get("id") or fresh_id(row["name"], taken)
        taken.add(made)
        found.append({**row, "id": made})
    ids = {row["name"]: row["id"] for row in found} | dict(also or {})
    for row in found:
        if "fed_by" in row:
            row["fed_by"] = tuple(ids.get(name, name) for name in row["fed_by"] or ())
    return tuple(found)


def without_blanks(values: Mapping[str, Any]) -> dict[str, Any]:
    """Without what was left blank, so that the model's own defaults stand."""
    return {key: value for key, value in values.items() if value is not None}


def in_old_order(old: Sequence[Any], new: Iterable[Any]) -> tuple[Any, ...]:
    """The new things, those that were there already in the order they had, so that nothing changes for its own sake."""
    wanted = list(new)
    stayed = [thing for thing in old if thing in wanted]
    return (*stayed, *(thing for thing in wanted if thing not in stayed))
