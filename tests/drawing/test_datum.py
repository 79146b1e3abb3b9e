import pytest

from panelcad.drawing.box import overlap
from panelcad.drawing.ground import Boxes
from panelcad.drawing.inks import INKS, Ink
from panelcad.drawing.sheet import Sheet
from panelcad.drawing.sheets.datum import datum_clear_of
from panelcad.geometry.point import Point
from tests.drawing import papers

AT = Point(100.0, 100.0)


@pytest.mark.parametrize(
    "taken",
    [
        [],
        [(90.0, 104.0, 99.0, 112.0)],
        [(90.0, 90.0, 112.0, 99.0)],
        [(80.0, 80.0, 99.0, 125.0), (80.0, 80.0, 125.0, 99.0)],
    ],
)
def test_the_letters_stand_where_nothing_is_and_not_on_each_other(taken):
    datum = datum_clear_of(AT, Boxes(taken))
    assert not any(overlap(box, other) for box in datum.boxes for other in taken)
    nodes = datum.nodes(INKS[Ink.COLOUR])
    assert papers.overlapping(Sheet(300, 300, nodes, "")) == []
    assert [text.text for text in papers.texts(nodes)] == ["X", "Y", "A", "B"]
