import pytest
from hypothesis import given
from hypothesis import strategies as st

from panelcad.editing.extents import Axis
from panelcad.editing.mirror import mirror
from panelcad.geometry.gap import gap
from panelcad.geometry.point import Point
from panelcad.model.layout import layout
from panelcad.model.plate import Cut
from panelcad.model.project import Project
from panelcad.model.shape import Corner, Outline
from tests import builders
from tests.editing.scenes import one_instrument, stack, where

LOPSIDED = Outline(corners=(Corner(x=0.0, y=0.0), Corner(x=30.0, y=0.0), Corner(x=30.0, y=10.0, bulge=0.3)))


def bare_cut(rotation: float) -> Project:
    cut = Cut(id="own", name="own", x=40.0, y=15.0, rotation=rotation, openings=(builders.opening(LOPSIDED),))
    return builders.project(builders.sheet(cuts=(cut,)))


def test_equipment_changes_sides_and_keeps_its_face() -> None:
    mirrored = mirror(one_instrument(), "new", ["gauge"], Axis.ACROSS, 0.0)
    assert where(mirrored) == {"gauge": (-10.0, 20.0), "hole": (-10.0, 20.0)}
    assert not mirrored.option("new").plates[0].cuts[0].mirrored


def test_a_stack_mirrored_about_a_level_line_turns_its_order() -> None:
    assert where(mirror(stack(), "new", ["bay"], Axis.UP, 50.0)) == {
        "upper": (0.0, 80.0),
        "lower": (0.0, 120.0),
        "bay": (0.0, 100.0),
    }


@pytest.mark.parametrize("axis", Axis)
@given(rotation=st.sampled_from([0.0, 30.0, 90.0, 215.5]))
def test_a_bare_cut_is_mirrored_point_by_point(axis: Axis, rotation: float) -> None:
    project = bare_cut(rotation)
    mirrored = mirror(project, "new", ["own"], axis, 12.0)
    before, after = corners(project), corners(mirrored)
    for x, y in before:
        image = Point(24.0 - x, y) if axis is Axis.ACROSS else Point(x, 24.0 - y)
        assert min(abs(image.x - p.x) + abs(image.y - p.y) for p in after) < 1e-9
    assert mirror(mirrored, "new", ["own"], axis, 12.0) == project


def corners(project: Project) -> list[Point]:
    (feature,) = layout(project, project.option("new")).plates[0].features
    assert gap(feature.contour, feature.contour).distance <= 0
    return [segment.start for segment in feature.contour.segments]
