import pytest

from panelcad.editing.place import place
from panelcad.editing.plates import (
    add_attach_screw,
    add_engraving,
    add_inner_opening,
    add_plate,
    remove_inner_opening,
    remove_plate,
    revise_inner_opening,
    revise_part,
    revise_plate,
    set_bends,
)
from panelcad.errors import EditRefused, UnknownName
from panelcad.model.hole import HoleForm
from panelcad.model.plate import Bend, Engraving, PlateState
from panelcad.model.shape import Circle
from tests import builders

SCREW = HoleForm(diameter=5.0, fastener=4.826)
KEPT = builders.project(builders.sheet(state="kept"))


def test_plates_come_and_go_with_what_is_on_them() -> None:
    made = add_plate(builders.project(), "new", builders.sheet())
    assert made.ids == ("main-2",)
    placed = place(made.project, "new", "main-2", builders.round_cutout(), 0.0, 0.0).project
    assert remove_plate(placed, "new", "main-2") == builders.project()
    with pytest.raises(EditRefused, match="is the only plate"):
        remove_plate(builders.project(), "new", "main")


def test_a_plate_under_an_overlay_stays() -> None:
    overlay = builders.sheet(id="over", name="Overlay", role="overlay", over="main")
    with pytest.raises(EditRefused, match="remove the overlay first"):
        remove_plate(builders.project(builders.sheet(), overlay), "new", "main")


def test_a_kept_plate_changes_in_name_and_state_only() -> None:
    assert revise_plate(KEPT, "new", "main", state=PlateState.NEW, name="Left").option("new").plates[0].name == "Left"
    for change in ({"thickness": 3.0}, {"alloy": "6061-T6"}):
        with pytest.raises(EditRefused, match="is kept"):
            revise_plate(KEPT, "new", "main", **change)
    with pytest.raises(EditRefused, match="is kept"):
        add_attach_screw(KEPT, "new", "main", SCREW, 0.0, 0.0)


def test_inner_openings_are_added_revised_and_removed() -> None:
    project = add_inner_opening(builders.project(), "new", "main", builders.opening(Circle(diameter=60.0), y=-80.0))
    moved = revise_inner_opening(project, "new", "main", 0, x=12.0)
    assert moved.option("new").plates[0].inner_openings[0].x == 12.0
    assert remove_inner_opening(moved, "new", "main", 0) == builders.project()


def test_screws_lettering_and_bends() -> None:
    project = add_attach_screw(builders.project(), "new", "main", SCREW, 290.0, 140.0).project
    made = add_attach_screw(project, "new", "main", SCREW, -290.0, 140.0)
    assert made.ids == ("attach-2",)
    words = Engraving(id="words", text="FLAPS", x=0.0, y=0.0, height=4.0)
    lettered = add_engraving(made.project, "new", "main", words)
    revised = revise_part(lettered.project, "new", "words", text="TRIM")
    assert revised.option("new").plates[0].engravings[0].text == "TRIM"
    bend = Bend(x1=0.0, y1=-50.0, x2=1.0, y2=-50.0, angle=90.0, inside_radius=3.0, direction="toward the pilot")
    assert set_bends(revised, "new", "main", (bend,)).option("new").plates[0].bends == (bend,)
    with pytest.raises(UnknownName, match="part of a plate 'nothing'"):
        revise_part(revised, "new", "nothing", text="x")
