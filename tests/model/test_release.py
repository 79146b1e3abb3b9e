import pytest

from panelcad.errors import EditRefused
from panelcad.model.project import Project
from panelcad.model.release import OpenedRevision, Release, next_revision
from panelcad.model.revision import revision_text, stamp
from panelcad.store.project_file import from_bytes, to_bytes
from tests.builders import project, sheet


def released(plain: Project, revision: str = "A", fingerprint: str | None = None) -> Project:
    now = stamp(plain, plain.option("new")).fingerprint if fingerprint is None else fingerprint
    entry = Release(option="new", revision=revision, on="2026-05-01", fingerprint=now)
    return plain.revised(releases=(*plain.releases, entry))


def opened(plain: Project, revision: str = "B") -> Project:
    entry = OpenedRevision(option="new", revision=revision, on="2026-06-01", reason="one more gauge")
    return plain.revised(opened_revisions=(*plain.opened_revisions, entry))


@pytest.mark.parametrize(
    ("before", "after"),
    [("", "A"), ("A", "B"), ("H", "J"), ("N", "P"), ("Y", "AA"), ("AY", "BA")],
)
def test_revision_letters_follow_each_other(before, after):
    assert next_revision(before) == after


def test_a_released_option_is_locked_until_a_revision_is_opened():
    plain = project()
    locked = released(plain)
    wider = plain.option("new").revised(plates=(sheet(width=700.0),))

    with pytest.raises(EditRefused, match="released as revision A and locked"):
        locked.with_option(wider)
    assert opened(locked).with_option(wider).option("new") == wider
    assert released(opened(locked), "B").locked_revision("new") == "B"


def test_a_locked_option_may_stay_as_it_is():
    locked = released(project())

    assert locked.with_option(locked.option("new")) == locked


def test_the_stamp_is_the_newest_release_of_the_same_geometry():
    locked = released(released(project(), "A"), "B", "0000-0000-0000-0000")

    assert stamp(locked, locked.option("new")).revision_text == "A of 2026-05-01"
    assert not stamp(project(), project().option("new")).is_released


def test_the_log_survives_saving():
    plain = opened(released(project()))

    assert from_bytes(to_bytes(plain), "test") == plain


def test_how_an_option_stands_is_told():
    plain = project()

    assert revision_text(plain, plain.option("new")) == ""
    assert revision_text(released(plain), plain.option("new")) == "revision A, locked"
    assert revision_text(opened(released(plain)), plain.option("new")) == "revision B open"
