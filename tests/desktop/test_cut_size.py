"""A cut made to measure takes another size by figures."""

from panelcad.editing.place import with_plate
from panelcad.model.shape import Circle, Rectangle
from tests import builders
from tests.desktop.next_dialog import in_dialog
from tests.desktop.test_panel_dialogs import choose, fill, press, titles


def add_cut(project, option_id):
    option = project.option(option_id)
    opening = builders.opening(Rectangle(width=100.0, height=60.0))
    cut = builders.cut("box", -50.0, -80.0, cutout=None, openings=(opening,), state="new")
    plate = option.plates[0]
    return project.with_option(with_plate(option, plate.revised(cuts=(*plate.cuts, cut))))


def test_a_size_is_typed_with_arithmetic_and_another_shape_chosen(hands) -> None:
    hands.window.bench.edit("A cut", add_cut)

    def size(dialog) -> None:
        fill(dialog, Width="110 + 1/2")
        press(dialog, "Take")

    def shape(dialog) -> None:
        choose(dialog, "Shape", "Circle")
        fill(dialog, Diameter="52,4")
        press(dialog, "Take")

    hands.click(-50, -80)
    for act in (size, shape):
        in_dialog(act)
        hands.action("panel.cut-size")
    document = hands.window.bench.document
    assert document.option.plates[0].cuts[-1].openings[0].shape == Circle(diameter=52.4)
    assert document.done[-2].after.option("new").plates[0].cuts[-1].openings[0].shape.width == 110.5
    assert titles(hands)[1:] == ["Shape and size of a cut"] * 2


def test_it_is_not_offered_for_a_cutout_of_the_library(hands) -> None:
    hands.click(0, 50)
    assert not hands.window.menus.actions["panel.cut-size"].isEnabled()
