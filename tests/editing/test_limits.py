"""The limits a project is judged by."""

import pytest

from panelcad.editing.limits import with_limits
from panelcad.errors import EditRefused
from panelcad.model.profile import Profile
from panelcad.model.release import Release
from tests.builders import project


def test_other_limits_are_taken():
    changed = with_limits(project(), Profile(web_advised=9.0))
    assert changed.profile.web_advised == 9.0


def test_a_locked_option_keeps_them():
    released = Release(option="new", revision="A", on="2026-01-31", fingerprint="0000-0000-0000-0000")
    locked = project(releases=(released,))
    assert with_limits(locked, Profile()) is locked
    with pytest.raises(EditRefused, match="'New' is released as revision A"):
        with_limits(locked, Profile(web_advised=9.0))
