import shapely
from hypothesis import given, settings
from hypothesis import strategies as st

from panelcad.drawing.box import overlap
from panelcad.drawing.ground import Boxes
from panelcad.drawing.labels import Ground
from panelcad.drawing.wishes import Stand, Wish
from panelcad.geometry.point import Point, distance

AREA = (0.0, 0.0, 200.0, 100.0)


def ground(texts=(), lines=()) -> Ground:
    return Ground(texts, (), AREA, lines)


def test_a_number_stands_beside_a_small_hole_and_never_in_it():
    label = ground().place(Wish("7.1", Point(50, 50), 2.0))
    assert not shapely.Point(50, 50).buffer(2.0).intersects(shapely.box(*label.box))
    assert not label.needs_leader
    assert distance(label.middle, Point(50, 50)) < 8.0


def test_a_number_avoids_a_text_that_is_there():
    there = (51.0, 51.0, 70.0, 60.0)
    label = ground([there]).place(Wish("7.1", Point(50, 50), 1.0))
    assert not overlap(label.box, there)


def test_a_number_far_from_its_hole_has_a_leader_that_crosses_no_text():
    around = [(40.0, 51.5, 60.0, 56.0), (40.0, 44.0, 60.0, 48.5), (40.0, 44.0, 48.0, 56.0), (52.0, 44.0, 60.0, 56.0)]
    label = ground(around[:3]).place(Wish("long number", Point(50, 50), 1.0))
    line = shapely.LineString(label.leader)
    assert label.needs_leader
    assert not any(line.intersects(shapely.box(*box)) for box in around[:3])


def test_a_number_goes_where_it_crosses_no_line_if_that_is_as_near():
    line = shapely.LineString([(0, 54), (200, 54)])
    label = ground(lines=[line]).place(Wish("7.1", Point(50, 50), 1.0))
    assert label.box[3] < 54.0


def test_a_number_stands_in_no_opening_and_in_its_own_cut_s_rather_than_in_another_s():
    """Left of the hole is its own opening, right another one; texts fill all above and below."""
    left, right = (shapely.box(x, 45, x + 46, 55).exterior for x in (1, 53))
    wish = Wish("12.1", Point(50, 50), 2.0)
    free = Ground((), (left, right), AREA, openings={"12": left, "13": right}).place(wish)
    assert free.box[1] > 55 or free.box[3] < 45
    full = Ground([(0, 53, 200, 100), (0, 0, 200, 47)], (left, right), AREA, openings={"12": left, "13": right})
    assert full.place(wish).box[2] < 47
    other = Ground([(0, 53, 200, 100), (0, 0, 200, 47), (0, 40, 49, 60)], (), AREA, openings={"13": right})
    assert other.place(wish).middle.x > 53


def test_a_number_in_a_large_opening_stands_beside_its_centre_lines():
    wish = Wish("7", Point(50, 50), 20.0, Stand.QUARTER, (30.0, 30.0, 70.0, 70.0), 3.5)
    label = ground().place(wish)
    assert label.box[0] >= 30.0
    assert label.box[2] <= 70.0
    assert not label.box[0] < 50.0 < label.box[2]
    assert not label.box[1] < 50.0 < label.box[3]


def test_nothing_is_placed_outside_the_area():
    assert ground().place(Wish("a text wider than the sheet " * 10, Point(50, 50), 1.0)) is None


@given(st.lists(st.tuples(st.floats(5, 195), st.floats(5, 95)), max_size=40))
@settings(deadline=None, max_examples=40)
def test_labels_never_cover_each_other(spots):
    place = ground().place
    found = [place(Wish(f"{i}.1", Point(*spot), 1.5)) for i, spot in enumerate(spots)]
    boxes = [label.box for label in found if label is not None]
    assert not any(overlap(a, b) for i, a in enumerate(boxes) for b in boxes[:i])


@given(st.lists(st.tuples(st.floats(-50, 50), st.floats(-50, 50), st.floats(1, 30)), max_size=20), st.floats(-50, 50))
def test_sorted_boxes_find_what_a_plain_search_finds(corners, x):
    boxes = [(a, b, a + size, b + size / 2) for a, b, size in corners]
    probe = (x, -10.0, x + 7.0, 3.0)
    assert Boxes(boxes).meets(probe) == any(overlap(probe, box) for box in boxes)
