import pytest

from panelcad.model.screw_sizes import SCREW_SIZES, named_screw, screw_size


@pytest.mark.parametrize(
    ("name", "inches"),
    [("#4", 0.112), ("#6", 0.138), ("#8", 0.164), ("#10", 0.190)],
)
def test_nominal_diameters_are_those_of_asme_b1_1(name: str, inches: float) -> None:
    assert named_screw(name).diameter == pytest.approx(inches * 25.4, abs=1e-6)


@pytest.mark.parametrize(
    ("name", "normal_drill"),
    [("#4", 3.3), ("#6", 4.3), ("#8", 5.0), ("#10", 5.6)],
)
def test_normal_holes_are_near_the_metric_drills_of_asme_b18_2_8(name: str, normal_drill: float) -> None:
    """Machinery's Handbook gives inch drills and metric ones for the same normal fit."""
    assert named_screw(name).holes[-1].diameter == pytest.approx(normal_drill, abs=0.05)


def test_every_hole_lets_its_screw_through_and_the_wider_comes_last() -> None:
    for size in SCREW_SIZES:
        widths = [hole.diameter for hole in size.holes]
        assert size.diameter < widths[0]
        assert widths == sorted(widths)
        assert size.usual in size.holes


@pytest.mark.parametrize(
    ("typed", "name"),
    [
        ("#8", "#8"),
        (" #8-32 ", "#8"),
        ("No. 8", "#8"),
        ("no10", "#10"),
        ("M4", "M4"),
        ("m4 x 0,7", "M4"),
        ("M5×.8", "M5"),
    ],
)
def test_a_screw_is_known_by_the_names_people_say(typed: str, name: str) -> None:
    assert screw_size(typed) is named_screw(name)


@pytest.mark.parametrize("typed", ["", "8", "0.164", "#7", "M40", "#8 mm", "4 M"])
def test_what_names_no_screw_is_none(typed: str) -> None:
    assert screw_size(typed) is None
