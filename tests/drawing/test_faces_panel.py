"""The whole panel: sheets, overlays, holes, lettering, trim, what stands in front."""

import base64

import pytest

from panelcad.drawing.appearance import Look, appearance_view
from panelcad.drawing.appearance_around import footwell, shafts
from panelcad.drawing.appearance_light import DAY, NIGHT
from panelcad.drawing.appearance_panel import panel_view
from panelcad.drawing.display import Colour, Group, Path, Picture, Text, walk
from panelcad.drawing.extent import extent
from panelcad.drawing.faces.inks import DARK
from panelcad.drawing.finish import finish
from panelcad.geometry.contour import Vertex, closed_chain, rectangle
from panelcad.geometry.point import Point
from panelcad.library.catalogue import packaged_catalogue
from panelcad.model.appearance import Appearance, Finish, Shield, Trim, Yokes
from panelcad.model.layout import layout
from panelcad.model.photograph import Photograph
from panelcad.model.plate import Engraving
from panelcad.model.shape import Circle, Rectangle
from panelcad.model.surroundings import MovingPart, Surroundings, Volume
from tests import builders

PLAIN = Appearance(shield=Shield.NONE, trim=Trim.NONE, yokes=Yokes.NONE)
ALTIMETER = packaged_catalogue().cutouts["altimeter-3-1-8"]


def _view(project, look=None):
    return panel_view(layout(project, project.options[0]), look or Look(appearance=PLAIN))


def _owners(groups):
    return [node.owner for node in walk(groups) if isinstance(node, Group) and node.owner]


def test_every_item_and_plate_is_there_once():
    items = tuple(builders.item(f"i{n}", 90.0 * n - 90, 0.0, ALTIMETER.name) for n in range(3))
    project = builders.project(builders.sheet(), items=items, cutouts=(ALTIMETER,))

    assert sorted(_owners(_view(project))) == ["i0", "i1", "i2", "main"]


def test_an_overlay_lies_under_the_bezels_of_the_sheet_below():
    hole = builders.opening(Circle(diameter=100.0))
    over = builders.sheet(id="over", name="Overlay", role="overlay", over="main", inner_openings=(hole,))
    project = builders.project(
        builders.sheet(engravings=(Engraving(id="word", text="FUEL", x=0, y=90, height=4),)),
        over,
        items=(builders.item("one", 0.0, 0.0, ALTIMETER.name),),
        cutouts=(ALTIMETER,),
    )

    assert _owners(_view(project)) == ["main", "word", "over", "one"]


def test_an_overlay_has_holes_to_look_through():
    hole = builders.opening(Circle(diameter=100.0))
    over = builders.sheet(id="over", name="Overlay", role="overlay", over="main", inner_openings=(hole,))
    project = builders.project(builders.sheet(), over)
    sheet = next(node for node in walk(_view(project)) if isinstance(node, Group) and node.owner == "over")

    assert any(isinstance(n, Path) and n.fill and len(n.outlines) == 2 for n in sheet.nodes)
    assert not any(isinstance(n, Path) and n.fill == DARK for n in sheet.nodes)


def test_a_cut_nothing_is_fitted_in_is_dark():
    plate = builders.sheet(cuts=(builders.cut("hole", 50.0, 20.0),))
    project = builders.project(plate)
    dark = [n for n in walk(_view(project)) if isinstance(n, Path) and n.fill == DARK]

    assert [n.bounds for n in dark] == [pytest.approx((50 - 39.6875, 20 - 39.6875, 50 + 39.6875, 20 + 39.6875))]


def test_engravings_are_lettered_where_they_stand():
    words = Engraving(id="e1", text="PITOT HEAT", x=12.5, y=-40.0, height=3.5, rotation=90.0)
    project = builders.project(builders.sheet(engravings=(words,)))
    text = next(n for n in walk(_view(project)) if isinstance(n, Text))

    assert (text.text, text.at, text.height, text.rotation) == ("PITOT HEAT", Point(12.5, -40.0), 3.5, 90.0)


def test_plates_stand_where_the_aircraft_has_them():
    low = builders.sheet(id="low", name="Pedestal", role="pedestal face", outline=Rectangle(width=200, height=100))
    moved = low.revised(frame={"x": 30.0, "y": -400.0, "z": -50.0})
    project = builders.project(builders.sheet(), moved)
    placed = {g.nodes[0].owner: g.placement for g in _view(project) if g.nodes and g.nodes[0].owner}

    assert (placed["low"].x, placed["low"].y) == (30.0, -400.0)


@pytest.mark.parametrize("kind", list(Finish))
def test_finish_stays_on_the_sheet_and_is_light_to_paint(kind):
    outline = rectangle(Point(0, 0), 900, 350, 20)
    surface = finish(outline, Appearance(finish=kind))

    assert extent((surface,)) == pytest.approx((-450, -175, 450, 175))
    assert len(surface.nodes) <= 4


def _photo(plate="main"):
    content = base64.b64encode(b"\x89PNG and more").decode()
    return Photograph(plate=plate, name="panel.png", content=content, x=-300.0, y=-150.0, width=600.0, height=300.0)


def _with_photo(lighting, plate="main"):
    project = builders.project(
        builders.sheet(), items=(builders.item("one", 0.0, 0.0, ALTIMETER.name),), cutouts=(ALTIMETER,)
    )
    return list(walk(_view(project, Look(lighting, appearance=PLAIN.revised(photograph=_photo(plate))))))


def test_a_photograph_lies_on_the_sheet_under_the_items():
    nodes = _with_photo(DAY)
    picture = next(n for n in nodes if isinstance(n, Picture))

    assert picture.bounds == (-300.0, -150.0, 300.0, 150.0)
    assert nodes.index(picture) < next(i for i, n in enumerate(nodes) if isinstance(n, Group) and n.owner == "one")


def test_a_photograph_of_another_plate_stays_away():
    assert not any(isinstance(n, Picture) for n in _with_photo(DAY, "pedestal"))


def test_a_photograph_is_darkened_at_night():
    nodes = _with_photo(NIGHT)
    after = nodes[next(i for i, n in enumerate(nodes) if isinstance(n, Picture)) + 1]

    assert after.fill.opacity > 120


@pytest.mark.parametrize("trim", [Trim.RUBBER, Trim.BRIGHT])
def test_trim_leaves_the_edge_where_it_is(trim):
    project = builders.project(builders.sheet())
    view = _view(project, Look(appearance=PLAIN.revised(trim=trim)))
    outlines = [o.bounds for n in walk(view) if isinstance(n, Path) for o in n.outlines]

    assert (-300.0, -150.0, 300.0, 150.0) in outlines


def test_glareshield_covers_the_upper_edge_only():
    project = builders.project(builders.sheet())
    with_it = _view(project, Look(appearance=PLAIN.revised(shield=Shield.PADDED)))
    without = _view(project)

    assert extent(with_it)[3] > extent(without)[3] + 20
    assert extent(with_it)[1] == extent(without)[1]


def test_yokes_stand_at_their_shafts():
    volume = Volume(shape=Circle(diameter=30.0), x=-120.0, y=-60.0, near=-200.0, far=300.0)
    shaft = MovingPart(id="shaft", name="Left control shaft", plate="main", volume=volume)
    project = builders.project(builders.sheet(), surroundings=Surroundings(moving_parts=(shaft,)))
    view = _view(project, Look(appearance=PLAIN.revised(yokes=Yokes.OUTLINE)))
    yoke = next(n for n in walk(view) if isinstance(n, Group) and n.title == "Left control shaft")

    assert (yoke.placement.x, yoke.placement.y) == (-120.0, -60.0)


@pytest.mark.parametrize(("x", "dark"), [(0.0, 1), (60.0, 0)])
def test_it_is_dark_in_the_notch_a_control_column_passes(x, dark):
    """A notch 40 wide and 50 high in the lower edge: dark where the column stands in it, else nothing is drawn."""
    notched = closed_chain(
        (
            *(Vertex(-100.0, 0.0), Vertex(-20.0, 0.0), Vertex(-20.0, 50.0), Vertex(20.0, 50.0)),
            *(Vertex(20.0, 0.0), Vertex(100.0, 0.0), Vertex(100.0, 120.0), Vertex(-100.0, 120.0)),
        )
    )
    volume = Volume(shape=Circle(diameter=20.0), x=x, y=20.0, near=-100.0, far=100.0)
    column = MovingPart(id="shaft", name="Control shaft", plate="main", volume=volume)

    groups = footwell(notched, shafts((column,)))

    assert len(groups) == dark
    assert all(extent((group,)) == pytest.approx((-20.0, 0.0, 20.0, 50.0)) for group in groups)


def test_look_overrides_the_project():
    project = builders.project(builders.sheet(), items=(builders.item("a", 0, 0, "rack-com"),), cutouts=(_com(),))
    flight = project.flight.revised(com=(("135.975", "118.005"),))
    laid = layout(project, project.options[0])
    texts = {n.text for n in walk(appearance_view(laid, "main", Look(flight=flight))) if isinstance(n, Text)}

    assert "135.975" in texts


def _com():
    return packaged_catalogue().cutouts["rack-com"]


def test_colours_of_the_option_are_used():
    project = builders.project(builders.sheet(engravings=(Engraving(id="e", text="A", x=0, y=0, height=3),)))
    view = _view(project, Look(appearance=PLAIN.revised(placard="#ffcc00")))

    assert next(n for n in walk(view) if isinstance(n, Text)).colour == Colour.parse("#ffcc00")
