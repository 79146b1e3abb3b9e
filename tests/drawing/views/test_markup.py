import pytest

from panelcad.drawing.display import Measured, Path, Text
from panelcad.drawing.layers import Layer
from panelcad.drawing.sheet import Sheet
from panelcad.drawing.sheets.front import front_page
from panelcad.drawing.style import SCREEN_LIGHT, paper_style
from panelcad.drawing.views.markup import markup_view
from panelcad.model.layout import layout
from panelcad.model.markup import Along, Dimension, DrawingNote, Hook
from tests import builders
from tests.drawing import papers


def marked(*dimensions: Dimension, notes: tuple[DrawingNote, ...] = ()):
    project = builders.project(
        builders.sheet(cuts=(builders.cut("a", -100, 0), builders.cut("b", 60, 40)), state="new")
    )
    option = project.options[0].revised(dimensions=dimensions, drawing_notes=notes)
    return project.with_option(option)


def dimension(along: Along, offset: float = 50.0) -> Dimension:
    return Dimension(id="d1", plate="main", start=Hook(part="a"), end=Hook(part="b"), along=along, offset=offset)


def view(project, style=SCREEN_LIGHT):
    return markup_view(layout(project, project.options[0]), "main", style)


@pytest.mark.parametrize(
    ("along", "value", "line"),
    [
        (Along.ACROSS, "160.00", (-100, 50, 60, 50)),
        (Along.UP, "40.00", (-50, 0, -50, 40)),
        (Along.STRAIGHT, "164.92", None),
    ],
)
def test_a_dimension_shows_its_distance_between_its_parts(along, value, line):
    (group,) = view(marked(dimension(along)))
    path, text, reach = group.nodes
    assert (group.owner, group.layer) == ("d1", Layer.DIMENSIONS)
    assert text.text == value
    assert reach.layer == Layer.REACH
    assert reach.nodes[0].outlines == path.outlines[:1]
    assert reach.nodes[0].pen is None
    if line:
        assert path.outlines[0].bounds == pytest.approx(line)


@pytest.mark.parametrize(("offset", "rotation"), [(50.0, 0.0), (-50.0, 0.0)])
def test_a_value_is_read_from_below_or_from_the_right(offset, rotation):
    (group,) = view(marked(dimension(Along.ACROSS, offset)))
    assert group.nodes[1].rotation == rotation
    (upward,) = view(marked(dimension(Along.UP, offset)))
    assert upward.nodes[1].rotation == 90.0


def test_values_have_screen_size_on_the_screen_and_their_height_on_paper():
    project = marked(dimension(Along.ACROSS))
    (on_screen,) = view(project)
    (on_paper,) = view(project, paper_style(0.5))
    assert on_screen.nodes[1].measured is Measured.PIXELS
    assert on_paper.nodes[1].height * 0.5 == 2.5


def test_a_note_points_at_its_part():
    note = DrawingNote(id="n1", plate="main", text="Keep clear", x=0, y=100, to=Hook(part="b"))
    (group,) = view(marked(notes=(note,)))
    leader, text = group.nodes
    assert leader.outlines[0].vertices[-1].point == (60, 40)
    assert text.text == "Keep clear"


def test_dimensions_and_notes_stand_on_the_sheet_without_covering_anything():
    notes = tuple(DrawingNote(id=f"n{i}", plate="main", text="Keep clear of this", x=-100, y=0) for i in range(4))
    project = marked(dimension(Along.ACROSS, 0.0), notes=notes)
    subject = papers.shown(project, project.options[0])
    page = front_page(subject, subject.laid.plates[0])
    words = [node.text for node in papers.texts(page.nodes)]
    assert words.count("Keep clear of this") == 4
    assert "160.00" in words
    assert papers.overlapping(Sheet(page.paper.width, page.paper.height, page.nodes, "")) == []
    assert any(isinstance(node, Path) for node in page.nodes)
    assert not [node for node in page.nodes if isinstance(node, Text) and node.text == ""]


@pytest.mark.parametrize(("along", "offset"), [(Along.ACROSS, 180.0), (Along.ACROSS, -190.0), (Along.UP, 340.0)])
def test_no_dimension_beside_the_sheet_runs_through_ordinates(along, offset):
    """The sheet is 600 by 300: each of these lines stands where ordinates stand without it."""
    project = marked(dimension(along, offset))
    subject = papers.shown(project, project.options[0])

    page = front_page(subject, subject.laid.plates[0])

    assert papers.crossed(Sheet(page.paper.width, page.paper.height, page.nodes, "")) == set()
    assert f"{160 if along is Along.ACROSS else 40}.00" in {node.text for node in papers.texts(page.nodes)}
