import pytest
from pydantic import ValidationError

from panelcad.model.cutout import Bezel
from panelcad.model.layout import layout
from panelcad.model.marked import measured
from panelcad.model.markup import Along, Dimension, DrawingNote, Hold, Hook
from panelcad.model.project import Option, Project
from panelcad.model.shape import Rectangle
from tests import builders

BEZEL = Bezel(shape=Rectangle(width=100.0, height=60.0), x=5.0, source=builders.SOURCE)


def gauges() -> Project:
    plate = builders.sheet(cuts=(builders.cut("hole", -100.0, 30.0),))
    items = (builders.item("left", -100.0, 30.0, cut="hole"), builders.item("right", 100.0, -10.0))
    return builders.project(plate, items=items, cutouts=(builders.round_cutout(bezel=BEZEL),))


def marked(project: Project, *dimensions: Dimension) -> Option:
    return project.option("new").revised(dimensions=dimensions)


def value(start: Hook, end: Hook, along: Along = Along.STRAIGHT) -> float:
    project = gauges()
    option = marked(project, Dimension(id="d", plate="main", start=start, end=end, along=along))
    plate = layout(project.with_option(option), option).plate("main")
    return measured(plate, option.dimensions[0]).value


def test_distances_between_centres_across_up_and_straight() -> None:
    ends = Hook(part="left"), Hook(part="right")
    assert value(*ends, Along.ACROSS) == 200.0
    assert value(*ends, Along.UP) == 40.0
    assert value(*ends) == pytest.approx((200.0**2 + 40.0**2) ** 0.5, abs=1e-12)


def test_distances_from_bezel_edges_cuts_the_sheet_and_the_datum() -> None:
    bezel_right, bezel_left = Hook(part="left", hold=Hold.RIGHT), Hook(part="right", hold=Hold.LEFT)
    assert value(bezel_right, bezel_left, Along.ACROSS) == 100.0
    assert value(Hook(part="hole", hold=Hold.TOP), Hook(part="main", hold=Hold.TOP), Along.UP) == 150.0 - 30.0 - 39.6875
    assert value(Hook(), Hook(part="right"), Along.ACROSS) == 100.0
    assert value(Hook(part="right", x=1.0), Hook(x=100.0), Along.ACROSS) == 1.0


def test_marks_name_what_is_there() -> None:
    with pytest.raises(ValidationError, match="holds on to 'gone', which is not there"):
        marked(gauges(), Dimension(id="d", plate="main", start=Hook(part="gone"), end=Hook()))
    with pytest.raises(ValidationError, match="drawn on plate 'side', which is not there"):
        gauges().option("new").revised(drawing_notes=(DrawingNote(id="n", plate="side", text="here", x=0.0, y=0.0),))
    with pytest.raises(ValidationError, match="the id 'left' is used 2 times"):
        marked(gauges(), Dimension(id="left", plate="main", start=Hook(x=1.0), end=Hook()))
