import pytest

from panelcad.editing.marks import add_dimension, add_note, in_line, pull_dimensions, revise_mark
from panelcad.editing.move import move_by
from panelcad.editing.remove import remove
from panelcad.errors import UnknownName
from panelcad.model.layout import layout
from panelcad.model.marked import measured
from panelcad.model.markup import Along, DrawingNote, Hook
from panelcad.model.project import Project
from tests.editing.scenes import one_instrument


def marked() -> Project:
    project, _ = add_dimension(one_instrument(), "new", "main", Hook(), Hook(part="gauge"), Along.ACROSS, 12.0)
    note = DrawingNote(id="note", plate="main", text="Keep the old screws", x=50.0, y=50.0, to=Hook(part="hole"))
    return add_note(project, "new", note)[0]


def value(project: Project) -> float:
    option = project.option("new")
    return measured(layout(project, option).plate("main"), option.dimensions[0]).value


def test_a_dimension_follows_its_item() -> None:
    assert value(marked()) == 10.0
    assert value(move_by(marked(), "new", ["hole"], 2.5, 0.0)) == 12.5


def test_a_note_is_moved_and_what_it_points_at_stays() -> None:
    moved = move_by(marked(), "new", ["note"], 5.0, -5.0).option("new")
    assert (moved.drawing_notes[0].x, moved.drawing_notes[0].y) == (55.0, 45.0)
    assert moved.drawing_notes[0].to == Hook(part="hole")
    assert moved.items == marked().option("new").items


def test_marks_are_revised_and_taken_away() -> None:
    project = revise_mark(marked(), "new", "note", text="Keep them")
    project = revise_mark(project, "new", "dimension-1", along=Along.UP)
    assert (project.option("new").drawing_notes[0].text, value(project)) == ("Keep them", 20.0)
    assert remove(project, "new", ["note", "dimension-1"]).option("new").marks() == ()
    with pytest.raises(UnknownName, match="dimension or note 'notes'"):
        revise_mark(project, "new", "notes", text="x")


def test_a_dimension_goes_with_its_part_and_a_note_stays_without_leader() -> None:
    option = remove(marked(), "new", ["gauge"]).option("new")
    assert option.dimensions == ()
    assert option.drawing_notes[0].to is None


def test_a_second_dimension_gets_the_next_number() -> None:
    again, name = add_dimension(marked(), "new", "main", Hook(), Hook(x=1.0), Along.STRAIGHT, 5.0)
    assert name == "dimension-2"
    assert len(again.option("new").dimensions) == 2


@pytest.mark.parametrize(
    ("along", "pull", "offset"),
    [
        (Along.ACROSS, (99.0, 3.0), 15.0),
        (Along.UP, (3.0, 99.0), 15.0),
        # From (0, 0) to (10, 20) the line stands off to the left, along (-20, 10) / √500.
        (Along.STRAIGHT, (-2.0, 1.0), 12.0 + 5.0**0.5),
        (Along.STRAIGHT, (1.0, 2.0), 12.0),
    ],
)
def test_only_a_pull_away_from_what_is_measured_counts(along, pull, offset) -> None:
    project = revise_mark(marked(), "new", "dimension-1", along=along)
    (pulled,) = pull_dimensions(project, "new", ["dimension-1", "note"], *pull).option("new").dimensions
    assert pulled.offset == pytest.approx(offset, abs=1e-6)


def test_lines_that_run_the_same_way_come_in_line() -> None:
    project, other = add_dimension(marked(), "new", "main", Hook(x=50.0, y=5.0), Hook(), Along.ACROSS, 8.0)
    project, _ = add_dimension(project, "new", "main", Hook(x=50.0, y=5.0), Hook(), Along.UP, 8.0)
    lined, found = in_line(project, "new", "dimension-1", 1.5)
    assert (found, lined.option("new").dimensions[0].offset) == (other, 13.0)
    assert in_line(project, "new", "dimension-1", 0.5) == (project, "")
    assert in_line(project, "new", "dimension-3", 100.0) == (project, "")
