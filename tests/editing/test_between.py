import pytest

from panelcad.editing.between import centre_in_row
from panelcad.editing.extents import Axis
from panelcad.editing.marks import add_note
from panelcad.errors import EditRefused
from panelcad.model.markup import DrawingNote
from tests.editing.scenes import row, where


def test_one_thing_is_centred_between_its_neighbours() -> None:
    # Squares of 40 mm at 0, 60 and 200: the free way between the outer two is 160, so the middle is 100.
    assert where(centre_in_row(row(0.0, 60.0, 200.0, 300.0), "new", ["b"], Axis.ACROSS))["b"] == (100.0, 0.0)


def test_of_three_the_last_is_centred_between_the_first_two() -> None:
    assert where(centre_in_row(row(0.0, 60.0, 200.0, 320.0), "new", ["d", "a", "b"], Axis.ACROSS)) == {
        "a": (0.0, 0.0),
        "b": (160.0, 0.0),
        "c": (200.0, 0.0),
        "d": (320.0, 0.0),
    }


@pytest.mark.parametrize(("ids", "axis"), [(["a"], Axis.ACROSS), (["b"], Axis.UP)])
def test_without_a_neighbour_on_either_side_it_is_refused(ids, axis) -> None:
    with pytest.raises(EditRefused, match="neighbour on either side"):
        centre_in_row(row(0.0, 60.0, 200.0), "new", ids, axis)


def test_a_note_stands_in_no_row() -> None:
    note = DrawingNote(id="note", plate="main", text="x", x=60.0, y=0.0)
    with pytest.raises(EditRefused, match="stands in a row"):
        centre_in_row(add_note(row(0.0, 200.0), "new", note)[0], "new", ["note"], Axis.ACROSS)
