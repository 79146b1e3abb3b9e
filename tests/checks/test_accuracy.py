"""Reported clearances against closed forms, right to 0.01 mm: circles, lines, arcs, rounded rectangles at any angle.

Where there is no closed form a brute force stands beside it: points every few hundredths of a millimetre along both
contours, made here from centres, radii and sides, not by panelcad.
"""

from math import atan2, cos, hypot, pi, radians, sin

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from panelcad.checks.run import check
from panelcad.model.profile import Profile
from panelcad.model.shape import Circle, Corner, Outline, Rectangle
from tests.checks.made import own_cut, panel

ACCURACY = 0.01
WIDE = Profile(web_advised=200.0, web_least_thicknesses=0.0, outline_advised=0.0, outline_least_thicknesses=0.0)
"""Every pair is a finding, so that its measured value can be read."""


def web(*cuts):
    made = panel(cuts=cuts, size=(2000.0, 2000.0)).revised(profile=WIDE)
    (finding,) = [f for f in check(made, made.option("new")).findings if f.rule == "web"]
    return finding.measured


def edge(cut, **plate):
    limits = WIDE.revised(web_advised=0.0, outline_advised=500.0)
    made = panel(cuts=(cut,), **plate).revised(profile=limits)
    (finding,) = [f for f in check(made, made.option("new")).findings if f.rule in {"outline", "outside"}]
    return finding.measured


angles = st.floats(0, 360)
places = st.tuples(st.floats(60, 150), angles)
box_sides = st.tuples(st.floats(10, 60), st.floats(10, 60), st.floats(0, 0.999))
"""Sides in mm and the corner radius as a share of half the shorter one; a nanometre is left for rounding."""


@settings(max_examples=30, deadline=None)
@given(a=st.floats(5, 80), b=st.floats(5, 80), place=places)
def test_circle_to_circle(a, b, place):
    x, y = place[0] * cos(radians(place[1])), place[0] * sin(radians(place[1]))
    expected = hypot(x, y) - a / 2 - b / 2
    assume(expected > 0.01)
    assert web(own_cut("a", 0, 0, Circle(diameter=a)), own_cut("b", x, y, Circle(diameter=b))) == pytest.approx(
        expected, abs=1e-5
    )


@settings(max_examples=20, deadline=None)
@given(diameter=st.floats(5, 80), distance=st.floats(0.1, 90), along=st.floats(-200, 200))
def test_circle_to_line(diameter, distance, along):
    cut = own_cut("a", 450 - diameter / 2 - distance, along, Circle(diameter=diameter))
    assert edge(cut) == pytest.approx(min(distance, 300 - abs(along) - diameter / 2), abs=1e-5)


def half_disc(radius):
    """A half disc on its flat side: its arc bulges up."""
    return Outline(corners=(Corner(x=-radius, y=0), Corner(x=radius, y=0, bulge=1.0)))


@settings(max_examples=20, deadline=None)
@given(a=st.floats(5, 60), b=st.floats(5, 60), gap=st.floats(0.1, 50), lean=st.floats(-80, 80))
def test_arc_to_arc(a, b, gap, lean):
    """The second half disc is turned round and stands where both arcs' middles, leaning, face each other."""
    reach = a + b + gap
    x, y = reach * sin(radians(lean)), reach * cos(radians(lean))
    one = own_cut("a", 0, 0, half_disc(a))
    other = own_cut("b", x, y, half_disc(b), rotation=180)
    assert web(one, other) == pytest.approx(gap, abs=1e-5)


@settings(max_examples=20, deadline=None)
@given(radius=st.floats(100, 400), diameter=st.floats(5, 60), gap=st.floats(0.1, 40), lean=st.floats(20, 160))
def test_circle_in_a_convex_arc(radius, diameter, gap, lean):
    """Inside a half disc, nearer to its arc than to its flat."""
    away = radius - diameter / 2 - gap
    x, y = away * cos(radians(lean)), away * sin(radians(lean))
    assume(y - diameter / 2 > gap + 0.01)
    cut = own_cut("a", x, y, Circle(diameter=diameter))
    assert edge(cut, outline=half_disc(radius)) == pytest.approx(gap, abs=1e-5)


@settings(max_examples=20, deadline=None)
@given(sides=box_sides, turn=angles, diameter=st.floats(5, 40), place=places)
def test_circle_to_a_rounded_rectangle_at_any_angle(sides, turn, diameter, place):
    """In the rectangle's own axes: distance to the inner rectangle, less its corner radius and the circle's."""
    width, height, round_share = sides
    radius = round_share * min(width, height) / 2
    x, y = place[0] * cos(radians(place[1])), place[0] * sin(radians(place[1]))
    own = radians(place[1] - turn)
    local_x, local_y = abs(place[0] * cos(own)), abs(place[0] * sin(own))
    outside = hypot(max(0.0, local_x - width / 2 + radius), max(0.0, local_y - height / 2 + radius))
    expected = outside - radius - diameter / 2
    assume(expected > 0.01)
    box = own_cut("a", 0, 0, Rectangle(width=width, height=height, corner_radius=radius), rotation=turn)
    assert web(box, own_cut("b", x, y, Circle(diameter=diameter))) == pytest.approx(expected, abs=1e-5)


def boundary(width, height, radius, turn, at):
    """Points along a rounded rectangle, at most 0.02 mm apart."""
    x, y = width / 2 - radius, height / 2 - radius
    arc = np.linspace(0, pi / 2, 2 + int(radius * pi / 2 / 0.02))
    points = []
    for cx, cy, start in ((x, y, 0.0), (-x, y, pi / 2), (-x, -y, pi), (x, -y, 1.5 * pi)):
        points.append(np.column_stack((cx + radius * np.cos(start + arc), cy + radius * np.sin(start + arc))))
    ring = np.vstack([*points, points[0][:1]])
    lengths = np.concatenate(([0.0], np.cumsum(np.hypot(*np.diff(ring, axis=0).T))))
    steps = np.arange(0.0, lengths[-1], 0.02)
    ring = np.column_stack([np.interp(steps, lengths, ring[:, i]) for i in (0, 1)])
    c, s = cos(radians(turn)), sin(radians(turn))
    return ring @ np.array([[c, s], [-s, c]]) + at


def nearest(a, b):
    """The least distance between two clouds of points: coarse first, then near its place."""
    for _ in range(2):
        few_a, few_b = a[:: max(1, len(a) // 400)], b[:: max(1, len(b) // 400)]
        apart = np.hypot(*(few_a[:, None] - few_b[None]).transpose(2, 0, 1))
        i, j = np.unravel_index(apart.argmin(), apart.shape)
        slack = 3 * max(len(a) // 400, len(b) // 400, 1) * 0.02
        a = a[np.hypot(*(a - few_a[i]).T) < slack]
        b = b[np.hypot(*(b - few_b[j]).T) < slack]
    return np.hypot(*(a[:, None] - b[None]).transpose(2, 0, 1)).min()


@settings(max_examples=15, deadline=None)
@given(one=box_sides, other=box_sides, turns=st.tuples(angles, angles), place=places)
def test_two_rounded_rectangles_at_any_angles(one, other, turns, place):
    at = np.array((place[0] * cos(radians(place[1])), place[0] * sin(radians(place[1]))))
    sizes = [(w, h, share * min(w, h) / 2) for w, h, share in (one, other)]
    expected = nearest(
        boundary(*sizes[0], turns[0], np.zeros(2)),
        boundary(*sizes[1], turns[1], at),
    )
    assume(hypot(*at) > sum(hypot(w, h) / 2 for w, h, _ in sizes))
    boxes = [Rectangle(width=w, height=h, corner_radius=r) for w, h, r in sizes]
    measured = web(
        own_cut("a", 0, 0, boxes[0], rotation=turns[0]), own_cut("b", *map(float, at), boxes[1], rotation=turns[1])
    )
    assert measured == pytest.approx(expected, abs=ACCURACY)


def test_the_faces_of_two_turned_squares_by_hand():
    """A square of side 40 and one turned 45° whose corner points at the middle of its side."""
    reach = 20 + 20 * 2**0.5 + 3.0
    turned = own_cut("b", reach, 5, Rectangle(width=40, height=40), rotation=45)
    assert web(own_cut("a", 0, 0, Rectangle(width=40, height=40)), turned) == pytest.approx(3.0)
    assert atan2(1, 1) == pytest.approx(radians(45))
