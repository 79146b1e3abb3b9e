"""A cure that is offered does what it says, and no harm: each is carried out as the window would, and judged anew."""

from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

import panelcad
from panelcad.checks.bench import Bench
from panelcad.checks.live import LiveChecker
from panelcad.checks.registry import load_rules
from panelcad.checks.report import gravity, in_order
from panelcad.checks.run import check, setting_of, whole_verdicts
from panelcad.checks.wording import sentence
from panelcad.editing.label_row import Side, label_row
from panelcad.editing.labels_along import move_labelled
from panelcad.editing.move import move_by
from panelcad.editing.plates import add_engraving
from panelcad.editing.spread_row import spread_row
from panelcad.model.cutout import Control
from panelcad.model.finding import Cure, Finding
from panelcad.model.function import Function
from panelcad.model.layout import layout
from panelcad.model.like_row import row_with
from panelcad.model.plate import Cut, CutState, Engraving
from panelcad.model.project import Project
from panelcad.model.shape import Circle, Rectangle
from panelcad.model.surroundings import Surroundings
from panelcad.units import LengthUnit
from tests.builders import round_cutout
from tests.checks.cases import found
from tests.checks.made import attach, fitted, own_cut, panel, rib
from tests.checks.pilot_panels import control, eye
from tests.checks.test_bodies import two_of_one_stack
from tests.checks.test_live import CUTOUTS

SAMPLES = sorted((Path(__file__).parents[2] / "sample_panels").glob("*.panel.json"))


def offered(project: Project, option_id: str) -> list[Finding]:
    report = check(project, project.option(option_id))
    assert report.not_judged == ()
    every = (*report.findings, *(accepted.finding for accepted in report.accepted))
    return [finding for finding in every if finding.cure is not None and not finding.cure.advice]


def judged_bare(project: Project, option_id: str) -> dict[str, Finding]:
    """The worst finding of each identity, as the rules say it: nothing accepted, and no moves tried."""
    laid, rules = layout(project, project.option(option_id)), load_rules()
    verdicts = list(whole_verdicts(laid, rules))
    for plate in laid.plates:
        bench = Bench(setting_of(plate, laid), rules.rules)
        bench.lay(plate)
        verdicts += bench.verdicts()
    return {finding.identity: finding for finding in in_order(v for v in verdicts if isinstance(v, Finding))}


def carried_out(project: Project, option_id: str, finding: Finding) -> Project:
    cure: Cure = finding.cure
    if cure.pitch is None:
        return move_labelled(project, option_id, (cure.item,), cure.dx, cure.dy)
    row = row_with(project.option(option_id), finding.items)
    assert row.ids == cure.row
    return spread_row(project, option_id, row, cure.pitch)


def carry_out_each(project: Project, option_id: str) -> int:
    """How many cures were carried out; fails for one that does not cure, or that harms."""
    before, cures = judged_bare(project, option_id), offered(project, option_id)
    for finding in cures:
        after = judged_bare(carried_out(project, option_id, finding), option_id)
        told = sentence(finding, project, project.option(option_id))
        assert finding.identity not in after, told
        for identity, left in after.items():
            assert identity in before, (told, left)
            assert gravity(left)[0] >= gravity(before[identity])[0], (told, left)
    return len(cures)


@pytest.mark.parametrize("sample", SAMPLES, ids=lambda path: path.name.partition(".")[0])
def test_every_cure_of_the_samples(sample):
    project = panelcad.load(sample)
    carried_out = [carry_out_each(project, option.id) for option in project.options]
    assert sum(carried_out) > 0 or sample.name.startswith("twin")


PLACES = st.tuples(st.integers(-160, 160), st.integers(-100, 100), st.sampled_from(range(4)))


@settings(max_examples=12, deadline=None)
@given(st.lists(PLACES, min_size=2, max_size=4), st.tuples(st.integers(-120, 120), st.integers(-60, 60)))
def test_every_cure_of_crowded_panels(places, beside):
    """Instruments, rack units, nutplates and holes where they fall, an old hole, an attach screw and a rib."""
    names = [each.name for each in CUTOUTS]
    made = panel(
        *(fitted(f"i{number}", x, y, names[kind]) for number, (x, y, kind) in enumerate(places)),
        cuts=(
            own_cut("old", *beside, Circle(diameter=40), state=CutState.EXISTING),
            own_cut("slot", -beside[0], 20, Rectangle(width=60, height=20, corner_radius=4)),
        ),
        cutouts=CUTOUTS,
        attach_screws=(attach("s1", 0, 120),),
        around=rib(Rectangle(width=30, height=300), 150, 0),
        size=(420.0, 300.0),
    )
    carry_out_each(made, "new")


BIG, SMALL = Circle(diameter=50), Circle(diameter=30)


def between_two(room: float, **fields: object) -> Project:
    """A hole of 30 mm 5 mm right of one of 50 mm; `room` right of it stands another, and more on the other sides."""
    cuts = (
        own_cut("a", 0, 0, BIG, state=CutState.EXISTING),
        own_cut("b", 45, 0, SMALL),
        own_cut("c", 45 + 30 + room, 0, SMALL, state=CutState.EXISTING),
        own_cut("d", 45, 45, SMALL, state=CutState.EXISTING),
        own_cut("e", 45, -45, SMALL, state=CutState.EXISTING),
        own_cut("f", -60, 0, BIG, state=CutState.EXISTING),
    )
    return panel(cuts=cuts, **fields)


def test_a_move_that_would_come_too_near_another_is_not_offered():
    """1.35 mm to the right are missing: there is room for them, or they are not offered."""
    (free,) = [f for f in found(between_two(8.0), "web") if f.items == ("a", "b")]
    assert (free.cure.item, free.cure.dx, free.cure.dy) == ("b", pytest.approx(1.4), 0.0)
    (shut,) = [f for f in found(between_two(7.0), "web") if f.items == ("a", "b")]
    assert shut.cure is None


def beside_a_large_one(gap: float) -> list[Finding]:
    """The web between a hole of 30 mm and one of 150 mm left of it; the small one can only go up, past the bulge."""
    x = 75 + 15 + gap
    cuts = (
        own_cut("a", 0, 0, Circle(diameter=150), state=CutState.EXISTING),
        own_cut("b", x, 0, SMALL),
        own_cut("c", x + 30 + 6.5, 0, SMALL, state=CutState.EXISTING),
        own_cut("d", x, -45, SMALL, state=CutState.EXISTING),
    )
    return [f for f in found(panel(cuts=cuts, size=(500.0, 300.0)), "web") if f.items == ("a", "b")]


@pytest.mark.parametrize(
    ("gap", "dy"),
    [(4.2, 20.3), (5.0, None)],
    ids=["2.15 mm are missing: 20.3 mm up", "1.35 mm are missing: 16.1 mm would be twelve times that"],
)
def test_a_move_far_longer_than_what_is_missing_is_not_offered(gap, dy):
    """By Pythagoras, for the 6.35 mm of web that are required: 96.35² = (90 mm + gap)² + dy²."""
    (finding,) = beside_a_large_one(gap)
    assert (finding.cure and finding.cure.dy) == (dy and pytest.approx(dy, abs=0.1))


def gauge_between(x: float) -> Project:
    """A tachometer at x, 200 below the eye's height and 30 in from it, 5 mm right of a hole; nothing right of it."""
    cuts = (
        own_cut("a", x - 45, -200, BIG, state=CutState.EXISTING),
        own_cut("d", x, -155, SMALL, state=CutState.EXISTING),
        own_cut("e", x, -245, SMALL, state=CutState.EXISTING),
        own_cut("f", x - 105, -200, BIG, state=CutState.EXISTING),
    )
    gauge = round_cutout(30, "gauge", shows=(Function.TACHOMETER,))
    around = Surroundings(eye=eye())
    return panel(fitted("b", x, -200), cuts=cuts, cutouts=(gauge,), around=around, size=(1600.0, 900.0))


@pytest.mark.parametrize(("x", "is_offered"), [(533.0, False), (531.0, True), (-540.0, True)])
def test_a_move_out_of_the_pilots_view_is_not_offered(x, is_offered):
    """35 degrees at 30 in are 533.5 mm (762 tan 35°): 1.4 mm more than 531 are inside, 1.4 more than 533 are not."""
    project = gauge_between(x)
    report = check(project, project.option("new"))
    (finding,) = [f for f in report.findings if (f.rule, f.items) == ("web", ("a", "b-cut"))]
    assert bool(finding.cure) == is_offered
    if is_offered:
        assert (finding.cure.item, finding.cure.dx, finding.cure.dy) == ("b-cut", pytest.approx(1.4), 0.0)


def test_a_live_check_tries_cures_as_the_pilot_sees_them_only_at_rest():
    checker = LiveChecker()
    before = gauge_between(531.0)
    assert any(f.cure and f.cure.dx for f in checker.update(before, "new").findings)
    for project in (move_by(before, "new", ("b",), 2.0, 0), gauge_between(533.0)):
        dragged = checker.update(project, "new", with_cures=False)
        assert not any(f.cure and f.cure.dx for f in dragged.findings)
        assert checker.update(project, "new") == check(project, project.option("new"))


def knob_below_a_hole() -> Project:
    """A knob of 30 mm 3 mm below an old hole, old holes left and right of it, and its label 1.5 mm below it."""
    cuts = (
        own_cut("a", 0, 0, BIG, state=CutState.EXISTING),
        own_cut("c", 38, -43, SMALL, state=CutState.EXISTING),
        own_cut("d", -38, -43, SMALL, state=CutState.EXISTING),
    )
    return label_row(
        panel(fitted("b", 0, -43, "knob"), cuts=cuts, cutouts=(control("knob", Control.PUSH_PULL, 30.0),)),
        "new",
        {"b": "HEAT"},
        3.0,
        Side.BELOW,
    ).project


def test_a_label_goes_along_and_is_in_nobodys_way():
    """3.35 mm are missing for 6.35 mm of web, more than the label is away from the knob."""
    project = knob_below_a_hole()
    (finding,) = [f for f in found(project, "web") if f.items == ("a", "b-cut")]
    assert (finding.cure.item, finding.cure.dx, finding.cure.dy) == ("b-cut", 0.0, pytest.approx(-3.4))
    assert carry_out_each(project, "new") > 0


def test_a_move_that_would_bring_a_label_across_other_words_is_not_offered():
    project = knob_below_a_hole()
    (plate,) = project.option("new").plates
    (label,) = plate.engravings
    other = Engraving(id="other", text="CABIN", x=label.x, y=label.y - 3.0 * 8 / 7 - 1.0, height=3.0)
    project = add_engraving(project, "new", plate.id, other).project
    (finding,) = [f for f in found(project, "web") if f.items == ("a", "b-cut")]
    assert finding.cure is None


def test_a_move_over_the_edge_is_not_offered():
    """5 mm from the old hole, 10 mm from the right edge: 1.4 mm are free to the right, beyond the edge they are not."""
    for free, cure in ((10.0, 1.4), (7.0, None)):
        cuts = (own_cut("a", 0, 0, BIG, state=CutState.EXISTING), own_cut("b", 45, 0, SMALL))
        made = panel(cuts=cuts, size=(2 * (60 + free), 52.0))
        (finding,) = [f for f in found(made, "web") if f.items == ("a", "b")]
        assert (finding.cure and finding.cure.dx) == (cure and pytest.approx(cure))


def test_the_move_goes_on_until_nothing_is_left_to_find():
    """Two cuts that overlap by 10 mm are not parted only: 6.35 mm of metal are left between them."""
    (finding,) = found(panel(cuts=(own_cut("a", 0, 0, BIG), own_cut("b", 30, 0, SMALL))), "overlap")
    assert finding.cure.dx == pytest.approx(16.4)


def test_moves_are_told_in_the_projects_unit_and_are_what_is_done():
    made = between_two(8.0).revised(unit=LengthUnit.INCH)
    (finding,) = [f for f in found(made, "web") if f.items == ("a", "b")]
    assert finding.cure.dx == pytest.approx(0.06 * 25.4)
    assert sentence(finding, made, made.option("new")).endswith("Move b 0.06 in right.")


@pytest.mark.parametrize("fixed", ["locked", "kept", "enlarged"])
def test_what_is_fixed_is_not_told_to_move(fixed):
    made = between_two(8.0, state="kept" if fixed == "kept" else "reworked")
    option = made.option("new")
    if fixed == "locked":
        option = option.revised(locked=("b",))
    if fixed == "enlarged":
        plate = option.plates[0]
        cuts = tuple(c.revised(state=CutState.ENLARGED) if c.id == "b" else c for c in plate.cuts)
        option = option.revised(plates=(plate.revised(cuts=cuts),))
    (finding,) = [f for f in found(made.with_option(option), "web") if f.items == ("a", "b")]
    assert finding.cure is None


def test_a_unit_takes_its_whole_stack_along():
    """A stack of two beside a round hole: the stack's cut is told to move, and both units go with it."""
    made = two_of_one_stack()
    option = made.option("new")
    plate = option.plates[0].revised(cuts=(*option.plates[0].cuts, own_cut("hole", -105, 0, Circle(diameter=40))))
    old = plate.revised(cuts=tuple(c.revised(state=CutState.EXISTING) if c.id == "hole" else c for c in plate.cuts))
    near = made.with_option(option.revised(plates=(old,)))
    (finding,) = [f for f in found(near, "web") if f.items == ("a-cut", "hole")]
    assert finding.cure.item == "a-cut"
    assert carry_out_each(near, "new") > 0


def test_a_round_hole_alone_needs_no_cure():
    assert offered(panel(fitted("a", 0, 0), cutouts=(round_cutout(name="gauge"),)), "new") == []


HOLE, TIGHT = 20.0, 24.0
"""A row of holes of 20 mm at a pitch of 24 mm leaves 4 mm of metal between two; 6.35 mm are advised."""


def row_of_holes(count: int, *others: Cut, up: bool = False, **fields: object) -> Project:
    """Round things in a row about the origin."""
    places = [(place - (count - 1) / 2) * TIGHT for place in range(count)]
    pairs = [fitted(f"i{n}", *((0.0, at) if up else (at, 0.0)), "round") for n, at in enumerate(places)]
    small = round_cutout(name="round", diameter=HOLE)
    return panel(*pairs, cutouts=(small,), cuts=others, **fields)


def webs(project: Project) -> list[Finding]:
    return [f for f in found(project, "web") if {i.partition("-")[0] for i in f.items} <= {f"i{n}" for n in range(9)}]


@pytest.mark.parametrize("up", [False, True])
@pytest.mark.parametrize(("unit", "pitch", "told"), [("mm", 26.4, "26.4 mm"), ("in", 1.04 * 25.4, "1.04 in")])
def test_the_cure_of_two_neighbours_in_a_row_is_the_pitch_of_the_row(up, unit, pitch, told):
    """20 mm across and 6.35 mm of metal are 26.35 mm, 1.0374 in: told in tenths of a mm and hundredths of an inch."""
    made = row_of_holes(5, up=up).revised(unit=LengthUnit(unit))
    findings = webs(made)
    assert len(findings) == 4
    for finding in findings:
        assert finding.cure.row == ("i0", "i1", "i2", "i3", "i4")
        assert finding.cure.pitch == pytest.approx(pitch)
        words = sentence(finding, made, made.option("new"))
        assert words.endswith(f"Spread the row of 5 (i0 to i4) to a pitch of {told}.")
        assert webs(carried_out(made, "new", finding)) == []
    assert carry_out_each(made, "new") >= 4


@pytest.mark.parametrize(("room", "is_offered"), [(6.35 + 4.8 + 0.01, True), (6.35 + 4.8 - 0.01, False)])
def test_the_pitch_is_offered_only_where_the_ends_of_the_row_have_room(room, is_offered):
    """From 24.0 to 26.4 mm, each end of a row of five goes out by 2 x 2.4 = 4.8 mm."""
    end = 2 * TIGHT + HOLE / 2
    beside = own_cut("wall", end + room + 15.0, 0.0, SMALL, state=CutState.EXISTING)
    pitches = [finding.cure.pitch if finding.cure else None for finding in webs(row_of_holes(5, beside))]
    assert pitches == ([pytest.approx(26.4)] if is_offered else [None]) * 4


def test_two_alone_are_no_row():
    (finding,) = webs(row_of_holes(2))
    assert finding.cure.pitch is None
    assert abs(finding.cure.dx) == pytest.approx(2.4)


@pytest.mark.parametrize("fixed", ["locked", "existing"])
def test_a_row_of_which_one_is_fixed_is_not_spread(fixed):
    made = row_of_holes(4)
    option = made.option("new")
    if fixed == "locked":
        option = option.revised(locked=("i3",))
    else:
        plate = option.plates[0]
        cuts = tuple(c.revised(state=CutState.EXISTING) if c.id == "i3-cut" else c for c in plate.cuts)
        option = option.revised(plates=(plate.revised(cuts=cuts),))
    assert all(f.cure is None or f.cure.pitch is None for f in webs(made.with_option(option)))


def test_a_live_check_offers_the_same_pitch_and_takes_it_back_where_a_neighbour_comes():
    made, live = row_of_holes(5), LiveChecker()
    pitches = [f.cure.pitch for f in live.update(made, "new").findings if f.rule == "web"]
    assert pitches == [pytest.approx(26.4)] * 4
    beside = own_cut("wall", 2 * TIGHT + HOLE / 2 + 8.0 + 15.0, 0.0, SMALL, state=CutState.EXISTING)
    walled = row_of_holes(5, beside)
    found_now = live.update(walled, "new").findings
    assert found_now == check(walled, walled.option("new")).findings
    assert not any(f.cure and f.cure.pitch for f in found_now)
