"""Things that moved take their seats again: as a project made anew would have them."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from panelcad.editing.parts import all_things
from panelcad.editing.places import place_of, stood
from panelcad.editing.seats import seats, with_moved
from panelcad.errors import EditRefused
from panelcad.geometry.placement import Placement
from panelcad.library.samples import sample_file
from panelcad.model.project import AS_FOUND, Project
from panelcad.model.release import Release
from panelcad.store.project_file import load
from tests.editing.scenes import stack

TOURER = load(sample_file("tourer"))


def _moved(project: Project, option_id: str, ids: list[str], dx: float, dy: float) -> Project:
    known = seats(project, project.option(option_id))
    places = {one: place_of(known[one].thing) for one in ids}
    there = {one: Placement(at.x + dx, at.y + dy, at.rotation, at.mirrored) for one, at in places.items()}
    return with_moved(project, option_id, {one: stood(known[one].thing, at) for one, at in there.items()})


@given(st.data())
def test_moved_things_are_where_a_project_made_anew_has_them(data: st.DataObject) -> None:
    option = data.draw(st.sampled_from(TOURER.all_options))
    every = sorted(seats(TOURER, option))
    ids = data.draw(st.lists(st.sampled_from(every), unique=True, max_size=5))
    dx, dy = data.draw(st.floats(-50, 50)), data.draw(st.floats(-50, 50))
    moved = _moved(TOURER, option.id, ids, dx, dy)
    assert moved == Project.model_validate(moved.model_dump())
    before, after = ({t.id: t for t in all_things(p, p.option(option.id))} for p in (TOURER, moved))
    assert before.keys() == after.keys()
    assert {one for one in before if before[one] is not after[one]} == set(ids)


def test_what_did_not_move_is_shared() -> None:
    project = stack()
    moved = _moved(project, "new", ["upper"], 0.0, 5.0)
    assert moved.option("new").plates is project.option("new").plates
    assert moved.as_found is project.as_found
    assert moved.surroundings is project.surroundings


def test_nothing_moved_gives_the_very_same_project() -> None:
    project = stack()
    assert with_moved(project, AS_FOUND, {}) is project


def test_a_released_option_is_not_moved() -> None:
    plain = stack()
    released = plain.revised(releases=(Release(option="new", revision="A", on="2026-05-01", fingerprint="any"),))
    with pytest.raises(EditRefused, match="released as revision A"):
        _moved(released, "new", ["upper"], 1.0, 0.0)
