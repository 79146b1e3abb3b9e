"""Damaged, truncated, foreign and hostile files get one clear sentence; nothing else escapes and nothing hangs."""

import json
import os
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from panelcad.errors import UnusableInput
from panelcad.store.project_file import LARGEST_FILE, from_bytes, load, to_bytes
from tests import builders

WHOLE = to_bytes(
    builders.project(
        builders.sheet(cuts=(builders.cut("c1", 0.0, 0.0),)), items=(builders.item("i1", 0.0, 0.0, cut="c1"),)
    )
)
PLAIN: dict[str, Any] = json.loads(WHOLE)


def sentence(content: bytes) -> str:
    with pytest.raises(UnusableInput) as caught:
        from_bytes(content, "customer.panel.json")
    text = str(caught.value)
    assert text.startswith("customer.panel.json")
    assert "\n" not in text
    assert len(text) < 400
    assert text.endswith(".")
    return text


def changed(change: Callable[[dict[str, Any]], object]) -> bytes:
    plain = json.loads(WHOLE)
    change(plain)
    return json.dumps(plain).encode()


def plate(plain: dict[str, Any]) -> dict[str, Any]:
    found: dict[str, Any] = plain["options"][0]["plates"][0]
    return found


@pytest.mark.parametrize(
    ("content", "told"),
    [
        (b"", "not whole JSON"),
        (b"\x00" * 100, "not whole JSON"),
        (b"PK\x03\x04 a spreadsheet", "not whole JSON"),
        (b"  0\nSECTION\n  2\nHEADER\n", "not whole JSON"),
        (WHOLE.decode().encode("utf-16"), "not whole JSON"),
        (b"[1, 2]", "holds no project"),
        (b"null", "holds no project"),
        (b'{"name": "another program"}', "format: it is not a panelcad project"),
        (b'{"format": "1"}', "format: it is not a panelcad project"),
        (b'{"format": true}', "format: it is not a panelcad project"),
        (b'{"format": 999}', "format: it was written by a newer panelcad (format 999)"),
        (b'{"format": ' + b"9" * 400 + b"}", "it is not a panelcad project"),
        (b'{"format": ' + b"9" * 6000 + b"}", "not whole JSON"),
        (b"[" * 200_000, "not whole JSON"),
        (b'{"a":' * 200_000, "not whole JSON"),
    ],
)
def test_foreign_and_damaged_content(content: bytes, told: str) -> None:
    assert told in sentence(content)


@pytest.mark.parametrize(
    ("change", "told"),
    [
        (lambda p: p.pop("unit"), 'unit: None is no unit; expected "mm" or "in"'),
        (lambda p: p.update(unit=["mm"]), "unit: ['mm'] is no unit"),
        (lambda p: p.update(unit={"mm": 1}), "is no unit"),
        (lambda p: p.update(titel=p.pop("title")), "title: it is missing"),
        (lambda p: p.update(titel="x"), "titel: this key is not known; expected 'title'"),
        (lambda p: p.update(options={}), "options: {} is not usable"),
        (lambda p: p.update(cutouts={}), "cutouts: it is not a list"),
        (lambda p: p.update(cutouts=["round"]), "cutouts 1: it is not a cutout"),
        (lambda p: p["cutouts"][0].update(unit=None), "cutouts 1, unit: None is no unit"),
        (lambda p: p["cutouts"].clear(), "cut 'c1' of option 'new' needs cutout 'round', which is not carried"),
        (lambda p: p["cutouts"].append(p["cutouts"][0]), "the cutout 'round' is used 2 times"),
        (lambda p: plate(p).update(thickness=float("nan")), "not whole JSON"),
        (lambda p: plate(p).update(thickness=float("inf")), "not whole JSON"),
        (lambda p: plate(p).update(thickness=-1.0), "options 1, plates 1, thickness: -1.0 is not usable"),
        (lambda p: plate(p).update(thickness="2"), "thickness: '2' is not usable"),
        (lambda p: plate(p).update(thickness=True), "thickness: True is not usable"),
        (lambda p: plate(p).update(thickness=10**300), "a length of at most 100 m"),
        (lambda p: plate(p).update(thickness=10**4000), "thickness"),
        (lambda p: plate(p)["cuts"][0].update(x=1e308), "a length of at most 100 m"),
        (lambda p: plate(p)["cuts"][0].update(id="../../etc/passwd"), "cuts 1, id"),
        (lambda p: plate(p)["cuts"][0].update(name="n" * 10_000), "cuts 1, name"),
        (lambda p: plate(p)["outline"].update(kind="spiral"), "outline"),
        (lambda p: plate(p).update(outline={"kind": "outline", "corners": []}), "corners"),
        (lambda p: p["options"][0]["items"][0].update(cut="gone"), "uses cut 'gone', which is not on plate 'main'"),
        (lambda p: p["options"].append(p["options"][0]), "the option 'new' is used 2 times"),
        (lambda p: p["as_found"].update(id="other"), "the id 'as-found' for the panel as found"),
    ],
)
def test_a_wrong_value_is_named_with_its_place(change: Callable[[dict[str, Any]], object], told: str) -> None:
    assert told in sentence(changed(change))


def test_one_number_of_six_thousand_digits_and_one_beyond_floats() -> None:
    huge = WHOLE.replace(b'"thickness": 2.0', b'"thickness": 1e400', 1)
    assert huge != WHOLE
    sentence(huge)
    sentence(WHOLE.replace(b'"thickness": 2.0', b'"thickness": ' + b"1" * 6000, 1))


def test_every_truncation_is_told() -> None:
    for length in range(0, len(WHOLE.rstrip()) - 1, 37):
        assert "not whole JSON" in sentence(WHOLE[:length])


def test_a_byte_order_mark_as_some_editors_leave_it_does_no_harm() -> None:
    assert to_bytes(from_bytes(b"\xef\xbb\xbf" + WHOLE, "x")) == WHOLE


@settings(max_examples=60, deadline=None)
@given(st.data())
def test_any_value_in_any_place_is_read_or_refused_in_one_sentence(data: st.DataObject) -> None:
    plain = json.loads(WHOLE)
    holder, key = data.draw(st.sampled_from(list(places(plain))))
    holder[key] = data.draw(any_json)
    read_or_refused(json.dumps(plain).encode())


@settings(max_examples=60, deadline=None)
@given(st.integers(0, len(WHOLE) - 1), st.binary(max_size=4))
def test_any_bytes_in_any_place_are_read_or_refused_in_one_sentence(at: int, garbage: bytes) -> None:
    read_or_refused(WHOLE[:at] + garbage + WHOLE[at + len(garbage) :])


def test_a_key_that_breaks_the_line_is_named_in_one() -> None:
    plain = json.loads(WHOLE)
    plain["as_found"]["a\nb"] = None
    with pytest.raises(UnusableInput, match=r"as_found, 'a\\nb': this key is not known"):
        from_bytes(json.dumps(plain).encode(), "customer.panel.json")


any_json = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=8),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=5), inner, max_size=3),
    max_leaves=6,
)


def places(value: Any) -> list[tuple[Any, Any]]:
    """Every place of the document that holds a value: its list or object, and the index or key."""
    keys = value.keys() if isinstance(value, dict) else range(len(value)) if isinstance(value, list) else ()
    return [place for key in keys for place in ((value, key), *places(value[key]))]


def read_or_refused(content: bytes) -> None:
    try:
        project = from_bytes(content, "customer.panel.json")
    except UnusableInput as error:
        assert "\n" not in str(error)  # noqa: PT017 - either outcome is right
        return
    assert from_bytes(to_bytes(project), "again") == project


def test_what_is_no_plain_file_is_told(tmp_path: Path) -> None:
    with pytest.raises(UnusableInput, match="No such file"):
        load(tmp_path / "gone.panel.json")
    with pytest.raises(UnusableInput, match="it is a folder"):
        load(tmp_path)
    if hasattr(os, "mkfifo"):
        os.mkfifo(tmp_path / "pipe.panel.json")
        with pytest.raises(UnusableInput, match="not a plain file"):
            load(tmp_path / "pipe.panel.json")


def test_a_file_of_many_gigabytes_is_not_read(tmp_path: Path) -> None:
    path = tmp_path / "huge.panel.json"
    with path.open("wb") as stream:
        stream.truncate(LARGEST_FILE * 2)
    with pytest.raises(UnusableInput, match="longer than 64 MB"):
        load(path)
