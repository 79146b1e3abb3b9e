"""The live checker says what a full check says, whatever was edited, and judges again only what an edit touched."""

from dataclasses import replace

from hypothesis import given, settings
from hypothesis import strategies as st

from panelcad.checks.acceptance import accept
from panelcad.checks.live import LiveChecker
from panelcad.checks.parts import Kind, Layer
from panelcad.checks.registry import EachNeighbourhood, EachPair, EachPart, Loaded, load_rules
from panelcad.checks.report import CheckReport
from panelcad.checks.run import check
from panelcad.model.cutout import BodyKind
from panelcad.model.layout import layout
from panelcad.model.plate import CutState, Sway
from panelcad.model.project import Project
from panelcad.model.shape import Circle, Rectangle
from panelcad.model.surroundings import Surroundings
from tests.builders import cut, item, round_cutout
from tests.checks.made import (
    attach,
    body,
    fitted,
    four_screws,
    instrument,
    nutplate_form,
    own_cut,
    panel,
    rack_unit,
    rib,
    screw_form,
    shaft,
)

PLUG = body(BodyKind.CONNECTOR, Circle(diameter=30), near=100.0, far=130.0)
KNOB = body(BodyKind.KNOB, Circle(diameter=12), x=-25.0, y=-25.0, far=15.0)
CUTOUTS = (
    instrument(holes=(four_screws(screw_form(head=7.0)),), bodies=(body(), PLUG, KNOB), own_web=2.6),
    rack_unit("unit", 40.0),
    round_cutout(name="ring", openings=(), holes=(four_screws(nutplate_form()),)),
    round_cutout(),
)
NAMES = tuple(each.name for each in CUTOUTS)
SPOT = st.tuples(st.integers(-400, 400), st.integers(-250, 250))


def start() -> Project:
    around = Surroundings(
        obstacles=rib(Rectangle(width=30, height=300), 150, 0).obstacles,
        moving_parts=shaft(Circle(diameter=30), -100, -80).moving_parts,
    )
    return panel(
        fitted("a", -200, 50),
        fitted("b", -90, 50),
        fitted("c", 60, -100, "unit"),
        cuts=(
            own_cut("old", 300, 0, Circle(diameter=60), state=CutState.EXISTING),
            own_cut("bare", 200, 180, Rectangle(width=50, height=30)),
        ),
        cutouts=CUTOUTS,
        attach_screws=(attach("s1", -440, 290), attach("s2", 440, -290, nutplate_form())),
        around=around,
    )


def _plate(project, **changes):
    option = project.option("new")
    return project.with_option(option.revised(plates=(option.plates[0].revised(**changes),)))


def _option(project):
    return project.option("new")


def _pick(things, number):
    return things[number % len(things)] if things else None


def move(project, number, spot):
    chosen = _pick(_option(project).items, number)
    if chosen is None:
        return project
    cuts = tuple(
        each.revised(x=spot[0], y=spot[1]) if each.id == chosen.cut else each
        for each in _option(project).plates[0].cuts
    )
    moved = _plate(project, cuts=cuts)
    items = tuple(
        each.revised(x=spot[0], y=spot[1]) if each.id == chosen.id else each for each in _option(project).items
    )
    return moved.with_option(_option(moved).revised(items=items))


def move_cut_alone(project, number, spot):
    cuts = _option(project).plates[0].cuts
    chosen = _pick(cuts, number)
    return _plate(project, cuts=tuple(e.revised(x=spot[0], y=spot[1]) if e is chosen else e for e in cuts))


def take_away(project, number, _):
    chosen = _pick(_option(project).items, number)
    if chosen is None:
        return project
    kept = _option(project).revised(items=tuple(e for e in _option(project).items if e is not chosen))
    return project.with_option(kept)


def add(project, number, spot):
    name = f"n{number}"
    if name in {each.id for each in _option(project).items} | set(_option(project).cut_ids()):
        return project
    metal = cut(f"{name}-cut", *spot, NAMES[number % len(NAMES)])
    if metal.id in _option(project).cut_ids():
        return project
    cut_there = _plate(project, cuts=(*_option(project).plates[0].cuts, metal))
    new = item(name, *spot, NAMES[number % len(NAMES)], cut=metal.id)
    return cut_there.with_option(_option(cut_there).revised(items=(*_option(cut_there).items, new)))


def age(project, number, _):
    cuts = _option(project).plates[0].cuts
    chosen = _pick(cuts, number)
    state = CutState.NEW if chosen.state is CutState.EXISTING else CutState.EXISTING
    return _plate(project, cuts=tuple(e.revised(state=state) if e is chosen else e for e in cuts))


def share_a_cut(project, number, _):
    items = _option(project).items
    cuts = _option(project).plates[0].cuts
    chosen, metal = _pick(items, number), _pick(cuts, number // 3)
    if chosen is None:
        return project
    changed = tuple(e.revised(cut=metal.id) if e is chosen else e for e in items)
    return project.with_option(_option(project).revised(items=changed))


def thicken(project, number, _):
    return _plate(project, thickness=1.0 + number % 4)


def widen_web(project, number, _):
    return project.revised(profile=project.profile.revised(web_advised=3.0 + number % 9))


def sway(project, number, _):
    return _plate(project, sway=Sway(x=float(number % 5), y=1.0, z=2.0) if number % 3 else None)


def move_rib(project, _, spot):
    (old,) = project.surroundings.obstacles
    moved = old.revised(volume=old.volume.revised(x=spot[0], y=spot[1]))
    return project.revised(surroundings=project.surroundings.revised(obstacles=(moved,)))


def move_screw(project, number, spot):
    screws = _option(project).plates[0].attach_screws
    chosen = _pick(screws, number)
    return _plate(project, attach_screws=tuple(e.revised(x=spot[0], y=spot[1]) if e is chosen else e for e in screws))


def accept_one(project, number, _):
    option = _option(project)
    chosen = _pick([f for f in check(project, option).findings if f.acceptable], number)
    if chosen is None:
        return project
    word = accept(chosen, layout(project, option), reason="agreed", initials="KT", on="2026-01-31")
    others = tuple(each for each in option.acceptances if each.finding != word.finding)
    return project.with_option(option.revised(acceptances=(*others, word)))


EDITS = (
    move,
    move,
    move_cut_alone,
    take_away,
    add,
    age,
    share_a_cut,
    thicken,
    widen_web,
    sway,
    move_rib,
    move_screw,
    accept_one,
)


@settings(max_examples=25, deadline=None)
@given(st.lists(st.tuples(st.sampled_from(EDITS), st.integers(0, 40), SPOT), min_size=1, max_size=6))
def test_live_always_equals_full(edits):
    project, live = start(), LiveChecker()
    live.update(project, "new")
    for edit, number, spot in edits:
        project = edit(project, number, spot)
        full = check(project, project.option("new"))
        assert live.update(project, "new") == full
        assert full.not_judged == ()


def _without_cures(report: CheckReport) -> CheckReport:
    def bare(finding):
        return finding.model_copy(update={"cure": None})

    accepted = tuple(replace(each, finding=bare(each.finding)) for each in report.accepted)
    return replace(report, findings=tuple(bare(each) for each in report.findings), accepted=accepted)


@settings(max_examples=10, deadline=None)
@given(st.lists(st.tuples(st.sampled_from(EDITS), st.integers(0, 40), SPOT, st.booleans()), min_size=1, max_size=4))
def test_a_check_without_cures_is_the_same_but_for_them(edits):
    """As while a thing is dragged; the checks with cures between them lose nothing."""
    project, live = start(), LiveChecker()
    for edit, number, spot, with_cures in edits:
        project = edit(project, number, spot)
        full = check(project, project.option("new"))
        said = live.update(project, "new", with_cures=with_cures)
        assert said == full if with_cures else _without_cures(said) == _without_cures(full)


def _counted(loaded: Loaded, calls: list[str]) -> Loaded:
    def counting(rule):
        def judge(*subjects):
            calls.append(rule.id)
            return rule.judge(*subjects)

        return replace(rule, judge=judge)

    kinds = (EachPart, EachPair, EachNeighbourhood)
    return Loaded(tuple(counting(rule) for rule in loaded.rules if isinstance(rule.looks_at, kinds)), ())


def test_only_what_an_edit_touched_is_judged_again():
    """Moving one of three instruments asks each rule about parts once for its cut, its item and the two together.

    Nothing stands too near anything, so that no moves are tried.
    """
    calls: list[str] = []
    live = LiveChecker(_counted(load_rules(), calls))
    project = panel(*(fitted(name, x, 50) for name, x in (("a", -250), ("b", -90), ("c", 90))), cutouts=CUTOUTS[:1])
    project = project.revised(cutouts=(CUTOUTS[0].revised(name="gauge"),))
    live.update(project, "new")
    everything = len(calls)
    calls.clear()
    live.update(project, "new")
    assert calls == []
    live.update(move(project, 0, (-260, 60)), "new")
    rules = [rule for rule in load_rules().rules if isinstance(rule.looks_at, EachPart)]
    about_one = [r for r in rules if {Kind.CUT, Kind.ITEM, Kind.FITTING} & set(r.looks_at.kinds)]
    assert sum(call in {rule.id for rule in about_one} for call in calls) == len(about_one)
    assert len(calls) < everything / 3


def test_another_option_and_back():
    project = start()
    live = LiveChecker()
    first = live.update(project, "new")
    assert live.update(project, "as-found") == check(project, project.as_found)
    assert live.update(project, "new") == first


def test_every_layer_is_looked_at_by_some_rule():
    looks = [rule.looks_at for rule in load_rules().rules]
    seen = {look.a for look in looks if isinstance(look, EachPair)} | {
        look.b for look in looks if isinstance(look, EachPair)
    }
    for look in looks:
        if isinstance(look, EachNeighbourhood):
            seen |= {look.layer, *look.others}
    assert seen == set(Layer)
