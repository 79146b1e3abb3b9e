import math

import pytest

from panelcad.geometry.keyed import flatted, keyed, notched
from panelcad.geometry.segment import Arc


def segment_area(radius: float, half_chord: float) -> float:
    """Area between a chord and its shorter arc: r² (θ - sin θ) / 2."""
    angle = 2 * math.asin(half_chord / radius)
    return radius**2 * (angle - math.sin(angle)) / 2


def test_a_flat_takes_a_circular_segment_away() -> None:
    assert flatted(5, 1).area == pytest.approx(math.pi * 25 - segment_area(5, 3))


def test_a_square_key_adds_a_rectangle_less_the_segment() -> None:
    root = math.sqrt(25 - 1)
    assert keyed(5, 2, 2).area == pytest.approx(math.pi * 25 - segment_area(5, 1) + 2 * (7 - root))
    assert keyed(5, 2, 2).bounds == pytest.approx((-5, -5, 7, 5))


def test_a_round_notch_ends_in_a_half_circle() -> None:
    root = math.sqrt(25 - 1)
    expected = math.pi * 25 - segment_area(5, 1) + 2 * (6 - root) + math.pi / 2
    assert notched(5, 2, 2).area == pytest.approx(expected)
    assert notched(5, 2, 2).bounds == pytest.approx((-5, -5, 7, 5))
    assert sorted(s.radius for s in notched(5, 2, 2).segments if isinstance(s, Arc)) == pytest.approx([1, 5])
