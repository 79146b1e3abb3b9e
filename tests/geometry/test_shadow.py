"""Similar triangles give the shadow of a square; a brute-force count of rays gives that of anything."""

import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st

from panelcad.geometry.contour import Contour, Vertex, circle, closed_chain, rectangle
from panelcad.geometry.point import Point
from panelcad.geometry.polygon import polygon
from panelcad.geometry.shadow import prism, shadow
from panelcad.geometry.space import Spot

ORIGIN = Point(0.0, 0.0)
L_SHAPE = closed_chain(tuple(Vertex(*p) for p in ((-40, -40), (40, -40), (40, -10), (-10, -10), (-10, 40), (-40, 40))))


def test_a_thin_square_half_way_throws_a_shadow_of_twice_its_size() -> None:
    found = shadow(prism(rectangle(ORIGIN, 10, 10), -300.001, -300), Spot(0, 0, -600))
    assert found.bounds == pytest.approx((-10, -10, 10, 10), abs=1e-3)


def test_a_square_off_the_axis_throws_its_shadow_farther_off() -> None:
    found = shadow(prism(rectangle(Point(100, 0), 10, 10), -300.001, -300), Spot(0, 0, -600))
    assert found.bounds == pytest.approx((190, -10, 210, 10), abs=2e-3)


def test_what_is_behind_the_face_or_behind_the_eye_hides_nothing() -> None:
    assert shadow(prism(circle(ORIGIN, 50), 2, 100), Spot(0, 0, -600)).is_empty
    assert shadow(prism(circle(ORIGIN, 50), -900, -700), Spot(0, 0, -600)).is_empty


def rays_hidden(solid: Contour, near: float, far: float, eye: Spot, face: shapely.Polygon) -> float:
    """Share of a grid of points of the face whose ray to the eye meets the solid, at 60 depths."""
    drawn = polygon(solid, error=0.01)
    x1, y1, x2, y2 = face.bounds
    points = [(x1 + (x2 - x1) * (i + 0.5) / 24, y1 + (y2 - y1) * (j + 0.5) / 24) for i in range(24) for j in range(24)]
    inside = [p for p in points if face.contains(shapely.Point(p))]
    depths = [near + (far - near) * (k + 0.5) / 60 for k in range(60)]
    hidden = 0
    for x, y in inside:
        shares = [z / eye.z for z in depths]
        ray = shapely.MultiPoint([(x + (eye.x - x) * share, y + (eye.y - y) * share) for share in shares])
        hidden += drawn.intersects(ray)
    return hidden / len(inside)


@settings(max_examples=12, deadline=None)
@given(st.floats(-120, 120), st.floats(-60, 120), st.sampled_from([circle(ORIGIN, 80), L_SHAPE]))
def test_hidden_share_agrees_with_a_brute_force_ray_count(eye_x: float, eye_y: float, solid: Contour) -> None:
    eye = Spot(eye_x, eye_y, -650.0)
    face = polygon(rectangle(Point(20, 10), 90, 90))
    hidden = shadow(prism(solid, -220.0, -150.0), eye)
    assert hidden.intersection(face).area / face.area == pytest.approx(
        rays_hidden(solid, -220.0, -150.0, eye, face), abs=0.05
    )
