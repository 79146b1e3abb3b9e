"""Checks against the bare library, and a live check against a full one.

Run with `pytest tests/benchmarks/test_check_speed.py --benchmark-enable --benchmark-json=figures.json` for the figures.
Times are of the process, without the collector of garbage on both sides, as `timeit` has it.
"""

import gc
import math
from collections.abc import Callable
from time import process_time

import numpy as np
import pytest
import shapely

from panelcad.checks.bench import Bench
from panelcad.checks.live import LiveChecker
from panelcad.checks.parts import Layer, Part
from panelcad.checks.pieces import pieces_of
from panelcad.checks.registry import EachPair, Loaded, Rule, load_rules
from panelcad.checks.run import check, setting_of
from panelcad.checks.setting import Setting
from panelcad.checks.sources import sources
from panelcad.geometry.polygon import Side, polygon
from panelcad.model.layout import layout
from panelcad.model.project import Project
from tests.benchmarks.large_panels import panel_of

MOST_OVER_BARE = 3.0
GROWTH = 1.2
MOST_OF_A_FULL_CHECK = 0.05
CHORD = 0.05
"""mm; a 3-1/8 in hole then has 64 corners, as shapely's own buffer gives it."""


def seconds(work: Callable[[], object], rounds: int = 5) -> float:
    """The quickest of some rounds."""
    gc.collect()
    gc.disable()
    times = []
    for _ in range(rounds):
        start = process_time()
        work()
        times.append(process_time() - start)
    gc.enable()
    return min(times)


def on_the_bench(count: int) -> tuple[Setting, list[Part], list[Rule]]:
    project = panel_of(count)
    laid = layout(project, project.option("new"))
    plate = laid.plates[0]
    setting = setting_of(plate, laid)
    parts = [source.make(setting) for source in sources(plate, setting)]
    assert all(part.pieces is not None for part in parts)
    return setting, parts, [rule for rule in load_rules().rules if isinstance(rule.looks_at, EachPair)]


def bare_query(setting: Setting, parts: list[Part], rules: list[Rule]) -> Callable[[], int]:
    """Tree, query and distances of the same pairs of layers for each rule, on polygons made beforehand."""
    shapes = {layer: np.array(_polygons(layer, parts), dtype=object) for layer in Layer}

    def work() -> int:
        pairs = 0
        for rule in rules:
            a, b = shapes[rule.looks_at.a], shapes[rule.looks_at.b]
            if len(a) and len(b):
                reach = rule.looks_at.reach(setting)
                left, right = shapely.STRtree(b).query(a, predicate="dwithin", distance=reach)
                shapely.distance(a[left], b[right])
                pairs += len(left)
        return pairs

    return work


def _polygons(layer: Layer, parts: list[Part]) -> list[object]:
    rows = pieces_of(layer, parts)
    if layer is Layer.BEYOND:
        return list(rows.cores)
    return [polygon(piece.contour, Side.CIRCUMSCRIBED, CHORD) for piece in rows.pieces]


def ours(count: int) -> tuple[float, float]:
    """Seconds of the pair rules, and of the bare query, on so many cutouts."""
    setting, parts, rules = on_the_bench(count)
    rounds = 3 if count > 1000 else 7
    judging = seconds(lambda: Bench(setting, rules).take(parts), rounds)
    return judging, seconds(bare_query(setting, parts, rules), rounds)


def only_when_enabled(benchmark) -> None:
    if not benchmark.enabled:
        pytest.skip("speed is measured with --benchmark-enable")


@pytest.mark.parametrize("count", [40, 400, 4000])
def test_pair_rules_take_at_most_three_times_the_bare_query(benchmark, count):
    only_when_enabled(benchmark)
    judging, bare = ours(count)
    benchmark.pedantic(lambda: None, rounds=1)
    benchmark.extra_info["ms"] = round(judging * 1e3, 1)
    benchmark.extra_info["ratio to the bare query"] = round(judging / bare, 2)
    assert judging < MOST_OVER_BARE * bare


def test_pair_rules_grow_little_more_than_the_cutouts(benchmark):
    only_when_enabled(benchmark)
    few, many = ours(400)[0], ours(4000)[0]
    benchmark.pedantic(lambda: None, rounds=1)
    benchmark.extra_info["growth exponent"] = round(math.log10(many / few), 2)
    assert math.log10(many / few) < GROWTH


def moved(project: Project, number: int, by: float) -> Project:
    """The project with one item and its cut moved."""
    option = project.option("new")
    (plate,) = option.plates
    cuts, items = list(plate.cuts), list(option.items)
    cuts[number] = cuts[number].revised(x=cuts[number].x + by)
    items[number] = items[number].revised(x=items[number].x + by)
    changed = plate.revised(cuts=tuple(cuts))
    return project.with_option(option.revised(plates=(changed,), items=tuple(items)))


def test_live_check_of_one_moved_item_against_a_full_check(benchmark):
    only_when_enabled(benchmark)
    project = panel_of(400)
    full = seconds(lambda: check(project, project.option("new")))
    live = LiveChecker()
    live.update(project, "new")
    steps = iter([moved(project, 210, 0.1 * step) for step in range(1, 40)])
    one = seconds(lambda: live.update(next(steps), "new"), 30)
    benchmark.pedantic(lambda: None, rounds=1)
    benchmark.extra_info["full ms"] = round(full * 1e3)
    benchmark.extra_info["one moved item ms"] = round(one * 1e3, 1)
    benchmark.extra_info["share"] = round(one / full, 3)
    assert one < MOST_OF_A_FULL_CHECK * full


@pytest.mark.parametrize("count", [40, 400])
def test_each_other_rule_in_milliseconds(benchmark, count):
    """Told in the figures, each with its parts' preparation; a full check takes less than 10 ms for each cutout."""
    only_when_enabled(benchmark)
    project = panel_of(count)
    option = project.option("new")
    for rule in load_rules().rules:
        if not isinstance(rule.looks_at, EachPair):
            only = Loaded((rule,), ())
            benchmark.extra_info[rule.id] = round(seconds(lambda only=only: check(project, option, only), 3) * 1e3, 1)
    full = seconds(lambda: check(project, option), 3)
    benchmark.pedantic(lambda: None, rounds=1)
    benchmark.extra_info["all rules"] = round(full * 1e3)
    assert full < 0.01 * count
