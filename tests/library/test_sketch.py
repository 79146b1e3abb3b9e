import math
from pathlib import Path

import pytest

from panelcad.errors import UnusableInput
from panelcad.library.catalogue import whole_catalogue
from panelcad.library.own import own_file, with_own
from panelcad.library.sketch import SHAPES, ScrewPattern, Screws, Sketch, cutout_of, name_of, shape_of
from panelcad.model.cutout import BodyKind, Mounting
from panelcad.model.layout import hole_spots
from panelcad.model.shape import Circle, Rectangle
from panelcad.units import LengthUnit

HOLE = {"hole": 4.3, "fastener": 3.5}


def sketch(**fields: object) -> Sketch:
    plain = {"title": "Stick timer", "unit": LengthUnit.MM, "opening": Circle(diameter=57.15), "source": "measured"}
    return Sketch(**(plain | fields))


def test_a_sketch_becomes_a_cutout() -> None:
    made = cutout_of(
        sketch(
            bezel=Rectangle(width=60.0, height=60.0),
            bezel_thickness=3.0,
            case=Circle(diameter=55.0),
            case_depth=80.0,
            connector_room=25.0,
        )
    )
    assert made.name == "own-stick-timer"
    assert [(body.kind, body.near, body.far) for body in made.bodies] == [
        (BodyKind.CASE, 0.0, 80.0),
        (BodyKind.CONNECTOR, 80.0, 105.0),
    ]
    assert str(made.openings[0].source) == "measured (entered by the user)"


def test_what_goes_in_a_tray_is_a_tray() -> None:
    made = cutout_of(sketch(mounting=Mounting.TRAY, case=Rectangle(width=158.0, height=40.0), case_depth=200.0))
    assert made.bodies[0].kind is BodyKind.TRAY


@pytest.mark.parametrize(
    ("screws", "spots"),
    [
        (Screws(), None),
        (Screws(ScrewPattern.SIDES, 40.0, **HOLE), [(-20, 0), (20, 0)]),
        (Screws(ScrewPattern.CORNERS, 40.0, 30.0, **HOLE), [(-20, -15), (20, -15), (20, 15), (-20, 15)]),
    ],
)
def test_screws_stand_where_they_are_measured(screws: Screws, spots: list[tuple[float, float]] | None) -> None:
    holes = cutout_of(sketch(screws=screws)).holes
    assert [(spot.x, spot.y) for group in holes for spot in hole_spots(group)] == (spots or [])


def test_four_screws_on_a_circle_stand_on_the_diagonals() -> None:
    """As those of a standard round instrument: a 66.675 mm circle is a square of 47.147 mm."""
    (group,) = cutout_of(sketch(screws=Screws(ScrewPattern.RING, 66.675, **HOLE))).holes
    half = 66.675 / math.sqrt(2) / 2
    assert {(round(abs(spot.x), 6), round(abs(spot.y), 6)) for spot in hole_spots(group)} == {(round(half, 6),) * 2}


@pytest.mark.parametrize("kind", SHAPES)
def test_every_shape_is_made_of_its_dimensions(kind: str) -> None:
    sizes = {"corner_radius": 1.0, "flat_depth": 1.0, "key_depth": 2.0, "key_width": 3.0, "width": 20.0, "height": 10.0}
    shape = shape_of(kind, {size: sizes.get(size, 30.0) for size in SHAPES[kind]})
    assert shape.kind == kind


@pytest.mark.parametrize(
    ("fields", "told"),
    [
        ({"title": " - "}, "title: it is empty"),
        ({"source": ""}, "source: it is empty"),
        ({"opening": None}, "an opening, holes, a bezel or bodies"),
        ({"screws": Screws(ScrewPattern.SIDES, 40.0, hole=0.0, fastener=3.0)}, "diameter"),
        ({"case": Circle(diameter=5.0)}, "far"),
    ],
)
def test_what_cannot_be_is_told_in_one_sentence(fields: dict[str, object], told: str) -> None:
    with pytest.raises(UnusableInput, match=told):
        cutout_of(sketch(**fields))


def test_a_shape_that_cannot_be_is_told() -> None:
    with pytest.raises(UnusableInput, match="slot: it is not usable; expected a slot at least as long"):
        shape_of("slot", {"length": 5.0, "width": 6.0})


@pytest.mark.parametrize(
    ("title", "name"), [("Größe 2½", "own-grosse-2-1-2"), ("x" * 200, "own-" + "x" * 96), ("Ω meter", "own-meter")]
)
def test_names_are_made_of_plain_letters(title: str, name: str) -> None:
    assert name_of(title) == name


def test_a_sketch_goes_into_the_users_library_and_comes_back(tmp_path: Path) -> None:
    made = cutout_of(sketch())
    file = own_file(LengthUnit.MM, tmp_path)
    file.write_bytes(with_own(made, file))
    assert whole_catalogue(tmp_path).cutout("own-stick-timer") == made
