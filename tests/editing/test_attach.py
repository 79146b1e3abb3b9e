import itertools

import pytest

from panelcad.editing.attach import Spread, attach_all_round, attach_along, places_along, screws_along
from panelcad.editing.outline import bow_by, move_corner, outline_of, set_outline
from panelcad.editing.sharp_outline import SharpOutline
from panelcad.errors import EditRefused
from panelcad.geometry.point import Point, distance
from panelcad.model.hole import HoleForm
from panelcad.model.shape import Rectangle
from tests import builders

SHEET = outline_of(Rectangle(width=600.0, height=300.0))
FORM = HoleForm(diameter=5.0, fastener=4.826)


def test_screws_stand_inside_the_edge_at_most_a_pitch_apart() -> None:
    spots = places_along(SHEET, 0, Spread(inset=12.0, ends=20.0, pitch=150.0))
    assert spots[0] == Point(-280.0, -138.0)
    assert spots[-1] == Point(280.0, -138.0)
    assert [b.x - a.x for a, b in itertools.pairwise(spots)] == pytest.approx([140.0] * 4)


def test_along_an_arc_they_keep_the_inset() -> None:
    bowed = bow_by(SHEET, 2, 50.0)
    radius = (300.0**2 + 50.0**2) / 100.0
    centre = Point(0.0, 150.0 + 50.0 - radius)
    for spot in places_along(bowed, 2, Spread(inset=12.0, ends=20.0, pitch=100.0)):
        assert distance(centre, spot) == pytest.approx(radius - 12.0, abs=1e-5)


def test_one_screw_goes_in_the_middle_of_an_edge_that_takes_no_more() -> None:
    assert places_along(SHEET, 0, Spread(12.0, 300.0, 100.0)) == (Point(0.0, -138.0),)


def test_all_around_the_corners_are_drilled_once() -> None:
    project = builders.project()
    for edge in range(4):
        project = attach_along(project, "new", "main", edge, Spread(12.0, 12.0, 150.0), FORM).project
    screws = project.option("new").plates[0].attach_screws
    assert len({(screw.x, screw.y) for screw in screws}) == len(screws) == 2 * (4 + 2)


@pytest.mark.parametrize(
    ("spread", "told"),
    [
        (Spread(0.0, 1.0, 1.0), "larger than 0"),
        (Spread(1.0, 1.0, 0.0), "larger than 0"),
        (Spread(1.0, 301.0, 9.0), "shorter"),
    ],
)
def test_a_spread_that_does_not_fit_is_refused(spread: Spread, told: str) -> None:
    with pytest.raises(EditRefused, match=told):
        places_along(SHEET, 0, spread)


def test_an_edge_bowed_too_tightly_is_refused() -> None:
    notched = bow_by(outline_of(Rectangle(width=20.0, height=100.0)), 2, 10.0)
    with pytest.raises(EditRefused, match="bowed too tightly"):
        places_along(notched, 2, Spread(12.0, 0.0, 5.0))


def test_all_round_leaves_out_edges_without_room() -> None:
    project = set_outline(builders.project(), "new", "main", SharpOutline.of(SHEET).all_rounded_by(15.0).finished())
    made = attach_all_round(project, "new", "main", Spread(12.0, 25.0, 150.0), FORM)
    screws = made.project.option("new").plates[0].attach_screws
    assert len(made.ids) == len(screws) == 2 * (5 + 3)
    with pytest.raises(EditRefused, match="No edge is long enough"):
        attach_all_round(project, "new", "main", Spread(12.0, 400.0, 150.0), FORM)


def test_a_rounded_corner_has_the_room_that_is_left_where_its_screws_would_go() -> None:
    """A quarter of a circle of 20 mm is 31.4 mm long, and 12 mm inside it there are 12.6 mm."""
    rounded = SharpOutline.of(SHEET).all_rounded_by(20.0).finished()
    project = set_outline(builders.project(), "new", "main", rounded)
    made = attach_all_round(project, "new", "main", Spread(12.0, 15.0, 150.0), FORM)
    assert len(made.ids) == 2 * (5 + 3)


def test_the_screws_along_an_edge_are_known_after_the_outline_changed() -> None:
    """The upper edge is 15 mm higher by now; the first screw is still farther from the corner's other edge."""
    spread = Spread(12.0, 30.0, 150.0)
    project = attach_all_round(builders.project(), "new", "main", spread, FORM).project
    upper = {screw.id for screw in project.option("new").plates[0].attach_screws if screw.y == 138.0}
    higher = move_corner(move_corner(SHEET, 2, 300.0, 165.0), 3, -300.0, 165.0)
    plate = set_outline(project, "new", "main", higher).option("new").plates[0]
    assert set(screws_along(plate, 2, spread)) == upper
    assert len(upper) == 5
    by_edge = [screws_along(plate, edge, spread) for edge in range(4)]
    assert sorted(id_ for ids in by_edge for id_ in ids) == sorted(screw.id for screw in plate.attach_screws)
