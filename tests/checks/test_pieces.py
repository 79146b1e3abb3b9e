"""The quick search for close pairs finds all that the true distances find."""

from hypothesis import given, settings
from hypothesis import strategies as st

from panelcad.checks.parts import Kind, Layer, Part, Piece
from panelcad.checks.pieces import NEAR_LIMIT, close_pairs, pieces_of
from panelcad.geometry.contour import Vertex, circle, closed_chain, rectangle
from panelcad.geometry.gap import gap
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point

HERE = Point(0.0, 0.0)
WEDGE = closed_chain((Vertex(-10, -5, 0.3), Vertex(10, -5), Vertex(0, 12, -0.2)))
SHAPES = st.one_of(
    st.builds(lambda d: circle(HERE, d), st.floats(1, 30)),
    st.builds(lambda w, h, s: rectangle(HERE, w, h, s * min(w, h) / 2), *[st.floats(2, 30)] * 2, st.floats(0, 1)),
    st.just(WEDGE),
)
PLACED = st.builds(
    lambda shape, x, y, turn: Placement(x, y, turn).contour(shape),
    SHAPES,
    st.floats(-80, 80),
    st.floats(-80, 80),
    st.floats(0, 360),
)
DEPTHS = st.tuples(st.floats(0, 50), st.floats(51, 99))


def part(number, contour, depth=(0.0, 10.0)):
    def make(own):
        yield Layer.BEHIND, Piece(own, own.id, "case", contour, *depth)

    return Part(Kind.ITEM, f"p{number}", None, make)


def found(rows, reach, depth=None):
    return {frozenset((a.owner, b.owner)) for a, b in close_pairs(rows, rows, reach, depth)}


@settings(max_examples=60, deadline=None)
@given(st.lists(PLACED, min_size=2, max_size=12), st.floats(0, 40))
def test_no_pair_within_reach_is_missed_and_few_others_are_offered(contours, reach):
    parts = [part(number, contour) for number, contour in enumerate(contours)]
    close = found(pieces_of(Layer.BEHIND, parts), reach)
    for i, a in enumerate(contours):
        for j in range(i + 1, len(contours)):
            distance = gap(a, contours[j]).distance
            pair = frozenset((f"p{i}", f"p{j}"))
            if distance < reach:
                assert pair in close
            if distance > reach + NEAR_LIMIT + 0.02:
                assert pair not in close


@settings(max_examples=30, deadline=None)
@given(st.integers(70, 140), st.floats(0, 30), st.randoms(use_true_random=False))
def test_a_tree_and_comparing_all_boxes_say_the_same(count, reach, random):
    parts = [part(i, circle(Point(random.uniform(0, 400), random.uniform(0, 400)), 10)) for i in range(count)]
    rows = pieces_of(Layer.BEHIND, parts)
    few = {
        frozenset((a.owner, b.owner))
        for start in range(0, count, 30)
        for a, b in close_pairs(rows.taking(slice(start, start + 30)), rows, reach)
    }
    assert found(rows, reach) == few


@settings(max_examples=30, deadline=None)
@given(DEPTHS, DEPTHS, st.floats(0, 10))
def test_depth_parts_what_plan_does_not(a, b, reach):
    parts = [part(0, circle(HERE, 10), a), part(1, circle(HERE, 10), b)]
    apart = max(a[0] - b[1], b[0] - a[1])
    assert bool(found(pieces_of(Layer.BEHIND, parts), 5.0, reach)) == (apart < reach)


def test_rows_of_a_part_that_left_are_gone():
    parts = [part(number, circle(Point(20.0 * number, 0.0), 10)) for number in range(4)]
    rows = pieces_of(Layer.BEHIND, parts).without(parts[:1])
    assert found(rows, 12.0) == {frozenset(("p1", "p2")), frozenset(("p2", "p3"))}
