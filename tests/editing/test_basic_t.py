"""Places as 14 CFR 23.1321(d) gave them before 30 August 2017; the lower corners are common practice."""

import pytest

from panelcad.editing.basic_t import Seat, arrange_basic_t, pilots_line, place_basic_t
from panelcad.editing.extents import boxes
from panelcad.errors import EditRefused
from panelcad.geometry.point import Point
from panelcad.library.catalogue import packaged_catalogue
from panelcad.model.source import Source, Standing
from panelcad.model.surroundings import Eye, Surroundings
from tests import builders
from tests.editing.scenes import row, where

SIX = dict(zip(Seat, "abcdef", strict=True))


def test_six_placed_instruments_move_into_the_t() -> None:
    arranged = where(arrange_basic_t(row(0, 7, 14, 21, 28, 35), "new", SIX, 5.0))
    assert arranged == {
        "a": (0.0, 0.0),
        "b": (-45.0, 0.0),
        "c": (45.0, 0.0),
        "d": (0.0, -45.0),
        "e": (-45.0, -45.0),
        "f": (45.0, -45.0),
    }


def test_bezels_of_different_sizes_keep_straight_rows_and_columns_and_at_least_the_gap() -> None:
    cutouts = packaged_catalogue().cutouts
    small = next(cutout for cutout in cutouts.values() if cutout.family == "round-2-1-4" and cutout.bezel)
    large = next(cutout for cutout in cutouts.values() if cutout.family == "round-3-1-8" and cutout.bezel)
    seats = dict.fromkeys(Seat, large) | {Seat.TURN: small}
    made = place_basic_t(builders.project(), "new", "main", seats, Point(-100.0, 50.0), 3.0)
    option = made.project.option("new")
    by_seat = dict(zip(Seat, option.items, strict=True))
    assert by_seat[Seat.ATTITUDE].x == by_seat[Seat.DIRECTION].x == -100.0
    assert by_seat[Seat.AIRSPEED].y == by_seat[Seat.ATTITUDE].y == by_seat[Seat.ALTITUDE].y == 50.0
    assert by_seat[Seat.TURN].x == by_seat[Seat.AIRSPEED].x < -100.0 < by_seat[Seat.VERTICAL_SPEED].x
    box = {item.id: boxes(made.project, option)[item.id] for item in option.items}
    upper, centre = box[by_seat[Seat.AIRSPEED].id], box[by_seat[Seat.ATTITUDE].id]
    assert centre.left - upper.right == pytest.approx(3.0, abs=2e-6)


def test_the_four_of_the_regulation_are_needed() -> None:
    with pytest.raises(EditRefused, match=r"^The basic T needs an instrument for altitude, direction\.$"):
        arrange_basic_t(row(0, 50), "new", {Seat.ATTITUDE: "a", Seat.AIRSPEED: "b"}, 5.0)


def test_the_pilots_line_is_given_in_the_plates_own_axes() -> None:
    eye = Eye(x=-200.0, y=300.0, z=-600.0, centre_line=-210.0, source=Source(standing=Standing.DEMO, text="test"))
    project = builders.project(surroundings=Surroundings(eye=eye))
    shifted = builders.sheet(frame={"x": 40.0})
    assert pilots_line(project, shifted) == -250.0
    assert pilots_line(builders.project(), shifted) is None
