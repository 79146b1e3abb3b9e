import shapely
from hypothesis import given
from hypothesis import strategies as st

from panelcad.drawing.gaps import broken
from panelcad.geometry.point import Point
from panelcad.geometry.track import line, polyline

TEXT = (40.0, -2.0, 50.0, 2.0)


def test_a_line_ends_before_a_text_and_goes_on_after_it():
    pieces = broken([line(Point(0, 0), Point(100, 0))], [TEXT])
    ends = [(piece.vertices[0].x, piece.vertices[-1].x) for piece in pieces]
    assert ends == [(0.0, 39.7), (50.3, 100.0)]


def test_a_line_clear_of_all_texts_is_the_very_same():
    track = polyline(Point(0, 0), Point(10, 0), Point(10, 30))
    assert broken([track], [TEXT]) == (track,)


@given(st.floats(-5, 5), st.floats(0, 100), st.lists(st.floats(0, 100), max_size=6))
def test_nothing_of_it_is_left_within_a_text(y, x, texts):
    boxes = [(at, -2.0, at + 6.0, 2.0) for at in texts]
    track = polyline(Point(0, y), Point(x, y), Point(x, 40))
    left = [shapely.LineString([v.point for v in piece.vertices]) for piece in broken([track], boxes)]
    assert not any(piece.crosses(shapely.box(*box)) for piece in left for box in boxes)
