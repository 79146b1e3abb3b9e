import pytest

from panelcad.editing.revision import open_revision
from panelcad.errors import EditRefused
from panelcad.model.release import Release
from tests.builders import project


def released():
    entry = Release(option="new", revision="A", on="2026-05-01", fingerprint="0")
    return project(releases=(entry,))


def test_opening_gives_the_next_letter_and_unlocks():
    opened = open_revision(released(), "new", " one more gauge ", "2026-06-01", "TS")

    assert [(o.revision, o.reason) for o in opened.opened_revisions] == [("B", "one more gauge")]
    assert opened.locked_revision("new") == ""


def test_what_is_not_locked_is_not_opened():
    with pytest.raises(EditRefused, match="not locked"):
        open_revision(project(), "new", "why not", "2026-06-01")


def test_a_reason_is_needed():
    with pytest.raises(EditRefused, match="Say why"):
        open_revision(released(), "new", "  ", "2026-06-01")
