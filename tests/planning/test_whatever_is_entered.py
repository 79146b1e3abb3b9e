"""Whatever is entered or left out: every judgement, row, chart and paper is made, and unknown is never a number."""

from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

from panelcad.drawing.charts.envelope import envelope_chart
from panelcad.drawing.charts.frame import ON_PAPER
from panelcad.drawing.charts.load import load_chart
from panelcad.model.equipment import EquipmentUnit, Place
from panelcad.model.function import Control, Function, Supply
from panelcad.model.planning import Fact, FlightKind
from panelcad.outputs.papers.comparison import comparison_report
from panelcad.outputs.papers.write import option_papers
from panelcad.outputs.planning_plain import comparison_as_plain
from panelcad.planning.compare import compare
from panelcad.planning.wording import cure_words, sentence
from tests import builders
from tests.planning import kit


def maybe(strategy: st.SearchStrategy[Any]) -> st.SearchStrategy[Any]:
    return st.none() | strategy


SMALL = builders.sheet(width=60.0, height=60.0)
MASS = st.floats(0, 500)
ARM = st.floats(-3000, 8000)
MONEY = st.decimals(0, 20_000, places=2)
DRAW = st.fixed_dictionaries({"continuous": maybe(st.floats(0, 20)), "peak": maybe(st.floats(20, 60))})
WIRE = st.fixed_dictionaries(
    {"gauge": maybe(st.sampled_from(["24", "22", "18", "8", "0"])), "length": maybe(st.floats(10, 9000))}
)
CIRCUIT = st.fixed_dictionaries(
    {
        "bus": maybe(st.sampled_from(["main", "avionics"])),
        "breaker": maybe(st.floats(0.5, 60)),
        "wire": WIRE,
        "after_failure": st.sampled_from(["shed", "kept", "on again for the landing"]),
    }
)
SYSTEM = st.fixed_dictionaries(
    {
        "voltage": st.sampled_from([14, 28]),
        "alternators": st.lists(maybe(st.floats(1, 100)), max_size=2).map(
            lambda ratings: tuple({"id": f"a{i}", "name": f"A{i}", "rating": r} for i, r in enumerate(ratings))
        ),
        "battery": maybe(st.fixed_dictionaries({"capacity": maybe(st.floats(0.5, 80))})),
        "buses": st.just(
            (
                {"id": "main", "name": "Main", "fed_by": ("battery",)},
                {"id": "avionics", "name": "Avionics", "fed_by": ("main",)},
            )
        ),
    }
)
CORNERS = st.lists(st.tuples(ARM, MASS), min_size=3, max_size=6, unique=True)
SHEET = st.fixed_dictionaries(
    {
        "datum": st.just("firewall"),
        "empty_mass": maybe(st.floats(1, 900)),
        "empty_arm": maybe(ARM),
        "most_mass": maybe(MASS),
        "panel_arm": maybe(ARM),
        "least_fuel": maybe(MASS),
        "chord": maybe(st.floats(0, 3000)),
        "envelope": st.just(()) | CORNERS.map(lambda cs: tuple({"arm": a, "mass": m} for a, m in cs)),
        "stations": st.lists(st.tuples(ARM, MASS, st.booleans()), max_size=4).map(
            lambda ss: tuple(
                {"id": f"s{i}", "name": f"S{i}", "arm": a, "most": m, "least": m / 2, "is_fuel": f}
                for i, (a, m, f) in enumerate(ss)
            )
        ),
    }
)
UNIT = st.fixed_dictionaries(
    {
        "place": st.sampled_from([p for p in Place if p is not Place.PANEL]),
        "provides": st.sets(st.sampled_from(Function), max_size=4).map(tuple),
        "supplies": st.sets(st.sampled_from(list(Supply)[:5]), max_size=1).map(tuple),
        "controls": st.sets(st.sampled_from(list(Control)[:4]), max_size=1).map(tuple),
        "needs": st.sampled_from(list(Supply)[5:10]).map(lambda s: ({"supply": s},)) | st.just(()),
        "power": st.sampled_from(["electrical", "electrical with its own battery", "vacuum", "none"]),
        "duty": st.sampled_from(["continuous", "intermittent"]),
        "draw_14": maybe(DRAW),
        "draw_28": maybe(DRAW),
        "mass": maybe(MASS),
        "price": maybe(MONEY),
        "currency": st.sampled_from(["USD", "EUR"]),
    }
)
PLANNING = st.fixed_dictionaries(
    {
        "flight": maybe(st.sampled_from(FlightKind)),
        "requirements": st.sampled_from([(), ("eu-part-nco",)]),
        "facts": st.lists(st.sampled_from(Fact), unique=True, max_size=5).map(
            lambda fs: tuple({"fact": f, "holds": i % 2 == 0} for i, f in enumerate(fs))
        ),
        "engines": maybe(st.integers(0, 3)),
        "tanks": maybe(st.integers(0, 4)),
        "weight": maybe(SHEET),
        "costs": st.fixed_dictionaries({"hourly_rate": maybe(MONEY)}),
    }
)


@st.composite
def project(draw: st.DrawFn) -> Any:
    system = draw(maybe(SYSTEM))
    units: list[EquipmentUnit] = [kit.unit(f"u{i}", **draw(UNIT)) for i in range(draw(st.integers(0, 4)))]
    items = tuple(kit.fit(one.name, arm=draw(maybe(ARM)), circuit=draw(CIRCUIT) if system else {}) for one in units)
    found = tuple(item for item in items if draw(st.booleans()))
    planning = {**draw(PLANNING), "electrical": system}
    return kit.project(*units, items=items, as_found_items=found, planning=planning, plates=(SMALL,))


@settings(max_examples=12)
@given(project())
def test_everything_is_made_whatever_is_entered(made: Any) -> None:
    comparison = compare(made)
    for judgement in comparison.judgements:
        assert all(p.blocks for p in option_papers(judgement, "2026-03-01"))
        assert all(sentence(f, made, judgement.option) for f in judgement.all_findings)
        assert all(cure_words(f, made) != "." for f in judgement.all_findings)
        envelope_chart(judgement.balance, "CG", made.unit, ON_PAPER)
        if judgement.electrical is not None:
            load_chart(judgement.electrical, "Load", ON_PAPER)
        unknown = judgement.balance.change.unknown
        assert not unknown or judgement.balance.change.new is None
    assert comparison_report(comparison).blocks
    assert comparison_as_plain(comparison)["rows"]
