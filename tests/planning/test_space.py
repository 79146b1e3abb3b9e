import pytest

from panelcad.checks.run import check
from panelcad.editing.stack import place_stack
from panelcad.library.catalogue import packaged_catalogue
from panelcad.model.cutout import Body, BodyKind
from panelcad.model.finding import Severity
from panelcad.model.shape import Circle
from panelcad.planning.equipment import Equipment, equipment
from panelcad.planning.space import judge_space, space
from tests import builders
from tests.planning import kit

CUTOUTS = packaged_catalogue().cutouts


def of(project: object) -> Equipment:
    return equipment(project, project.option("new"))


def counts(found: Equipment) -> dict[str, int]:
    return {room.cutout: room.count for room in space(found).rooms}


def test_an_empty_sheet_is_free_all_over() -> None:
    (plate,) = space(of(builders.project())).plates
    assert plate.area == pytest.approx(600.0 * 300.0)
    assert (plate.covered, plate.free_width_share, plate.deepest, plate.depth_left) == (0, 1, 0, None)


def test_area_and_free_width_of_a_single_hole() -> None:
    """A circle of 79.375 mm covers 4948.3 mm² and stands in 79.375 of 600 mm of width."""
    project = builders.project(builders.sheet(cuts=(builders.cut("c1", 0, 0),)))
    (plate,) = space(of(project)).plates
    assert plate.covered == pytest.approx(4948.3, rel=1e-3)
    assert plate.free_width_share == pytest.approx(1 - 79.375 / 600, abs=1e-4)


def test_two_holes_one_above_the_other_take_the_width_once() -> None:
    project = builders.project(builders.sheet(cuts=(builders.cut("c1", 0, 80), builders.cut("c2", 0, -80))))
    (plate,) = space(of(project)).plates
    assert plate.free_width_share == pytest.approx(1 - 79.375 / 600, abs=1e-4)


def test_a_stack_says_how_much_of_its_height_is_left() -> None:
    units = [CUTOUTS["rack-1-30"], CUTOUTS["rack-2-00"]]
    project = place_stack(builders.project(builders.sheet(height=400.0)), "new", "main", units, 0.0, 150.0).project
    (stack,) = space(of(project)).plates[0].stacks
    assert stack.left == pytest.approx(0.0, abs=1e-6)
    option = project.option("new")
    lower = option.revised(items=option.items[:1])
    (stack,) = space(of(project.with_option(lower))).plates[0].stacks
    assert stack.left == pytest.approx((2.00 * 25.4) + project.profile.stack_joint)


def test_room_for_more_is_found_until_the_sheet_is_full() -> None:
    assert counts(of(builders.project()))["airspeed-3-1-8"] == 4
    small = builders.sheet(width=100.0, height=100.0)
    assert counts(of(builders.project(small)))["airspeed-3-1-8"] == 1
    assert counts(of(builders.project(builders.sheet(width=90.0, height=90.0))))["airspeed-3-1-8"] == 0


def test_a_rib_behind_takes_the_room_of_what_is_deep() -> None:
    rib = {
        "id": "rib",
        "name": "Rib",
        "kind": "rib",
        "plate": "main",
        "volume": {
            "shape": {"kind": "rectangle", "width": 110.0, "height": 110.0},
            "x": 0.0,
            "y": 0.0,
            "near": 100.0,
            "far": 150.0,
        },
    }
    project = builders.project(builders.sheet(width=110.0, height=110.0), surroundings={"obstacles": (rib,)})
    assert counts(of(project))["airspeed-3-1-8"] == 0
    assert counts(of(project))["outlet-usb"] > 0


def test_faces_are_counted_before_and_after() -> None:
    gauge = kit.unit("gauge", provides=("airspeed",), place="panel", cutout="round")
    here = {"cutout": "round", "plate": "main"}
    project = kit.project(
        gauge,
        items=(kit.fit("gauge", **here),),
        as_found_items=(kit.fit("gauge", **here), kit.fit("gauge", "second", x=200.0, **here)),
    )
    found = space(of(project))
    assert (found.faces_before, found.faces) == (2, 1)


def test_what_does_not_fit_or_has_no_place_is_told() -> None:
    cuts = (builders.cut("c1", 0, 0), builders.cut("c2", 20, 0))
    waiting = builders.item("late", 0, 0, plate=None)
    project = builders.project(builders.sheet(cuts=cuts), items=(waiting,))
    found = of(project)
    rules = {f.rule: f for f in judge_space(found, check(project, found.option))}
    report = check(project, found.option)
    assert set(rules) == {"not-placed", *(f.rule for f in report.findings if f.severity is Severity.ERROR)}
    assert len(rules) > 1
    assert rules["not-placed"].items == ("late",)
    assert space(found).fits is False
    assert space(of(builders.project())).fits is True


@pytest.mark.parametrize(("x", "left"), [(-150.0, 180.0), (150.0, None)])
def test_depth_is_judged_only_where_a_limit_lies(x: float, left: float | None) -> None:
    """A firewall 300 mm behind the left half only; a case of 120 mm in front of it, or beside it."""
    firewall = {
        "id": "firewall",
        "name": "Firewall",
        "plate": "main",
        "shape": {"kind": "rectangle", "width": 300.0, "height": 300.0},
        "x": -150.0,
        "y": 0.0,
        "at_origin": 300.0,
    }
    case = Body(kind=BodyKind.CASE, shape=Circle(diameter=79.0), far=120.0, source=builders.SOURCE)
    cutout = builders.round_cutout(bodies=(case,))
    project = builders.project(
        builders.sheet(cuts=(builders.cut("c1", x, 0),)),
        items=(builders.item("i1", x, 0, cut="c1"),),
        cutouts=(cutout,),
        surroundings={"depth_limits": (firewall,)},
    )
    (plate,) = space(of(project)).plates
    assert plate.deepest == pytest.approx(120.0)
    assert plate.depth_left == (None if left is None else pytest.approx(left))
