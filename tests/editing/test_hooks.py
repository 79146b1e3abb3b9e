import pytest

from panelcad.editing.hooks import hook_near, stand_off
from panelcad.geometry.point import Point
from panelcad.model.layout import PlateLayout, layout
from panelcad.model.markup import Along, Hold, Hook
from tests.editing.scenes import row


def sheet() -> PlateLayout:
    """Square bezels of 40 mm at x = -100 and 100 on a sheet of 600 × 300 mm."""
    project = row(-100.0, 100.0)
    return layout(project, project.option("new")).plate("main")


@pytest.mark.parametrize(
    ("at", "hook"),
    [
        (Point(-99.0, 1.0), Hook(part="a")),
        (Point(-81.0, 0.5), Hook(part="a", hold=Hold.RIGHT)),
        (Point(100.0, 19.0), Hook(part="b", hold=Hold.TOP)),
        (Point(299.0, 1.0), Hook(part="main", hold=Hold.RIGHT)),
        (Point(0.5, 0.5), Hook()),
        (Point(50.0, 50.0), Hook(x=50.0, y=50.0)),
    ],
)
def test_the_nearest_hold_is_taken_or_the_bare_point(at: Point, hook: Hook) -> None:
    assert hook_near(sheet(), at, 4.0) == hook


@pytest.mark.parametrize(
    ("pointer", "meant"),
    [
        (Point(10.0, 80.0), (Along.ACROSS, 80.0)),
        (Point(10.0, -15.0), (Along.ACROSS, -15.0)),
        (Point(130.0, 20.0), (Along.UP, 130.0)),
        (Point(50.0, 25.0), (Along.STRAIGHT, 0.0)),
    ],
)
def test_where_the_line_is_pulled_says_what_is_meant(pointer: Point, meant: tuple[Along, float]) -> None:
    assert stand_off(Point(0.0, 0.0), Point(100.0, 50.0), pointer) == meant
