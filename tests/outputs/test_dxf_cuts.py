"""Finish, corner relief, small holes, lead-ins, doubled and tiny pieces: what makes a cutting file fit the shop."""

import math

import pytest

from panelcad.errors import UnusableInput
from panelcad.geometry.contour import Chain, Rounded, Vertex, circle, closed_chain, rectangle
from panelcad.geometry.gap import contains, gap
from panelcad.geometry.point import Point, distance
from panelcad.geometry.segment import Arc
from panelcad.model.hole import HoleForm, HoleGroup, Spot
from panelcad.model.plate import Engraving
from panelcad.model.profile import Profile
from panelcad.model.shape import Circle, Corner, Outline, Rectangle
from panelcad.outputs.dxf import cutting_plan
from panelcad.outputs.dxf_clean import cleaned
from panelcad.outputs.dxf_layers import Layer
from panelcad.outputs.dxf_options import CornerRelief, DxfOptions, FaceUp, LeadIns, Origin, SmallHoles
from panelcad.outputs.dxf_plan import Loop, Plan
from panelcad.outputs.dxf_relief import tight_corners, with_relief
from panelcad.units import LengthUnit
from tests.builders import SOURCE, cut, opening, project, sheet
from tests.outputs.panels import HOLES

HERE = Point(0.0, 0.0)
WINDOW = opening(Rectangle(width=50.0, height=30.0, corner_radius=3.0))
SHARP = opening(Rectangle(width=50.0, height=30.0))


def drilled(name):
    return cut(name, 0.0, -60.0, None, holes=(HoleGroup(form=HOLES[name], spots=(Spot(x=0.0, y=0.0),), source=SOURCE),))


def plan_of(*cuts, options=None, profile=None, **plate):
    made = project(sheet(cuts=cuts, **{"state": "new"} | plate), profile=profile or Profile())
    return cutting_plan(made, made.option("new"), "main", options or DxfOptions())


def loops(plan, layer):
    return [loop.contour for loop in plan.loops if loop.layer is layer]


def test_a_finish_enlarges_cuts_and_shrinks_the_outline():
    plan = plan_of(cut("gauge", 0.0, 0.0), profile=Profile(finish_thickness=0.05))

    assert loops(plan, Layer.CUTOUT) == [circle(HERE, 79.475)]
    assert loops(plan, Layer.OUTLINE)[0].bounds == pytest.approx((-299.95, -149.95, 299.95, 149.95))
    assert any("cut sizes for a finish 0.0500 mm thick" in label.text for label in plan.labels)


def test_a_finish_too_thick_for_the_sheet_is_refused():
    lower_left = DxfOptions(origin=Origin.LOWER_LEFT)

    for options in (DxfOptions(), lower_left):
        with pytest.raises(UnusableInput, match="main: a finish 200 mm thick leaves no sound contour"):
            plan_of(profile=Profile(finish_thickness=200.0), options=options)


def test_a_tapped_hole_is_masked_and_drilled_to_size():
    plan = plan_of(drilled("tapped"), profile=Profile(finish_thickness=0.05))

    assert loops(plan, Layer.DRILL_TAPPED) == [circle(Point(0.0, -60.0), 2.7)]


@pytest.mark.parametrize(
    ("name", "layer"),
    [
        ("plain", Layer.DRILL),
        ("countersunk", Layer.DRILL_COUNTERSUNK_BACK),
        ("tapped", Layer.DRILL_TAPPED),
        ("nutplate", Layer.DRILL_NUTPLATE),
        ("keyed", Layer.CUTOUT),
        ("flatted", Layer.CUTOUT),
    ],
)
def test_each_kind_of_hole_has_its_layer(name, layer):
    assert len(loops(plan_of(drilled(name)), layer)) == 1


def test_countersinks_and_nutplate_flanges_are_shown_but_not_cut():
    plan = plan_of(drilled("nutplate"))
    (flange,) = loops(plan, Layer.HARDWARE)

    assert flange.area == pytest.approx(25.0 * 10.0)
    assert len(loops(plan, Layer.DRILL_RIVET)) == 2
    assert all(gap(flange, rivet).distance < 0.0 for rivet in loops(plan, Layer.DRILL_RIVET))
    assert loops(plan_of(drilled("countersunk")), Layer.HARDWARE) == [circle(Point(0.0, -60.0), 7.6)]


def test_cuts_that_are_in_the_metal_already_are_not_cut_again():
    old = cut("old", 0.0, 0.0, state="existing")

    reworked = plan_of(old, state="reworked", profile=Profile(finish_thickness=0.05))
    assert loops(reworked, Layer.EXISTING) == [circle(HERE, 79.375)]
    assert loops(reworked, Layer.OUTLINE_EXISTING) == [rectangle(HERE, 600.0, 300.0)]
    assert not loops(reworked, Layer.OUTLINE)
    assert loops(plan_of(old, state="new"), Layer.CUTOUT) == [circle(HERE, 79.375)]


def test_a_cut_entered_twice_is_written_once():
    assert len(loops(plan_of(cut("one", 0.0, 0.0), cut("two", 0.0, 0.0)), Layer.CUTOUT)) == 1


def test_pieces_of_no_length_are_closed_up_and_short_ones_refused():
    corners = [(0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (9.9995, 10.0), (0.0, 10.0)]
    loop = Loop(Layer.CUTOUT, closed_chain(tuple(Vertex(*c) for c in corners)), "window")
    short = Loop(Layer.CUTOUT, rectangle(HERE, 10.0, 5.0, 2.49), "window")

    (closed,) = cleaned(Plan((loop,)), 0.05, LengthUnit.MM).loops
    assert [s.length for s in closed.contour.segments] == pytest.approx([10.0] * 4, abs=1e-3)
    with pytest.raises(
        UnusableInput, match=r"window: its contour has a piece 0.02 mm long; expected .* at least 0.05 mm"
    ):
        cleaned(Plan((short,)), 0.05, LengthUnit.MM)


def test_small_holes_may_be_centre_marks():
    plan = plan_of(
        drilled("tapped"), options=DxfOptions(small_holes=SmallHoles.CENTRE_MARKS), profile=Profile(smallest_cut=3.0)
    )

    assert [(mark.layer, mark.at) for mark in plan.marks] == [(Layer.CENTRE_MARK, (0.0, -60.0))]
    assert not loops(plan, Layer.DRILL_TAPPED)


def test_a_lead_in_lies_in_the_scrap():
    concave = opening(
        Outline(corners=(Corner(x=-20, y=-15), Corner(x=20, y=-15), Corner(x=0, y=-10), Corner(x=-15, y=20)))
    )
    cuts = (cut("gauge", 0.0, 0.0), cut("odd", 120.0, 0.0, None, openings=(concave,)))
    plan = plan_of(*cuts, options=DxfOptions(lead_ins=LeadIns.POINTS))
    outline, *rest = [loop.contour for loop in plan.loops]

    assert len(plan.marks) == len(plan.loops) == 3
    assert not contains(outline, plan.marks[0].at)
    assert all(contains(contour, mark.at) for contour, mark in zip(rest, plan.marks[1:], strict=True))


def test_tight_corners_are_relieved_by_half_a_cutter_circle_through_the_corner():
    """A right corner: the lobe is a half circle whose ends lie the cutter's radius times root 2 from the corner."""
    relieved = with_relief(Plan((Loop(Layer.CUTOUT, rectangle(HERE, 50.0, 30.0)),)), 3.0).loops[0].contour
    arcs = [s for s in relieved.segments if isinstance(s, Arc)]

    assert [arc.radius for arc in arcs] == pytest.approx([1.5] * 4)
    assert [arc.sweep for arc in arcs] == pytest.approx([math.pi] * 4)
    for arc in arcs:
        corner = Point(math.copysign(25.0, arc.centre.x), math.copysign(15.0, arc.centre.y))
        assert distance(arc.centre, corner) == pytest.approx(1.5)
        assert distance(arc.start, corner) == pytest.approx(1.5 * math.sqrt(2))


def test_a_small_fillet_is_relieved_down_to_its_own_arc_and_a_wide_one_left():
    tight = rectangle(HERE, 50.0, 30.0, 1.0)
    plan = Plan((Loop(Layer.CUTOUT, tight), Loop(Layer.CUTOUT, rectangle(HERE, 50.0, 30.0, 2.0))))
    relieved, wide = (loop.contour for loop in with_relief(plan, 3.0).loops)

    assert wide == plan.loops[1].contour
    assert len(relieved.segments) == 8
    middle_of_fillet = next(s for s in tight.segments if isinstance(s, Arc)).at(0.5)
    lobe = min(
        (s for s in relieved.segments if isinstance(s, Arc)), key=lambda s: distance(s.at(0.5), middle_of_fillet)
    )
    assert distance(lobe.at(0.5), middle_of_fillet) == pytest.approx(0.0, abs=1e-9)
    assert lobe.radius == pytest.approx(1.5)


def test_the_sheet_keeps_its_outer_corners_and_has_its_inner_ones_relieved():
    notched = Chain(
        tuple(Vertex(*c) for c in [(0, 0), (90, 0), (90, 60), (60, 60), (60, 30), (30, 30), (30, 60), (0, 60)])
    )
    loop = Loop(Layer.OUTLINE, notched)
    (relieved,) = with_relief(Plan((loop,)), 4.0).loops

    assert tight_corners(loop, 2.0) == 2
    arcs = [s for s in relieved.contour.segments if isinstance(s, Arc)]
    assert [arc.sweep for arc in arcs] == pytest.approx([-math.pi] * 2)
    assert relieved.contour.area < notched.area


def test_relief_is_named_on_the_file():
    plan = plan_of(
        cut("window", 0.0, 0.0, None, openings=(SHARP,)),
        cut("round", 100.0, 0.0, None, openings=(WINDOW,)),
        options=DxfOptions(corner_relief=CornerRelief.ROUND),
    )
    sharp, rounded = loops(plan, Layer.CUTOUT)

    assert any("Corner relief: round, for a cutter of 1 mm" in label.text for label in plan.labels)
    assert isinstance(sharp, Chain)
    assert isinstance(rounded, Rounded)


def test_lettering_is_engraved_on_the_front_face_only():
    lettering = Engraving(id="label", text="ALT", x=0.0, y=0.0, height=4.0)

    def strokes(options):
        return [s for s in plan_of(engravings=(lettering,), options=options).strokes if s.layer is Layer.ENGRAVE]

    assert strokes(DxfOptions())
    assert not strokes(DxfOptions(face_up=FaceUp.BACK))


def test_a_letter_that_cannot_be_engraved_is_named():
    lettering = Engraving(id="label", text="ALT 油", x=0.0, y=0.0, height=4.0)

    with pytest.raises(UnusableInput, match="lettering label: the stroke font has no letter '油'"):
        plan_of(engravings=(lettering,))


def test_the_corner_is_that_of_the_stock_where_the_profile_states_it():
    stock = Profile(stock_width=1220.0, stock_height=610.0, stock_margin=12.0)
    corner = DxfOptions(origin=Origin.LOWER_LEFT)
    plan = plan_of(profile=stock, options=corner)

    assert loops(plan, Layer.OUTLINE)[0].bounds == (12.0, 12.0, 612.0, 312.0)
    assert any("corner of the stock; the sheet lies 12.00 mm inside it" in label.text for label in plan.labels)
    assert loops(plan_of(options=corner), Layer.OUTLINE)[0].bounds == (0.0, 0.0, 600.0, 300.0)


def test_a_plain_round_hole_lies_on_the_layer_of_its_size_whatever_it_is_for():
    """A 9.5 mm hole for a shaft and a 9.5 mm opening are drilled alike; half an inch is the largest drill."""
    hole = HoleGroup(form=HoleForm(diameter=9.5, fastener=9.0), spots=(Spot(x=0.0, y=0.0),), source=SOURCE)
    large = HoleGroup(form=HoleForm(diameter=12.8, fastener=12.0), spots=(Spot(x=0.0, y=0.0),), source=SOURCE)
    plan = plan_of(
        cut("shaft", -100.0, 0.0, None, holes=(hole,)),
        cut("eyelet", 0.0, 0.0, None, openings=(opening(Circle(diameter=9.5)),)),
        cut("half", 100.0, 0.0, None, openings=(opening(Circle(diameter=12.7)),)),
        cut("grommet", 200.0, 0.0, None, holes=(large,)),
    )

    assert [loop.feature.partition("/")[0] for loop in plan.loops if loop.layer is Layer.DRILL] == [
        "shaft",
        "eyelet",
        "half",
    ]
    assert [loop.feature.partition("/")[0] for loop in plan.loops if loop.layer is Layer.CUTOUT] == ["grommet"]


def test_small_openings_get_centre_marks_as_small_screw_holes_do():
    pin = opening(Circle(diameter=3.0))
    options = DxfOptions(small_holes=SmallHoles.CENTRE_MARKS)
    plan = plan_of(cut("pin", 0.0, 0.0, None, openings=(pin,)), profile=Profile(smallest_cut=4.0), options=options)

    assert [mark.at for mark in plan.marks] == [Point(0.0, 0.0)]
