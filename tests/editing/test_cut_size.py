import pytest

from panelcad.editing.cut_size import own_opening, reshape_cut
from panelcad.editing.groups import lock
from panelcad.errors import EditRefused
from panelcad.model.project import Project
from panelcad.model.shape import Circle, Rectangle
from tests import builders
from tests.editing import scenes


def made_to_measure(state: str = "new", plate: str = "new") -> Project:
    opening = builders.opening(Rectangle(width=100.0, height=60.0))
    cut = builders.cut("box", 5.0, 6.0, cutout=None, openings=(opening,), state=state)
    return builders.project(builders.sheet(cuts=(cut,), state=plate))


def test_a_cut_takes_another_size_about_the_same_place() -> None:
    after = reshape_cut(made_to_measure(), "new", "box", Circle(diameter=52.4))
    (cut,) = after.option("new").plates[0].cuts
    assert (cut.x, cut.y, cut.openings[0].shape) == (5.0, 6.0, Circle(diameter=52.4))
    assert cut.openings[0].source == builders.SOURCE


def test_metal_that_is_cut_keeps_its_size() -> None:
    with pytest.raises(EditRefused, match="already in the metal"):
        reshape_cut(made_to_measure("existing", "reworked"), "new", "box", Circle(diameter=52.4))


def test_what_is_locked_keeps_its_size() -> None:
    with pytest.raises(EditRefused, match="locked"):
        reshape_cut(lock(made_to_measure(), "new", ["box"]), "new", "box", Circle(diameter=52.4))


def test_a_cutout_of_the_library_is_replaced_instead() -> None:
    project = scenes.one_instrument()
    assert own_opening(project, project.option("new"), "hole") is None
    assert own_opening(project, project.option("new"), "gauge") is None
    with pytest.raises(EditRefused, match="replace a cutout"):
        reshape_cut(project, "new", "hole", Circle(diameter=52.4))
