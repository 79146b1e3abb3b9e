import math
from itertools import combinations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from panelcad.drawing.box import is_within, overlap
from panelcad.drawing.name_places import Ground, Named, Names
from panelcad.geometry.contour import circle, rectangle
from panelcad.geometry.point import Point

ORIGIN = Point(0.0, 0.0)
HEIGHT = 4.0


def names(*wanted: Named, texts=(), things=(), height=HEIGHT):
    return {block.owner: block for block in Names(height, texts, things, []).placed(wanted)}


def in_circle(name: str, diameter: float, owner: str = "one", at: Point = ORIGIN) -> Named:
    hole = circle(at, diameter)
    return Named(owner, name, hole, hole.bounds)


def test_a_name_stands_in_the_middle_of_a_large_opening() -> None:
    block = names(in_circle("Altimeter", 80.0))["one"]
    assert (block.lines, block.middle) == (("Altimeter",), Point(0.0, 0.0))


def test_a_long_name_is_broken_between_words_before_it_is_shortened() -> None:
    assert names(in_circle("Vertical speed indicator", 50.0))["one"].lines == ("Vertical speed", "indicator")
    assert names(in_circle("Vertical speed indicator", 38.0))["one"].lines == ("Vertical", "speed", "indicator")


@given(diameter=st.floats(6.0, 120.0))
def test_every_line_lies_within_the_circle_or_beside_it(diameter) -> None:
    """A box lies in a circle where its corners do."""
    for block in names(in_circle("Vertical speed indicator", diameter)).values():
        corners = [(x, y) for box in block.boxes() for x in (box[0], box[2]) for y in (box[1], box[3])]
        farthest, nearest = (choose(math.hypot(*corner) for corner in corners) for choose in (max, min))
        assert farthest <= diameter / 2 + 0.2 or nearest >= diameter / 2


def test_a_name_leaves_its_place_to_a_number() -> None:
    number = (-3.0, -4.0, 3.0, 3.0)
    (block,) = names(in_circle("Clock", 60.0), texts=[number]).values()
    assert block.middle.x == 0.0
    assert block.middle.y < 0.0
    assert not any(overlap(box, number) for box in block.boxes())


def test_a_name_too_long_for_its_opening_stands_beside_it_in_full() -> None:
    assert names(in_circle("Hour meter", 20.0))["one"].middle.y < -10.0


def test_a_name_with_no_room_beside_is_shortened_after_whole_words() -> None:
    around = [(-100.0, -100.0, -15.0, 100.0), (15.0, -100.0, 100.0, 100.0)]
    around += [(-15.0, 15.0, 15.0, 100.0), (-15.0, -100.0, 15.0, -15.0)]
    block = names(in_circle("Fuel quantity, left main tank", 30.0), things=around)["one"]
    assert block.lines[-1].endswith("…")
    assert block.lines[0] == "Fuel"


def test_a_name_of_which_too_little_would_be_left_is_left_out() -> None:
    around = [(-100.0, -100.0, 100.0, 100.0)]
    assert names(in_circle("Microphone jack", 12.0), things=around) == {}
    assert names(in_circle("Microphone jack", 3.0), things=around) == {}


def test_a_name_within_a_bare_outline_keeps_clear_of_what_shows_through() -> None:
    room = rectangle(Point(0.0, 0.0), 200.0, 100.0)
    firewall = Named("wall", "Firewall", room, room.bounds, Ground.SHARED)
    corner = (-100.0, 20.0, -40.0, 50.0)
    (block,) = names(firewall, things=[corner]).values()
    assert all(is_within(box, room.bounds) and not overlap(box, corner) for box in block.boxes())
    assert block.middle.y > 30.0


@given(
    st.lists(st.tuples(st.integers(0, 5), st.integers(0, 3), st.floats(8.0, 40.0)), min_size=1, max_size=14),
    st.floats(1.0, 8.0),
)
def test_no_name_covers_another_or_another_thing(spots, height) -> None:
    holes = [
        in_circle(f"Instrument number {i}", size, str(i), Point(44.0 * x, 44.0 * y))
        for i, (x, y, size) in enumerate({spot[:2]: spot for spot in spots}.values())
    ]
    things = [hole.beside for hole in holes]
    blocks = names(*holes, things=things, height=height)
    boxes = [(owner, box) for owner, block in blocks.items() for box in block.boxes()]
    assert not any(overlap(a, b) for (one, a), (other, b) in combinations(boxes, 2) if one != other)
    beside = {hole.owner: hole.beside for hole in holes}
    assert not any(overlap(box, beside[other]) for owner, box in boxes for other in beside if other != owner)


@pytest.mark.parametrize("name", ["A", "Clock", "An instrument of many small words to be told"])
def test_words_are_kept_in_their_order(name) -> None:
    lines = names(in_circle(name, 300.0))["one"].lines
    assert " ".join(lines) == name
