import pytest

from panelcad.editing.place import place
from panelcad.editing.remove import remove
from panelcad.editing.rotate import rotate_by
from panelcad.editing.stack import add_to_stack, is_stack, move_in_stack, place_stack, settle
from panelcad.editing.swap import swap
from panelcad.errors import EditRefused
from panelcad.library.catalogue import packaged_catalogue
from panelcad.model.cutout import Bezel, Cutout, RackUnit
from panelcad.model.layout import layout
from panelcad.model.plate import CutState
from panelcad.model.project import Project
from panelcad.model.shape import Rectangle
from tests import builders

JOINT, CLEARANCE, RAILS = 0.5, 0.5, 160.02


def unit(name: str, height: float) -> Cutout:
    bezel = Bezel(shape=Rectangle(width=158.75, height=height), source=builders.SOURCE)
    rack = RackUnit(height=height, width=158.75, rail_distance=RAILS, source=builders.SOURCE)
    opening = builders.opening(Rectangle(width=RAILS, height=height + 1.0))
    return builders.round_cutout(name=name, openings=(opening,), bezel=bezel, rack=rack)


HIGH, LOW = unit("high", 50.0), unit("low", 33.0)


def three(state: str = "new") -> Project:
    plate = builders.sheet(height=400.0, state="reworked")
    project = place_stack(builders.project(plate), "new", "main", [HIGH, LOW, HIGH], 10.0, 100.0).project
    option = project.option("new")
    cuts = tuple(cut.revised(state=state) for cut in option.plates[0].cuts)
    return project.with_option(option.revised(plates=(option.plates[0].revised(cuts=cuts),)))


def opening(project: Project) -> tuple[float, float, float, float]:
    """left, bottom, right, top"""
    laid = layout(project, project.option("new")).plates[0]
    return tuple(round(edge, 6) for edge in laid.cuts[0].openings[0].contour.bounds)  # type: ignore[return-value]


def centres(project: Project) -> dict[str, float]:
    return {item.id: item.y for item in project.option("new").items}


def test_the_opening_holds_the_units_their_joints_and_the_clearance() -> None:
    height = 50.0 + 33.0 + 50.0 + 2 * JOINT + CLEARANCE
    assert opening(three()) == (10.0 - RAILS / 2, 100.0 - height, 10.0 + RAILS / 2, 100.0)
    assert centres(three()) == {
        "high": 100.0 - 0.25 - 25.0,
        "low": 100.0 - 0.25 - 50.0 - 0.5 - 16.5,
        "high-2": 100.0 - 0.25 - 50.0 - 0.5 - 33.0 - 0.5 - 25.0,
    }


def test_a_stack_of_library_units_is_one() -> None:
    cutouts = packaged_catalogue().cutouts
    units = [cutouts["rack-1-30"], cutouts["rack-1-65"], cutouts["rack-2-00"]]
    project = place_stack(builders.project(), "new", "main", units, 0.0, 120.0).project
    assert is_stack(project, project.option("new"), "stack")
    assert opening(project)[3] - opening(project)[1] == pytest.approx((1.30 + 1.65 + 2.00) * 25.4 + 1.5, abs=1e-6)


def test_a_unit_taken_out_leaves_a_smaller_stack_under_the_same_upper_edge() -> None:
    without = remove(three(), "new", ["low"])
    assert opening(without)[3] == 100.0
    assert opening(without)[1] == 100.0 - 100.0 - JOINT - CLEARANCE
    assert centres(without)["high-2"] == centres(without)["high"] - 50.0 - JOINT


def test_the_last_unit_takes_the_opening_along() -> None:
    left = remove(three(), "new", ["low", "high", "high-2"]).option("new")
    assert (left.items, left.plates[0].cuts) == ((), ())


def test_a_unit_changed_for_a_higher_one_grows_the_opening_downwards() -> None:
    changed = swap(three(), "new", "low", HIGH)
    assert opening(changed)[3] == 100.0
    assert opening(changed)[1] == opening(three())[1] - 17.0
    assert changed.option("new").item("low").name == "High 3"


def test_units_change_places_and_a_stack_is_found_in_the_order_it_stands() -> None:
    moved = move_in_stack(three(), "new", "low", 0)
    assert sorted(centres(moved), key=lambda one: -centres(moved)[one]) == ["low", "high", "high-2"]
    assert opening(moved) == opening(three())
    assert settle(moved, "new", "stack") == moved


def test_a_turned_stack_is_laid_along_its_own_axis() -> None:
    turned = rotate_by(three(), "new", ["stack"], 90.0)
    again = rotate_by(remove(turned, "new", ["low"]), "new", ["stack"], -90.0)
    assert opening(again)[3] - opening(again)[1] == pytest.approx(100.0 + JOINT + CLEARANCE, abs=2e-6)
    spread = centres(again)["high"] - centres(again)["high-2"]
    assert spread == pytest.approx(50.0 + JOINT, abs=2e-6)


def test_metal_already_cut_is_only_ever_enlarged() -> None:
    old = three("existing")
    smaller = remove(old, "new", ["low"])
    assert opening(smaller) == opening(old)
    assert smaller.option("new").plates[0].cuts[0].state is CutState.EXISTING
    assert centres(smaller)["high-2"] == centres(smaller)["high"] - 50.0 - JOINT
    larger = add_to_stack(old, "new", "stack", LOW, 3).project
    assert opening(larger)[1] == opening(old)[1] - 33.0 - JOINT
    assert larger.option("new").plates[0].cuts[0].state is CutState.ENLARGED


def test_a_single_unit_from_the_library_becomes_a_stack() -> None:
    placed = place(builders.project(), "new", "main", HIGH, 0.0, 0.0)
    grown = add_to_stack(placed.project, "new", "high-cut", LOW, 0)
    assert opening(grown.project)[3] == 51.0 / 2
    assert centres(grown.project)["low"] > centres(grown.project)["high"]


def test_what_cannot_be_stacked_is_told() -> None:
    with pytest.raises(EditRefused, match="'Round' is no rack unit"):
        add_to_stack(three(), "new", "stack", builders.round_cutout(), 0)
    placed = place(builders.project(), "new", "main", builders.round_cutout(), 0.0, 0.0)
    with pytest.raises(EditRefused, match="'Round' is no single rectangular opening"):
        add_to_stack(placed.project, "new", "round", HIGH, 0)
    with pytest.raises(EditRefused, match="at least one rack unit"):
        place_stack(placed.project, "new", "main", [], 0.0, 0.0)
    with pytest.raises(EditRefused, match="shares its opening"):
        swap(three(), "new", "low", builders.round_cutout())
