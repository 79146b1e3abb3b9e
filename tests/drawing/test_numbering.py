from panelcad.drawing.numbering import Numbering, numbering
from panelcad.model.hole import BoltCircle, HoleForm, HoleGroup, HoleKind, Nutplate
from panelcad.model.layout import layout
from panelcad.model.plate import AttachScrew
from panelcad.model.project import Item
from panelcad.model.shape import Circle
from tests import builders

PLAIN = HoleForm(diameter=4.8, fastener=4.0)
NUTPLATE = HoleForm(
    diameter=4.8,
    fastener=4.0,
    kind=HoleKind.NUTPLATE,
    nutplate=Nutplate(rivet_diameter=2.5, rivet_spacing=17.5, flange_length=25.0, flange_width=8.0),
)


def numbers(*plates, items=(), **fields) -> Numbering:
    project = builders.project(*plates, items=items, **fields)
    return numbering(layout(project, project.options[0]))


def test_cuts_are_numbered_row_by_row_from_the_top_left():
    cuts = (
        builders.cut("low", -100, -80),
        builders.cut("right", 100, 62),
        builders.cut("left", -100, 60),
        builders.cut("middle", 0, 70),
    )
    assert numbers(builders.sheet(cuts=cuts)).cuts == {"left": "1", "middle": "2", "right": "3", "low": "4"}


def test_the_next_plate_goes_on_counting():
    first = builders.sheet(cuts=(builders.cut("a", 0, 0),))
    second = builders.sheet(id="sub", name="Sub-panel", cuts=(builders.cut("b", 0, 0),))
    assert numbers(first, second).cuts == {"a": "1", "b": "2"}


def test_openings_and_holes_follow_their_cut():
    screws = HoleGroup(form=PLAIN, bolt_circle=BoltCircle(diameter=89, count=4, first_angle=45), source=builders.SOURCE)
    gauge = builders.round_cutout(holes=(screws,))
    twin = builders.round_cutout(
        name="twin",
        openings=(builders.opening(Circle(diameter=20), x=-30), builders.opening(Circle(diameter=20), x=30)),
    )
    plate = builders.sheet(cuts=(builders.cut("a", -100, 0), builders.cut("b", 100, 0, cutout="twin")))
    found = numbers(plate, cutouts=(gauge, twin)).features
    assert found["a/opening"] == "1"
    assert [found[f"a/hole {i}"] for i in (1, 2, 3, 4)] == ["1.1", "1.2", "1.3", "1.4"]
    assert (found["b/opening 1"], found["b/opening 2"]) == ("2", "2.1")


def test_attach_screws_and_inner_openings_have_series_of_their_own():
    plate = builders.sheet(
        inner_openings=(builders.opening(Circle(diameter=50), x=200),),
        attach_screws=(
            AttachScrew(id="s-b", x=250, y=120, form=PLAIN),
            AttachScrew(id="s-a", x=-250, y=120, form=NUTPLATE),
        ),
    )
    found = numbers(plate).features
    assert found["s-a/attach screw"] == "S1"
    assert found["s-a/attach screw rivet 1"] == "S2"
    assert found["s-b/attach screw"] == "S4"
    assert found["main/inner opening 1"] == "P1"


def test_items_have_the_number_of_their_cut_and_letters_where_they_share_one():
    items = (
        builders.item("lower", 0, -20, cut="stack"),
        builders.item("upper", 0, 20, cut="stack"),
        builders.item("gauge", -150, 0, cut="a"),
        builders.item("blank", 150, 0),
        Item(id="remote", name="Remote box"),
    )
    plate = builders.sheet(cuts=(builders.cut("a", -150, 0), builders.cut("stack", 0, 0)))
    assert numbers(plate, items=items).items == {
        "gauge": "1",
        "upper": "2A",
        "lower": "2B",
        "blank": "3",
        "remote": "4",
    }
