import pytest
from hypothesis import given
from hypothesis import strategies as st

from panelcad.drawing.charts.bars import bars_chart, named_bars
from panelcad.drawing.charts.envelope import envelope_chart
from panelcad.drawing.charts.frame import ON_DARK, ON_LIGHT, ON_PAPER, Chart, Scale, ticks
from panelcad.drawing.charts.load import load_chart
from panelcad.drawing.display import Path, Text, walk
from panelcad.drawing.lettering import text_bounds
from panelcad.library.samples import sample_file
from panelcad.planning.judge import Judgement, judge
from panelcad.store.project_file import load
from panelcad.units import LengthUnit
from tests.planning import kit


def judged(option: str = "ambitious") -> Judgement:
    project = load(sample_file("tourer"))
    return judge(project, project.option(option))


JUDGED = judged()


def charts() -> list[Chart]:
    assert JUDGED.electrical is not None
    envelope = envelope_chart(JUDGED.balance, "CG", LengthUnit.INCH, ON_PAPER)
    assert envelope is not None
    bars = named_bars(("One", "A very long name of an option that goes on"), (-3.5, 12.0), lambda v: f"{v:+.1f} lb")
    return [load_chart(JUDGED.electrical, "Load", ON_PAPER), envelope, bars_chart("Weight", bars, ON_PAPER)]


@pytest.mark.parametrize("chart", charts(), ids=lambda chart: chart.title)
def test_everything_stands_within_the_charts_box(chart: Chart) -> None:
    for node in walk(chart.nodes):
        box = text_bounds(node) if isinstance(node, Text) else node.bounds if isinstance(node, Path) else None
        if box is not None:
            assert box[0] >= -0.5
            assert box[1] >= -1.0
            assert box[2] <= chart.width + 0.5
            assert box[3] <= chart.height + 0.5


@pytest.mark.parametrize("chart", charts(), ids=lambda chart: chart.title)
def test_no_two_texts_overlap(chart: Chart) -> None:
    boxes = [(node.text, text_bounds(node)) for node in walk(chart.nodes) if isinstance(node, Text)]
    for i, (name, a) in enumerate(boxes):
        for other, b in boxes[i + 1 :]:
            apart = a[2] <= b[0] + 0.2 or b[2] <= a[0] + 0.2 or a[3] <= b[1] + 0.9 or b[3] <= a[1] + 0.9
            assert apart, f"{name!r} overlaps {other!r}"


def test_a_bar_is_as_high_as_its_load() -> None:
    """A bar of the chart against the same figure laid on the axis by hand: the axis of 0 to 100 A is 49 mm high."""
    figures = JUDGED.electrical
    assert figures is not None
    chart = load_chart(figures, "Load", ON_PAPER)
    bars = [
        n
        for n in walk(chart.nodes)
        if isinstance(n, Path) and n.fill == ON_PAPER.series[0] and n.bounds[2] - n.bounds[0] > 5
    ]
    heights = [bar.bounds[3] - bar.bounds[1] for bar in bars]
    most = ticks(0.0, max(row.continuous + row.intermittent for row in figures.phases))[-1]
    for height, row in zip(heights, figures.phases, strict=True):
        assert height == pytest.approx(49.0 * row.continuous / most)


def test_an_unknown_value_is_written_not_drawn_as_zero() -> None:
    (bar,) = named_bars(("One",), (None,), str)
    words = [n.text for n in walk(bars_chart("t", (bar,), ON_LIGHT).nodes) if isinstance(n, Text)]
    assert "not known" in words


def test_unknown_loads_are_told_beneath_the_bars() -> None:
    box = kit.unit("box", draw_28={"continuous": 1.0})
    project = kit.project(box, planning={"electrical": {"voltage": 14}})
    figures = judge(project, project.option("new")).electrical
    assert figures is not None
    words = [n.text for n in walk(load_chart(figures, "Load", ON_DARK).nodes) if isinstance(n, Text)]
    assert "1 load(s) of unknown current are in no bar" in words


def test_without_an_envelope_there_is_no_chart() -> None:
    project = kit.project()
    assert envelope_chart(judge(project, project.option("new")).balance, "CG", LengthUnit.MM, ON_PAPER) is None


@given(st.floats(-1e5, 1e5), st.floats(0.01, 1e5))
def test_ticks_are_round_and_hold_the_values(least: float, span: float) -> None:
    marks = ticks(least, least + span)
    step = marks[1] - marks[0]
    assert marks[0] <= least + 1e-6 * step
    assert marks[-1] >= least + span - 1e-6 * step - 1e-9
    assert 2 <= len(marks) <= 12


def test_a_scale_lays_its_ends_on_its_ends() -> None:
    scale = Scale(10.0, 20.0, 5.0, 105.0)
    assert (scale.at(10.0), scale.at(20.0), scale.at(15.0)) == (5.0, 105.0, 55.0)
